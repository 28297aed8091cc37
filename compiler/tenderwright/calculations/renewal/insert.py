"""Steel of an insert: area with rounded corners, mass with mill tolerance, and length of weld."""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.renewal.outlines import LEAST_SIZE
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import number, quantity
from tenderwright.calculations.steel.plate_mass import STEEL_DENSITY, plate_mass
from tenderwright.quantities.display import plainly

CORNER_THICKNESSES = 5.0
"""Radius of a corner, of the thickness of the plate."""
CORNER_SOURCE = Citation("IACS Recommendation 47", "Part B, R = 5 t", standing="from memory")

_INCH = 0.0254
_OVERWEIGHT = ((0.125, 0.1075), (0.5, 0.045), (1.0, 0.03))
_ROUND_OFF = 1e-9

OVERWEIGHT_SOURCE = Citation("Pressure Vessel Design Manual", "Table 2-18, mill overweight")


class Insert(Struct, frozen=True):
    """The steel of one insert."""

    length: float
    breadth: float
    thickness: float
    radius: float
    """Radius of its corners, m."""
    area: float
    """m², corners rounded."""
    mass: float
    """kg, with mill tolerance."""
    weld: float
    """Length round it, m."""


def mill_overweight(thickness: float) -> float:
    """Give what plate may weigh over its nominal mass, as a fraction, by its thickness in m.

    Three rows of the source, 10.75 % at 1/8 in, 4.5 % at 1/2 in and 3 % at 1 in and more, with straight lines
    between (derived). Source: `OVERWEIGHT_SOURCE`. Raises OutOfRange.
    """
    if not (math.isfinite(thickness) and thickness > 0.0):
        raise OutOfRange(f"the thickness of the plate must be more than nothing, got {plainly(thickness, 'centre')}")
    inches, shares = zip(*_OVERWEIGHT, strict=True)
    return float(np.interp(thickness / _INCH, inches, shares))


def insert_steel(
    length: float,
    breadth: float,
    thickness: float,
    tolerance: float = 0.0,
    density: float = STEEL_DENSITY,
    corner: float = CORNER_THICKNESSES,
    least: float = LEAST_SIZE,
) -> Insert:
    """Find the steel of a rectangular insert with rounded corners.

    Formula: R = c t; A = l b - (4 - pi) R²; m = A t rho (1 + tol); weld 2 (l + b) - (8 - 2 pi) R.
    Symbols: length l, breadth b, thickness t in m; tolerance tol, the mill's, a fraction; density rho in kg/m³;
    corner c in thicknesses; least, the least side in m. Source: area and weld derived; R = 5 t and least sides of
    300 mm from IACS Rec. 47 (from memory). Raises OutOfRange for an insert smaller than the least or its corners.
    """
    for name, side in (("length", length), ("breadth", breadth)):
        if not (math.isfinite(side) and side >= least - _ROUND_OFF and side > 0.0):
            raise OutOfRange(
                f"the {name} of an insert is at least {plainly(least, 'thickness')}, got {plainly(side, 'thickness')}"
            )
    if not -0.5 < tolerance < 0.5:
        raise OutOfRange(f"a mill tolerance is a few per cent, got {100.0 * tolerance:g} %")
    radius = corner * thickness
    if not 0.0 <= 2.0 * radius <= min(length, breadth) + _ROUND_OFF:
        raise OutOfRange(f"corners of {plainly(radius, 'thickness')} radius do not fit the insert")
    area = length * breadth - (4.0 - math.pi) * radius**2
    mass = plate_mass(area, thickness, density) * (1.0 + tolerance)
    weld = 2.0 * (length + breadth) - (8.0 - 2.0 * math.pi) * radius
    return Insert(length, breadth, thickness, radius, area, mass, weld)


def _kernel(
    length: float,
    breadth: float,
    thickness: float,
    tolerance: float | None = None,
    corner: float = CORNER_THICKNESSES,
    least: float = LEAST_SIZE,
) -> Mapping[str, float]:
    used = mill_overweight(thickness) if tolerance is None else tolerance
    found = insert_steel(length, breadth, thickness, used, STEEL_DENSITY, corner, least)
    return {
        "area": found.area,
        "mass": found.mass,
        "radius": found.radius,
        "weld": found.weld,
        "tolerance": used,
    }


METHOD = Method(
    name="renewal.insert",
    title="Steel of an insert",
    formula="R = 5 t; A = l b − (4 − π) R²; m = A t ρ (1 + tol); weld 2 (l + b) − (8 − 2π) R",
    source=CORNER_SOURCE,
    valid="flat rectangular inserts in one thickness; the surveyor approves the outline",
    inputs={
        "length": _length("Length along the ship."),
        "breadth": _length("Breadth along the girth."),
        "thickness": _length("Thickness of the new plate."),
        "tolerance": quantity(
            "fraction",
            "Mill tolerance over the nominal mass; by thickness from the published table unless given.",
            "5 %",
        ),
        "corner": number("Radius of the corners in thicknesses; 5 unless given.", minimum=0),
        "least": _length("Least side of an insert; 300 mm unless given.", "300 mm"),
    },
    outputs=(
        Symbol("area", "area of the insert", "area", "m2"),
        Symbol("mass", "mass with mill tolerance", "mass", "kg"),
        Symbol("radius", "radius of the corners", "length", "mm"),
        Symbol("weld", "length of weld round it", "length", "m"),
        Symbol("tolerance", "mill tolerance used", "fraction", "%"),
    ),
    kernel=_kernel,
    example={"length": "1.68 m", "breadth": "1.15 m", "thickness": "11 mm"},
    optional=frozenset({"tolerance", "corner", "least"}),
    cautions=(
        "least size and corner radius are from memory of IACS Recommendation 47: check the edition in force",
        "an insert cut on existing seams has no corner there; its area is then a little more",
    ),
)
