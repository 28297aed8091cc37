"""Anodes fitted: how many, and their mass when new."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity
from tenderwright.quantities.display import plainly


def anodes_fitted(masses: Sequence[float]) -> dict[str, float]:
    """Count anodes and sum their mass: N = count, M = sum of net masses in kg when new (derived). Raises OutOfRange."""
    for mass in masses:
        if not (math.isfinite(mass) and mass >= 0.0):
            raise OutOfRange(f"the mass of an anode cannot be less than nothing, got {plainly(mass, 'small part')}")
    return {"count": float(len(masses)), "mass": sum(masses)}


METHOD = Method(
    name="anode.fitted",
    title="Anodes fitted, and their mass when new",
    formula="N = count; M = sum of net masses",
    source=Citation("Count of the anode list", standing="derived"),
    valid="anodes listed in vessel/anodes.yaml",
    inputs={"masses": listed(quantity("mass", "Net mass when new."), "The anodes, each by its mass.")},
    outputs=(
        Symbol("count", "anodes fitted", "each", "each"),
        Symbol("mass", "net mass of alloy when new", "mass", "kg"),
    ),
    kernel=anodes_fitted,
    example={"masses": ["10 kg", "10 kg", "6.5 kg"]},
)
