"""The metacentric heights on landing and on floating off that are held against the least asked for."""

from __future__ import annotations

from tenderwright.calculations.ship.stability import stability
from tenderwright.calculations.ship.wanted import least_gm
from tenderwright.calculations.verdict import Limit
from tenderwright.checks import unstable_before_settling
from tenderwright.checks.context import Context
from tenderwright.quantities.quantity import Quantity


def gm_held(context: Context) -> tuple[Quantity, tuple[Limit, ...]] | None:
    """Give the least asked for and each height held against it; None where that is not known or she capsizes before."""
    found = context.found(stability)
    least = least_gm(context.package.docking_plan, context.package.lightship)
    if found is None or least is None or next(unstable_before_settling.check(context), None) is not None:
        return None
    return least, tuple(found.limits)
