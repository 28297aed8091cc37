"""Mass of plate, with the densities that must not be mixed."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Literal

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import plainly

_POUND = 0.45359237
_FOOT = 0.3048
_INCH = 0.0254

STEEL_DENSITY = 7850.0
"""Mild steel, kg/m³, the metric convention: 7.85 kg per m² and mm."""

POUND_PLATE_STEEL_DENSITY = 40.8 * _POUND / (_FOOT**2 * _INCH)
"""Steel by the pound-plate rule of 40.8 lb/ft² per inch (489.6 lb/ft³), 7842.6 kg/m³."""

WROUGHT_IRON_DENSITY = 40.0 * _POUND / (_FOOT**2 * _INCH)
"""Wrought iron by the rule of 40 lb/ft² per inch (480 lb/ft³), 7688.9 kg/m³ (from memory)."""

PlateMetal = Literal["steel", "pound-plate steel", "wrought iron"]

DENSITIES: dict[PlateMetal, float] = {
    "steel": STEEL_DENSITY,
    "pound-plate steel": POUND_PLATE_STEEL_DENSITY,
    "wrought iron": WROUGHT_IRON_DENSITY,
}


def plate_mass(area: float, thickness: float, density: float = STEEL_DENSITY) -> float:
    """Find the mass of a plate, kg.

    Formula: m = A t rho; for steel m[kg] = A[m²] t[mm] 7.85.
    Symbols: area in m², thickness in m, density in kg/m³.
    Source: Pressure Vessel Design Manual, Table 2-18 (40.8 lb/ft² per inch); 7850 kg/m³ is convention.
    Raises OutOfRange.
    """
    for name, value in (("area", area), ("thickness", thickness)):
        if not (math.isfinite(value) and value >= 0.0):
            raise OutOfRange(f"the {name} of a plate cannot be less than nothing, got {value:g}")
    if not (math.isfinite(density) and density > 0.0):
        raise OutOfRange(f"the density must be more than nothing, got {plainly(density, 'density in kilograms')}")
    return area * thickness * density


def _kernel(area: float, thickness: float, metal: PlateMetal = "steel") -> Mapping[str, float]:
    density = DENSITIES[metal]
    return {
        "mass": plate_mass(area, thickness, density),
        "mass_per_area": thickness * density,
        "density": density,
    }


METHOD = Method(
    name="steel.plate-mass",
    title="Mass of plate",
    formula="m = A · t · ρ",
    source=Citation("Pressure Vessel Design Manual", "Table 2-18, for 40.8 lb/ft² per inch"),
    valid="nominal thickness; plate as rolled may be several per cent heavier",
    inputs={
        "area": quantity("area", "Area of plate."),
        "thickness": quantity("length", "Thickness of plate."),
        "metal": {
            "type": "string",
            "enum": ["steel", "pound-plate steel", "wrought iron"],
            "description": "steel (7850 kg/m3) unless given; 40.8 or 40 lb/ft2 per inch for the others.",
        },
    },
    outputs=(
        Symbol("mass", "mass of the plate", "mass", "kg"),
        Symbol("mass_per_area", "mass per area", "area_density", "kg/m2"),
        Symbol("density", "density used", "density", "kg/m3"),
    ),
    kernel=_kernel,
    example={"area": "3 m2", "thickness": "10 mm"},
    optional=frozenset({"metal"}),
    cautions=("the density of wrought iron is from memory",),
)
