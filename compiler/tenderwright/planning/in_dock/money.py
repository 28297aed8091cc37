"""What the money in hand and promised pays of the forecast, restricted money only for what it may pay for."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.calculations.scope.payment import pay
from tenderwright.calculations.scope.works import Source
from tenderwright.model.funding import Funding, FundingSource
from tenderwright.model.package import Package
from tenderwright.planning.scope import available, in_hand
from tenderwright.pricing.in_dock.account import RunningAccount
from tenderwright.pricing.money import CENT, ZERO, total


@dataclass(frozen=True)
class Funds:
    """The forecast against the money."""

    forecast: Decimal
    in_hand: Decimal
    """Money in hand, without what is kept back of it."""
    promised: Decimal
    applied: Decimal
    """Applied for or hoped for: it pays for nothing here."""
    by_hand: Decimal
    """What the money in hand can pay of the forecast."""
    by_promise: Decimal
    """What the money promised can pay of the rest."""

    @property
    def short(self) -> Decimal:
        """Give what money in hand and promised leave unpaid of the forecast."""
        return max(self.forecast - self.by_hand - self.by_promise, ZERO)

    @property
    def not_free(self) -> Decimal:
        """Give the money in hand and promised that finds no work which it may pay for or match."""
        return self.in_hand + self.promised - self.by_hand - self.by_promise


def funds(made: RunningAccount, funding: Funding | None, package: Package) -> Funds | None:
    """Hold the forecast against the owner's money, source by source, the money in hand first; None without sources.

    Each item's part of the forecast is paid by sources that may pay for it, to the cent; a source that asks for a match
    gives no more than the others match. What comes back, a credit, is set off against the dearest item.
    """
    if funding is None:
        return None
    hand = [one for one in funding.sources if in_hand(one)]
    promised = [one for one in funding.sources if one.status == "promised"]
    costs = _costs(made.by_item)
    names = list(costs)
    drawn = pay(list(costs.values()), [_source(one, names, package) for one in (*hand, *promised)])
    paid = [sum(row) * CENT for row in drawn]
    return Funds(
        forecast=made.forecast,
        in_hand=_sum(hand),
        promised=_sum(promised),
        applied=_sum([one for one in funding.sources if one not in hand and one not in promised]),
        by_hand=total(paid[: len(hand)]),
        by_promise=total(paid[len(hand) :]),
    )


def _sum(sources: Sequence[FundingSource]) -> Decimal:
    return total([available(one) for one in sources])


def _costs(by_item: Mapping[str, Decimal]) -> dict[str, int]:
    """Give the cost of each item in cents, none below nothing."""
    costs = {item: int(amount / CENT) for item, amount in by_item.items()}
    back = -sum(cost for cost in costs.values() if cost < 0)
    costs = {item: max(cost, 0) for item, cost in costs.items()}
    for item in sorted(costs, key=lambda one: (-costs[one], one)):
        taken = min(back, costs[item])
        costs[item], back = costs[item] - taken, back - taken
    return costs


def _source(source: FundingSource, names: Sequence[str], package: Package) -> Source:
    """Give a source with the items that it may pay for; what belongs to no item is paid by free money alone."""
    allowed: frozenset[int] | None = None
    if source.only or source.eligible:
        only, kinds = {one.name for one in source.only}, set(source.eligible)
        items = package.item_by_name
        allowed = frozenset(
            place
            for place, name in enumerate(names)
            if name in items
            and (not only or name in only)
            and (not kinds or kinds & {items[name].kind_of(line) for line in items[name].lines})
        )
    match = source.match.si if source.match is not None else 0.0
    return Source(int(available(source) / CENT), allowed, match)
