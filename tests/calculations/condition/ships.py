"""An invented ship with weights and tanks, for the tests of condition."""

from __future__ import annotations

from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.condition.target_trim import MovableTank
from tenderwright.calculations.tanks.polyhedron import from_hull
from tenderwright.calculations.tanks.sounding import Tank
from tests.calculations.hydrostatics.hulls import coaster

FORM = coaster()
WEIGHTS = [Weight("lightship", 430e3, 18.6, 0.0, 3.0), Weight("stores", 8e3, 27.0, 0.0, 3.6)]


def _load(name: str, density: float, share: float, x: tuple[float, float], **bounds: object) -> TankLoad:
    tank = Tank(from_hull(FORM, x, **bounds), 0.98)  # type: ignore[arg-type]
    return TankLoad(name, tank, density, share * tank.capacity * density)


FORE_PEAK = _load("fore peak", 1025.0, 0.3, (35.0, 39.0), top=4.0)
AFTER_PEAK = _load("after peak", 1025.0, 0.5, (0.0, 3.0), bottom=1.5, top=4.0)
FUEL_PORT = _load("fuel port", 880.0, 0.5, (13.0, 19.0), bottom=1.0, top=3.0, inboard=1.0, side="port")
FUEL_STARBOARD = _load("fuel starboard", 880.0, 0.5, (13.0, 19.0), bottom=1.0, top=3.0, inboard=1.0, side="starboard")
FRESH_PORT = _load("fresh port", 1000.0, 0.6, (22.0, 26.0), bottom=0.8, top=2.4, side="port")
FRESH_STARBOARD = _load("fresh starboard", 1000.0, 0.6, (22.0, 26.0), bottom=0.8, top=2.4, side="starboard")
TANKS = [FORE_PEAK, AFTER_PEAK, FUEL_PORT, FUEL_STARBOARD, FRESH_PORT, FRESH_STARBOARD]
LIQUIDS = ["sea water", "sea water", "gas oil", "gas oil", "fresh water", "fresh water"]


def movable(loads: list[TankLoad] = TANKS, liquids: list[str] = LIQUIDS) -> list[MovableTank]:
    return [
        MovableTank(load, liquid, 0.0, load.tank.capacity * load.density)
        for load, liquid in zip(loads, liquids, strict=True)
    ]
