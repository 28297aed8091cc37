"""No keel block or side block bears harder than is allowed on its cap, nor any that stays while another is out.

Ground: a cap that is crushed lets the hull down on its neighbours. The allowable is the plan's own, with its source;
loads are the greater of those under a rigid and under an elastic hull, and side blocks are judged against wind and
earthquake each by itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.block_places import keel_blocks
from tenderwright.calculations.ship.keel_loads import first_block_pressure, greatest_keel_pressure, one_block_out
from tenderwright.calculations.ship.side_loads import greatest_side_pressure
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "block-overloaded"
_HINT = "set more blocks, give them longer caps or a wider bearing, or dock her lighter; the naval architect judges it"


def check(context: Context) -> Iterator[Notice]:
    """Report each pressure above the allowable: standing, touched first, under side load, and with one block out."""
    plan, standing = context.package.docking_plan, context.found(greatest_keel_pressure)
    if plan is None:
        return
    if plan.allowable is None:
        context.lacks("it needs `allowable` in vessel/docking-plan.yaml")
        return
    allowed = plan.allowable.value
    for name, found in (
        ("blocks.keel.greatest", standing),
        ("blocks.first", context.found(first_block_pressure)),
        ("blocks.side.greatest", context.found(greatest_side_pressure)),
    ):
        if found is not None and found["met"] is False:
            about = context.record.values[f"{name}.pressure"].working.about
            yield Notice(CODE, allowed.at, f"{about}: {_against(found['pressure'], allowed)}", hints=(_HINT,))
    turns, blocks = context.found(one_block_out), context.found(keel_blocks)
    # Where she is too heavy for all of them, that alone is told.
    if turns is not None and blocks is not None and turns.limit.met is False and standing and standing["met"]:
        worst = turns.worst
        out, hardest = (blocks[number - 1].position for number in (worst.out, worst.hardest))
        message = f"with the keel block at {out} out, that at {hardest} bears {_against(worst.pressure, allowed)}"
        at = plan.taken_out[0].at if plan.taken_out else allowed.at
        hint = "name under `taken_out` the blocks that are taken out, set shores first, or give the others longer caps"
        yield Notice(CODE, at, message, hints=(hint,))


def _against(pressure: float, allowed: Quantity) -> str:
    return f"{show(pressure, 'MPa', 'pressure', 3)}, and {allowed} is allowed"
