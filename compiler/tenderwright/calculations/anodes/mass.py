"""Mass and number of sacrificial anodes."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.anodes.current import current_demand
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity

_HOUR = 3600.0
_ROUND_OFF = 1e-9


def consumption_rate(capacity: float, utilisation: float = 1.0) -> float:
    """Find the mass used per charge, kg/C, from a capacity in A h/kg and the fraction of an anode used.

    Formula: S = 1 / (3600 eps u). Source: derived. Raises OutOfRange.
    """
    if not (math.isfinite(capacity) and capacity > 0.0):
        raise OutOfRange(f"the capacity must be more than nothing, got {capacity:g} A h/kg")
    if not 0.0 < utilisation <= 1.0:
        raise OutOfRange(f"the fraction of an anode that is used is above 0 and at most 1, got {utilisation:g}")
    return 1.0 / (_HOUR * capacity * utilisation)


def anode_mass(current: float, life: float, consumption: float) -> float:
    """Find the mass of anodes, kg.

    Formula: W = Y S I. Symbols: life Y in s, consumption S in kg/C, mean current I in A.
    Source: MIL-HDBK-1004/10, p. 209. Raises OutOfRange.
    """
    for name, value in (("current", current), ("life", life), ("consumption", consumption)):
        if not (math.isfinite(value) and value >= 0.0):
            raise OutOfRange(f"the {name} cannot be less than nothing, got {value:g}")
    return life * consumption * current


def anode_number(total: float, each: float) -> int:
    """Count the anodes that make up a mass (or a current): ceil(total/each), both in one unit.

    Source: MIL-HDBK-1004/10, which rounds one example down; rounding up is right. Raises OutOfRange.
    """
    if not (math.isfinite(total) and total >= 0.0 and math.isfinite(each) and each > 0.0):
        raise OutOfRange("a number of anodes needs a total of at least nothing and an anode of more than nothing")
    return max(0, math.ceil(total / each - _ROUND_OFF))


def _kernel(
    surfaces: list[Mapping[str, Any]],
    life: float,
    capacity: float,
    utilisation: float = 1.0,
    breakdown: float = 1.0,
    each: float | None = None,
) -> Mapping[str, float | None]:
    pairs = [(surface["area"], surface["current_density"]) for surface in surfaces]
    current = current_demand(pairs, breakdown)
    mass = anode_mass(current, life, consumption_rate(capacity, utilisation))
    return {
        "current": current,
        "mass": mass,
        "number": None if each is None else float(anode_number(mass, each)),
    }


METHOD = Method(
    name="anode.mass",
    title="Mass and number of sacrificial anodes",
    formula="I = fc Σ A i; W = Y S I with S = 1/(capacity · utilisation); N = ceil(W / m)",
    source=Citation("MIL-HDBK-1004/10 (UFC 3-570-02N)", "p. 209"),
    valid="mean current by mass only; that the anodes give the current when new and when spent is not shown",
    inputs={
        "surfaces": listed(
            {
                "type": "object",
                "properties": {
                    "area": quantity("area", "Wetted area."),
                    "current_density": quantity("current_density", "Mean current per area."),
                },
                "required": ["area", "current_density"],
                "additionalProperties": False,
            },
            "The surfaces to protect.",
        ),
        "life": quantity("time", "Time between renewals; handbooks count 8760 hours to a year."),
        "capacity": number(
            "Capacity of the alloy in A h per kg (not per lb), such as 780 for zinc.", exclusiveMinimum=0
        ),
        "utilisation": quantity(
            "fraction", "Fraction of an anode that is used before it is renewed; all unless given."
        ),
        "breakdown": quantity("fraction", "Fraction of coated area that acts as bare; all unless given.", "10 %"),
        "each": quantity("mass", "Mass of one anode."),
    },
    outputs=(
        Symbol("current", "mean current", "current", "A"),
        Symbol("mass", "mass of anodes", "mass", "kg"),
        Symbol("number", "number of anodes by mass", "each", "each"),
    ),
    kernel=_kernel,
    example={
        "surfaces": [{"area": "520 m2", "current_density": "20 mA/m2"}],
        "life": "3 yr",
        "capacity": 780,
        "utilisation": "85 %",
        "each": "11.5 kg",
    },
    optional=frozenset({"utilisation", "breakdown", "each"}),
    cautions=("a capacity per pound used as one per kilogram makes the mass wrong by 2.2",),
)
