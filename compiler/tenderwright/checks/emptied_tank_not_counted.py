"""A tank that an item empties in dock is not counted as full when she floats off.

Ground: trim, list and free surfaces as she floats off come from what is in the tanks then (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.tanks_holding import holds_liquid
from tenderwright.notices import Notice

CODE = "emptied-tank-not-counted"
EMPTIES = ("cleans tank", "tests tightness")


def check(context: Context) -> Iterator[Notice]:
    """Warn of tanks that an item empties, though the undocking condition counts them as full as on docking."""
    plan = context.package.docking_plan
    if plan is None:
        context.lacks_file("vessel/docking-plan.yaml")
        return
    changed = {entry.tank.name for entry in plan.tanks_at_undocking}
    for tank in context.package.tanks:
        if tank.tank in changed or not holds_liquid(tank):
            continue
        for item in context.live_items:
            if item.phase != "dry" or tank.tank not in {reference.name for reference in item.where.tanks}:
                continue
            if any(word in item.does for word in EMPTIES):
                message = (
                    f"item {item.number} empties tank `{tank.tank}`, "
                    "and the undocking condition counts it as full as on docking"
                )
                hint = "say under `tanks_at_undocking` of vessel/docking-plan.yaml what is in it when she floats off"
                yield Notice(CODE, tank.contents.here, message, hints=(hint,))
                break
