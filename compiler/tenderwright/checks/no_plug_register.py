"""Where there are docking plugs, one item keeps their register.

Ground: a plug that is left out sinks the ship when the dock is flooded, so that they are counted and signed for by
number (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "no-plug-register"


def check(context: Context) -> Iterator[Notice]:
    """Report a docking plan that names no item for the register, or one that is withdrawn."""
    package = context.package
    plan = package.docking_plan
    if plan is None:
        return
    if plan.plug_register is None:
        plugs = [opening for opening in package.openings if opening.kind == "docking plug"]
        if plugs or any("removes plug" in item.does for item in context.live_items):
            count = f"{len(plugs)} docking plugs" if plugs else "docking plugs"
            message = f"the docking plan names no item that keeps the register of {count}"
            hint = 'add the number of the item that keeps it, as in `plug_register: "110"`'
            yield Notice(CODE, plan.here, message, hints=(hint,))
        return
    item = package.item_by_name.get(plan.plug_register.name)
    if item is not None and item.withdrawn:
        message = f"item {item.number} keeps the plug register and is withdrawn"
        yield Notice(CODE, plan.plug_register.at, message, hints=("name an item that is not withdrawn",))
