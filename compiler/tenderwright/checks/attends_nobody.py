"""Who attends a hold point exists for this ship: a class surveyor only where she is in class.

Ground: the work stops until each person named has signed, and nobody comes from a society that does not know her
(common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.notices import Notice

CLASS = "class"


def check(context: Context) -> Iterator[Notice]:
    """Report hold points that class attends, for a ship that is in none."""
    particulars = context.package.particulars
    if particulars is None or particulars.class_:
        return
    for item in context.live_items:
        for index, hold in enumerate(item.holds):
            if CLASS in hold.by:
                place = place_in(item, "holds", index, "by", hold.by.index(CLASS))
                message = f"hold point {hold.hold} of item {item.number} waits for class, and the ship is in none"
                hint = "name who signs in its place, or give the society under `class` in vessel/particulars.yaml"
                yield Notice("attends-nobody", place, message, hints=(hint,))
