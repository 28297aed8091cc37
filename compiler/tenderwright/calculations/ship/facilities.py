"""Whether each facility takes her: length, breadth, water, weight, line load, and what its kind adds."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.blocks.weight_curve import Segment
from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.cradle.cars import Limit
from tenderwright.calculations.cradle.line_load import LineLoad, line_load
from tenderwright.calculations.docking_results import FacilityFit
from tenderwright.calculations.facility.clearances import IN_SERVICE, Clearances
from tenderwright.calculations.facility.fit import METHOD as FIT
from tenderwright.calculations.facility.fit import Berth, Visitor, facility_fit
from tenderwright.calculations.facility.floating_dock import bending_moment, design_length_share, floating_dock_limits
from tenderwright.calculations.facility.shiplift import Platform, lift, shiplift_limits
from tenderwright.calculations.facility.slipway import haul_force, slipway_limits, slope_of
from tenderwright.calculations.facility.verdict import cradle_limits
from tenderwright.calculations.facility.water import deepest
from tenderwright.calculations.hydrostatics.equilibrium import float_at
from tenderwright.calculations.hydrostatics.upright import Hydrostatics
from tenderwright.calculations.method import Citation, OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import keel_underside, water_given
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.facility import Facility
from tenderwright.model.package import Package
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity


def facility_fits(package: Package, results: Results, record: Record) -> None:
    """Keep the verdict on every facility, from the docking condition in the facility's own water."""
    position, ship = results.docking.position, package.particulars
    if position is None or ship is None or results.form is None:
        return
    straight = ship.keel.straight
    for facility in package.facilities:
        prefix = f"facility.{facility.facility}"
        try:
            load = line_load(position.loading.mass, position.loading.lcg, straight.from_.x, straight.to.x)
            density = water_given(results, facility.facility)
            loading = position.loading
            afloat = float_at(results.form, loading.mass, loading.lcg, loading.vcg, density.si)
            visitor = _visitor(package, position, afloat, load)
            further = [*_further(package, facility, results, load)]
            found = facility_fit(visitor, _berth(package, facility), clearances_of(package), further)
        except OutOfRange as error:
            record.fail(FIT, prefix, f"{facility.name}: {error}", facility.here)
            continue
        results.docking.facilities[facility.facility] = FacilityFit(
            facility.facility, found.fits, found.limits, found.deciding
        )
        inputs = _inputs(package, facility, visitor, density, record)
        outputs = {"result": found.words, "deciding": found.deciding.name, "use": found.deciding.use}
        record.keep(FIT, prefix, facility.name, inputs, outputs)


def clearances_of(package: Package) -> Clearances:
    """Give the clearances of the docking plan, 0.3 m (common practice, no source) where it states none."""
    plan = package.docking_plan
    if plan is None:
        return IN_SERVICE

    def si(entry: object, usual: float) -> float:
        value = getattr(entry, "value", None)
        return value.si if isinstance(value, Quantity) else usual

    ends = si(plan.ends, IN_SERVICE.head)
    return Clearances(
        blocks=si(plan.under_keel, IN_SERVICE.blocks),
        sill=si(plan.over_sill, IN_SERVICE.sill),
        head=ends,
        entrance=ends,
        side=si(plan.beside, IN_SERVICE.side),
        air=IN_SERVICE.air,
        source=Citation("Clearances of the docking plan, each with its source", "", "common practice, no source"),
    )


def _visitor(package: Package, position: FloatingPosition, afloat: Hydrostatics, load: LineLoad) -> Visitor:
    ship = package.particulars
    assert ship is not None
    keel, z = ship.keel.straight, keel_underside(package)
    points = [(keel.from_.x, 0.0, z), (keel.to.x, 0.0, z)]
    hanging = [
        (end.x, part.outreach.si if part.outreach else 0.0, part.lowest.si)
        for part in package.appendages
        if part.lowest is not None
        for end in (part.extent.from_, part.extent.to)
    ]
    heel = position.heel or 0.0
    aft, forward, length = afloat.draft_aft, afloat.draft_forward, afloat.length
    return Visitor(
        length=ship.dimensions.length_overall.si,
        beam=ship.dimensions.beam.si,
        weight=position.loading.mass,
        draft_over_blocks=deepest(aft, forward, length, points, heel),
        draft_over_sill=deepest(aft, forward, length, points + hanging, heel),
        line_load=load.peak,
        air_draft=ship.dimensions.air_draft.si if ship.dimensions.air_draft else None,
    )


def _berth(package: Package, facility: Facility) -> Berth:
    """Give what the facility offers, its water less what the blocks of the plan stand higher than its own."""
    limits, plan = facility.limits, package.docking_plan
    blocks = limits.blocks.si if limits.blocks else None
    if blocks is not None and limits.block_height is not None and plan is not None and plan.block_height is not None:
        blocks -= max(0.0, plan.block_height.si - limits.block_height.si)

    def si(quantity: Quantity | None) -> float | None:
        return quantity.si if quantity is not None else None

    return Berth(
        length=si(limits.length),
        beam=si(limits.beam),
        blocks=blocks,
        lift=si(limits.lift),
        line_load=si(limits.line_load),
        sill=si(limits.sill),
        has_sill=facility.kind == "graving dock",
        air_draft=si(limits.air_draft),
    )


def _further(package: Package, facility: Facility, results: Results, load: LineLoad) -> Iterator[Limit]:
    position, ship = results.docking.position, package.particulars
    assert position is not None
    assert ship is not None
    weight = position.loading.mass
    cradle = facility.cars
    fit = results.cradles.get(facility.facility)
    if fit is not None:
        yield from cradle_limits(fit)
    own = cradle.own_mass.si if cradle is not None and cradle.own_mass is not None else 0.0
    cars = len(fit.train.cars) if fit is not None else 0
    if facility.kind == "floating dock" and facility.limits.length is not None and facility.limits.lift is not None:
        dock, capacity = facility.limits.length.si, facility.limits.lift.si
        design = bending_moment(capacity, dock, design_length_share(capacity) * dock)
        yield from floating_dock_limits(weight, dock, min(dock, ship.dimensions.length_overall.si), design)
    if facility.hoists is not None:
        hoists = facility.hoists
        platform = Platform(
            hoists.pairs, hoists.spacing.si, hoists.pair_capacity.si, hoists.bay_mass.si if hoists.bay_mass else None
        )
        loads = [Segment(load.contact_aft, load.contact_forward, load.load_aft, load.load_forward)]
        if cradle is not None and own and fit is not None:
            per_length = own / (cradle.length.si + cradle.gap.si)
            loads.append(Segment(fit.train.start, fit.train.end, per_length, per_length))
        yield from shiplift_limits(platform, lift(platform, loads), sum(one.total for one in loads))
    if facility.slope is not None:
        rise, _, run = facility.slope.gradient.partition(":")
        force = haul_force(weight, cars * own, slope_of(float(rise), float(run)))
        yield from slipway_limits(force, facility.slope.haul.si if facility.slope.haul else None)


def _inputs(package: Package, facility: Facility, visitor: Visitor, density: Given, record: Record) -> dict[str, Given]:
    weight = record.values.get("condition.docking.displacement")
    plan = package.docking_plan
    assert package.particulars is not None
    inputs = {
        "length": given(package.particulars.dimensions.length_overall),
        "beam": given(package.particulars.dimensions.beam),
        "weight": given(weight, show(visitor.weight, "t", "mass"))
        if weight is not None
        else Given(visitor.weight, show(visitor.weight, "t", "mass"), "condition on arrival"),
        "draft": Given(
            visitor.draft_over_blocks,
            f"{visitor.draft_over_blocks:.2f} m under the keel, in the facility's water",
            "condition.docking.draft-aft",
        ),
        "density": density,
        "facility": Given(None, f"limits of {facility.facility}", facility.here),
    }
    if plan is not None:
        inputs["clearances"] = Given(None, "clearances of the docking plan", plan.here)
    return inputs
