"""What each keel block carries: rigid hull by area moment, elastic hull girder, and the pressure under the keel."""

from __future__ import annotations

from msgspec.structs import replace

from tenderwright.calculations.blocks.area_moment import METHOD as RIGID
from tenderwright.calculations.blocks.area_moment import BlockLoads
from tenderwright.calculations.blocks.bearing import METHOD as BEARING
from tenderwright.calculations.blocks.bearing import Bearing
from tenderwright.calculations.blocks.keel_line import METHOD as ELASTIC
from tenderwright.calculations.blocks.keel_line import Standing
from tenderwright.calculations.blocks.one_out import METHOD as ONE_OUT
from tenderwright.calculations.blocks.pressure import METHOD as PRESSURE
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.condition.loading import Weight
from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.ship.block_places import (
    KeelBlockResult,
    PlacedBlock,
    bearing_width,
    first_block,
    given_allowable,
    given_cap,
)
from tenderwright.calculations.ship.docking_condition import TankState
from tenderwright.calculations.ship.weight import Weighed
from tenderwright.calculations.steps.outcome import Absent, Each, Failed, Lacking
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.sounding import Tank, contents
from tenderwright.calculations.value import Given, given
from tenderwright.calculations.verdict import within
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.lightship import Lightship
from tenderwright.model.particulars import Particulars
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.position import Position

_BEARING = {"pressures": "pressures", "line_loads": "line-loads", "greatest": "greatest.pressure"} | {
    name: f"greatest.{name.replace('_', '-')}"
    for name in ("number", "rigid", "elastic", "rigid_line_load", "elastic_line_load", "allowable", "margin", "met")
}
_PRESSURE = {name: name for name in ("pressure", "width", "allowable", "margin", "met")}
LAYERS = "it needs `layers` of every keel block with their `stiffness` in vessel/docking-plan.yaml"
LEAST_STRETCH = 0.02
"""Length over which liquid at the very end of a tank is laid, m, so that its load stays a figure."""


@step_of(RIGID, "blocks.keel.rigid")
def rigid_keel_loads(
    placed_keel_blocks: tuple[PlacedBlock, ...],
    docked_weight: Weighed,
    docking_plan: DockingPlan,
    particulars: Particulars,
) -> Uses | Absent:
    """Share her weight between the keel blocks under a rigid hull."""
    if len(placed_keel_blocks) < 2:
        return Lacking("it needs two keel blocks or more in vessel/docking-plan.yaml")
    line = [
        {"x": one.x, "length": one.row.length.si, "width": bearing_width(particulars, one.row)}
        for one in placed_keel_blocks
    ]
    inputs = {
        **docked_weight.given(digits=4),
        "blocks": Given(line, f"{len(line)} keel blocks", docking_plan.here),
    }
    return Uses("keel blocks of the docking plan, rigid hull", inputs, docking_plan.here)


@step()
def liquid_stretches(
    docking: FloatingPosition,
    docking_tank_states: dict[str, TankState],
    tank_shape: Each[Tank],
) -> list[dict[str, float]]:
    """Lay each liquid evenly about its own centre, over as much as the tank holds on both sides of that."""
    slope = docking.hydrostatics.trim / docking.hydrostatics.length
    found = []
    filled = [(tank_shape[name], state) for name, state in docking_tank_states.items() if state.mass > 0]
    bodies = contents([tank for tank, _ in filled], [state.volume for _, state in filled], slope)
    for (tank, state), liquid in zip(filled, bodies, strict=True):
        body, x = tank.body, liquid.centroid[0]
        half = max(min(x - body.lower_corner[0], body.upper_corner[0] - x), LEAST_STRETCH / 2)
        found.append({"aft": float(x - half), "forward": float(x + half), "load": float(state.mass / (2 * half))})
    return found


@step()
def elastic_keel_inputs(
    keel_blocks: tuple[KeelBlockResult, ...],
    liquid_stretches: list[dict[str, float]] | Absent,
    docking_weights: list[Weight],
    docking_plan: DockingPlan,
    particulars: Particulars,
    lightship: Lightship,
) -> dict[str, Given] | Absent:
    """Give the hull girder, the springs under it and the weights on it.

    The lightship lies along her by its curve, other weights at a place, liquids over their tanks.
    """
    girder = docking_plan.girder
    if girder is None:
        return Lacking("it needs `girder` in vessel/docking-plan.yaml")
    if isinstance(liquid_stretches, Absent):
        return Lacking("it needs the docking condition, in which her liquids lie")
    springs = [{"x": one.x, "stiffness": one.stiffness} for one in keel_blocks if one.stiffness is not None]
    if len(springs) < len(keel_blocks):
        return Lacking(LAYERS)
    if len(springs) < 2:
        return Lacking("it needs two keel blocks or more in vessel/docking-plan.yaml")
    aft, forward = _ends(particulars)
    light, *others = docking_weights
    points = [{"x": min(max(one.x, aft), forward), "mass": one.mass} for one in others]
    overhang = particulars.dimensions.aft_overhang
    return {
        "blocks": Given(springs, f"{len(springs)} keel blocks, layers as given", docking_plan.here),
        "elasticity": given(girder.modulus),
        "bays": Given(
            [{"aft": aft, "forward": forward, "second_moment": girder.second_moment.si}],
            f"{girder.second_moment} over her whole length",
            girder.second_moment.at,
        ),
        "weight": Given(light.mass, show(light.mass, "weight", digits=4), lightship.here),
        "weight_aft": Given(aft, show(aft, "centre"), overhang.at if overhang else "no after overhang is given"),
        "weight_forward": Given(forward, show(forward, "centre"), particulars.dimensions.length_overall.at),
        "lcg": Given(light.x, show(light.x, "centre", digits=4), lightship.here),
        "points": Given(points, f"{len(points)} weights aboard", lightship.here),
        "stretches": Given(liquid_stretches, f"liquid in {len(liquid_stretches)} tanks", "condition.docking.lcg"),
    }


@step_of(ELASTIC, "blocks.keel.elastic")
def elastic_keel_loads(elastic_keel_inputs: dict[str, Given], docking_plan: DockingPlan) -> Uses:
    """Find the loads of the keel blocks under an elastic hull girder."""
    girder = docking_plan.girder
    assert girder is not None
    return Uses(f"hull girder: {girder.source}", elastic_keel_inputs, girder.here)


def _ends(particulars: Particulars) -> tuple[float, float]:
    """Give the ends of the hull girder, m."""
    size = particulars.dimensions
    aft = -size.aft_overhang.si if size.aft_overhang else 0.0
    return aft, aft + size.length_overall.si


def estimates(plan: DockingPlan) -> dict[str, Given]:
    """Say what the elastic loads rest on; her weight curve is never better than an estimate here."""
    if plan.girder is None:
        return {}
    words = f"hull girder: {plan.girder.source}; moduli of the blocks; a weight curve by rule, not her own"
    return {"rests_on": Given(words, words, plan.girder.here)}


@step_of(BEARING, "blocks.keel", names=_BEARING)
def keel_bearing(
    placed_keel_blocks: tuple[PlacedBlock, ...],
    rigid_keel_loads: BlockLoads | None,
    elastic_keel_loads: Standing | None,
    docking_plan: DockingPlan,
    particulars: Particulars,
) -> Uses | Absent:
    """Find what each keel block bears, by the worse of both hulls, and hold the worst against the allowable."""
    line = [
        {"x": one.x, "length": one.row.length.si, "width": bearing_width(particulars, one.row)}
        for one in placed_keel_blocks
    ]
    inputs = {"blocks": Given(line, f"{len(line)} keel blocks", docking_plan.here)} | given_allowable(docking_plan)
    if rigid_keel_loads is not None:
        rigid = list(rigid_keel_loads.reactions)
        inputs["rigid"] = Given(rigid, "of every block, rigid hull", "blocks.keel.rigid.loads")
    if elastic_keel_loads is not None:
        elastic = elastic_keel_loads.loads.tolist()
        inputs["elastic"] = Given(elastic, "of every block, elastic hull", "blocks.keel.elastic.loads")
        inputs |= estimates(docking_plan)
    if rigid_keel_loads is None and elastic_keel_loads is None:
        return Lacking("it needs her weight in the docking condition, and two keel blocks or more")
    if (stated := docking_plan.calculated_loads) is not None:
        inputs["calculated"] = given(stated.pressure, f"{stated.pressure}: {stated.source}")
    return Uses("keel blocks of the docking plan, the worse of a rigid and an elastic hull", inputs, docking_plan.here)


@step()
def loaded_keel_blocks(keel_blocks: tuple[KeelBlockResult, ...], keel_bearing: Bearing) -> tuple[KeelBlockResult, ...]:
    """Give the keel blocks with what each bears."""
    return tuple(
        replace(one, rigid=b.rigid, elastic=b.elastic, line_load=b.line_load, pressure=b.pressure)
        for one, b in zip(keel_blocks, keel_bearing.blocks, strict=True)
    )


@step()
def planned_keel_blocks(
    keel_blocks: tuple[KeelBlockResult, ...], loaded_keel_blocks: tuple[KeelBlockResult, ...] | None
) -> tuple[KeelBlockResult, ...]:
    """Give the keel blocks of the plan with their loads, or without where data for these are lacking."""
    return loaded_keel_blocks or keel_blocks


@step_of(PRESSURE, "blocks.first", names=_PRESSURE)
def first_block_pressure(
    landing: BothLandings,
    placed_keel_blocks: tuple[PlacedBlock, ...],
    docking_plan: DockingPlan,
    particulars: Particulars,
) -> Uses:
    """Find the pressure on the block touched first, just before she lies on all: the whole upthrust is on it."""
    settling = landing.exact.settling
    one = first_block(placed_keel_blocks, settling.first_block)
    inputs = {"load": Given(settling.upthrust, show(settling.upthrust, "weight", digits=4), "docking.landing.upthrust")}
    inputs |= given_cap(one, particulars) | given_allowable(docking_plan)
    about = f"upthrust on the block touched first, at {one.position}, as she comes to lie on all"
    return Uses(about, inputs, docking_plan.here)


@step_of(ONE_OUT, "blocks.one-out", kept=True)
def one_block_out(
    placed_keel_blocks: tuple[PlacedBlock, ...],
    keel_blocks: tuple[KeelBlockResult, ...],
    docked_weight: Weighed,
    elastic_keel_loads: Standing | None,
    elastic_keel_inputs: dict[str, Given] | None,
    docking_plan: DockingPlan,
    particulars: Particulars,
) -> Uses | Absent:
    """Find the greatest pressure while one block is out: each that the plan takes out, or any, in turn."""
    if len(placed_keel_blocks) < 3:
        return Lacking("it needs three keel blocks or more in vessel/docking-plan.yaml")
    girder = elastic_keel_inputs if elastic_keel_loads is not None else None
    line = [
        {"x": one.x, "length": one.row.length.si, "width": bearing_width(particulars, one.row)}
        | ({"stiffness": found.stiffness} if girder is not None and found.stiffness is not None else {})
        for one, found in zip(placed_keel_blocks, keel_blocks, strict=True)
    ]
    inputs = {
        **docked_weight.given(digits=4),
        "blocks": Given(line, f"{len(line)} keel blocks", docking_plan.here),
    } | given_allowable(docking_plan)
    if docking_plan.taken_out:
        numbers = []
        for place in docking_plan.taken_out:
            number = _number_at(place, placed_keel_blocks)
            if number is None:
                why = f"`taken_out` names {place.text}, and no keel block stands there"
                return Failed(why, Notice("out-of-range", place.at, why, hints=("name a frame under a keel block",)))
            numbers.append(number)
        words = ", ".join(placed_keel_blocks[number - 1].position for number in numbers)
        inputs["out"] = Given(numbers, words, docking_plan.taken_out[0].at)
    if girder is not None:
        figures = {name: one.si for name, one in girder.items() if name != "blocks"}
        inputs["girder"] = Given(figures, "as of the elastic loads", "blocks.keel.elastic.loads")
        inputs |= estimates(docking_plan)
    return Uses("one keel block out, the others standing", inputs, docking_plan.here)


def _number_at(place: Position, blocks: tuple[PlacedBlock, ...]) -> int | None:
    """Give the number of the block at a place; None where no cap is there."""
    number, one = min(enumerate(blocks, start=1), key=lambda pair: abs(pair[1].x - place.x))
    return number if within(abs(one.x - place.x), one.row.length.si / 2) else None
