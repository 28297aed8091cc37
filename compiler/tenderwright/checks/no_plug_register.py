"""Where there are docking plugs, one item keeps their register and names every one of them.

Ground: a plug that is left out sinks the ship when the dock is flooded, so that they are counted and signed for by
number (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "no-plug-register"


def check(context: Context) -> Iterator[Notice]:
    """Report a docking plan that names no item for the register, and plugs which that item does not name."""
    package = context.package
    plan = package.docking_plan
    if plan is None:
        return
    plugs = [opening for opening in package.openings if opening.kind == "docking plug"]
    draws = [item for item in context.live_items if "removes plug" in item.does]
    if plan.plug_register is None:
        if plugs or draws:
            count = f"{len(plugs)} docking plugs" if plugs else "docking plugs"
            message = f"the docking plan names no item that keeps the register of {count}"
            yield Notice(CODE, plan.here, message, hints=("add `plug_register`: the number of the item",))
        return
    item = package.item_by_name.get(plan.plug_register.name)
    if item is None:
        return
    if item.withdrawn:
        message = f"item {item.number} keeps the plug register and is withdrawn"
        yield Notice(CODE, plan.plug_register.at, message, hints=("name an item that stands",))
        return
    named = {reference.name for reference in item.where.openings}
    for plug in plugs:
        if plug.opening not in named:
            message = f"plug `{plug.opening}` is not among the openings of item {item.number}, which keeps the register"
            yield Notice(CODE, plug.here, message, hints=(f"add it to `where: openings` of item {item.number}",))
