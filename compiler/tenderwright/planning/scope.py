"""What must be done, what it needs, and what money is in hand for it."""

from __future__ import annotations

from collections.abc import Collection
from decimal import Decimal

from tenderwright.model.funding import Funding, FundingSource, Scope, Worth
from tenderwright.pricing.money import total


def must_do(scope: Scope) -> frozenset[str]:
    """Give the numbers of the items that are done whatever the money, with all that they need, near and far."""
    found: set[str] = set()
    waiting = [number for number, worth in scope.items.items() if worth.must]
    while waiting:
        number = waiting.pop()
        if number not in found:
            found.add(number)
            worth = scope.items.get(number)
            waiting += [reference.name for reference in worth.needs] if worth else []
    return frozenset(found)


def score(worth: Worth | None, scope: Scope) -> int:
    """Give the worth of an item: its three scores by their weights."""
    if worth is None:
        return 0
    weights = scope.weights
    return weights.risk * worth.risk + weights.preservation * worth.preservation + weights.safety * worth.safety


def available(source: FundingSource) -> Decimal:
    """Give what a source brings, without what is kept back of it."""
    return max(source.amount - source.kept_back, Decimal(0))


def in_hand(source: FundingSource) -> bool:
    """Tell whether the money of a source is in hand."""
    return source.status == "in hand"


def money_in_hand(funding: Funding, items: Collection[str]) -> Decimal:
    """Give the money in hand that may pay for some of these items."""
    return total(
        [
            available(source)
            for source in funding.sources
            if in_hand(source) and (not source.only or any(reference.name in items for reference in source.only))
        ]
    )
