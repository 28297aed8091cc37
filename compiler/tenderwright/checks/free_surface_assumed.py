"""A tank from its capacity plan that is neither full nor empty has its free surface stated.

Ground: the greatest that its extent permits is taken instead, which is on the safe side and can be many times too much.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.tanks import tank_contents, tank_shape
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "free-surface-assumed"


def check(context: Context) -> Iterator[Notice]:
    """Report slack tanks whose free surface is the greatest that their extent permits."""
    for tank in context.package.tanks:
        plan = tank.plan
        if plan is None or plan.inertia is not None or plan.moment is not None:
            continue
        shape = context.found_for(tank_shape, tank.tank)
        held = context.found_for(tank_contents, tank.tank) if shape is not None and shape.planned else None
        if shape is None or held is None or held.liquid.surface_area <= 0:
            continue
        moment = held.liquid.surface_transverse * held.density
        message = (
            f"no free surface is stated for tank `{tank.tank}`, which is neither full nor empty: the greatest that its "
            f"extent permits is taken, {show(moment, 'moment')}"
        )
        hint = "write `inertia` or `moment` from the capacity plan"
        if plan.breadth is None:
            hint += ", or at least the tank's `breadth`"
        yield Notice(CODE, plan.here, message, hints=(hint,))
