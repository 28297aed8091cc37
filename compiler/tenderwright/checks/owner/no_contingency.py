"""Work on the hull whose extent nobody has surveyed has room for more than the quantity tendered.

Ground: published dockings of ships long out of dock grew once they were dry and blasted; every such item wants a
contingent quantity, a quantity range or a contingency (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.item import Item
from tenderwright.notices import Notice
from tenderwright.pricing.price import PricedLine

_SURVEYED = ("surveyed", "calculated")
_GROWS = {"hot work", "opens hull"}
"""What an item does, in the words of its `does:`, that grows once she is dry."""


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report each item of hull work that rests on no survey, where neither its lines nor the estimate have room."""
    estimate, rates = context.estimate, context.papers.rates
    if estimate is None or rates is None or (rates.contingency is not None and rates.contingency.share.si > 0):
        return
    for item in context.package.items:
        lines = [line for line in estimate.lines if line.item is item]
        if (
            item.system == "hull"
            and _GROWS & set(item.does)
            and lines
            and not _surveyed(lines)
            and not _has_room(item, lines)
        ):
            message = f"item {item.number} works on a hull that nobody surveyed for it, and there is no contingency"
            hints = (
                "give owner/rates.yaml a `contingency:`, its lines a `quantity_high:`, or the item a contingent line",
            )
            yield Notice("no-contingency", item.here, message, hints=hints)


def _surveyed(lines: list[PricedLine]) -> bool:
    return any(line.quantity.basis in _SURVEYED for line in lines)


def _has_room(item: Item, lines: list[PricedLine]) -> bool:
    return any(item.kind_of(line.line) == "contingent" or line.most > line.quantity.number for line in lines)
