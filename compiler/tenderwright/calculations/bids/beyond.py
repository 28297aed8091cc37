"""How likely an uncertain quantity is to be more than a given one."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any, get_args

from tenderwright.calculations.cost.three_point import PERT, WEIGHT, Shape, ThreePoint
from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number


def beyond(estimate: ThreePoint, quantity: float) -> float:
    """Give the probability that a three-point quantity is more than a given one.

    Formula: 1 - F(q); PERT, F = I_x(a, b), x = (q - l)/(h - l), the regularised incomplete beta function of the shapes
    of `ThreePoint`; triangular, (h - q)²/((h - l)(h - m)) above the likely value. Range: any quantity; 1 below the
    least, 0 from the greatest on. Source: that of `ThreePoint`. Raises OutOfRange.
    """
    if not math.isfinite(quantity):
        raise OutOfRange("the quantity must be a number")
    low, likely, high = estimate.low, estimate.likely, estimate.high
    if quantity >= high:
        return 0.0
    if quantity <= low:
        return 1.0
    span = high - low
    if estimate.shape == "triangular":
        if quantity < likely:
            return 1.0 - (quantity - low) ** 2 / (span * (likely - low))
        return (high - quantity) ** 2 / (span * (high - likely))
    from scipy.special import betainc

    rising, falling = 1.0 + WEIGHT * (likely - low) / span, 1.0 + WEIGHT * (high - likely) / span
    return float(betainc(falling, rising, (high - quantity) / span))


def _kernel(low: float, likely: float, high: float, quantity: float, shape: Shape = "pert") -> Mapping[str, Any]:
    return {"beyond": beyond(ThreePoint(low, likely, high, shape), quantity)}


METHOD = Method(
    name="bids.beyond",
    title="How likely a quantity is to be more than a given one",
    formula="P(Q > q) = 1 − I_x(a, b), x = (q − l)/(h − l), a = 1 + 4(m − l)/(h − l), b = 6 − a",
    source=PERT,
    valid="low ≤ likely ≤ high, in one unit",
    inputs={
        "low": number("Least that it can be."),
        "likely": number("Likeliest value."),
        "high": number("Most that it can be."),
        "quantity": number("The quantity it may pass."),
        "shape": {"type": "string", "enum": list(get_args(Shape)), "description": "Distribution; pert unless given."},
    },
    outputs=(Symbol("beyond", "probability of more than that", "fraction", "%"),),
    kernel=_kernel,
    example={"low": 60, "likely": 90, "high": 240, "quantity": 130},
    optional=frozenset({"shape"}),
)
