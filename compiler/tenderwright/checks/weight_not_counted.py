"""Every item that changes weight is counted in the undocking condition.

Ground: she floats off with other weights than she came with, and a list or loss of stability then shows as the last
blocks leave her (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_of_word
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.notices import Notice

CODE = "weight-not-counted"
CHANGES = "changes weight"


def check(context: Context) -> Iterator[Notice]:
    """Warn of items that change weight and have no entry in the docking plan."""
    plan = context.package.docking_plan
    if plan is None:
        return
    counted = weights_counted(plan)
    for item in context.live_items:
        if CHANGES in item.does and item.number not in counted:
            message = f"item {item.number} changes weight, and the docking plan counts nothing for it at undocking"
            hint = (
                "add an entry with this `item` to `moved_while_dry` or `tanks_at_undocking` of vessel/docking-plan.yaml"
            )
            yield Notice(CODE, place_of_word(item, "does", CHANGES), message, hints=(hint,))


def weights_counted(plan: DockingPlan) -> set[str]:
    """Give the numbers of the items for which the undocking condition counts a weight or the contents of a tank."""
    moved = {entry.item.name for entry in plan.moved_while_dry if entry.item is not None}
    return moved | {entry.item.name for entry in plan.tanks_at_undocking if entry.item is not None}
