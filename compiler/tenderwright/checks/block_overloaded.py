"""No keel block or side block bears harder than is allowed on its cap, nor any that stays while another is out.

Ground: a cap that is crushed lets the hull down on its neighbours. The allowable is the plan's own, with its source;
loads are the greater of those under a rigid and under an elastic hull, estimated or not, and side blocks are judged
against wind and earthquake each by itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.block_places import keel_blocks
from tenderwright.calculations.ship.keel_loads import first_block_pressure, keel_bearing, one_block_out
from tenderwright.calculations.ship.side_loads import side_block_standing
from tenderwright.calculations.verdict import Limit, within
from tenderwright.checks.context import Context
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "block-overloaded"
_HINT = "set more blocks, give them longer caps or a wider bearing, or dock her lighter; the naval architect judges it"


def check(context: Context) -> Iterator[Notice]:
    """Report each load above what is allowed: standing, touched first, to leeward, and with one block out."""
    plan = context.package.docking_plan
    if plan is None:
        context.lacks_file("vessel/docking-plan.yaml")
        return
    yield from _hull(context, plan)
    if plan.allowable is None:
        context.lacks("it needs `allowable` in vessel/docking-plan.yaml")
        return
    allowed, standing = plan.allowable.value, context.found(keel_bearing)
    turns, blocks = context.found(one_block_out), context.found(keel_blocks)
    if standing is not None and blocks is not None and _beyond(standing.limit):
        message = f"keel block at {blocks[standing.hardest].position}: {_against(standing.limit, allowed)}"
        yield Notice(CODE, allowed.at, message, hints=(_HINT,))
    first, side = context.found(first_block_pressure), context.found(side_block_standing)
    if first is not None and first["met"] is False:
        about = context.record.values["blocks.first.pressure"].working.about
        message = f"{about}: {_shown(first['pressure'])}, and {allowed} is allowed"
        yield Notice(CODE, allowed.at, message, hints=(_HINT,))
    if side is not None and side.crushing is not None and _beyond(side.crushing):
        message = f"lee side block: {_against(side.crushing, allowed)}"
        yield Notice(CODE, allowed.at, message, hints=(_HINT,))
    # Where she is too heavy for all of them, that alone is told.
    if turns and blocks and standing and _beyond(turns.limit) and not _beyond(standing.limit):
        worst = turns.worst
        out, hardest = (blocks[number - 1].position for number in (worst.out, worst.hardest))
        message = f"with the keel block at {out} out, that at {hardest} carries {_against(turns.limit, allowed)}"
        at = plan.taken_out[0].at if plan.taken_out else allowed.at
        hint = "name under `taken_out` the blocks that are taken out, set shores first, or give the others longer caps"
        yield Notice(CODE, at, message, hints=(hint,))


def _hull(context: Context, plan: DockingPlan) -> Iterator[Notice]:
    """Tell where shell and frame do not take what the lee side block brings on them."""
    most, side = plan.hull_at_side_blocks, context.found(side_block_standing)
    if most is not None and side is not None and side.hull.demand is not None and _beyond(side.hull):
        load = show(side.hull.demand, "weight", digits=3)
        message = f"a lee side block brings {load} on shell and frame, which take {most.value}"
        yield Notice(CODE, most.value.at, message, hints=("set more pairs of side blocks, or farther out",))


def _beyond(limit: Limit) -> bool:
    return limit.worse is not None and limit.limit is not None and not within(limit.worse, limit.limit)


def _against(limit: Limit, allowed: Quantity) -> str:
    assert limit.worse is not None
    rigid = f" by an elastic hull, {_shown(limit.demand)} by a rigid one" if limit.estimate and limit.demand else ""
    return f"{_shown(limit.worse)}{rigid}, and {allowed} is allowed"


def _shown(pressure: float) -> str:
    return show(pressure, "block load", digits=3)
