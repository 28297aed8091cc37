"""What the owner furnishes for work in the dry is at the yard when she is docked.

Ground: the dock waits, at the owner's cost, for what the owner brings late (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.notices import Notice

CODE = "owner-furnished-late"


def check(context: Context) -> Iterator[Notice]:
    """Report owner-furnished material for work in the dry that is delivered after docking."""
    tender = context.package.tender
    docking = tender.events.get("docking") if tender is not None else None
    for item in context.live_items if tender is not None and docking is not None else ():
        for index, thing in enumerate(item.owner_furnished):
            day = thing.delivered.on(tender.events) if tender is not None and thing.delivered is not None else None
            if day is not None and docking is not None and item.phase == "dry" and day > docking:
                place = place_in(item, "owner_furnished", index, "delivered")
                message = (
                    f"`{thing.what}`, furnished by the owner in item {item.number}, comes on {day}, "
                    f"after docking on {docking}"
                )
                hint = "have it at the yard by docking, or let the yard furnish it"
                yield Notice(CODE, place, message, hints=(hint,))
