"""The density of the water in which she is docked."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.step import Uses, step, step_of
from tenderwright.calculations.tanks.water_density import METHOD as WATER
from tenderwright.calculations.value import Given, given
from tenderwright.model.common import Water
from tenderwright.model.facility import Facility
from tenderwright.model.lightship import Lightship
from tenderwright.quantities.display import show

SEA_WATER = Given(1025.0, "1.025 t/m3", "standard sea water, used where no density is given")


@step_of(WATER, "water.dock")
def dock_water_density(lightship: Lightship) -> Uses | Absent:
    """Find the density of the dock's water from salinity and temperature."""
    return _uses(lightship.water)


@step()
def dock_water(lightship: Lightship | None, dock_water_density: Mapping[str, float] | None) -> Given:
    """Give the density of the dock's water: as measured, from salinity and temperature, or of standard sea water."""
    return _given(lightship.water if lightship else None, dock_water_density, "water.dock.density")


@step_of(WATER, "facility.{}.water", each="facilities")
def facility_water_density(facility: Facility) -> Uses | Absent:
    """Find the density of a facility's water from salinity and temperature."""
    return _uses(facility.water)


@step(each="facilities")
def facility_water(facility: Facility, facility_water_density: Mapping[str, float] | None) -> Given:
    """Give the density of a facility's water."""
    return _given(facility.water, facility_water_density, f"facility.{facility.facility}.water.density")


def _uses(water: Water | None) -> Uses | Absent:
    if water is None or water.density is not None or water.salinity is None or water.temperature is None:
        return NotAsked("no salinity and temperature are given, or the density itself is")
    inputs = {"salinity": given(water.salinity), "temperature": given(water.temperature)}
    return Uses("density of the water at the dock", inputs, water.here)


def _given(water: Water | None, calculated: Mapping[str, float] | None, name: str) -> Given:
    if water is not None and water.density is not None:
        return given(water.density)
    if calculated is not None:
        return Given(calculated["density"], show(calculated["density"], "density in kilograms"), name)
    return Given(SEA_WATER.si, show(SEA_WATER.si, "density"), SEA_WATER.origin)
