"""An anode weighs what its size weighs, and is made and loaded as anodes are.

Ground: densities of the alloys (handbook figures, from memory); capacities and current densities with wide room about
those of DNV-RP-B401 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.coherence.ship.held import FRAME, LOOK, held, held_number
from tenderwright.checks.coherence.ship.ship import Ship
from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.vessel import Anode
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "beyond-usual"
_DENSITIES = {"zinc": 7140.0, "aluminium": 2750.0, "magnesium": 1770.0}
_CAPACITIES = {"zinc": (650.0, 850.0), "aluminium": (1200.0, 2900.0), "magnesium": (900.0, 1400.0)}


def check(ship: Ship) -> Iterator[Notice]:
    """Report anodes whose mass is not that of their size, and duties that no anode has."""
    for anode in ship.package.anodes:
        yield from _mass(anode)
    condition = ship.package.condition
    if condition is not None and condition.anodes is not None:
        yield from _duty(ship, condition.anodes)

    fitted = len(ship.package.anodes)
    for docking in ship.package.history:
        for found in docking.anodes:
            if fitted and found.renewed is not None and found.renewed > max(4 * fitted, 12):
                message = (
                    f"{found.renewed} anodes were renewed at {docking.place or docking.yard}, and she has {fitted}"
                )
                yield Notice(CODE, docking.here, message, hints=("look at the number",))


def _mass(anode: Anode) -> Iterator[Notice]:
    what = f"mass of anode `{anode.anode}`"
    low, high = 0.2, 300.0
    against = "one is from 0.2 to 300 kg"
    length, width, thickness = anode.length, anode.width, anode.thickness
    if length is not None and width is not None and thickness is not None:
        cast = length.si * width.si * thickness.si * _DENSITIES.get(anode.alloy, 7140.0)
        low, high = 0.5 * cast, 1.3 * cast
        against = f"{anode.alloy} of {length} by {width} by {thickness} weighs {show(cast, 'small part', digits=2)}"
    yield from held(CODE, what, anode.mass, low, high, against)


def _duty(ship: Ship, duty: AnodeDuty) -> Iterator[Notice]:
    if duty.strip is not None and duty.strip.from_.x >= duty.strip.to.x:
        message = f"the strip for anodes runs from {duty.strip.from_} to {duty.strip.to}, which does not run forward"
        yield Notice(CODE, duty.strip.here, message, hints=(FRAME,))
    alloys = {anode.alloy for anode in ship.package.anodes}
    if len(alloys) == 1:
        alloy = alloys.pop()
        low, high = _CAPACITIES.get(alloy, (500.0, 3000.0))
        against = f"{alloy} gives from {low:.0f} to {high:.0f} A h/kg"
        yield from held_number(CODE, "capacity of the anodes", duty.capacity, duty.here, low, high, against)
    lightship = ship.package.lightship
    salt = lightship.water.salinity.si if lightship and lightship.water and lightship.water.salinity else None
    low, high = (0.15, 200.0) if salt is None or salt < 1 else (0.15, 25.0 / salt)
    against = f"water of {salt:g} g/kg has" if salt is not None else "water has"
    against += f" from {low:g} to {high:.2g} ohm m"
    yield from held_number(CODE, "resistivity of the water", duty.resistivity, duty.here, low, high, against)
    against = "from 50 % to 95 % of an anode can be used"
    yield from held(CODE, "utilisation of the anodes", duty.utilisation, 0.5, 0.95, against)
    for surface in duty.surfaces:
        what = f"current density of `{surface.name}`"
        against = "bare steel in the sea takes from 20 to 500 mA/m2"
        for name, density in (("initial", surface.initial), ("mean", surface.mean), ("final", surface.final)):
            yield from held(CODE, f"{name} {what}", density, 0.02, 0.5, against)
        for name, density in (("initial", surface.initial), ("final", surface.final)):
            if density.si < surface.mean.si:
                message = f"{name} {what} is {density}, and the mean is {surface.mean}: it is least in between"
                yield Notice(CODE, density.at, message, hints=(LOOK,))
        against = "a coating begins with no more than 0.1 bare"
        yield from held_number(CODE, f"breakdown a of `{surface.name}`", surface.a, surface.here, 0, 0.1, against)
        against = "no more than 0.06 a year comes to it"
        yield from held_number(CODE, f"breakdown b of `{surface.name}`", surface.b, surface.here, 0, 0.06, against)
        if ship.shell is not None:
            most = ship.shell.length * (ship.shell.beam + 2 * ship.shell.depth)
            against = f"her whole shell has about {show(most, 'area', more=-1)}"
            yield from held(CODE, f"area of `{surface.name}`", surface.area, 0.0, most, against)
