"""No block of the docking plan stands under an opening, plug, anode or bilge keel, or nearer than the clearance.

Ground: a block under a sea chest or plug is found when she is down on it. The clearance is the plan's own; 0.3 m is
common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.footprints import PLACES, Conflict, block_clearances, not_placed
from tenderwright.checks.context import Context
from tenderwright.model.docking_plan import DockingPlan, KeelBlocks
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import show

CODE = "opening-under-block"


def check(context: Context) -> Iterator[Notice]:
    """Report each thing on the hull once, with the block of the plan that stands nearest to it."""
    plan, found = context.package.docking_plan, context.found(block_clearances)
    if plan is None or found is None:
        return
    if left := context.found(not_placed):
        context.lacks(f"{PLACES}: {_some(left)}")
    nearest: dict[tuple[str, str], Conflict] = {}
    for one in found.conflicts:
        key = (one.name, one.footprint.position)
        if key not in nearest or one.gap < nearest[key].gap:
            nearest[key] = one
    for one in nearest.values():
        block = f"{one.footprint.kind} block at {one.footprint.position}"
        if one.footprint.kind == "side":
            block += f", {one.footprint.side},"
        how = "stands under" if one.gap <= 0 else f"stands {show(one.gap, 'thickness', more=-1)} from"
        message = f"the {block} {how} {one.kind} `{one.name}`, and {show(one.wanted, 'thickness', more=-1)} is wanted"
        move = "move it by a frame" if context.package.frames else "move it"
        hint = f"{move}, or leave it out"
        yield Notice(CODE, _place(plan, one), message, hints=(hint,))


def _some(names: tuple[str, ...]) -> str:
    """Name the first few."""
    return ", ".join(names[:3]) + (f" and {len(names) - 3} more" if len(names) > 3 else "")


def _place(plan: DockingPlan, one: Conflict) -> Place:
    """Find the entry of the plan that holds a block: of side blocks the pair, of keel blocks the row about it."""
    x = one.footprint.x
    if one.footprint.kind == "side":
        return min(plan.side_blocks, key=lambda pair: abs(pair.at.x - x)).here

    def beyond(row: KeelBlocks) -> float:
        ends = sorted((row.at.x, row.to.x if row.to else row.at.x))
        return max(ends[0] - x, x - ends[1], 0.0)

    return min(plan.keel_blocks, key=beyond).here
