"""How far the docking is paid for, as donors see it: one piece for each thing to be done."""

from __future__ import annotations

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.funding_ladder import SURENESS, WANTED, WIDTH
from tenderwright.documents.edition import Figure

KINDS = {"safe": SURENESS["in hand"], "asked for": SURENESS["applied for"], "still wanted": WANTED}
"""By how sure the money is: the surer, the darker."""
_HIGH, _TOP, _GAP = 11.0, 7.0, 1.2


def donor_bar(ship: str, safe: int, hoped: int, waiting: int) -> Figure:
    """Draw a box for each piece of work: dense where safe, hatched where asked for, white where it waits."""
    count = safe + hoped + waiting
    wide = (WIDTH - _GAP * (count - 1)) / count if count else WIDTH
    marks, index = [], 0
    for (word, hatch), number in zip(KINDS.items(), (safe, hoped, waiting), strict=True):
        if not number:
            continue
        left = index * (wide + _GAP)
        marks.append(pen.text((left, _TOP - 2.2), f"{number} {word}", pen.TITLE, bold=True, kind="count"))
        for _ in range(number):
            x = index * (wide + _GAP)
            box = [(x, _TOP), (x + wide, _TOP), (x + wide, _TOP + _HIGH), (x, _TOP + _HIGH)]
            marks.append(hatch.over([box]) + pen.polygon(box, pen.MEDIUM))
            index += 1
    words = f"{count} pieces of work on {ship}: {safe} safe, {hoped} asked for, {waiting} still wanted."
    high = _TOP + _HIGH + 1
    svg = pen.picture(WIDTH, high, words, marks)
    return Figure("donor-bar", svg, "Each box is one piece of work, whatever it costs.", words, title="How far we are")
