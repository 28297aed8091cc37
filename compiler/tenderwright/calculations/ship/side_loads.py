"""Side blocks against wind and earthquake: the load of the lee blocks, overturning and sliding."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.calculations.blocks.overturning import METHOD as OVERTURNING
from tenderwright.calculations.blocks.overturning import Overturning
from tenderwright.calculations.blocks.side_block import seat
from tenderwright.calculations.blocks.side_slope import METHOD as SLOPE
from tenderwright.calculations.blocks.side_slope import Slopes, slope_limit, steepest_slope
from tenderwright.calculations.blocks.wind import METHOD as WIND
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.ship.block_places import (
    KeelBlockResult,
    SideBlockPlace,
    SideBlockResult,
    given_allowable,
)
from tenderwright.calculations.ship.footprints import Footprint
from tenderwright.calculations.ship.hull import Hull
from tenderwright.calculations.ship.keel import KeelLine
from tenderwright.calculations.ship.keel_loads import LAYERS
from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.calculations.verdict import Verdict, verdict
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.particulars import Particulars
from tenderwright.quantities.display import show

_KEPT = {
    **{name: name.replace("_", "-") for name in ("moment_wind", "moment_earthquake", "moment", "lateral_force")},
    "lee": "side-blocks",
    **{name: name.replace("_", "-") for name in ("tipping_use", "tipping_met", "sliding_use", "sliding_met")},
    **{name: name.replace("_", "-") for name in ("lee_greatest", "lee_pressure", "crushing_met", "hull_met")},
}
_SLOPE = ("greatest", "number", "friction_angle", "margin", "met")

NO_PAIRS = "no `side_blocks` are given in vessel/docking-plan.yaml"


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


@step_of(SLOPE, "blocks.side.slope", names={name: name.replace("_", "-") for name in _SLOPE})
def side_block_slopes(side_blocks: tuple[SideBlockResult, ...], docking_plan: DockingPlan) -> Uses | Absent:
    """Hold the slope of the shell over each pair of side blocks against friction."""
    if not docking_plan.side_blocks:
        return NotAsked(NO_PAIRS)
    if not side_blocks:
        return Lacking("it needs the shell over the side blocks: vessel/offsets.yaml or vessel/sections.yaml")
    pairs = [{"bevel": one.bevel, "bevel_forward": one.fore_and_aft} for one in side_blocks]
    inputs = {"blocks": Given(pairs, f"{len(pairs)} pairs of side blocks", docking_plan.here)}
    if (friction := docking_plan.friction) is not None:
        inputs["friction"] = given(friction.value, f"{friction.value:g}", friction.here)
        inputs["friction_source"] = Given(friction.source, friction.source, friction.here)
    return Uses("shell over the side blocks of the docking plan", inputs, docking_plan.side_blocks[0].here)


@step()
def side_block_verdict(
    side_block_slopes: Slopes | None, side_block_standing: Overturning | None, docking_plan: DockingPlan
) -> Verdict | Absent:
    """Judge the side blocks by all their limits; the slope of a shell that is not known is one of them."""
    if not docking_plan.side_blocks:
        return NotAsked(NO_PAIRS)
    friction = docking_plan.friction
    value, source = (friction.value, friction.source) if friction is not None else (None, "")
    slope = side_block_slopes.limit if side_block_slopes else slope_limit(None, value, source)
    return verdict((slope, *(side_block_standing.limits if side_block_standing else ())))


class EarlierSlope(Struct, frozen=True):
    """The slope of the shell over a side block of an earlier docking, rad."""

    docking: str
    position: str
    slope: float


@step(lazy=True)
def earlier_side_slopes(earlier_footprints: dict[str, tuple[Footprint, ...]], hull: Hull) -> tuple[EarlierSlope, ...]:
    """Give the slope of the shell over the side blocks of earlier dockings, where the hull reaches over them."""
    found = []
    for docking, prints in earlier_footprints.items():
        for one in prints:
            if one.kind != "side" or one.y <= 0:  # those to starboard stand as those to port do
                continue
            try:
                shell = seat(hull.form, one.x, one.y, one.forward - one.aft, one.left - one.right)
            except OutOfRange:
                continue
            found.append(EarlierSlope(docking, one.position, steepest_slope(shell.bevel, shell.bevel_forward)))
    return tuple(found)


@step_of(OVERTURNING, "blocks.side", names=_KEPT)
def side_block_standing(
    keel_blocks: tuple[KeelBlockResult, ...],
    side_blocks: tuple[SideBlockResult, ...],
    side_block_places: tuple[SideBlockPlace, ...],
    hull: Hull | None,
    docking: FloatingPosition,
    wind_on_blocks: Mapping[str, Any] | None,
    docking_plan: DockingPlan,
    particulars: Particulars,
    keel_line: KeelLine,
) -> Uses | Absent:
    """Set her against wind and earthquake, each by itself, on side blocks that carry nothing in calm."""
    wind, earthquake, friction = docking_plan.wind, docking_plan.earthquake, docking_plan.friction
    stiffness = [one.stiffness for one in keel_blocks if one.stiffness is not None]
    if wind is None and earthquake is None:
        return NotAsked("neither `wind` nor `earthquake` is given in vessel/docking-plan.yaml")
    pairs: tuple[SideBlockResult | SideBlockPlace, ...] = side_blocks if hull is not None else side_block_places
    if not pairs:
        return Lacking("it needs `side_blocks` in vessel/docking-plan.yaml, under the hull")
    if not stiffness or len(stiffness) < len(keel_blocks):
        return Lacking(LAYERS)
    weight, low = docking.loading.mass, keel_line.at(docking.loading.lcg)
    kg = docking.loading.vcg - low
    each = sum(stiffness) / len(stiffness)
    # Built like the keel blocks, port then starboard of each pair.
    blocks = [
        {"y": sign * one.off_centre, "stiffness": each, "cap": one.length * one.width}
        for one in pairs
        for sign in (1.0, -1.0)
    ]
    named = [one.source for one in (wind, earthquake, friction) if one is not None]
    inputs = {
        "weight": Given(weight, show(weight, "weight", digits=4), "condition.docking.displacement"),
        "kg": Given(kg, show(kg, "centre", digits=4), "condition.docking.vcg"),
        "blocks": Given(blocks, f"{len(pairs)} pairs of side blocks", docking_plan.here),
        "keel_stiffness": Given(sum(stiffness), f"{len(stiffness)} keel blocks, layers as given", docking_plan.here),
        "keel_width": given(particulars.keel.width),
        "coefficient_source": Given("; ".join(named), "; ".join(named), docking_plan.here),
    }
    if wind is not None and wind_on_blocks is not None:
        words = f"{wind.speed}, {wind.area}, coefficient {wind.coefficient:g}: {wind.source}"
        inputs["wind"] = Given(wind_on_blocks["force_basic"], words, "blocks.wind.force")
        height = wind.height.si - low
        inputs["wind_height"] = Given(height, f"{show(height, 'centre')} above the blocks", wind.height.at)
    if earthquake is not None:
        words = f"{earthquake.coefficient:g} of gravity: {earthquake.source}"
        inputs["lateral"] = Given(earthquake.coefficient, words, earthquake.here)
    if friction is not None:
        inputs["friction"] = Given(friction.value, f"{friction.value:g}: {friction.source}", friction.here)
    inputs |= given_allowable(docking_plan)
    if (most := docking_plan.hull_at_side_blocks) is not None:
        inputs["hull_limit"] = given(most.value)
        inputs["hull_limit_source"] = Given(most.source, most.source, most.here)
    about = "wind and earthquake each by itself, side blocks built like the keel blocks and bearing nothing in calm"
    return Uses(about, inputs, docking_plan.here)


@step()
def loaded_side_blocks(
    side_blocks: tuple[SideBlockResult, ...], side_block_standing: Overturning
) -> tuple[SideBlockResult, ...]:
    """Give the side blocks with the loads of the lee block of each pair."""
    found, standing = [], side_block_standing
    by_wind, by_earthquake = (
        standing.lee(effect) if effect is not None else None for effect in (standing.wind, standing.earthquake)
    )
    for index, one in enumerate(side_blocks):
        wind, earthquake = (loads[index] if loads is not None else None for loads in (by_wind, by_earthquake))
        found.append(replace(one, wind=wind, earthquake=earthquake))
    return tuple(found)


@step()
def planned_side_blocks(
    side_blocks: tuple[SideBlockResult, ...], loaded_side_blocks: tuple[SideBlockResult, ...] | None
) -> tuple[SideBlockResult, ...]:
    """Give the side blocks of the plan with their loads, or without where data for these are lacking."""
    return loaded_side_blocks or side_blocks
