"""Evaluated prices against the quantity of the line that decides most: straight lines, and where they cross."""

from __future__ import annotations

import math
from collections.abc import Sequence
from decimal import Decimal

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.chart import Field, written
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.edition import Figure
from tenderwright.pricing.bids.break_even import BreakEven, total_at
from tenderwright.pricing.bids.compare import BidComparison
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.bids.tendered import TenderLine
from tenderwright.quantities.display import shown_unit

NAME, TITLE = "bid-sensitivity", "Evaluated price against quantity"
WIDTH, HEIGHT = 165.0, 98.0
LIKELY = Hatch((45,), 1.6, 0.13, "", pen.BLUE)
"""Between P50 and P80."""
_LEFT, _RIGHT, _TOP, _FOOT = 17.0, 44.0, 9.0, 15.0
_DASHES = ("", "4.5 1.3", "1.4 1.1", "6 1.2 1.2 1.2", "2.6 1", "7 1 1 1 1 1")
_COLOURS = (pen.INK, pen.BLUE, pen.RED, pen.GREEN, pen.PURPLE, pen.OCHRE)
_APART = 4.6
"""How far the names at the right stand apart, mm."""


def bid_sensitivity(comparison: BidComparison) -> Figure | None:
    """Draw the evaluated prices; None where no quantity is open on which they differ."""
    line = comparison.deciding
    if line is None or len(comparison.bids) < 2:
        return None
    crossings = [one for one in comparison.break_evens if one.line is line]
    field = _field(line, comparison.bids, crossings)
    middle, upper = float(line.spread.at(0.5)), float(line.spread.at(0.8))
    marks = [
        _band(field, middle, upper),
        _frame(field, line, comparison.currency),
        _upright(field, middle, "P50", pen.FINE, pen.HIDDEN, 3.6),
        _upright(field, upper, "P80", pen.FINE, pen.HIDDEN, 3.6),
        _upright(field, float(line.quantity), "tendered", pen.FINE, pen.CHAIN, 0.4),
        *(_bid(field, line, bid, place) for place, bid in enumerate(comparison.bids)),
        *_names(field, line, comparison.bids),
        *(_crossing(field, one) for one in crossings),
    ]
    words = _words(line, comparison, crossings)
    caption = (
        f"Evaluated price of each bid against the quantity of line {line.number}, all else as tendered. Hatched: P50 "
        "to P80. A circle marks where two bids cost the same. The upright axis does not begin at nothing."
    )
    return Figure(NAME, _svg(marks, words), caption, words, title=TITLE)


def _field(line: TenderLine, bids: Sequence[EvaluatedBid], crossings: Sequence[BreakEven]) -> Field:
    spread = line.spread
    wanted = [float(spread.at(share)) for share in (0.02, 0.5, 0.8, 0.98)]
    wanted += [float(line.quantity), *(one.quantity for one in crossings)]
    reach = (max(wanted) - min(wanted)) or 1.0
    least, most = max(0.0, min(wanted) - 0.06 * reach), max(wanted) + 0.06 * reach
    totals = [float(total_at(bid, line, Decimal(repr(end)))) for bid in bids for end in (least, most)]
    room = 0.05 * ((max(totals) - min(totals)) or 1.0)
    up = min(totals) - room, max(totals) + room
    return Field(_LEFT, WIDTH - _RIGHT, _TOP, HEIGHT - _FOOT, (least, most), up)


def _frame(field: Field, line: TenderLine, currency: str) -> str:
    """Draw the axes with figures to scale, and what they measure."""
    foot, right = field.foot, field.right
    marks = [field.box(), field.below(field.step_across(16.0)), field.beside(field.step_up(8.0), lines=True)]
    unit = shown_unit(line.unit or currency)
    named = pen.shortened(f"Line {line.number}: {line.title}, {line.text}", pen.NORMAL, right - _LEFT - 16.0)
    marks.append(pen.text((_LEFT, foot + 9.2), f"{named}, {unit}", pen.NORMAL, bold=True, kind="axis-title"))
    marks.append(pen.text((1.0, 3.0), f"Evaluated price, {currency}", pen.NORMAL, bold=True, kind="axis-title"))
    return "".join(marks)


def _band(field: Field, middle: float, upper: float) -> str:
    left, right = field.x(middle), field.x(upper)
    foot = HEIGHT - _FOOT
    return LIKELY.over([[(left, _TOP), (right, _TOP), (right, foot), (left, foot)]]) if right > left else ""


def _upright(field: Field, quantity: float, name: str, width: float, dash: str, down: float) -> str:
    x = field.x(quantity)
    return pen.line((x, _TOP), (x, HEIGHT - _FOOT), width, dash) + pen.text(
        (x, _TOP + 0.0 - 1.0 - (0.0 if down > 1 else 3.0)), name, pen.SMALL, "middle", kind="mark"
    )


def _bid(field: Field, line: TenderLine, bid: EvaluatedBid, place: int) -> str:
    points = [field.at(end, _total(bid, line, end)) for end in field.across]
    look = place % len(_DASHES)
    return pen.curve(points, pen.HEAVY, _DASHES[look], _COLOURS[look])


def _total(bid: EvaluatedBid, line: TenderLine, quantity: float) -> float:
    return float(total_at(bid, line, Decimal(repr(quantity))))


def _names(field: Field, line: TenderLine, bids: Sequence[EvaluatedBid]) -> list[str]:
    """Write the names at the right ends, moved apart where they would stand on each other."""
    ends = sorted((field.y(_total(bid, line, field.across[1])), place) for place, bid in enumerate(bids))
    marks, last = [], -math.inf
    right = WIDTH - _RIGHT
    for y, place in ends:
        down = max(y, last + _APART)
        last = down
        look = place % len(_COLOURS)
        name = pen.shortened(bids[place].label, pen.SMALL, _RIGHT - 5.0, True)
        marks.append(pen.line((right, y), (right + 2.5, down), pen.FINE, "", _COLOURS[look]))
        marks.append(pen.text((right + 3.0, down + 0.9), name, pen.SMALL, bold=True, kind="bid"))
    return marks


def _crossing(field: Field, one: BreakEven) -> str:
    at = field.at(one.quantity, one.total)
    shown = written(one.quantity, 1.0 if one.quantity >= 100 else 0.1)
    drop = pen.line(at, (at[0], HEIGHT - _FOOT), pen.FINE, "1 0.8")
    return (
        drop
        + pen.circle(at, 1.1, pen.MEDIUM, pen.PAPER)
        + pen.label((at[0] + 2.0, at[1] + 3.2), shown, pen.SMALL, "start", True, kind="crossing")
    )


def _words(line: TenderLine, comparison: BidComparison, crossings: Sequence[BreakEven]) -> str:
    names = ", ".join(bid.label for bid in comparison.bids)
    where = "; ".join(
        f"{comparison.bid(one.ahead).label} and {comparison.bid(one.behind).label} cost the same at "
        f"{written(one.quantity, 1.0 if one.quantity >= 100 else 0.1)} {shown_unit(line.unit)}".strip()
        for one in crossings
    )
    told = (where or "no two of them cross within the possible range").removesuffix(".")
    return f"Evaluated prices of {names}, from the lowest, against the quantity of line {line.number}: {told}."


def _svg(marks: Sequence[str], description: str) -> str:
    attributes: dict[str, str | float] = {
        "xmlns": "http://www.w3.org/2000/svg",
        "width": f"{pen.number(WIDTH)}mm",
        "height": f"{pen.number(HEIGHT)}mm",
        "viewBox": f"0 0 {pen.number(WIDTH)} {pen.number(HEIGHT)}",
        "role": "img",
        "aria-labelledby": f"{NAME}-title {NAME}-desc",
        "font-family": pen.FAMILY,
    }
    ground: dict[str, str | float] = {"x": 0, "y": 0, "width": WIDTH, "height": HEIGHT, "fill": pen.PAPER}
    return pen.element(
        "svg",
        attributes,
        pen.element("title", {"id": f"{NAME}-title"}, pen.words(TITLE)),
        pen.element("desc", {"id": f"{NAME}-desc"}, pen.words(description)),
        pen.element("rect", ground),
        *(f"\n{mark}" for mark in marks if mark),
        "\n",
    )
