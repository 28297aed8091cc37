"""Man-hours to renew plate, by thickness and place: attributed defaults that own rates replace."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Literal

import numpy as np

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity
from tenderwright.calculations.steel.plate_mass import plate_mass
from tenderwright.quantities.display import plainly

BUTLER = Citation("D. Butler, Guide to Ship Repair Estimates (in Man-hours), 2000", "steel renewal")

TARIFF_DENSITY = 8000.0
"""Density at which the tariff weighs a piece on its greatest dimensions, kg/m³; not that of steel."""

_THICKNESSES = (0.006, 0.010, 0.020)
_HOURS_PER_TONNE = (250.0, 240.0, 200.0)

Place = Literal["flat", "bottom shell", "keel", "garboard", "bilge", "deck", "bulkhead"]
Curvature = Literal["none", "single", "double"]
Treatment = Literal["renew", "fair in place", "remove, fair and refit"]

PLACE_FACTORS: dict[Place, float] = {
    "flat": 1.0,
    "bottom shell": 1.12,
    "keel": 1.4,
    "garboard": 1.25,
    "bilge": 1.25,
    "deck": 1.15,
    "bulkhead": 1.2,
}
CURVATURE_FACTORS: dict[Curvature, float] = {"none": 1.0, "single": 1.2, "double": 1.3}
TREATMENT_FACTORS: dict[Treatment, float] = {
    "renew": 1.0,
    "fair in place": 0.5,
    "remove, fair and refit": 0.8,
}
HIGH_TENSILE_FACTOR = 1.1


def tariff_mass(length: float, breadth: float, thickness: float) -> float:
    """Find the mass that the tariff charges for a piece, kg: l b t at 8000 kg/m³, greatest dimensions in m.

    For an angle the breadth is the sum of its legs. Source: `BUTLER`. Raises OutOfRange.
    """
    if length < 0.0 or breadth < 0.0:
        raise OutOfRange("the length and breadth of a piece cannot be less than nothing")
    return plate_mass(length * breadth, thickness, TARIFF_DENSITY)


def hours_per_tonne(thickness: float) -> float:
    """Give the man-hours to renew a tonne of flat plate of a thickness in m.

    Three figures of the source stand here, 250 at 6 mm and less, 240 at 10 mm and 200 at 20 mm, with straight
    lines between (derived; within 2 % of its other rows). Source: `BUTLER`. Raises OutOfRange above 20 mm.
    """
    if not 0.0 < thickness <= _THICKNESSES[-1] * (1.0 + 1e-12):
        raise OutOfRange(f"man-hours are known for plate up to 20 mm, got {plainly(thickness, 'thickness')}")
    return float(np.interp(thickness, _THICKNESSES, _HOURS_PER_TONNE))


def renewal_hours(mass: float, rate: float, factors: Sequence[float] = (), treatment: Treatment = "renew") -> float:
    """Find the man-hours to renew or fair a mass of steel.

    Formula: H = m rate product(factors) treatment. Symbols: mass m in kg, rate in man-hours per tonne.
    Source: `BUTLER` for rate and factors; it does not say how factors combine: their product is assumed.
    Raises OutOfRange.
    """
    if not (math.isfinite(mass) and mass >= 0.0):
        raise OutOfRange(f"the mass cannot be less than nothing, got {plainly(mass, 'small part')}")
    if not (math.isfinite(rate) and rate > 0.0):
        raise OutOfRange(f"the rate must be more than nothing, got {rate:g} man-hours per tonne")
    for factor in factors:
        if not (math.isfinite(factor) and factor > 0.0):
            raise OutOfRange(f"a factor must be more than nothing, got {factor:g}")
    return 1e-3 * mass * rate * math.prod(factors) * TREATMENT_FACTORS[treatment]


def _kernel(
    length: float,
    breadth: float,
    thickness: float,
    place: Place = "flat",
    curvature: Curvature = "none",
    high_tensile: bool = False,
    treatment: Treatment = "renew",
    rate: float | None = None,
    other_factors: list[float] | None = None,
) -> Mapping[str, float]:
    factors = [PLACE_FACTORS[place], CURVATURE_FACTORS[curvature], *(other_factors or [])]
    if high_tensile:
        factors.append(HIGH_TENSILE_FACTOR)
    used = hours_per_tonne(thickness) if rate is None else rate
    mass = tariff_mass(length, breadth, thickness)
    return {
        "mass": mass,
        "rate": used / 1000.0,
        "factor": math.prod(factors) * TREATMENT_FACTORS[treatment],
        "man_hours": renewal_hours(mass, used, factors, treatment),
    }


METHOD = Method(
    name="steel.man-hours",
    title="Man-hours to renew plate",
    formula="H = m · rate · Π factors · treatment, with m = l b t at 8000 kg/m³",
    source=BUTLER,
    valid="welded steel up to 20 mm; riveted work is not in it",
    inputs={
        "length": quantity("length", "Greatest length of the piece."),
        "breadth": quantity("length", "Greatest breadth of the piece; for an angle, the sum of its legs."),
        "thickness": quantity("length", "Thickness of the piece."),
        "place": {"type": "string", "enum": list(PLACE_FACTORS), "description": "Place; flat unless given."},
        "curvature": {"type": "string", "enum": list(CURVATURE_FACTORS), "description": "None unless given."},
        "high_tensile": {
            "type": "boolean",
            "description": "Whether the steel is of higher tensile strength.",
        },
        "treatment": {
            "type": "string",
            "enum": list(TREATMENT_FACTORS),
            "description": "Renew unless given.",
        },
        "rate": number("Man-hours per tonne of your own, in place of the source's.", exclusiveMinimum=0),
        "other_factors": {
            "type": "array",
            "items": {"type": "number", "exclusiveMinimum": 0},
            "description": "Further factors, such as for access or staging.",
        },
    },
    outputs=(
        Symbol("mass", "mass that the tariff charges", "mass", "kg"),
        Symbol("rate", "man-hours for a tonne", "work_rate", "person_hour/t"),
        Symbol("factor", "product of all factors", "fraction", ""),
        Symbol("man_hours", "man-hours", "person_hour", "person_hour"),
    ),
    kernel=_kernel,
    example={"length": "2.0 m", "breadth": "1.5 m", "thickness": "10 mm", "place": "keel"},
    optional=frozenset({"place", "curvature", "high_tensile", "treatment", "rate", "other_factors"}),
    cautions=(
        "that factors combine by their product is assumed; the source does not say",
        "rates of your own earlier dockings come before these",
        "riveted work needs a rate from the yard",
    ),
)
