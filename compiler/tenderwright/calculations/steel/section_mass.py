"""Mass of sections by their profile."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.steel.plate_mass import STEEL_DENSITY
from tenderwright.quantities.display import plainly


def flat_bar_area(width: float, thickness: float) -> float:
    """Find the cross-section of a flat bar, m²: b t, in m. Source: derived. Raises OutOfRange."""
    _require(width=width, thickness=thickness)
    return width * thickness


def angle_area(leg: float, other_leg: float, thickness: float) -> float:
    """Find the cross-section of an angle, m²: (a + b - t) t, in m; root and toe radii left out.

    Source: derived. Raises OutOfRange for a thickness not less than both legs.
    """
    _require(leg=leg, other_leg=other_leg, thickness=thickness)
    if thickness >= min(leg, other_leg):
        raise OutOfRange(f"an angle {plainly(thickness, 'centre')} thick is thicker than its leg is wide")
    return (leg + other_leg - thickness) * thickness


def flanged_area(depth: float, flange: float, web: float, flange_thickness: float, flanges: int) -> float:
    """Find the cross-section of a tee (one flange) or of a channel or beam (two), m².

    Formula: n b t_f + (h - n t_f) t_w; depth h over all, flange width b, thicknesses t_w and t_f in m; radii
    left out. Source: derived. Raises OutOfRange for flanges that fill the depth or are not one or two.
    """
    _require(depth=depth, flange=flange, web=web, flange_thickness=flange_thickness)
    if flanges not in (1, 2):
        raise OutOfRange(f"a section has one or two flanges, got {flanges}")
    if flanges * flange_thickness >= depth:
        raise OutOfRange("the flanges are thicker than the section is deep")
    return flanges * flange * flange_thickness + (depth - flanges * flange_thickness) * web


def round_bar_area(diameter: float) -> float:
    """Find the cross-section of a round bar, m²: pi d²/4, in m. Source: derived. Raises OutOfRange."""
    _require(diameter=diameter)
    return 0.25 * math.pi * diameter**2


def section_mass(area: float, length: float, density: float = STEEL_DENSITY) -> float:
    """Find the mass of a length of section, kg: A l rho, in m², m and kg/m³.

    A bulb flat has no formula here: take its area from the maker's table. Source: derived. Raises OutOfRange.
    """
    _require(area=area, density=density)
    if not (math.isfinite(length) and length >= 0.0):
        raise OutOfRange(f"the length of a section cannot be less than nothing, got {plainly(length, 'centre')}")
    return area * length * density


def _require(**dimensions: float) -> None:
    for name, value in dimensions.items():
        if not (math.isfinite(value) and value > 0.0):
            raise OutOfRange(f"the {name.replace('_', ' ')} of a section must be more than nothing, got {value:g}")


_AREAS: Mapping[str, Any] = {
    "flat bar": (flat_bar_area, ("width", "thickness"), {}),
    "angle": (angle_area, ("leg", "other_leg", "thickness"), {}),
    "tee": (flanged_area, ("depth", "flange", "web", "flange_thickness"), {"flanges": 1}),
    "channel": (flanged_area, ("depth", "flange", "web", "flange_thickness"), {"flanges": 2}),
    "beam": (flanged_area, ("depth", "flange", "web", "flange_thickness"), {"flanges": 2}),
    "round bar": (round_bar_area, ("diameter",), {}),
}
"""By shape: its area, the dimensions that it asks for, and what is fixed."""


def _kernel(shape: str, length: float, density: float = STEEL_DENSITY, **dimensions: float) -> Mapping[str, float]:
    area_of, names, fixed = _AREAS[shape]
    if set(dimensions) != set(names):
        raise OutOfRange(f"of a section of shape {shape} give {', '.join(names)}, and no other dimension")
    area = area_of(**dimensions, **fixed)
    mass = section_mass(area, length, density)
    return {"area": area, "mass": mass, "mass_per_length": area * density}


METHOD = Method(
    name="steel.section-mass",
    title="Mass of a section by its profile",
    formula="m = A l ρ; flat b t; angle (a + b − t) t; flanged n b t_f + (h − n t_f) t_w; round π d²/4",
    source=Citation("Geometry; radii left out", standing="derived"),
    valid="plain sections without their radii; a bulb flat has no formula here, take it from the maker's table",
    inputs={
        "shape": {"type": "string", "enum": list(_AREAS), "description": "Shape of the section."},
        "length": quantity("length", "Length of the section."),
        "width": quantity("length", "Width of a flat bar.", "100 mm"),
        "thickness": quantity("length", "Thickness of a flat bar or an angle."),
        "leg": quantity("length", "Leg of an angle."),
        "other_leg": quantity("length", "Its other leg."),
        "depth": quantity("length", "Depth over all of a tee, channel or beam.", "200 mm"),
        "flange": quantity("length", "Width of the flange.", "75 mm"),
        "web": quantity("length", "Thickness of the web.", "8 mm"),
        "flange_thickness": quantity("length", "Thickness of the flange.", "11 mm"),
        "diameter": quantity("length", "Diameter of a round bar.", "25 mm"),
        "density": quantity("density", "Density of the metal; steel where left out.", "7850 kg/m3"),
    },
    outputs=(
        Symbol("area", "cross-section", "area", "cm2"),
        Symbol("mass", "mass of the section", "mass", "kg"),
        Symbol("mass_per_length", "mass per length", "line_load", "kg/m"),
    ),
    kernel=_kernel,
    example={"shape": "angle", "length": "2.4 m", "leg": "150 mm", "other_leg": "90 mm", "thickness": "10 mm"},
    optional=frozenset(
        {
            "width",
            "thickness",
            "leg",
            "other_leg",
            "depth",
            "flange",
            "web",
            "flange_thickness",
            "diameter",
            "density",
        }
    ),
)
