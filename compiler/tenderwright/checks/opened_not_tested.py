"""Where the hull is opened, a test of tightness follows.

Ground: tightness of what was opened is proved before the dock is flooded (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_of_word
from tenderwright.model.item import Item
from tenderwright.notices import Notice

_OPENS = ("opens hull", "removes plug")


def check(context: Context) -> Iterator[Notice]:
    """Report each item that opens the hull and is tested neither in itself nor by a later item."""
    if any(kind == "item" for kind, _ in context.links.broken.names):
        return  # an item with a mistake may be the test
    for item in context.live_items:
        opens = next((word for word in _OPENS if word in item.does), None)
        if opens is None or item.tests or "tests tightness" in item.does:
            continue
        testers = [o for o in context.live_items if "tests tightness" in o.does and item.number in context.before(o)]
        place = place_of_word(item, "does", opens)
        if not testers:
            hint = "add a test with what passes, or an item that depends on this one and does `tests tightness`"
            yield Notice("opened-not-tested", place, f"item {item.number} {opens} and no test follows", hints=(hint,))
        elif missed := _missed(item, testers):
            listed = ", ".join(f"`{name}`" for name in missed)
            message = f"item {item.number} {opens} at {listed}, which no later test covers"
            hint = f"name it in `where` of item {testers[0].number}, or add a test to this item"
            yield Notice("opened-not-tested", place, message, hints=(hint,))


def _missed(item: Item, testers: list[Item]) -> list[str]:
    """List the openings and tanks of the item that none of the tests names."""
    tested = {ref.name for other in testers for ref in (*other.where.openings, *other.where.tanks)}
    return [ref.name for ref in (*item.where.openings, *item.where.tanks) if ref.name not in tested]
