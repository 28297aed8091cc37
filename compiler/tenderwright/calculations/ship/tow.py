"""The condition in which she is towed, out and home, and what must be kept for her to sail."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec.structs import replace

from tenderwright.calculations.condition.floating import METHOD as FLOATING
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.condition import given_marks, given_tanks, given_weights
from tenderwright.calculations.ship.docking_condition import as_weight, moved_weights
from tenderwright.calculations.ship.tanks import liquid_density
from tenderwright.calculations.ship.undocking import UndockingTanks
from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tow.downflooding import METHOD as DOWNFLOODING
from tenderwright.calculations.tow.roll_period import METHOD as ROLL
from tenderwright.calculations.uncertainty.afloat import HowSure
from tenderwright.calculations.uncertainty.judged import METHOD as JUDGED
from tenderwright.calculations.value import Given, given
from tenderwright.calculations.verdict import Limit
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.item import Item
from tenderwright.model.lightship import Lightship
from tenderwright.model.particulars import Particulars
from tenderwright.model.tow import Closure, Tow
from tenderwright.quantities.display import show

TIGHT = ("watertight", "weathertight")
"""Openings that hold the sea out while they are under water for a moment."""


@step()
def tow_plan(tow: Tow | None) -> Tow | Absent:
    """Give the tow, where one is planned."""
    return tow or NotAsked("no tow is planned: tow.yaml is not there")


@step()
def tow_weights(tow_plan: Tow, docking_weights: list[Weight]) -> list[Weight]:
    """Give the weights aboard on the passage out: what is landed before docking is ashore, tow gear is aboard."""
    return [*docking_weights, *(as_weight(one) for one in tow_plan.weights)]


@step()
def tow_tanks(tow_plan: Tow, arrival_tanks: tuple[TankLoad, ...]) -> tuple[TankLoad, ...]:
    """Give the tanks on the passage out: as last sounded, but for those that are changed for the tow."""
    changed = {one.tank.name: one for one in tow_plan.tanks}
    loads = []
    for load in arrival_tanks:
        one = changed.get(load.name)
        if one is not None:
            density = liquid_density(one.liquid)
            volume = one.volume.si if one.volume is not None and one.liquid != "none" else 0.0
            load = replace(load, density=density, mass=min(volume, load.tank.capacity) * density)
        loads.append(load)
    return tuple(loads)


@step()
def tow_water(tow_plan: Tow, dock_water: Given) -> Given:
    """Give the density of the water of the passage: as measured, or that of the dock."""
    water = tow_plan.water
    return given(water.density) if water is not None and water.density is not None else dock_water


@step_of(FLOATING, "condition.tow", kept=True)
def towed(
    tow_weights: list[Weight],
    tow_tanks: tuple[TankLoad, ...],
    tow_water: Given,
    lightship: Lightship,
    buoyancy: Buoyancy,
    particulars: Particulars,
    tow_plan: Tow,
) -> Uses:
    """Find how she floats on the passage to the dock."""
    inputs = {
        **buoyancy.given,
        "weights": given_weights(tow_weights, lightship),
        "tanks": given_tanks(tow_tanks),
        "density": tow_water,
    }
    return Uses("on the passage to the dock", inputs | given_marks(particulars), tow_plan.here)


@step_of(FLOATING, "condition.tow-home", kept=True)
def towed_home(
    tow_plan: Tow,
    docking_plan: DockingPlan,
    lightship: Lightship,
    buoyancy: Buoyancy,
    items: tuple[Item, ...],
    tow_weights: list[Weight],
    undocking_tanks: UndockingTanks,
    tow_water: Given,
    particulars: Particulars,
) -> Uses:
    """Find how she floats on the passage home, with what has moved while she was dry."""
    weights = [*tow_weights, *moved_weights(docking_plan, items, before_docking=False)]
    inputs = {
        **buoyancy.given,
        "weights": given_weights(weights, lightship),
        "tanks": given_tanks(undocking_tanks.loads),
        "density": tow_water,
    }
    return Uses("on the passage home", inputs | given_marks(particulars), tow_plan.here)


@step_of(DOWNFLOODING, "tow.reserve")
def tow_reserve(tow_plan: Tow, towed: FloatingPosition) -> Uses | Absent:
    """Find the height of her openings over the water going out, and the heel that lets water in."""
    return _reserve(tow_plan, towed, "on the passage to the dock")


@step_of(DOWNFLOODING, "tow.home-reserve")
def tow_home_reserve(tow_plan: Tow, towed_home: FloatingPosition) -> Uses | Absent:
    """Find the same on the passage home."""
    return _reserve(tow_plan, towed_home, "on the passage home")


def _reserve(plan: Tow, position: FloatingPosition, about: str) -> Uses | Absent:
    if not plan.closures:
        return Lacking("it needs `closures` in tow.yaml: hatches, doors, ventilators, with the height of each")
    h = position.hydrostatics
    rows = [_row(one) for one in plan.closures if one.tight != "watertight"]
    if not rows:
        return NotAsked("every opening listed on deck is closed watertight")
    inputs = {
        "openings": Given(rows, f"{len(rows)} openings above the shell's own", plan.closures[0].here),
        "length": Given(h.length, show(h.length, "distance"), "her length between perpendiculars"),
        "draft": Given(h.draft, show(h.draft, "draft"), f"how she floats {about}"),
        "trim": Given(h.trim, show(h.trim, "trim"), f"how she floats {about}"),
    }
    return Uses(about, inputs, plan.closures[0].here)


def _row(one: Closure) -> dict[str, Any]:
    off = one.off_centre.si if one.off_centre else 0.0
    return {"name": one.what, "x": one.at.x, "y": off, "z": one.height.si, "lets_in": one.tight not in TIGHT}


@step_of(ROLL, "tow.roll")
def tow_roll(towed: FloatingPosition, tow_plan: Tow, particulars: Particulars, buoyancy: Buoyancy) -> Uses | Absent:
    """Find the period in which she rolls under tow, by which the tug sees whether her stability is what was said."""
    if buoyancy.estimated:
        return buoyancy.estimated
    if towed.gm_fluid <= 0:
        return NotAsked("she has no stability upright")
    h, size = towed.hydrostatics, particulars.dimensions
    gm = Given(towed.gm_fluid, show(towed.gm_fluid, "metacentric height"), "condition.tow.gm-fluid")
    draft = Given(h.draft, show(h.draft, "draft"), "condition.tow.draft")
    length = given(size.length_between_perpendiculars)
    return Uses("under tow", {"beam": given(size.beam), "draft": draft, "length": length, "gm": gm}, tow_plan.here)


@step_of(JUDGED, "tow.condition", names={"result": "result", "deciding": "deciding", "use": "use"})
def tow_condition(
    tow_plan: Tow,
    towed: FloatingPosition,
    tow_reserve: Mapping[str, Any] | None,
    how_sure: HowSure | None,
    buoyancy: Buoyancy,
) -> Uses | Absent:
    """Judge how she floats on the passage out by the limits of the tow."""
    return _judged(tow_plan, towed, tow_reserve, how_sure, buoyancy, "on the passage to the dock")


@step_of(JUDGED, "tow.home-condition", names={"result": "result", "deciding": "deciding", "use": "use"})
def tow_home_condition(
    tow_plan: Tow,
    towed_home: FloatingPosition,
    tow_home_reserve: Mapping[str, Any] | None,
    how_sure: HowSure | None,
    buoyancy: Buoyancy,
) -> Uses | Absent:
    """Judge how she floats on the passage home by the same limits."""
    return _judged(tow_plan, towed_home, tow_home_reserve, how_sure, buoyancy, "on the passage home")


def _judged(
    plan: Tow,
    position: FloatingPosition,
    reserve: Mapping[str, Any] | None,
    known: HowSure | None,
    buoyancy: Buoyancy,
    about: str,
) -> Uses | Absent:
    if buoyancy.estimated:
        return buoyancy.estimated
    if plan.limits is None:
        return Lacking(
            "it needs `limits` in tow.yaml: what the tow surveyor asks of metacentric height, trim, freeboard"
        )
    limits = list(condition_limits(plan, position, reserve, known))
    if not limits:
        return Lacking("it needs figures under `limits` in tow.yaml")
    words = "; ".join(one.name for one in limits)
    return Uses(about, {"limits": Given(limits, words, plan.limits.here)}, plan.limits.here)


def condition_limits(
    plan: Tow, position: FloatingPosition, reserve: Mapping[str, Any] | None, known: HowSure | None
) -> list[Limit]:
    """Give every limit of the tow that is asked for, with the figure held against it."""
    asked = plan.limits
    if asked is None:
        return []
    h, source = position.hydrostatics, asked.source

    def u(figure: str) -> float:
        return (known.u(figure) if known is not None else None) or 0.0

    freeboard, angle = (reserve[name] if reserve is not None else None for name in ("freeboard", "angle"))
    heel = None if position.heel is None else abs(position.heel)
    found = []
    if asked.least_gm is not None:
        gm = position.gm_fluid
        found.append(
            Limit(
                "metacentric height", "length", gm, asked.least_gm.si, at_least=True, source=source, uncertainty=u("gm")
            )
        )
    if asked.least_trim is not None:
        found.append(
            Limit("trim by the stern, least", "length", h.trim, asked.least_trim.si, at_least=True, source=source)
        )
    if asked.most_trim is not None:
        found.append(Limit("trim by the stern, most", "length", h.trim, asked.most_trim.si, source=source))
    if asked.most_list is not None:
        found.append(Limit("list", "angle", heel, asked.most_list.si, source=source))
    if asked.least_freeboard is not None:
        found.append(
            Limit(
                "lowest opening over the water",
                "length",
                freeboard,
                asked.least_freeboard.si,
                at_least=True,
                source=source,
            )
        )
    if asked.least_angle is not None and (reserve is None or angle is not None):
        found.append(
            Limit("heel that lets water in", "angle", angle, asked.least_angle.si, at_least=True, source=source)
        )
    return found
