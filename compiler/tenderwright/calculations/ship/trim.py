"""The movements of liquid between the ship's movable tanks that reach the trim wanted for docking."""

from __future__ import annotations

from tenderwright.calculations.condition.floating import METHOD as FLOATING
from tenderwright.calculations.condition.target_trim import MovableTank, target_trim
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.adapter import condition_outputs, tank_loads
from tenderwright.calculations.ship.docking_condition import docking_weights
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.package import Package


def trim_plan(package: Package, results: Results, record: Record) -> None:
    """Find the least movement between movable tanks that gives the trim wanted, and the condition it leads to."""
    lightship, form = package.lightship, results.form
    if lightship is None or lightship.docking is None or form is None or results.arrival is None:
        return
    wanted = lightship.docking.trim
    named = {tank.tank: tank for tank in package.tanks}
    tanks = []
    for load in tank_loads(package, results):
        tank = named[load.name]
        liquid = tank.contents.liquid if tank.contents.liquid != "none" else _usual(tank.use)
        most = load.tank.capacity * load.density if tank.movable else load.mass
        tanks.append(MovableTank(load, liquid, 0.0 if tank.movable else load.mass, most))
    try:
        plan = target_trim(form, docking_weights(package), tanks, wanted.si, results.water_density, upright=True)
    except OutOfRange as error:
        record.fail(FLOATING, "condition.docking", str(error), wanted.at)
        return
    results.trim_plan = plan
    inputs = {
        "trim": given(wanted),
        "tanks": Given(
            None,
            ", ".join(t.tank for t in package.tanks if t.movable) or "none",
            "movable in vessel/tanks.yaml",
        ),
        "arrival": given(record.values["condition.arrival.trim"], f"{results.arrival.hydrostatics.trim:.3f} m"),
    }
    outputs = condition_outputs(plan.position)
    record.keep(FLOATING, "condition.docking", "with the tanks moved for docking", inputs, outputs)


def _usual(use: str) -> str:
    return {"ballast": "sea water", "fresh water": "fresh water"}.get(use, "none")
