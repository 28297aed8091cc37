"""The movements of liquid between the ship's movable tanks that reach the trim wanted for docking."""

from __future__ import annotations

from tenderwright.calculations.condition.ballast_for_trim import METHOD as TARGET_TRIM
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.condition.target_trim import MovableTank
from tenderwright.calculations.ship.buoyancy import Buoyancy
from tenderwright.calculations.ship.condition import given_weights
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.step import Uses, step_of
from tenderwright.calculations.value import Given, given
from tenderwright.model.lightship import Lightship
from tenderwright.model.tank import Tank

_KEPT = {name: name.replace("_", "-") for name in ("met", "moved", "changes")}


@step_of(TARGET_TRIM, "docking.trim", names=_KEPT, kept=True)
def trim_plan(
    lightship: Lightship,
    buoyancy: Buoyancy,
    tanks: tuple[Tank, ...],
    arrival_tanks: tuple[TankLoad, ...],
    docking_weights: list[Weight],
    dock_water: Given,
) -> Uses | Absent:
    """Find the least movement between movable tanks that gives the trim wanted and no list."""
    if lightship.docking is None:
        return Lacking("it needs `docking` in vessel/lightship.yaml, with the trim wanted")
    if buoyancy.estimated:
        return buoyancy.estimated
    if not arrival_tanks:
        return Lacking("it needs tanks with bounds in vessel/tanks.yaml")
    wanted = lightship.docking.trim
    named = {tank.tank: tank for tank in tanks}
    movable = ", ".join(tank.tank for tank in tanks if tank.movable) or "none"
    inputs = {
        **buoyancy.given,
        "weights": given_weights(docking_weights, lightship),
        "tanks": Given(
            [_movable(named[load.name], load) for load in arrival_tanks],
            f"movable: {movable}",
            ", ".join(f"tank.{load.name}.mass" for load in arrival_tanks),
        ),
        "trim": given(wanted),
        "density": dock_water,
        "upright": Given(True, "no list either", "the blocks are built for an upright ship"),
    }
    return Uses("between the tanks marked movable", inputs, wanted.at)


def _movable(tank: Tank, load: TankLoad) -> MovableTank:
    liquid = tank.contents.liquid if tank.contents.liquid != "none" else _usual(tank.use)
    most = load.tank.capacity * load.density if tank.movable else load.mass
    return MovableTank(load, liquid, 0.0 if tank.movable else load.mass, most)


def _usual(use: str) -> str:
    return {"ballast": "sea water", "fresh water": "fresh water"}.get(use, "none")
