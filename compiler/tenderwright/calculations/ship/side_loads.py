"""Side blocks against wind and earthquake: the load of the lee blocks, overturning and sliding."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec.structs import replace

from tenderwright.calculations.blocks.overturning import METHOD as OVERTURNING
from tenderwright.calculations.blocks.overturning import Overturning
from tenderwright.calculations.blocks.pressure import METHOD as PRESSURE
from tenderwright.calculations.blocks.pressure import contact_pressure
from tenderwright.calculations.blocks.wind import METHOD as WIND
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.ship.block_places import KeelBlockResult, SideBlockResult, given_allowable
from tenderwright.calculations.ship.keel import underside
from tenderwright.calculations.ship.keel_loads import LAYERS
from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.particulars import Particulars
from tenderwright.quantities.display import show

_KEPT = {
    **{name: name.replace("_", "-") for name in ("moment_wind", "moment_earthquake", "moment", "lateral_force")},
    "lee": "side-blocks",
    **{name: name.replace("_", "-") for name in ("tipping_use", "tipping_met", "sliding_use", "sliding_met")},
}
_PRESSURE = {name: name for name in ("pressure", "width", "allowable", "margin", "met")}


@step_of(WIND, "blocks.wind", names={"basic_pressure": "pressure", "force_basic": "force"})
def wind_on_blocks(docking_plan: DockingPlan) -> Uses | Absent:
    """Find the force of the wind on her as she stands."""
    wind = docking_plan.wind
    if wind is None:
        return NotAsked("no `wind` is given in vessel/docking-plan.yaml")
    inputs = {
        "speed": given(wind.speed),
        "area": given(wind.area),
        "coefficient": given(wind.coefficient, f"{wind.coefficient:g}: {wind.source}", wind.here),
    }
    return Uses("across the ship on her blocks", inputs, wind.here)


@step_of(OVERTURNING, "blocks.side", names=_KEPT)
def side_block_standing(
    keel_blocks: tuple[KeelBlockResult, ...],
    side_blocks: tuple[SideBlockResult, ...],
    docking: FloatingPosition,
    wind_on_blocks: Mapping[str, Any] | None,
    docking_plan: DockingPlan,
    particulars: Particulars,
) -> Uses | Absent:
    """Set her against wind and earthquake, each by itself, on side blocks that carry nothing in calm."""
    wind, earthquake, friction = docking_plan.wind, docking_plan.earthquake, docking_plan.friction
    stiffness = [one.stiffness for one in keel_blocks if one.stiffness is not None]
    if wind is None and earthquake is None:
        return NotAsked("neither `wind` nor `earthquake` is given in vessel/docking-plan.yaml")
    if not side_blocks:
        return Lacking("it needs `side_blocks` in vessel/docking-plan.yaml, and the hull over them")
    if not stiffness or len(stiffness) < len(keel_blocks):
        return Lacking(LAYERS)
    weight, low = docking.loading.mass, underside(particulars)
    kg = docking.loading.vcg - low
    each = sum(stiffness) / len(stiffness)
    # Built like the keel blocks, port then starboard of each pair.
    blocks = [{"y": sign * one.off_centre, "stiffness": each} for one in side_blocks for sign in (1.0, -1.0)]
    named = [one.source for one in (wind, earthquake, friction) if one is not None]
    inputs = {
        "weight": Given(weight, show(weight, "t", "mass"), "condition.docking.displacement"),
        "kg": Given(kg, show(kg, "m", "length"), "condition.docking.vcg"),
        "blocks": Given(blocks, f"{len(side_blocks)} pairs of side blocks", docking_plan.here),
        "keel_stiffness": Given(sum(stiffness), f"{len(stiffness)} keel blocks, layers as given", docking_plan.here),
        "keel_width": given(particulars.keel.width),
        "coefficient_source": Given("; ".join(named), "; ".join(named), docking_plan.here),
    }
    if wind is not None and wind_on_blocks is not None:
        words = f"{wind.speed}, {wind.area}, coefficient {wind.coefficient:g}: {wind.source}"
        inputs["wind"] = Given(wind_on_blocks["force_basic"], words, "blocks.wind.force")
        height = wind.height.si - low
        inputs["wind_height"] = Given(height, f"{height:.2f} m above the blocks", wind.height.at)
    if earthquake is not None:
        words = f"{earthquake.coefficient:g} of gravity: {earthquake.source}"
        inputs["lateral"] = Given(earthquake.coefficient, words, earthquake.here)
    if friction is not None:
        inputs["friction"] = Given(friction.value, f"{friction.value:g}: {friction.source}", friction.here)
    about = "wind and earthquake each by itself, side blocks built like the keel blocks and bearing nothing in calm"
    return Uses(about, inputs, docking_plan.here)


@step()
def loaded_side_blocks(
    side_blocks: tuple[SideBlockResult, ...], side_block_standing: Overturning
) -> tuple[SideBlockResult, ...]:
    """Give the side blocks with the loads of the lee block of each pair, and the pressure of the greater."""
    found, standing = [], side_block_standing
    by_wind, by_earthquake = (
        standing.lee(effect) if effect is not None else None for effect in (standing.wind, standing.earthquake)
    )
    for index, one in enumerate(side_blocks):
        wind, earthquake = (loads[index] if loads is not None else None for loads in (by_wind, by_earthquake))
        greatest = max(wind or 0.0, earthquake or 0.0)
        pressure = contact_pressure(greatest, one.length, one.width, one.width)
        found.append(replace(one, wind=wind, earthquake=earthquake, pressure=pressure))
    return tuple(found)


@step()
def planned_side_blocks(
    side_blocks: tuple[SideBlockResult, ...], loaded_side_blocks: tuple[SideBlockResult, ...] | None
) -> tuple[SideBlockResult, ...]:
    """Give the side blocks of the plan with their loads, or without where data for these are lacking."""
    return loaded_side_blocks or side_blocks


@step_of(PRESSURE, "blocks.side.greatest", names=_PRESSURE)
def greatest_side_pressure(loaded_side_blocks: tuple[SideBlockResult, ...], docking_plan: DockingPlan) -> Uses:
    """Set the greatest pressure on a side block beside the allowable."""
    one = max(loaded_side_blocks, key=lambda pair: pair.pressure or 0.0)
    load = max(one.wind or 0.0, one.earthquake or 0.0)
    width = Given(one.width, show(one.width, "m", "length"), docking_plan.here)
    inputs = {
        "load": Given(load, show(load, "t", "mass"), "blocks.side.side-blocks"),
        "contact_length": Given(one.length, show(one.length, "m", "length"), docking_plan.here),
        "block_width": width,
        "keel_width": replace(width, text=f"{width.text}, the whole cap"),
    }
    return Uses(f"lee side block at {one.position}", inputs | given_allowable(docking_plan), docking_plan.here)
