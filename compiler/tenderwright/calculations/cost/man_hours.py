"""A price built from man-hours: labour and materials, with factors for access and location."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity

BUILT_UP = Citation("price built up from labour and materials", standing="common practice, no source")


def product_of_factors(factors: Sequence[float]) -> float:
    """Multiply the factors for access and location, each above nothing; without any, 1. Raises OutOfRange."""
    for factor in factors:
        if not (math.isfinite(factor) and factor > 0.0):
            raise OutOfRange(f"a factor must be more than nothing, got {factor:g}")
    product = math.prod(factors)
    if not math.isfinite(product):
        raise OutOfRange("the factors multiply beyond all bounds")
    return product


def price_from_hours(hours: float, rate: float, materials: float = 0.0, factors: Sequence[float] = ()) -> float:
    """Build the price of one unit from its man-hours.

    Formula: P = (H r + M) product(f). Symbols: man-hours H for one unit, not seconds; rate r of labour for an hour;
    materials M for one unit; factors f for access and location, whose product is assumed. Source: `BUILT_UP`.
    Raises OutOfRange.
    """
    for value, what in ((hours, "man-hours"), (rate, "rate of labour"), (materials, "materials")):
        if not (math.isfinite(value) and value >= 0.0):
            raise OutOfRange(f"{what} cannot be less than nothing, got {value:.12g}")
    return (hours * rate + materials) * product_of_factors(factors)


def _kernel(
    hours: float, rate: float, materials: float = 0.0, factors: Sequence[float] | None = None
) -> Mapping[str, float]:
    return {
        "labour": hours * rate,
        "factor": product_of_factors(factors or ()),
        "price": price_from_hours(hours, rate, materials, factors or ()),
    }


METHOD = Method(
    name="cost.man-hours",
    title="Price built from man-hours",
    formula="P = (H · r + M) · Π f",
    source=BUILT_UP,
    valid="hours, materials and factors of one unit of the line",
    inputs={
        "hours": quantity("person_hour", "Man-hours for one unit."),
        "rate": number("Rate of the labour for an hour.", minimum=0),
        "materials": number("Materials for one unit; none unless given.", minimum=0),
        "factors": listed(
            {"type": "number", "exclusiveMinimum": 0},
            "Factors for access and location, multiplied; none unless given.",
            0,
        ),
    },
    outputs=(
        Symbol("labour", "labour, before factors", "", ""),
        Symbol("factor", "product of the factors", "", ""),
        Symbol("price", "price of one unit", "", ""),
    ),
    kernel=_kernel,
    example={"hours": "38 person_hour", "rate": 72, "materials": 310, "factors": [1.12, 1.1]},
    optional=frozenset({"materials", "factors"}),
    cautions=(
        "that factors combine by their product is assumed",
        "the factors raise materials as well as labour; where they are for labour alone, put them into the hours",
    ),
)
