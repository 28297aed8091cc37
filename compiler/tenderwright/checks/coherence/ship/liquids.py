"""Waters and oils have the densities, salinities and temperatures that there are.

Ground: EOS-80 for water of a salinity and temperature (UNESCO technical papers in marine science 44); densities of fuel
by ISO 8217, of other oils common practice, no source. A hydrometer is read to 1 kg/m3, and 4 kg/m3 is beyond a slip of
reading.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.water_density import water_density
from tenderwright.checks.coherence.ship.held import held, like
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.common import Water
from tenderwright.notices import Notice
from tenderwright.quantities.display import plainly, show

CODE = "liquid-unlike"
DENSITIES = {
    "sea water": (1004.0, 1032.0),
    "fresh water": (990.0, 1004.0),
    "diesel oil": (800.0, 900.0),
    "heavy oil": (880.0, 1015.0),
    "lubricating oil": (840.0, 960.0),
    "oily water": (850.0, 1032.0),
}
"""Least and most [kg/m3] of each liquid; brackish water goes by the name of sea water down to 1004."""


def check(ship: Ship) -> Iterator[Notice]:
    """Report densities that are not those of the liquid, and waters that are none."""
    for tank in ship.package.tanks:
        contents = tank.contents
        if contents.liquid in DENSITIES:
            low, high = DENSITIES[contents.liquid]
            against = f"{contents.liquid} is from {low:.0f} to {show(high, 'density in kilograms', more=-1)}"
            what = f"density of what is in tank `{tank.tank}`"
            yield from held(CODE, what, contents.density, low, high, against)
    lightship = ship.package.lightship
    if lightship is not None and lightship.water is not None:
        yield from _water("at the dock", lightship.water)
    for facility in ship.package.facilities:
        if facility.water is not None:
            yield from _water(f"at `{facility.facility}`", facility.water)


def _water(where: str, water: Water) -> Iterator[Notice]:
    against = "the sea has no more than 42 g/kg"
    salt = list(held(CODE, f"salinity {where}", water.salinity, 0.0, 42.0, against))
    against = "water afloat is from -2 to 35 degC"
    warm = list(held(CODE, f"temperature of the water {where}", water.temperature, -2.0, 35.0, against))
    yield from (*salt, *warm)
    if salt or warm or water.density is None:
        return
    if water.salinity is not None:
        degrees = water.temperature.si if water.temperature is not None else 10.0
        try:
            found = water_density(water.salinity.si, degrees)["density"]
        except OutOfRange:
            return
        room = 4.0 if water.temperature is not None else 8.0
        against = f"water of {water.salinity} at {plainly(degrees, 'temperature')} has {like(found, water.density, 4)}"
        yield from held(CODE, f"density of the water {where}", water.density, found - room, found + room, against)
    else:
        against = "water in which a ship floats is from 995 to 1032 kg/m3"
        yield from held(CODE, f"density of the water {where}", water.density, 995.0, 1032.0, against)
