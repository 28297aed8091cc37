"""Quantities at which the ranking of two bids changes, and how likely each is to be passed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import combinations

from msgspec import Struct

from tenderwright.calculations.bids.break_even import break_even
from tenderwright.calculations.method import OutOfRange
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.bids.tendered import TenderLine


class BreakEven(Struct, frozen=True):
    """A quantity of one line at which two bids cost the same, all else as tendered."""

    line: TenderLine
    ahead: str
    """The bid that is the lower at the quantity tendered."""
    behind: str
    quantity: float
    more: bool
    """Whether the other bid is the lower at more than that quantity; otherwise at less."""
    chance: float
    """How likely it is that the quantity is beyond it."""
    total: float
    """What both then come to."""


def break_evens(bids: Sequence[EvaluatedBid], lines: Sequence[TenderLine]) -> tuple[BreakEven, ...]:
    """List the quantities in a possible range at which a ranking changes, the likeliest first.

    Every pair of bids and every line that may come to another quantity: q = q0 + (E_b - E_a)/(s_a - s_b), with E the
    evaluated prices, s what one more unit adds to each, q0 the quantity tendered. Possible is what lies between the
    least and the most of the line's spread.
    """
    found = [
        one
        for line in lines
        if line.spread.source != "none"
        for first, second in combinations(sorted(bids, key=lambda bid: (bid.total, bid.name)), 2)
        for one in _between(line, first, second)
    ]
    return tuple(sorted(found, key=lambda one: (-one.chance, one.line.number, one.ahead, one.behind)))


def _between(line: TenderLine, ahead: EvaluatedBid, behind: EvaluatedBid) -> Iterator[BreakEven]:
    rates = [bid.slope(line.number) for bid in (ahead, behind)]
    if rates[0] == rates[1] or ahead.total == behind.total:
        return
    rests = [float(bid.total - rate * line.quantity) for bid, rate in zip((ahead, behind), rates, strict=True)]
    try:
        quantity = break_even(rests[0], float(rates[0]), rests[1], float(rates[1]))
    except OutOfRange:
        return
    spread = line.spread
    if not max(0.0, spread.least) < quantity < spread.most:
        return
    more = rates[0] > rates[1]
    chance = spread.more(quantity) if more else spread.less(quantity)
    total = rests[0] + float(rates[0]) * quantity
    yield BreakEven(line, ahead.name, behind.name, quantity, more, chance, total)


def total_at(bid: EvaluatedBid, line: TenderLine, quantity: Decimal) -> Decimal:
    """Give the evaluated price of a bid at another quantity of one line."""
    return bid.total + bid.slope(line.number) * (quantity - line.quantity)


def deciding_line(
    found: Sequence[BreakEven], bids: Sequence[EvaluatedBid], lines: Sequence[TenderLine]
) -> TenderLine | None:
    """Give the line whose quantity decides most: that of the likeliest change of the lowest bid, else of any ranking.

    Where no ranking changes, the line on which the two lowest bids differ most over its possible range; None where no
    quantity is open or the two do not differ.
    """
    ordered = sorted(bids, key=lambda bid: (bid.total, bid.name))
    if not ordered:
        return None
    first = [one for one in found if one.ahead == ordered[0].name]
    if first or found:
        return (first or list(found))[0].line
    reach = {
        line.number: abs(float(ordered[0].slope(line.number) - ordered[1].slope(line.number)))
        * (line.spread.most - line.spread.least)
        for line in lines
        if len(ordered) > 1 and line.spread.source != "none"
    }
    best = max(reach, key=lambda number: reach[number], default="")
    return next((line for line in lines if line.number == best and reach[best] > 0), None)
