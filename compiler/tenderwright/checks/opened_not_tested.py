"""Where the hull or the boundary of a tank is opened, a test of tightness of its own follows.

Ground: tightness of what was opened is proved before the dock is flooded, and a hose on the shell says nothing of a
bulkhead behind it (common practice, no source).
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
        if opens is None or "tests tightness" in item.does:
            continue
        testers = [o for o in context.live_items if "tests tightness" in o.does and item.number in context.before(o)]
        yield from _boundaries(context, item, testers)
        place = place_of_word(item, "does", opens)
        if item.tests:
            continue
        if not testers:
            hint = "add a test with what passes, or an item that depends on this one and does `tests tightness`"
            yield Notice("opened-not-tested", place, f"item {item.number} {opens} and no test follows", hints=(hint,))
        elif missed := _missed(item, testers):
            listed = ", ".join(f"`{name}`" for name in missed)
            message = f"item {item.number} {opens} at {listed}, which no later test covers"
            hint = f"name it in `where` of item {testers[0].number}, or add a test to this item"
            yield Notice("opened-not-tested", place, message, hints=(hint,))


def _boundaries(context: Context, item: Item, testers: list[Item]) -> Iterator[Notice]:
    """Tell of tanks and cofferdams whose boundary the item opens and no test proves."""
    tested = {ref.name for other in testers for ref in other.where.tanks}
    tested |= {ref.name for test in (*item.tests, *(t for o in testers for t in o.tests)) for ref in test.tanks}
    tight = {tank.tank for tank in context.package.tanks if tank.use != "void"}
    missed = [reference for reference in item.where.boundary_of if reference.name in tight - tested]
    if missed:
        listed = ", ".join(f"`{reference}`" for reference in missed)
        message = f"item {item.number} opens the boundary of {listed}, which no test proves tight again"
        hint = "name it under `tanks` of a test, or in `where` of a later item that tests tightness"
        yield Notice("opened-not-tested", missed[0].at, message, hints=(hint,))


def _missed(item: Item, testers: list[Item]) -> list[str]:
    """List the openings and tanks of the item that none of the tests names."""
    tested = {ref.name for other in testers for ref in (*other.where.openings, *other.where.tanks)}
    return [ref.name for ref in (*item.where.openings, *item.where.tanks) if ref.name not in tested]
