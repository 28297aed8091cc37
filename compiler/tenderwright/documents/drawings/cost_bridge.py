"""The bridge from the likely price to the sum to have in hand, and the money against it, to one scale."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.funding_ladder import SURENESS, WIDTH
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.edition import Figure

SUM = Hatch((45,), 0.75, 0.3, "", pen.INK)
STEP = Hatch((135,), 1.8, pen.FINE, "", pen.INK)
_WORDS, _FIGURES, _ROW, _BAR, _TOP = 71.0, 22.0, 6.0, 3.9, 1.0
"""Room for the words before the bars and for the amounts after them; height of a row and of a bar, mm."""


@dataclass(frozen=True)
class Beam:
    """One bar of the bridge: from what is reached already to what is reached with it."""

    words: str
    start: Decimal
    end: Decimal
    told: str
    """Its amount as it is written beside it."""
    kind: str
    """`sum`, `step`, or how sure money is: `in hand`, `promised`, `applied for`, `hoped for`."""


def cost_bridge(beams: Sequence[Beam], needed: Decimal, needed_words: str) -> Figure:
    """Draw the bars one under another, and through those of money a mark at the sum that is needed."""
    greatest = float(max([needed, Decimal(1), *(one.end for one in beams), *(one.start for one in beams)]))
    per = (WIDTH - _WORDS - _FIGURES - 2.0) / greatest
    marks: list[str] = []
    costs = [one for one in beams if one.kind in ("sum", "step")]
    money = [one for one in beams if one not in costs]
    y = _TOP
    for beam in costs:
        marks += _bar(beam, y, per)
        y += _ROW
    if money:
        y += 2.4
        x, foot = _WORDS + float(needed) * per, y + _ROW * len(money) - (_ROW - _BAR)
        for beam in money:
            marks += _bar(beam, y, per)
            y += _ROW
        marks.append(pen.line((x, _TOP + _ROW * (len(costs) - 1)), (x, foot + 1.0), pen.HEAVY, pen.LIMIT))
        marks.append(
            pen.text((min(x, WIDTH - 1.0), foot + 4.0), needed_words, pen.SMALL, "end", bold=True, kind="needed")
        )
        y += 4.0
    told = "; ".join(f"{one.words}: {one.told}" for one in beams)
    words = f"Bars to one scale of money, each beginning where the one before ends. {told}. {needed_words}."
    return Figure("cost-bridge", pen.picture(WIDTH, y, words, marks), "", words, title="Cost and money")


def _bar(beam: Beam, top: float, per: float) -> list[str]:
    left, right = sorted((_WORDS + float(beam.start) * per, _WORDS + float(beam.end) * per))
    right = max(right, left + 0.4)
    bottom = top + _BAR
    box = [(left, top), (right, top), (right, bottom), (left, bottom)]
    whole = beam.kind == "sum"
    hatch = SUM if whole else SURENESS.get(beam.kind, STEP)
    middle = top + _BAR / 2 + pen.NORMAL * 0.34
    words = pen.shortened(beam.words, pen.NORMAL, _WORDS - 2.0, whole)
    return [
        pen.text((0.0, middle), words, pen.NORMAL, bold=whole, kind="words"),
        hatch.over([box]) + pen.polygon(box, pen.MEDIUM),
        pen.text((WIDTH - 0.3, middle), beam.told, pen.NORMAL, "end", bold=whole, kind="amount"),
    ]
