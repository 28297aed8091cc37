"""The condition in which she is docked: weights, tanks, and the hull set on the block line of the plan."""

from __future__ import annotations

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.docking_results import TankState
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.landing.exact import Lander
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import fixed_weights
from tenderwright.calculations.ship.block_places import keel_underside
from tenderwright.calculations.tanks.sounding import sounding_for
from tenderwright.model.docking_plan import MovedWeight
from tenderwright.model.package import Package


def moved_weights(package: Package, *, before_docking: bool) -> list[Weight]:
    """Give the weights of the docking plan that items move before docking, or those that move while she is dry."""
    plan, items = package.docking_plan, package.item_by_name
    found = []
    for moved in plan.moved_while_dry if plan else ():
        item = items.get(moved.item.name) if moved.item else None
        if item is not None and item.withdrawn:
            continue
        if (item is not None and item.phase == "before docking") is before_docking:
            found.append(as_weight(moved))
    return found


def as_weight(moved: MovedWeight) -> Weight:
    """Give a moved weight as a weight in ship axes."""
    off = moved.off_centre.si if moved.off_centre else 0.0
    return Weight(moved.what, moved.mass.si, moved.at.x, off, moved.height.si)


def docking_weights(package: Package) -> list[Weight]:
    """Give the lightship and the weights aboard when she is docked."""
    return [*fixed_weights(package), *moved_weights(package, before_docking=True)]


def block_line(package: Package, results: Results) -> BlockLine | None:
    """Give the line of keel blocks on which she lands; None without a plan of two blocks or more."""
    blocks, plan = results.docking.keel_blocks, package.docking_plan
    if plan is None or len(blocks) < 2:
        return None
    ends = [x for one in blocks for x in (one.x - one.length / 2, one.x + one.length / 2)]
    return BlockLine(min(ends), max(ends), plan.declivity.value.si if plan.declivity else 0.0)


def lander(package: Package, form: HullForm, position: FloatingPosition, blocks: BlockLine, density: float) -> Lander:
    """Set a floating position over the blocks."""
    loading = position.loading
    return Lander(
        form,
        loading.mass,
        loading.lcg,
        loading.vcg,
        density,
        blocks,
        keel_underside(package),
        loading.free_surface_moment,
    )


def tank_states(
    package: Package, loads: list[TankLoad], liquids: dict[str, str], position: FloatingPosition
) -> dict[str, TankState]:
    """Give what is in each tank in a condition, with the sounding at its trim."""
    slope = position.hydrostatics.trim / position.hydrostatics.length
    found = {}
    for load in loads:
        sounding = None
        if load.tank.pipe is not None:
            try:
                sounding = sounding_for(load.tank, load.volume, slope)
            except OutOfRange:
                sounding = None  # it lies below the foot of the pipe at this trim
        liquid = liquids.get(load.name, "none") if load.mass > 0 else "none"
        found[load.name] = TankState(liquid, load.volume, load.mass, sounding)
    return found
