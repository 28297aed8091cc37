"""How she lands: by the hand method before the tanks are moved, then with the hydrostatics read again at every step."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.calculations.condition.floating import FloatingPosition, floating_position
from tenderwright.calculations.docking_results import Stage
from tenderwright.calculations.hydrostatics.equilibrium import float_at_trim
from tenderwright.calculations.landing.curve import held_curve, landing_curve
from tenderwright.calculations.landing.entry_trim import METHOD as ENTRY_TRIM
from tenderwright.calculations.landing.exact import Lander, held_particulars, settle_exactly
from tenderwright.calculations.landing.held import Afloat, BlockLine, lever
from tenderwright.calculations.landing.landing import LARGE_SHARE
from tenderwright.calculations.landing.landing import METHOD as LANDING
from tenderwright.calculations.landing.settling import METHOD as SETTLING
from tenderwright.calculations.landing.settling import Landing, outputs_of, settle
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import given_form, tank_loads
from tenderwright.calculations.ship.block_places import keel_underside
from tenderwright.calculations.ship.docking_condition import block_line, docking_weights, lander, tank_states
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package
from tenderwright.quantities.display import show


def landing_estimate(package: Package, results: Results, record: Record) -> None:
    """Keep the landing by the hand method at the trim wanted, with weights and liquids as on arrival."""
    arrival, form, blocks = results.arrival, results.form, block_line(package, results)
    plan, lightship = package.docking_plan, package.lightship
    if arrival is None or form is None or blocks is None or plan is None or lightship is None:
        return
    wanted = lightship.docking.trim if lightship.docking else None
    loading, keel = arrival.loading, keel_underside(package)
    try:
        trim = wanted.si if wanted is not None else arrival.hydrostatics.trim
        h = float_at_trim(form, loading.mass / results.water_density, trim, results.water_density)
        afloat = Afloat(
            displacement=loading.mass,
            length=form.length,
            draft_aft=h.draft_aft - keel,
            draft_forward=h.draft_forward - keel,
            lcf=h.lcf,
            mass_per_immersion=h.mass_per_immersion,
            moment_to_change_trim=h.moment_to_change_trim(loading.vcg),
            km=h.km_transverse - keel,
            kg=loading.vcg - keel,
            free_surface_moment=loading.free_surface_moment,
        )
        found = settle(afloat, blocks)
    except OutOfRange as error:
        record.fail(SETTLING, "docking.estimate", str(error), plan.here)
        return
    results.docking.estimate = found
    inputs = _arrival_inputs(record) | _block_inputs(package, blocks)
    if wanted is not None:
        inputs["trim"] = given(wanted)
    about = "at the trim wanted, weights and liquids as on arrival; drafts above the underside of the keel"
    record.keep(SETTLING, "docking.estimate", about, inputs, outputs_of(found))


def landing(package: Package, results: Results, record: Record) -> None:
    """Keep the landing from the docking condition by both methods, the greatest entry trim, and the curves."""
    form, blocks, plan = results.form, block_line(package, results), package.docking_plan
    position = _docking_position(package, results, record)
    if form is None or blocks is None or plan is None or position is None:
        return
    docking = results.docking
    try:
        ship = lander(package, form, position, blocks, results.water_density)
        docking.exact, docking.held = settle_exactly(ship), settle(held_particulars(ship), blocks)
        docking.curve = landing_curve(ship)
        docking.held_curve = held_curve(held_particulars(ship), blocks, docking.curve.fall)
    except OutOfRange as error:
        record.fail(LANDING, "docking.landing", str(error), plan.here)
        return
    docking.stages = _stages(ship, docking.exact)
    share = docking.exact.settling.upthrust / ship.displacement
    outputs: dict[str, object] = {"upthrust_share": share, "hand_method_in_range": share <= LARGE_SHARE}
    outputs |= outputs_of(docking.exact) | outputs_of(docking.held, "_held")
    inputs = _condition_inputs(record, "condition.docking", package) | _block_inputs(package, blocks)
    about = "from the docking condition; drafts above the underside of the keel"
    record.keep(LANDING, "docking.landing", about, inputs, outputs)
    _greatest_trim(package, results, record, held_particulars(ship), blocks)


def _docking_position(package: Package, results: Results, record: Record) -> FloatingPosition | None:
    """Give the docking condition: with the tanks moved, or the weights of docking with the tanks as on arrival."""
    loads = tank_loads(package, results)
    if results.trim_plan is not None:
        changes = results.trim_plan.changes
        loads = [replace(load, mass=load.mass + change) for load, change in zip(loads, changes, strict=True)]
        position = results.trim_plan.position
    elif results.form is not None and results.arrival is not None and package.lightship is not None:
        try:
            position = floating_position(results.form, docking_weights(package), loads, results.water_density)
        except OutOfRange:
            return None  # told at the arrival condition, whose weights these are
    else:
        return None
    results.docking.position = position
    liquids = {t.tank: t.contents.liquid if t.contents.liquid != "none" else "sea water" for t in package.tanks}
    results.docking.tanks = tank_states(package, loads, liquids, position)
    return position


def _greatest_trim(package: Package, results: Results, record: Record, afloat: Afloat, blocks: BlockLine) -> None:
    plan = package.docking_plan
    assert plan is not None
    wanted = package.lightship.docking if package.lightship else None
    least = plan.least_gm or (wanted.least_gm if wanted else None)
    if least is None:
        return
    inputs = _condition_inputs(record, "condition.docking", package) | {"least_gm": given(least)}
    figures = {
        "displacement": afloat.displacement,
        "km": afloat.km,
        "kg": afloat.kg,
        "least_gm": least.si,
        "lever": lever(blocks, afloat),
        "moment_to_change_trim": afloat.moment_to_change_trim,
        "free_surface_moment": afloat.free_surface_moment,
        "length": afloat.length,
        "declivity": blocks.declivity,
    }
    try:
        outputs = ENTRY_TRIM.run(**figures)
    except OutOfRange as error:
        record.fail(ENTRY_TRIM, "docking.entry", str(error), least.at)
        return
    results.docking.greatest_trim = float(outputs["trim"])
    record.keep(ENTRY_TRIM, "docking.entry", "trim with which she may enter, docking condition", inputs, outputs)


def _stages(ship: Lander, found: Landing) -> tuple[Stage, ...]:
    """Give the levels of the water from the first touch to dry."""
    free = ship.under(0.0, 0.0)
    one, zero = found.settling, found.instability
    touch = Stage(
        "first block touched",
        one.water_at_touch,
        free.draft_aft - ship.keel,
        free.draft_forward - ship.keel,
        0.0,
        ship.stability(free).gm,
    )
    settled = Stage(
        "on all the blocks",
        one.water_at_touch - one.fall,
        one.draft_aft,
        one.draft_forward,
        one.upthrust,
        one.stability.gm,
    )
    lost = Stage(
        "stability lost without side blocks",
        one.water_at_touch - zero.fall,
        zero.draft_aft,
        zero.draft_forward,
        zero.upthrust,
        0.0,
    )
    dry = Stage("dry", 0.0, 0.0, 0.0, ship.displacement, None)
    order = (touch, settled, lost, dry) if zero.margin >= 0 else (touch, lost, settled, dry)
    return tuple(stage for stage in order if stage is not lost or zero.upthrust < 0.999 * ship.displacement)


def _arrival_inputs(record: Record) -> dict[str, Given]:
    return _named(record, "condition.arrival", ("displacement", "vcg", "free-surface-moment"))


def _condition_inputs(record: Record, prefix: str, package: Package) -> dict[str, Given]:
    names = ("displacement", "lcg", "vcg", "free-surface-moment")
    return {"offsets": given_form(package)} | _named(record, prefix, names)


def _named(record: Record, prefix: str, names: tuple[str, ...]) -> dict[str, Given]:
    found: dict[str, Given] = {}
    for name in names:
        value = record.values.get(f"{prefix}.{name}")
        if value is not None:
            found[name.replace("-", "_")] = given(value, show(float(value.si), value.unit, value.dimension))
    return found


def _block_inputs(package: Package, blocks: BlockLine) -> dict[str, Given]:
    plan = package.docking_plan
    assert plan is not None
    found = {
        "block_aft": Given(blocks.aft, f"{blocks.aft:.2f} m", plan.keel_blocks[0].here),
        "block_forward": Given(blocks.forward, f"{blocks.forward:.2f} m", plan.keel_blocks[-1].here),
    }
    if plan.declivity is not None:
        found["declivity"] = given(plan.declivity.value)
    keel = package.particulars.keel if package.particulars else None
    if keel is not None and keel.kind == "bar" and keel.depth is not None:
        found["keel"] = Given(-keel.depth.si, f"−{keel.depth}", keel.depth.at)
    return found
