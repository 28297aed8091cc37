"""Escalation of an old price by several indices, each with its weight, and a part that stays fixed."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.cost.escalation import index_ratio
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, record

FORMULA = Citation("price adjustment formula of international construction contracts", standing="from memory")

ROUND_OFF = 1e-9
"""How far the weights may miss 1."""


def weighted_ratio(fixed: float, terms: Sequence[tuple[float, float, float]]) -> float:
    """Give how much a price rises with several indices.

    Formula: k + sum of w_j I_jt/I_j0, with k + sum of w_j = 1. Symbols: fixed k; terms of weight w_j, base I_j0 and
    index I_jt. Source: `FORMULA`. Raises OutOfRange.
    """
    shares = [fixed, *(weight for weight, _, _ in terms)]
    if not all(math.isfinite(share) and share >= 0.0 for share in shares):
        raise OutOfRange("the fixed part and the weights cannot be less than nothing")
    if not abs(math.fsum(shares) - 1.0) <= ROUND_OFF:
        raise OutOfRange(f"the fixed part and the weights must add up to 1, got {math.fsum(shares):.6g}")
    return fixed + math.fsum(weight * index_ratio(base, index) for weight, base, index in terms)


def _kernel(price: float, fixed: float, terms: Sequence[Mapping[str, Any]]) -> Mapping[str, float]:
    if not math.isfinite(price):
        raise OutOfRange("the price must be a number")
    ratio = weighted_ratio(fixed, [(term["weight"], term["base"], term["index"]) for term in terms])
    return {"ratio": ratio, "price": price * ratio}


METHOD = Method(
    name="cost.weighted-escalation",
    title="Price escalated by several indices",
    formula="Pₜ = P₀ · (k + Σ wⱼ Iⱼₜ/Iⱼ₀), k + Σ wⱼ = 1",
    source=FORMULA,
    valid="weights of the make-up of the price in the base month",
    inputs={
        "price": number("Price in the base month."),
        "fixed": number("Part of the price that stays as it is, 0 to 1.", minimum=0, maximum=1),
        "terms": listed(
            record(
                "One part of the price.",
                ("weight", "base", "index"),
                weight=number("Part of the price that follows this index, 0 to 1.", minimum=0, maximum=1),
                base=number("Index in the base month.", exclusiveMinimum=0),
                index=number("Index in the month that the price is brought to.", exclusiveMinimum=0),
            ),
            "Parts of the price that follow an index.",
        ),
    },
    outputs=(
        Symbol("ratio", "how much the price rises", "", ""),
        Symbol("price", "price brought to the month", "", ""),
    ),
    kernel=_kernel,
    example={
        "price": 100000,
        "fixed": 0.15,
        "terms": [
            {"weight": 0.55, "base": 120.0, "index": 138.0},
            {"weight": 0.3, "base": 210.0, "index": 252.0},
        ],
    },
)
