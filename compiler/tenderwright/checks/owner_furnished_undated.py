"""What the owner furnishes has a day of delivery, and for work in the dry it is there when she is docked.

Ground: owner's material without a delivery date is among the errors that bidders ask about (common practice, no
source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.notices import Notice

CODE = "owner-furnished-undated"


def check(context: Context) -> Iterator[Notice]:
    """Report owner-furnished material without a day, or delivered after docking for work in the dry."""
    tender = context.package.tender
    docking = tender.events.get("docking") if tender is not None else None
    for item in context.live_items:
        for index, thing in enumerate(item.owner_furnished):
            about = f"`{thing.what}`, furnished by the owner in item {item.number},"
            if thing.delivered is None:
                hint = "add `delivered`: a date, or a day such as `docking - 2 d`"
                yield Notice(CODE, thing.here, f"{about} has no day of delivery", hints=(hint,))
                continue
            day = thing.delivered.on(tender.events) if tender is not None else None
            if day is not None and docking is not None and item.phase == "dry" and day > docking:
                place = place_in(item, "owner_furnished", index, "delivered")
                message = f"{about} comes on {day}, after docking on {docking}"
                yield Notice(CODE, place, message, hints=("have it at the yard by `docking`",))
