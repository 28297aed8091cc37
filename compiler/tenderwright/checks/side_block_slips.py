"""No side block stands under a shell steeper than friction holds.

Ground: along a slope the hull presses a block out with N sin, and friction holds it with mu N cos, so that it stays
while the slope's tangent is no more than mu (statics, derived). Friction is the plan's own, with its source.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import degrees

from tenderwright.calculations.ship.side_loads import side_block_slopes
from tenderwright.calculations.verdict import within
from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "side-block-slips"
_HINT = "move the pair inboard or towards midships where the shell is flatter, or shore her there instead"


def check(context: Context) -> Iterator[Notice]:
    """Report each pair of side blocks whose shell is too steep for friction."""
    plan = context.package.docking_plan
    if plan is None:
        context.lacks_file("vessel/docking-plan.yaml")
        return
    if not plan.side_blocks:
        return
    if plan.friction is None:
        context.lacks("it needs `friction` in vessel/docking-plan.yaml")
        return
    found, most = context.found(side_block_slopes), plan.friction.value
    if found is None or found.limit.limit is None:
        return
    held = found.limit.limit
    for pair, slope in zip(sorted(plan.side_blocks, key=lambda one: one.at.x), found.slopes, strict=False):
        if not within(slope, held):
            message = (
                f"the shell over the side blocks at {pair.at} slopes {degrees(slope):.1f} degrees, "
                f"and friction of {most:g} holds {degrees(held):.1f}"
            )
            yield Notice(CODE, pair.here, message, hints=(_HINT,))
