"""One area is coated once: by one scheme in one item, or by two schemes of which one openly follows the other.

Ground: the same area painted in two items, and paint systems in conflict, are among the errors that bidders ask about
(common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from tenderwright.checks.context import Context
from tenderwright.model.appliers import appliers
from tenderwright.model.coating import Scheme
from tenderwright.model.item import Item
from tenderwright.notices import Note, Notice, Place


def check(context: Context) -> Iterator[Notice]:
    """Report a scheme in two items, and two schemes of one zone whose items do not follow each other."""
    used = [(scheme, appliers(context.package, scheme)) for scheme in context.package.schemes]
    for scheme, items in used:
        for later in items[1:]:
            message = f"scheme `{scheme.scheme}` is applied by item {items[0].number} and again by item {later.number}"
            notes = (Note("it is listed first here", _place(items[0], scheme)),)
            yield Notice("coated-twice", _place(later, scheme), message, notes, ("leave it in one of the items",))
    for (first, first_items), (second, second_items) in combinations(used, 2):
        if first.zone.name == second.zone.name and first_items and second_items:
            yield from _pair(context, (first, first_items[0]), (second, second_items[0]))


def _place(item: Item, scheme: Scheme) -> Place:
    """Find where the item lists the scheme, or where the scheme names the item."""
    listed = next((ref.at for ref in item.schemes if ref.name == scheme.scheme), None)
    return listed or (scheme.item.at if scheme.item is not None else scheme.here)


def _pair(context: Context, first: tuple[Scheme, Item], second: tuple[Scheme, Item]) -> Iterator[Notice]:
    (one, one_item), (other, other_item) = first, second
    if one_item.number in context.before(other_item) or other_item.number in context.before(one_item):
        return
    zone = other.zone
    message = (
        f"zone `{zone}` is coated by scheme `{one.scheme}` in item {one_item.number}"
        f" and by scheme `{other.scheme}` in item {other_item.number}"
    )
    hint = "delete one scheme, or put them in two items of which the later depends on the earlier"
    yield Notice("coated-twice", zone.at, message, (Note("the other scheme names it here", one.zone.at),), (hint,))
