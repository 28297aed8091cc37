"""The list of every method that `reckon` runs alone."""

from __future__ import annotations

from functools import cache
from importlib import import_module

from tenderwright.calculations.method import Method

_MODULES = (
    "anodes.mass",
    "coatings.abrasive",
    "coatings.containers",
    "coatings.grades",
    "coatings.hull_area_formulas",
    "coatings.patch_area",
    "coatings.profile_fill",
    "coatings.scheme",
    "coatings.spreading",
    "coatings.stiffened_area",
    "coatings.stripe",
    "coatings.volume",
    "coatings.wet_film",
    "condition.floating",
    "condition.ballast_for_trim",
    "cradle.cars",
    "cradle.line_load",
    "hydrostatics.band_area",
    "hydrostatics.block_coefficient",
    "hydrostatics.denny",
    "hydrostatics.holtrop_mennen",
    "hydrostatics.simpson",
    "hydrostatics.upright",
    "hydrostatics.wetted_surface",
    "steel.man_hours",
    "steel.plate_mass",
    "steel.pound_plate",
    "steel.rivet",
    "tanks.dock_water_allowance",
    "tanks.free_surface",
    "tanks.sounding_volume",
    "tanks.table_volume",
    "tanks.trim_correction",
    "tanks.water_density",
    "tanks.wedge",
)


@cache
def methods() -> dict[str, Method]:
    """Give every method by name, in order of the names."""
    found: list[Method] = [import_module(f"tenderwright.calculations.{module}").METHOD for module in _MODULES]
    return {method.name: method for method in sorted(found, key=lambda method: method.name)}
