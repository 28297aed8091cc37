"""The cases under which bids are ranked: which sections count, at which quantities, and whether the place does."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal

from tenderwright.pricing.bids.tendered import TenderLine
from tenderwright.pricing.sections import SECTIONS

PUBLISHED, BASE, OPTIONS, P50, P80 = "published", "base", "base with options", "p50", "p80"


@dataclass(frozen=True)
class Case:
    """One case."""

    name: str
    title: str
    sections: frozenset[str]
    quantities: Mapping[str, Decimal] = field(default_factory=dict)
    """Where they are not those tendered."""
    whole: bool = True
    """Whether the owner's days, towing and travel count."""

    def quantity(self, line: TenderLine) -> Decimal:
        """Give the quantity of a line in this case."""
        return self.quantities.get(line.number, line.quantity)


def cases(lines: Sequence[TenderLine], components: Collection[str]) -> tuple[Case, ...]:
    """Give the cases: as published, base, base with options, and all quantities at their P50 and at their P80.

    Each quantity is taken at its own P50 or P80, all of them at once; the sum at P80 is therefore more than the P80 of
    the sum.
    """
    published = frozenset(s.code for s in SECTIONS if s.counted(components))
    base = frozenset(section.code for section in SECTIONS if section.in_base)
    return (
        Case(PUBLISHED, "As published", published),
        Case(BASE, "Base price", base, whole=False),
        Case(OPTIONS, "Base price with options", base | {"F"}, whole=False),
        Case(P50, "Quantities at P50", published, _quantities(lines, 0.5)),
        Case(P80, "Quantities at P80", published, _quantities(lines, 0.8)),
    )


def _quantities(lines: Sequence[TenderLine], share: float) -> dict[str, Decimal]:
    return {line.number: line.spread.at(share) for line in lines if line.spread.source != "none"}


def ranks(totals: Mapping[str, Decimal]) -> dict[str, int]:
    """Rank bids, the lowest first; equal totals share a rank."""
    return {name: 1 + sum(other < amount for other in totals.values()) for name, amount in totals.items()}
