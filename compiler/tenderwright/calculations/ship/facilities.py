"""Whether each facility takes her: length, breadth, water, weight, line load, and what its kind adds."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from tenderwright.calculations.blocks.bearing import Bearing
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.cradle.cars import Cradle
from tenderwright.calculations.cradle.line_load import LineLoad
from tenderwright.calculations.facility.clearances import IN_SERVICE
from tenderwright.calculations.facility.drafts import METHOD as DRAFTS
from tenderwright.calculations.facility.drafts import Drafts
from tenderwright.calculations.facility.fit import METHOD as FIT
from tenderwright.calculations.facility.floating_dock import METHOD as FLOATING_DOCK
from tenderwright.calculations.facility.floating_dock import DockLoads, bending_moment, design_length_share
from tenderwright.calculations.facility.shiplift import METHOD as SHIPLIFT
from tenderwright.calculations.facility.shiplift import OnPlatform
from tenderwright.calculations.facility.slipway import METHOD as SLIPWAY
from tenderwright.calculations.facility.slipway import Hauled
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.cradle import given_source
from tenderwright.calculations.ship.docking_condition import given_condition
from tenderwright.calculations.ship.keel import KeelLine, given_straight
from tenderwright.calculations.ship.keel_loads import estimates
from tenderwright.calculations.ship.shafts import not_placed, placed_propellers
from tenderwright.calculations.ship.weight import Weighed
from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked, Resting
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.uncertainty.afloat import HowSure
from tenderwright.calculations.value import Given, given
from tenderwright.calculations.verdict import Limit
from tenderwright.model.docking_plan import CitedLength, DockingPlan
from tenderwright.model.facility import Facility
from tenderwright.model.particulars import Particulars
from tenderwright.model.vessel import Appendage, Opening
from tenderwright.quantities.display import plainly, show
from tenderwright.quantities.quantity import Quantity

_DESIGNED = (
    "the capacity over the length for which such docks are in general designed (Lloyd's Register, Rules for Floating "
    "Docks and Dock Gates, July 2022, Pt 2 Ch 1 s.2.1.7; derived)"
)
_OF_KIND: dict[str, dict[str, bool]] = {
    "graving dock": {"has_sill": True, "lifts": False},
    "tidal grid": {"lifts": False},
    "boat hoist": {"hangs": True},
}
"""What follows for the limits from the kind of facility."""
_VERDICT = {"result": "result", "deciding": "deciding", "use": "use"}


@step_of(DRAFTS, "facility.{}.drafts", each="facilities")
def facility_drafts(
    facility: Facility,
    facility_water: Given,
    docking: FloatingPosition,
    buoyancy: Buoyancy,
    particulars: Particulars,
    keel_line: KeelLine,
    appendages: tuple[Appendage, ...],
    openings: tuple[Opening, ...],
) -> Uses:
    """Find how deep keel and appendages reach in the facility's water, in the docking condition."""
    inputs = reaching(docking, buoyancy, particulars, keel_line, appendages, openings) | {"density": facility_water}
    return Uses("docking condition, in the facility's water", inputs, facility.here, of=facility.name)


def reaching(
    docking: FloatingPosition,
    buoyancy: Buoyancy,
    particulars: Particulars,
    keel_line: KeelLine,
    appendages: tuple[Appendage, ...],
    openings: tuple[Opening, ...],
) -> dict[str, Given]:
    """Give what it takes to find how deep keel and appendages reach in the docking condition, but the water."""
    straight = particulars.keel.straight
    ends = (straight.from_, straight.to)
    heights = dict.fromkeys(show(keel_line.at(end.x), "centre") for end in ends)
    hanging = [
        {"x": end.x, "y": part.outreach.si if part.outreach else 0.0, "z": part.lowest.si}
        for part in appendages
        if part.lowest is not None
        for end in (part.extent.from_, part.extent.to)
    ] + [{"x": one.x, "y": abs(one.y), "z": one.lowest} for one in placed_propellers(particulars, openings)]
    left = ", ".join(one.name for one in not_placed(particulars, openings))
    heel = docking.heel or 0.0
    condition = given_condition("condition.docking", docking)
    inputs = buoyancy.given | {name: condition[name] for name in ("displacement", "lcg", "vcg")}
    inputs |= {
        "keel": Given(
            [{"x": end.x, "y": 0.0, "z": keel_line.at(end.x)} for end in ends],
            f"{straight.from_} to {straight.to}, {' and '.join(heights)} from the keel line",
            straight.here,
        ),
        "hanging": Given(
            hanging,
            f"{len(hanging)} points of appendages and propellers" + (f"; not the propeller of: {left}" if left else ""),
            "vessel/appendages.yaml, and shafts of vessel/particulars.yaml",
        ),
        "heel": Given(heel, show(heel, "angle", digits=4), "condition.docking.heel"),
    }
    return inputs


def widest(
    particulars: Particulars, appendages: tuple[Appendage, ...], openings: tuple[Opening, ...]
) -> tuple[float, str]:
    """Give the breadth over all that stands out of her sides, m, and what it is where it is more than her beam."""
    beam = particulars.dimensions.beam.si
    out = [(2 * part.outreach.si, part.name.lower()) for part in appendages if part.outreach is not None]
    out += [(2 * one.outreach, "her propellers") for one in placed_propellers(particulars, openings)]
    reach, over = max(out, default=(0.0, ""))
    return (reach, over) if reach > beam else (beam, "")


@step()
def floating_docks(facilities: tuple[Facility, ...]) -> dict[str, Facility]:
    """Give the floating docks."""
    return {one.facility: one for one in facilities if one.kind == "floating dock"}


@step_of(FLOATING_DOCK, "facility.{}.dock", names=_VERDICT | {"moment": "moment"}, each="floating_docks")
def floating_dock_loads(facility: Facility, docked_weight: Weighed, particulars: Particulars) -> Uses | Absent:
    """Find how she bends a floating dock, beside a ship for which such a dock is in general designed."""
    length, lift = facility.limits.length, facility.limits.lift
    if length is None or lift is None:
        return Lacking(f"it needs `length` and `lift` under `limits` in {facility.here.path}")
    overall = particulars.dimensions.length_overall
    design = bending_moment(lift.si, length.si, design_length_share(lift.si) * length.si)
    inputs = _weight(docked_weight) | {
        "dock_length": given(length),
        "ship_length": given(overall) if overall.si <= length.si else given(length),
        "capacity": given(lift),
        "greatest_moment": Given(
            design,
            show(design, "moment", digits=4),
            "that of its capacity over the length for which such docks are in general designed",
        ),
        "moment_source": Given(_DESIGNED, _DESIGNED, "Lloyd's Register, Rules for Floating Docks, July 2022"),
        "source": given_source(facility),
    }
    return Uses(facility.name, inputs, facility.here, of=facility.name)


@step()
def shiplifts(facilities: tuple[Facility, ...]) -> dict[str, Facility]:
    """Give the facilities with hoists."""
    return {one.facility: one for one in facilities if one.hoists is not None}


@step_of(SHIPLIFT, "facility.{}.lift", names=_VERDICT | {"reactions": "reactions"}, each="shiplifts", kept=True)
def shiplift_loads(
    facility: Facility, docked_weight: Weighed, particulars: Particulars, cradles: Each[Cradle]
) -> Uses | Absent:
    """Find what the hoists of a shiplift carry with her and the cradle."""
    hoists, cars = facility.hoists, facility.cars
    assert hoists is not None
    cradle = _of_cradle(cradles, facility)
    if isinstance(cradle, Absent):
        return cradle
    inputs = {
        "pairs": given(hoists.pairs, f"{hoists.pairs} pairs", facility.here),
        "spacing": given(hoists.spacing),
        "pair_capacity": given(hoists.pair_capacity),
        **docked_weight.given(digits=4, more=1),
        **given_straight(particulars),
        "source": given_source(facility),
    }
    if hoists.bay_mass is not None:
        inputs["bay_mass"] = given(hoists.bay_mass)
    if cradle is not None and cars is not None and cars.own_mass is not None and cars.own_mass.si:
        line = cars.own_mass.si / (cars.length.si + cars.gap.si)
        train, prefix = cradle.train, f"cradle.{facility.facility}"
        inputs |= {
            "cradle_line": Given(line, show(line, "line load", digits=4), cars.here),
            "cradle_aft": Given(train.start, show(train.start, "centre"), f"{prefix}.train-aft"),
            "cradle_forward": Given(train.end, show(train.end, "centre"), f"{prefix}.train-forward"),
        }
    return Uses(facility.name, inputs, facility.here, of=facility.name)


@step()
def slipways(facilities: tuple[Facility, ...]) -> dict[str, Facility]:
    """Give the facilities with a sloping track."""
    return {one.facility: one for one in facilities if one.slope is not None}


@step_of(SLIPWAY, "facility.{}.haul", names=_VERDICT | {"haul_force": "force"}, each="slipways")
def slipway_hauls(facility: Facility, docked_weight: Weighed, cradles: Each[Cradle]) -> Uses | Absent:
    """Find the force that hauls her up a slipway."""
    slope, cars = facility.slope, facility.cars
    assert slope is not None
    cradle = _of_cradle(cradles, facility)
    if isinstance(cradle, Absent):
        return cradle
    own = cars.own_mass.si if cars is not None and cars.own_mass is not None else 0.0
    number = len(cradle.train.cars) if cradle is not None else 0
    rise, _, run = slope.gradient.partition(":")
    origin = f"cradle.{facility.facility}.cars" if cradle is not None else "no cars are given"
    inputs = _weight(docked_weight) | {
        "rise": given(float(rise), slope.gradient, facility.here),
        "run": given(float(run), slope.gradient, facility.here),
        "cradle": Given(number * own, show(number * own, "weight", digits=4), origin),
        "source": given_source(facility),
    }
    if slope.haul is not None:
        inputs["haul"] = given(slope.haul)
    return Uses(facility.name, inputs, facility.here, of=facility.name)


@step_of(FIT, "facility.{}", names=_VERDICT, each="facilities")
def facility_fits(
    facility: Facility,
    facility_drafts: Drafts | Absent,
    docked_weight: Weighed,
    docking_line_load: LineLoad,
    particulars: Particulars,
    docking_plan: DockingPlan | None,
    keel_bearing: Bearing | None,
    cradles: Each[Cradle],
    floating_dock_loads: Each[DockLoads],
    shiplift_loads: Each[OnPlatform],
    slipway_hauls: Each[Hauled],
    how_sure: HowSure | Absent,
    appendages: tuple[Appendage, ...],
    openings: tuple[Opening, ...],
) -> Uses | Absent:
    """Judge a facility from the docking condition in its own water; without her drafts, by all but the water."""
    name = facility.facility
    for outcomes in (cradles, floating_dock_loads, shiplift_loads, slipway_hauls):
        absent = outcomes.absent.get(name)
        # What its basic limits lack as well is told there: the facility is then not known by them.
        if absent is not None and not isinstance(absent, (Lacking, NotAsked)):
            return Resting(absent.why)
    size = particulars.dimensions
    reach, over = widest(particulars, appendages, openings)
    bears = greatest_line_load(docking_line_load, keel_bearing, docking_plan)
    ship = visitor(particulars, docked_weight, facility_drafts, how_sure, reach) | bears
    weighs, draws = docked_weight.given(digits=4)["weight"], "draws what could not be calculated"
    if not isinstance(facility_drafts, Absent):
        draws = f"draws {show(facility_drafts.over_blocks, 'draft')} under the keel in the facility's water"
    breadth = f"{show(reach, 'centre')} over {over}" if over else f"{size.beam}"
    words = f"{size.length_overall} by {breadth}, {weighs.text}; {draws}"
    rests = f"{weighs.origin}, facility.{name}.drafts.over-blocks, facility.{name}.drafts.over-sill"
    known = "uncertainty.displacement, uncertainty.draft-aft, uncertainty.draft-forward, uncertainty.line-load"
    inputs = {
        "ship": Given(ship, words, f"{rests}, keel.docking-line-load.peak, blocks.keel.line-loads, {known}"),
        "berth": Given(_berth(facility, docking_plan), f"limits of {name}", facility.here),
        "clearances": given_clearances(docking_plan),
    }
    if name in cradles:
        inputs["cradle"] = _limits(cradles[name].verdict.limits, f"cradle.{name}.deciding")
    if name in floating_dock_loads:
        inputs["floating_dock"] = _limits(floating_dock_loads[name].limits, f"facility.{name}.dock.deciding")
    if name in shiplift_loads:
        inputs["shiplift"] = _limits(shiplift_loads[name].limits, f"facility.{name}.lift.deciding")
    if name in slipway_hauls:
        inputs["slipway"] = _limits(slipway_hauls[name].limits, f"facility.{name}.haul.deciding")
    return Uses(facility.name, inputs, facility.here, of=facility.name)


def visitor(
    particulars: Particulars, weighed: Weighed, drafts: Drafts | Absent, how_sure: HowSure | Absent, reach: float
) -> dict[str, Any]:
    """Give the ship as a facility sees her, but for her line load; `reach` is her breadth over all."""
    size = particulars.dimensions
    ship: dict[str, Any] = {"length": size.length_overall.si, "beam": reach, "weight": weighed.loading.mass}
    if not isinstance(drafts, Absent):
        ship |= {"draft_over_blocks": drafts.over_blocks, "draft_over_sill": drafts.over_sill}
    if size.air_draft is not None:
        ship["air_draft"] = size.air_draft.si
    if not isinstance(how_sure, Absent):
        ship |= {
            "weight_uncertainty": how_sure.u("displacement") or 0.0,
            "draft_uncertainty": max(how_sure.u("draft_aft") or 0.0, how_sure.u("draft_forward") or 0.0),
            "line_load_uncertainty": how_sure.u("line_load") or 0.0,
        }
    return ship


def greatest_line_load(whole: LineLoad, keel_bearing: Bearing | None, plan: DockingPlan | None) -> dict[str, Any]:
    """Give her greatest line load: on the whole keel, on the blocks under a rigid hull, and under an elastic one."""
    if keel_bearing is None or plan is None:
        return {"line_load": whole.peak}
    found: dict[str, Any] = {"line_load": max(whole.peak, keel_bearing.rigid_line_load or 0.0)}
    if plan.calculated_loads is not None:
        return found | {"line_load_estimate": plan.calculated_loads.line_load.si}
    if keel_bearing.elastic_line_load is None:
        return found
    return found | {"line_load_estimate": keel_bearing.elastic_line_load, "rests_on": estimates(plan)["rests_on"].si}


def given_clearances(plan: DockingPlan | None) -> Given:
    """Give the clearances of the docking plan, 0.3 m (common practice, no source) where it states none."""
    usual = IN_SERVICE

    def si(entry: CitedLength | None, otherwise: float) -> float:
        return otherwise if entry is None else entry.value.si

    ends = si(plan.ends if plan else None, usual.head)
    figures = {
        "blocks": si(plan.under_keel if plan else None, usual.blocks),
        "sill": si(plan.over_sill if plan else None, usual.sill),
        "head": ends,
        "entrance": ends,
        "side": si(plan.beside if plan else None, usual.side),
        "air": usual.air,
        "source": "clearances of the docking plan, each with its source" if plan else str(usual.source),
    }
    if plan is None:
        return Given(figures, f"{plainly(usual.side, 'clearance')} all round", str(usual.source))
    return Given(figures, "clearances of the docking plan", plan.here)


def _of_cradle(cradles: Each[Cradle], facility: Facility) -> Cradle | Absent | None:
    """Give the cradle of a facility: None where it has no cars."""
    absent = cradles.absent.get(facility.facility)
    return absent.passed_on() if absent is not None else cradles.get(facility.facility)


def _weight(docked: Weighed) -> dict[str, Given]:
    return {"weight": docked.given(digits=4)["weight"]}


def _limits(limits: Iterable[Limit], origin: str) -> Given:
    found = tuple(limits)
    return Given(found, f"{len(found)} limits", origin)


def _berth(facility: Facility, plan: DockingPlan | None) -> dict[str, Any]:
    """Give what the facility offers, its water less what the blocks of the plan stand higher than its own."""
    limits = facility.limits

    def si(quantity: Quantity | None) -> float | None:
        return quantity.si if quantity is not None else None

    blocks = si(limits.blocks)
    if blocks is not None and limits.block_height is not None and plan is not None and plan.block_height is not None:
        blocks -= max(0.0, plan.block_height.si - limits.block_height.si)
    offered = {
        "length": si(limits.length),
        "beam": si(limits.beam),
        "blocks": blocks,
        "lift": si(limits.lift),
        "line_load": si(limits.line_load),
        "sill": si(limits.sill),
        "air_draft": si(limits.air_draft),
    }
    known: dict[str, Any] = {name: figure for name, figure in offered.items() if figure is not None}
    known["source"] = given_source(facility).si
    return known | _OF_KIND.get(facility.kind, {})
