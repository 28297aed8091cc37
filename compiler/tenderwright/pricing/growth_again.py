"""What the growth of earlier dockings would come to if today's work grew as much."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from tenderwright.pricing.bundle import without_options
from tenderwright.pricing.growth import ALL, Growth
from tenderwright.pricing.money import cents
from tenderwright.pricing.price import Estimate


@dataclass(frozen=True)
class GrowthAgain:
    """The growth of one kind of work, today's work of that kind, and the same growth on it."""

    growth: Growth
    today: Decimal
    """The likely amounts of the items of that kind; options left out."""
    more: Decimal | None
    """The same growth on that; None where it has nothing to be a share of."""


def growth_again(growth: Growth, estimate: Estimate) -> GrowthAgain:
    """Lay the growth of a kind of work on today's: more = share |today|, to the cent. Source: derived.

    Contingent work is ordered as it is found, and then grew from next to nothing; its share is laid on nothing.
    """
    mine = [line for line in estimate.lines if growth.kind in (ALL, line.item.kind)]
    today = without_options(mine).likely
    if growth.share is None or not today or growth.kind == "contingent":
        return GrowthAgain(growth, today, None)
    return GrowthAgain(growth, today, cents(Decimal(repr(growth.share)) * abs(today)))
