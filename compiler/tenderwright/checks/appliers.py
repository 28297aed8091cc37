"""Which items apply a coating scheme."""

from __future__ import annotations

from tenderwright.checks.context import Context
from tenderwright.model.coating import Scheme
from tenderwright.model.item import Item


def appliers(context: Context, scheme: Scheme) -> list[Item]:
    """Give the items that list a scheme, and the one that the scheme itself names, in order of number."""
    named = scheme.item.name if scheme.item is not None else None
    return [
        item
        for item in context.live_items
        if (item.schemes and any(reference.name == scheme.scheme for reference in item.schemes)) or item.number == named
    ]
