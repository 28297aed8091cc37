"""A towing point stands what the pull that governs asks of fittings.

Ground: least factors of safety by how the line is held (U.S. Navy Towing Manual, as reprinted in TB 55-1900-232-10,
Table 5-4), for padeyes and bitts on their yield.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.tow_pull import tow_points
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "towing-point-weak"
_HINT = "strengthen it, make fast elsewhere, or tow her slower or in less wind; the tow surveyor judges it"


def check(context: Context) -> Iterator[Notice]:
    """Report each towing point that stands less than is asked."""
    plan = context.package.tow
    if plan is None or not any(one.capacity is not None for one in plan.points):
        return
    found = context.found(tow_points)
    judged = {one.name: one for one in found.limits} if found is not None else {}
    for point in plan.points:
        limit = judged.get(point.point)
        if point.capacity is not None and limit is not None and limit.met is False and limit.demand is not None:
            asked = show(limit.demand, "force")
            message = (
                f"the towing point at {point.at}, {point.point}, holds {point.capacity}, and {asked} is asked of it"
            )
            yield Notice(CODE, point.capacity.at, message, hints=(_HINT,))
