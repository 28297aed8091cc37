"""Number of zincs by the area of the bottom and the state of its paint: a rule for small vessels."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Literal

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import plainly

Paint = Literal["fresh", "one year old", "bare"]

_SQUARE_FOOT = 0.3048**2
AREA_PER_PAIR: dict[Paint, float] = {
    "fresh": 400.0 * _SQUARE_FOOT,
    "one year old": 200.0 * _SQUARE_FOOT,
    "bare": 100.0 * _SQUARE_FOOT,
}
"""Area that two zincs look after, m²: 400, 200 and 100 ft²."""

LEAST = 2
SOURCE = Citation("US Army TB 43-0144", "zincs by area")

_ROUND_OFF = 1e-9


def zincs_for_area(area: float, paint: Paint) -> int:
    """Count zincs by area: 2 ceil(A / A2), never fewer than two; area A in m², A2 from `AREA_PER_PAIR`.

    Pairs are counted whole; the source does not say how a part of an area counts. Two thirds go amidships in rows at
    the bilge, one third at the stern. Range: small vessels and the standard zinc of the source.
    Source: `SOURCE`. Raises OutOfRange.
    """
    if not (math.isfinite(area) and area >= 0.0):
        raise OutOfRange(f"the area cannot be less than nothing, got {plainly(area, 'area')}")
    return max(LEAST, 2 * math.ceil(area / AREA_PER_PAIR[paint] - _ROUND_OFF))


def _kernel(area: float, paint: Paint) -> Mapping[str, float]:
    number = zincs_for_area(area, paint)
    stern = round(number / 3)
    return {"number": float(number), "amidships": float(number - stern), "stern": float(stern)}


METHOD = Method(
    name="anode.area-rule",
    title="Number of zincs by area",
    formula="N = max(2, 2 ceil(A / A₂)), A₂ = 400, 200 or 100 ft² for fresh paint, paint a year old, or bare plate",
    source=SOURCE,
    valid="small vessels with the zincs of the source; a check on a number found by current",
    inputs={
        "area": quantity("area", "Wetted area."),
        "paint": {"type": "string", "enum": list(AREA_PER_PAIR), "description": "State of the paint."},
    },
    outputs=(
        Symbol("number", "zincs", "each", "each"),
        Symbol("amidships", "of those, at the bilge amidships", "each", "each"),
        Symbol("stern", "of those, at the stern", "each", "each"),
    ),
    kernel=_kernel,
    example={"area": "520 m2", "paint": "one year old"},
    cautions=("the size of the zincs is that of the source, not yours",),
)
