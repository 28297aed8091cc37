"""Current that a hull's surfaces ask of her anodes."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tenderwright.calculations.method import OutOfRange


def current_demand(surfaces: Sequence[tuple[float, float]], breakdown: float = 1.0) -> float:
    """Find the current that surfaces ask, A.

    Formula: I = fc sum(A i). Symbols: surfaces as (area A in m², current density i in A/m²); breakdown fc,
    the fraction of coated area that acts as bare, 1 where the density is already that of painted steel.
    Source: MIL-HDBK-1004/10, p. 209 (sum of area by density). Raises OutOfRange.
    """
    if not 0.0 <= breakdown <= 1.0:
        raise OutOfRange(f"the breakdown of a coating is a fraction of 0 to 1, got {breakdown:g}")
    total = 0.0
    for area, density in surfaces:
        if not (math.isfinite(area) and area >= 0.0 and math.isfinite(density) and density >= 0.0):
            raise OutOfRange("areas and current densities cannot be less than nothing")
        total += area * density
    return breakdown * total
