"""Lines that lie far from what others ask, and whether a quantity that may well come changes the ranking by them.

A bid is mathematically unbalanced where some lines lie far below and others far above the usual price, or where work
done early carries more than its share; materially where there is besides a reasonable doubt that it would be the
lowest in the end (23 CFR 635.102; FAR 52.214-10(e)). The screens of 0.5, 2.0 and 1.5 are common practice, no source.
What follows from them is for the owner to decide.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from statistics import median
from typing import Literal

from msgspec import Struct

from tenderwright.pricing.bids.break_even import total_at
from tenderwright.pricing.bids.cases import Case
from tenderwright.pricing.bids.corrected import CorrectedBid
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.bids.tendered import TenderLine

LOW, HIGH = Decimal("0.5"), Decimal("2.0")
EARLY = Decimal("1.5")
EARLY_SECTION = "A"
"""Docking and services are paid first."""
PLAUSIBLE = (0.2, 0.8)
"""Shares of the cases between which a quantity plausibly lies."""


class LineRatio(Struct, frozen=True):
    """The rate of a line against the median of the bids and against the estimate."""

    line: TenderLine
    rate: Decimal
    to_median: Decimal | None
    to_estimate: Decimal | None
    mark: Literal["", "low", "high"]


class Doubt(Struct, frozen=True):
    """A plausible quantity at which a bid is no longer lower than another that it leads as tendered."""

    other: str
    case: str = ""
    """The case of all quantities, `p50` or `p80`; empty where it is one line."""
    line: str = ""
    quantity: Decimal | None = None


class Unbalance(Struct, frozen=True):
    """What the screens say of one bid."""

    ratios: Mapping[str, LineRatio]
    early: Decimal | None
    """Share of docking and services in the base price; None where the base is nothing."""
    early_usual: Decimal | None
    """The median share of the bids, or that of the estimate with fewer than three bids."""
    front_loaded: bool
    doubts: tuple[Doubt, ...]

    @property
    def low(self) -> tuple[LineRatio, ...]:
        """Give the lines far below."""
        return tuple(one for one in self.ratios.values() if one.mark == "low")

    @property
    def high(self) -> tuple[LineRatio, ...]:
        """Give the lines far above."""
        return tuple(one for one in self.ratios.values() if one.mark == "high")

    @property
    def mathematically(self) -> bool:
        """Tell whether it is mathematically unbalanced by the screens."""
        return bool(self.low and self.high) or self.front_loaded

    @property
    def materially(self) -> bool:
        """Tell whether besides a plausible quantity changes its ranking."""
        return self.mathematically and bool(self.doubts)


def medians(corrected: Mapping[str, CorrectedBid], lines: Sequence[TenderLine]) -> dict[str, Decimal]:
    """Give by line the median rate of the bids that price it; only where two bids or more do."""
    found = {}
    for line in lines:
        rates = [
            one.rate
            for bid in corrected.values()
            if (one := bid.lines[line.number]).status in ("priced", "zero") and one.rate is not None
        ]
        if len(rates) > 1 and line.form != "fixed":
            found[line.number] = median(rates)
    return found


def unbalance(
    bid: EvaluatedBid,
    bids: Sequence[EvaluatedBid],
    usual: Mapping[str, Decimal],
    early_of_estimate: Decimal | None,
    cases: Sequence[Case],
) -> Unbalance:
    """Screen one bid against the others, the medians of their rates, and the estimate."""
    ratios = {
        number: _ratio(one.line, one.rate, usual.get(number))
        for number, one in bid.corrected.lines.items()
        if one.status in ("priced", "zero") and one.rate is not None
    }
    early = early_share(bid.corrected.sections.get(EARLY_SECTION), bid.corrected.base)
    shares = [early_share(one.corrected.sections.get(EARLY_SECTION), one.corrected.base) for one in bids]
    known = [share for share in shares if share is not None]
    early_usual = median(known) if len(known) > 2 else early_of_estimate
    loaded = early is not None and early_usual is not None and early_usual > 0 and early > EARLY * early_usual
    marked = [one.line for one in ratios.values() if one.mark]
    return Unbalance(ratios, early, early_usual, loaded, tuple(_doubts(bid, bids, marked, cases)))


def early_share(early: Decimal | None, base: Decimal) -> Decimal | None:
    """Give the share of early work in a base price; None where there is no base to have a share of."""
    return early / base if early is not None and base > 0 else None


def _ratio(line: TenderLine, rate: Decimal, usual: Decimal | None) -> LineRatio:
    """Mark a line that lies beyond the screens by both the median and the estimate, or by the one there is."""
    to_median = rate / usual if usual else None
    to_estimate = rate / line.estimate if line.estimate else None
    known = [one for one in (to_median, to_estimate) if one is not None]
    mark: Literal["", "low", "high"] = ""
    if known and all(one < LOW for one in known):
        mark = "low"
    elif known and all(one > HIGH for one in known):
        mark = "high"
    return LineRatio(line, rate, to_median, to_estimate, mark)


def _doubts(
    bid: EvaluatedBid, bids: Sequence[EvaluatedBid], marked: Sequence[TenderLine], cases: Sequence[Case]
) -> list[Doubt]:
    found = []
    for other in bids:
        if other.total <= bid.total:
            continue
        for case in cases:
            if case.quantities and bid.in_case(case) > other.in_case(case):
                found.append(Doubt(other.name, case=case.name))
        for line in marked:
            for share in PLAUSIBLE:
                quantity = line.spread.at(share)
                if line.spread.source != "none" and total_at(bid, line, quantity) > total_at(other, line, quantity):
                    found.append(Doubt(other.name, line=line.number, quantity=quantity))
    return found


def own_estimate_off(lines: Sequence[TenderLine], usual: Mapping[str, Decimal]) -> list[LineRatio]:
    """List the lines where the bids together lie far from the estimate: there the owner looks at its own first."""
    found = [_ratio(line, usual[line.number], None) for line in lines if line.number in usual]
    return [one for one in found if one.mark]
