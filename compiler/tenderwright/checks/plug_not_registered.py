"""The item that keeps the plug register names every docking plug.

Ground: a plug that is not counted is not missed when the dock is flooded (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "plug-not-registered"


def check(context: Context) -> Iterator[Notice]:
    """Report plugs which the item that keeps their register does not name."""
    package = context.package
    plan = package.docking_plan
    item = package.item_by_name.get(plan.plug_register.name) if plan is not None and plan.plug_register else None
    if item is None or item.withdrawn:
        return
    named = {reference.name for reference in item.where.openings}
    for plug in package.openings:
        if plug.kind == "docking plug" and plug.opening not in named:
            message = f"plug `{plug.opening}` is not among the openings of item {item.number}, which keeps the register"
            yield Notice(CODE, plug.here, message, hints=(f"add it to `where: openings` of item {item.number}",))
