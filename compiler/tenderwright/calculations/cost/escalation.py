"""Escalation of an old price by an index."""

from __future__ import annotations

import math
from collections.abc import Mapping

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number

GUIDE = Citation("US Bureau of Labor Statistics, Price Adjustment Guide for Contracting Parties", "escalation")


def index_ratio(base: float, index: float) -> float:
    """Give how much an index has risen: I_t/I_0, both above nothing and of one base period. Raises OutOfRange."""
    for value in (base, index):
        if not (math.isfinite(value) and value > 0.0):
            raise OutOfRange(f"an index must be more than nothing, got {value:.12g}")
    return index / base


def escalated_price(price: float, base: float, index: float) -> float:
    """Bring a price to another month.

    Formula: P_t = P_0 I_t/I_0. Symbols: price P_0 of the base month; base I_0 and index I_t, the index in the base
    month and in the month asked for. Source: `GUIDE`. Raises OutOfRange.
    """
    if not math.isfinite(price):
        raise OutOfRange("the price must be a number")
    return price * index_ratio(base, index)


def _kernel(price: float, base: float, index: float) -> Mapping[str, float]:
    return {"ratio": index_ratio(base, index), "price": escalated_price(price, base, index)}


METHOD = Method(
    name="cost.escalation",
    title="Price escalated by an index",
    formula="Pₜ = P₀ · Iₜ/I₀",
    source=GUIDE,
    valid="one index, of one base period and one adjustment for the season in both months",
    inputs={
        "price": number("Price in the base month."),
        "base": number("Index in the base month.", exclusiveMinimum=0),
        "index": number("Index in the month that the price is brought to.", exclusiveMinimum=0),
    },
    outputs=(
        Symbol("ratio", "how much the index has risen", "", ""),
        Symbol("price", "price brought to the month", "", ""),
    ),
    kernel=_kernel,
    example={"price": 250000, "base": 251.9, "index": 287.4},
    cautions=(
        "an index carries the price, not the terms, the quantity or the market of the time; "
        "a price too old may be no basis at all",
    ),
)
