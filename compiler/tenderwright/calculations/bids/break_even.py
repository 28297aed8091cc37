"""The quantity of one line at which two bids cost the same."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number


def break_even(rest_a: float, rate_a: float, rest_b: float, rate_b: float) -> float:
    """Give the quantity at which two bids that differ in the rate of one line come to the same.

    Formula: q = (R_b - R_a)/(r_a - r_b). Symbols: R, all that a bid comes to but for the line, in money; r, what one
    more unit of the line adds to it, in money. Range: any figures, the rates apart; q may come out below nothing, and
    is then no quantity. Source: two straight lines that cross, derived. Raises OutOfRange.
    """
    if not all(math.isfinite(value) for value in (rest_a, rate_a, rest_b, rate_b)):
        raise OutOfRange("sums and rates must be numbers")
    if rate_a == rate_b:
        raise OutOfRange(f"both rates are {rate_a:g}: no quantity changes which bid is the lower")
    quantity = (rest_b - rest_a) / (rate_a - rate_b)
    if not math.isfinite(quantity):
        raise OutOfRange("the rates are too near to each other to find a quantity")
    return quantity


def _kernel(rest_a: float, rate_a: float, rest_b: float, rate_b: float) -> Mapping[str, Any]:
    quantity = break_even(rest_a, rate_a, rest_b, rate_b)
    return {"quantity": quantity, "total": rest_a + rate_a * quantity}


METHOD = Method(
    name="bids.break-even",
    title="Quantity at which two bids cost the same",
    formula="q = (R_b − R_a)/(r_a − r_b)",
    source=Citation("Two straight lines that cross", standing="derived"),
    valid="rates that differ; all else of both bids as it stands",
    inputs={
        "rest_a": number("All that the first bid comes to but for the line, in money."),
        "rate_a": number("Rate of the line in the first bid, in money."),
        "rest_b": number("All that the second bid comes to but for the line, in money."),
        "rate_b": number("Rate of the line in the second bid, in money."),
    },
    outputs=(
        Symbol("quantity", "quantity at which both cost the same, in the unit of the line", "", ""),
        Symbol("total", "what both then come to", "", ""),
    ),
    kernel=_kernel,
    example={"rest_a": 412000, "rate_a": 19.5, "rest_b": 418200, "rate_b": 14.5},
    cautions=("one line at a time; where several quantities grow together, the ranking may change sooner",),
)
