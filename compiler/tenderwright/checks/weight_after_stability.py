"""Every item that changes weight is counted in the undocking condition, and none is decided after its last check.

Ground: she floats off with other weights than she came with, and a list or loss of stability then shows as the last
blocks leave her. Weights known late are not in the calculation (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in, place_of_word
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.item import Item
from tenderwright.model.tender import Tender
from tenderwright.notices import Notice

CODE = "weight-after-stability"
CHANGES = "changes weight"


def check(context: Context) -> Iterator[Notice]:
    """Warn of weights that the plan does not count, of options exercised after the check, and of a plan without one."""
    plan, tender = context.package.docking_plan, context.package.tender
    if plan is None:
        return
    changing = [item for item in context.live_items if CHANGES in item.does]
    if changing and plan.stability_checked is None:
        message = "the docking plan gives no day on which the undocking condition was last checked"
        yield Notice(CODE, plan.here, message, hints=("add `stability_checked`",))
    counted = _counted(plan)
    for item in changing:
        if item.number not in counted:
            message = f"item {item.number} changes weight, and the docking plan counts nothing for it at undocking"
            hint = (
                "add an entry with this `item` to `moved_while_dry` or `tanks_at_undocking` of vessel/docking-plan.yaml"
            )
            yield Notice(CODE, place_of_word(item, "does", CHANGES), message, hints=(hint,))
        elif tender is not None and plan.stability_checked is not None:
            yield from _late(item, tender, plan.stability_checked)


def _counted(plan: DockingPlan) -> set[str]:
    moved = {entry.item.name for entry in plan.moved_while_dry if entry.item is not None}
    return moved | {entry.item.name for entry in plan.tanks_at_undocking if entry.item is not None}


def _late(item: Item, tender: Tender, checked: date) -> Iterator[Notice]:
    """Tell of an option that may still be exercised after the last check."""
    day = item.option_until.on(tender.events) if item.option_until is not None else None
    if day is not None and day > checked:
        message = (
            f"option {item.number} changes weight and may be exercised until {day}, "
            f"after the undocking condition was last checked on {checked}"
        )
        hint = "decide it before, or check the undocking condition again"
        yield Notice(CODE, place_in(item, "option_until"), message, hints=(hint,))
