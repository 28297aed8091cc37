"""The density of the water in which she is docked."""

from __future__ import annotations

from tenderwright.calculations.tanks.water_density import METHOD as WATER
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.common import Water

SEA_WATER = Given(1025.0, "1.025 t/m3", "standard sea water, used where no density is given")


def water_given(water: Water | None, prefix: str, record: Record) -> Given:
    """Give the density of some water: as measured, or from salinity and temperature, or standard sea water."""
    if water is None:
        return SEA_WATER
    if water.density is not None:
        return given(water.density)
    if water.salinity is None or water.temperature is None:
        return SEA_WATER
    inputs = {"salinity": given(water.salinity), "temperature": given(water.temperature)}
    outputs = record.run(WATER, prefix, "density of the water at the dock", inputs, water.here)
    if outputs is None:
        return SEA_WATER
    density = record.values[f"{prefix}.density"]
    return given(density, f"{density.si:.1f} kg/m3")
