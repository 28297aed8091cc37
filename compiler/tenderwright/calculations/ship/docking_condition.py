"""The condition in which she is docked: weights, and tanks moved for the trim wanted."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.condition.floating import METHOD as FLOATING
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.condition.target_trim import TrimPlan
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.condition import fixed_weights, given_marks, given_tanks, given_weights
from tenderwright.calculations.ship.tanks import sounding_by_table
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.sounding import at_sounding, contents, sounding_at
from tenderwright.calculations.tanks.sounding_volume import NOTHING_READ
from tenderwright.calculations.value import Given
from tenderwright.model.docking_plan import DockingPlan, MovedWeight
from tenderwright.model.item import Item
from tenderwright.model.lightship import Lightship
from tenderwright.model.lightship import Weight as WeightAboard
from tenderwright.model.particulars import Particulars
from tenderwright.model.tank import Tank
from tenderwright.quantities.display import show
from tenderwright.quantities.position import FrameTable


class TankState(Struct, frozen=True):
    """What is in a tank at one of the conditions."""

    liquid: str
    volume: float
    mass: float
    sounding: float | None
    """On her pipe at the trim of that condition; None without a pipe, or where the liquid does not reach it."""
    unseen: float = 0.0
    """Greatest volume that shows nothing on the pipe at that trim, m3, where nothing is to be read."""


def moved_weights(plan: DockingPlan | None, items: tuple[Item, ...], *, before_docking: bool) -> list[Weight]:
    """Give the weights of the docking plan that items move before docking, or those that move while she is dry."""
    return [as_weight(moved) for moved in weights_moved(plan, items, before_docking=before_docking)]


def weights_moved(plan: DockingPlan | None, items: tuple[Item, ...], *, before_docking: bool) -> list[MovedWeight]:
    """Give them as the docking plan states them."""
    by_number = {item.number: item for item in items}
    found = []
    for moved in plan.moved_while_dry if plan else ():
        item = by_number.get(moved.item.name) if moved.item else None
        if item is not None and item.withdrawn:
            continue
        if (item is not None and item.phase == "before docking") is before_docking:
            found.append(moved)
    return found


def as_weight(one: MovedWeight | WeightAboard) -> Weight:
    """Give a weight of the package as a weight in ship axes."""
    off = one.off_centre.si if one.off_centre else 0.0
    return Weight(one.what, one.mass.si, one.at.x, off, one.height.si)


@step()
def docking_weights(
    lightship: Lightship, docking_plan: DockingPlan | None, items: tuple[Item, ...], frames: FrameTable
) -> list[Weight]:
    """Give the lightship and the weights aboard when she is docked."""
    return [*fixed_weights(lightship), *moved_weights(docking_plan, items, before_docking=True)]


@step()
def docking_tanks(arrival_tanks: tuple[TankLoad, ...], trim_plan: TrimPlan | None) -> tuple[TankLoad, ...]:
    """Give the tanks when she is docked: moved for the trim wanted, or as on arrival where none is stated."""
    if trim_plan is None:
        return arrival_tanks
    return tuple(replace(load, mass=mass) for load, mass in zip(arrival_tanks, trim_plan.masses, strict=True))


@step_of(FLOATING, "condition.docking", kept=True)
def docking(
    lightship: Lightship,
    buoyancy: Buoyancy,
    docking_weights: list[Weight],
    docking_tanks: tuple[TankLoad, ...],
    dock_water: Given,
    particulars: Particulars,
) -> Uses:
    """Find how she floats over the blocks."""
    inputs = {
        **buoyancy.given,
        "weights": given_weights(docking_weights, lightship),
        "tanks": given_tanks(docking_tanks),
        "density": dock_water,
    }
    at = lightship.docking.trim.at if lightship.docking else lightship.here
    return Uses("with the tanks moved for docking", inputs | given_marks(particulars), at)


@step()
def docking_tank_states(
    docking: FloatingPosition, docking_tanks: tuple[TankLoad, ...], tanks: tuple[Tank, ...]
) -> dict[str, TankState]:
    """Give what is in each tank when she is docked."""
    liquids = {t.tank: t.contents.liquid if t.contents.liquid != "none" else "sea water" for t in tanks}
    return tank_states(docking_tanks, liquids, docking, tanks)


def tank_states(
    loads: tuple[TankLoad, ...], liquids: dict[str, str], position: FloatingPosition, tanks: tuple[Tank, ...]
) -> dict[str, TankState]:
    """Give what is in each tank in a condition, with the sounding at its trim."""
    named = {tank.tank: tank for tank in tanks}
    slope = position.hydrostatics.trim / position.hydrostatics.length
    found = {}
    bodies = contents([load.tank for load in loads], [load.volume for load in loads], slope)
    for load, body in zip(loads, bodies, strict=True):
        sounding, unseen = None, 0.0
        if load.tank.planned:
            sounding = sounding_by_table(named[load.name], load.tank, load.volume, slope)
        elif load.tank.pipe is not None:
            try:
                sounding = sounding_at(load.tank, load.volume, body.level, slope)
            except OutOfRange:
                sounding = None  # it lies below the foot of the pipe at this trim
            if sounding is None or sounding <= NOTHING_READ:
                unseen = at_sounding(load.tank, 0.0, slope).volume
        liquid = liquids.get(load.name, "none") if load.mass > 0 else "none"
        found[load.name] = TankState(liquid, load.volume, load.mass, sounding, unseen)
    return found


def given_condition(prefix: str, position: FloatingPosition) -> dict[str, Given]:
    """Give weight, centre of gravity and free-surface moment of a condition as inputs."""
    loading = position.loading
    figures = {
        "displacement": (loading.mass, show(loading.mass, "weight")),
        "lcg": (loading.lcg, show(loading.lcg, "centre", more=1)),
        "vcg": (loading.vcg, show(loading.vcg, "centre", more=1)),
        "free_surface_moment": (loading.free_surface_moment, show(loading.free_surface_moment, "moment")),
    }
    return {name: Given(si, words, f"{prefix}.{name.replace('_', '-')}") for name, (si, words) in figures.items()}
