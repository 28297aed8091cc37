"""The condition in which she is floated: the docking condition with what has moved while she was dry."""

from __future__ import annotations

from collections.abc import Iterator
from math import degrees
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.condition.floating import METHOD as FLOATING
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.landing.lifting import METHOD as LIFTING
from tenderwright.calculations.landing.settling import Landing
from tenderwright.calculations.ship.block_places import given_line
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.condition import given_marks, given_tanks, given_weights
from tenderwright.calculations.ship.docking_condition import TankState, given_condition, moved_weights, tank_states
from tenderwright.calculations.ship.keel import KeelLine
from tenderwright.calculations.ship.tanks import liquid_density
from tenderwright.calculations.ship.wanted import given_least_gm, least_gm, most_list, trim_tolerance
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.uncertainty.afloat import HowSure
from tenderwright.calculations.value import Given
from tenderwright.calculations.verdict import Limit, within
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.item import Item
from tenderwright.model.lightship import Lightship
from tenderwright.model.particulars import Particulars
from tenderwright.model.tank import Tank
from tenderwright.quantities.display import plus_minus, show

Why = Literal["changed", "slack", "to be dry"]
"""Contents changed since docking; a free surface; nothing should be in it."""
SLACK = (0.05, 0.95)
"""A tank filled between these shares of its capacity has a free surface to be sounded."""


class Undocking(Struct, frozen=True):
    """The condition in which she is floated."""

    position: FloatingPosition
    unlevel: tuple[str, ...]
    """In what she does not float off level: trim or list beyond what the package allows."""
    stable: bool
    """Whether the metacentric height, floated off and as the last block leaves, is what the package asks for."""
    reasons: tuple[str, ...]
    """Why not; empty where she floats off level and stable."""
    least_gm: float | None
    """The lesser virtual metacentric height as the last block leaves her, m."""
    to_sound: tuple[tuple[str, Why], ...]
    """Tanks to be sounded above all before flooding, each with the reason."""

    @property
    def level(self) -> bool:
        """Tell whether trim and list are within what the package allows."""
        return not self.unlevel

    @property
    def sound_before_flooding(self) -> tuple[str, ...]:
        """Name those tanks."""
        return tuple(name for name, _ in self.to_sound)


class UndockingTanks(Struct, frozen=True):
    """The tanks when she is floated."""

    loads: tuple[TankLoad, ...]
    liquids: dict[str, str]


@step()
def undocking_tanks(
    docking_plan: DockingPlan, docking_tanks: tuple[TankLoad, ...], docking_tank_states: dict[str, TankState]
) -> UndockingTanks:
    """Give the tanks as on docking, but for those whose contents the plan changes."""
    changed = {one.tank.name: one for one in docking_plan.tanks_at_undocking}
    loads, liquids = [], {}
    for load in docking_tanks:
        one = changed.get(load.name)
        if one is None:
            loads.append(load)
            liquids[load.name] = docking_tank_states[load.name].liquid
        else:
            density = liquid_density(one.liquid)
            volume = one.volume.si if one.volume is not None and one.liquid != "none" else 0.0
            loads.append(replace(load, density=density, mass=volume * density))
            liquids[load.name] = one.liquid
    return UndockingTanks(tuple(loads), liquids)


@step_of(FLOATING, "condition.undocking", kept=True)
def undocked(
    docking_plan: DockingPlan,
    lightship: Lightship,
    buoyancy: Buoyancy,
    items: tuple[Item, ...],
    docking_weights: list[Weight],
    undocking_tanks: UndockingTanks,
    dock_water: Given,
    particulars: Particulars,
) -> Uses:
    """Find how she floats when she leaves the blocks."""
    weights = [*docking_weights, *moved_weights(docking_plan, items, before_docking=False)]
    inputs = {
        **buoyancy.given,
        "weights": given_weights(weights, lightship),
        "tanks": given_tanks(undocking_tanks.loads),
        "density": dock_water,
    }
    return Uses("when she is floated", inputs | given_marks(particulars), docking_plan.here)


@step()
def undocking_tank_states(
    undocked: FloatingPosition, undocking_tanks: UndockingTanks, tanks: tuple[Tank, ...]
) -> dict[str, TankState]:
    """Give what is in each tank when she is floated."""
    return tank_states(undocking_tanks.loads, undocking_tanks.liquids, undocked, tanks)


@step_of(LIFTING, "undocking.lifting", kept=True)
def lifting_off(
    undocked: FloatingPosition,
    buoyancy: Buoyancy,
    block_line: BlockLine,
    docking_plan: DockingPlan,
    keel_line: KeelLine,
    dock_water: Given,
    lightship: Lightship,
) -> Uses | Absent:
    """Find how the last block leaves her."""
    if buoyancy.estimated:
        return buoyancy.estimated
    inputs = {**buoyancy.given, "density": dock_water} | given_condition("condition.undocking", undocked)
    inputs |= given_line(block_line, docking_plan) | keel_line.given
    inputs |= given_least_gm(docking_plan, lightship)
    about = "lifting off, a landing backwards: settling is when all but the last block has left her"
    return Uses(about, inputs, docking_plan.here)


@step()
def undocking(
    undocked: FloatingPosition,
    lifting_off: Landing | None,
    docking_plan: DockingPlan,
    lightship: Lightship,
    tanks: tuple[Tank, ...],
    docking_tanks: tuple[TankLoad, ...],
    docking_tank_states: dict[str, TankState],
    undocking_tank_states: dict[str, TankState],
    how_sure: HowSure | None,
    buoyancy: Buoyancy,
) -> Undocking | Absent:
    """Judge whether she floats off level and stable, and say which tanks are to be sounded before flooding."""
    if buoyancy.estimated:
        return buoyancy.estimated
    sounded = tuple(_to_sound(tanks, docking_tanks, docking_tank_states, undocking_tank_states))
    return _judged(lightship, docking_plan, undocked, lifting_off, sounded, how_sure)


def trim_limit(lightship: Lightship | None) -> float:
    """Give the greatest trim, by either end, with which she still floats off level, m."""
    wanted = lightship.docking if lightship is not None else None
    tolerance: float = trim_tolerance(lightship).si
    return tolerance + (abs(wanted.trim.si) if wanted else 0.0)


def _judged(
    lightship: Lightship,
    plan: DockingPlan,
    found: FloatingPosition,
    lifting: Landing | None,
    to_sound: tuple[tuple[str, Why], ...],
    known: HowSure | None,
) -> Undocking:
    reasons = []
    trim, most_trim = found.hydrostatics.trim, trim_limit(lightship)
    if not within(abs(trim), most_trim):
        end = "stern" if trim > 0 else "head"
        reasons.append(f"trim {show(abs(trim), 'trim')} by the {end} against {show(most_trim, 'trim')}")
    limit = most_list(lightship).si
    if found.heel is None or not within(abs(found.heel), limit):
        words = "no list at which she rests" if found.heel is None else f"list {abs(degrees(found.heel)):.2f} degrees"
        reasons.append(f"{words} against {degrees(limit):.2f} degrees")
    unlevel = tuple(reasons)
    gm = lifting.settling.stability.gm if lifting is not None else None
    asked = least_gm(plan, lightship)
    least = asked.si if asked is not None else 0.0
    u_afloat, u_lifting = ((known.u(name) if known else None) or 0.0 for name in ("gm", "gm_at_settling"))
    heights = (
        Limit("afloat", "length", found.gm_fluid, least, at_least=True, uncertainty=u_afloat),
        Limit("as the last block leaves", "length", gm, least, at_least=True, uncertainty=u_lifting),
    )
    stable = found.gm_fluid > 0 and all(one.met for one in heights)
    if not stable:
        told = " and ".join(f"{_height(one)} {one.name}" for one in heights)
        doubt = ", which is not known to be enough" if all(one.met is not False for one in heights) else ""
        reasons.append(f"metacentric height {told}, against {show(least, 'centre')}{doubt}")
    return Undocking(found, unlevel, stable, tuple(reasons), gm, to_sound)


def _height(one: Limit) -> str:
    if one.demand is None:
        return "not known"
    return (
        plus_minus(one.demand, one.uncertainty, "metacentric height") if one.uncertainty else show(one.demand, "centre")
    )


def _to_sound(
    tanks: tuple[Tank, ...],
    loads: tuple[TankLoad, ...],
    docked: dict[str, TankState],
    floated: dict[str, TankState],
) -> Iterator[tuple[str, Why]]:
    """Yield the tanks that should be dry, have changed since docking, or hold liquid with a free surface."""
    capacity = {load.name: load.tank.capacity for load in loads}
    for tank in tanks:
        if tank.tank not in floated:  # it has no bounds and holds nothing
            continue
        before, after = docked[tank.tank], floated[tank.tank]
        if after.mass <= 0:
            yield tank.tank, "to be dry"
        elif abs(after.mass - before.mass) > 1.0 or after.liquid != before.liquid:
            yield tank.tank, "changed"
        elif SLACK[0] < after.volume / capacity[tank.tank] < SLACK[1]:
            yield tank.tank, "slack"
