"""Growth beyond what was ordered at earlier dockings, by kind of item."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.calculations.cost.growth import growth
from tenderwright.model.closing import Closing, Paid
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.pricing.money import ZERO, total

ALL = "all"
"""The kind under which the whole stands."""


@dataclass(frozen=True)
class Growth:
    """What one kind of work was ordered for and what it came to, over the earlier dockings that tell."""

    kind: str
    ordered: Decimal
    final: Decimal
    share: float | None
    """Growth as a share of what was ordered; None where nothing was ordered at first."""
    dockings: tuple[str, ...]


def growth_by_kind(package: Package, papers: OwnerPapers) -> tuple[Growth, ...]:
    """Sum up what was paid at earlier dockings by the kind of the item that the work now is, or was in a tender closed.

    The whole comes last.

    Only dockings whose prices tell growth are counted, in the currency of the tender; ordered = paid - growth.
    Dockings far apart are summed in the money of their day, for the share alone.
    """
    currency = package.tender.currency if package.tender else ""
    works: dict[str, list[tuple[Decimal, Decimal]]] = defaultdict(list)
    told: dict[str, dict[str, None]] = defaultdict(dict)
    for docking in package.history:
        closing = papers.closing_of(docking.docking)
        if closing is None or not _tells(closing, currency):
            continue
        for paid, kept in zip(closing.paid, closing.kinds, strict=True):
            for kind in (_kind(paid, closing, package) or kept or "other", ALL):
                works[kind].append((paid.amount - (paid.growth or ZERO), paid.amount))
                told[kind][docking.docking] = None
    return tuple(_growth(kind, works[kind], tuple(told[kind])) for kind in sorted(works, key=lambda k: (k == ALL, k)))


def _kind(paid: Paid, closing: Closing, package: Package) -> str:
    """Give the kind of the item that the work now is; empty for one of another tender, which may be other work."""
    item = package.item_by_name.get(paid.item.name) if paid.item is not None else None
    return item.kind if item is not None and package.is_of(closing.tender) else ""


def _growth(kind: str, works: list[tuple[Decimal, Decimal]], dockings: tuple[str, ...]) -> Growth:
    ordered, final = ([pair[end] for pair in works] for end in (0, 1))
    share = growth((float(one), float(other)) for one, other in works).share
    return Growth(kind, total(ordered), total(final), share, dockings)


def _tells(closing: Closing, currency: str) -> bool:
    """Tell whether the prices of a docking say how they grew, in the currency of the tender."""
    return closing.currency in ("", currency) and any(paid.growth is not None for paid in closing.paid)
