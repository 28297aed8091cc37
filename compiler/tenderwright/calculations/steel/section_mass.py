"""Mass of sections by their profile."""

from __future__ import annotations

import math

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.plate_mass import STEEL_DENSITY


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
        raise OutOfRange(f"an angle {thickness:g} m thick is thicker than its leg is wide")
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
        raise OutOfRange(f"the length of a section cannot be less than nothing, got {length:g} m")
    return area * length * density


def _require(**dimensions: float) -> None:
    for name, value in dimensions.items():
        if not (math.isfinite(value) and value > 0.0):
            raise OutOfRange(f"the {name.replace('_', ' ')} of a section must be more than nothing, got {value:g}")
