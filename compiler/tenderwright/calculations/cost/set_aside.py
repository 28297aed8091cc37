"""What is set aside each year for a cost that rises until it falls due."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity

_YEAR = 365.25 * 86400.0


class SetAside(Struct, frozen=True):
    """The cost when it falls due, and what is set aside for it each year."""

    cost_then: float
    yearly: float
    """The same sum at the end of each year."""
    payments: int


def set_aside(cost: float, years: float, rise: float, interest: float = 0.0, saved: float = 0.0) -> SetAside:
    """Find the yearly sum that pays for a cost when it falls due.

    Formula: C_T = C (1 + e)^T; n = T rounded down, at least one; A = (C_T - S (1 + i)^n) i/((1 + i)^n - 1), and for
    i = 0 A = (C_T - S)/n; nothing where the savings suffice. Symbols: cost C today, saved S, yearly A in money; rise e
    and interest i a year as fractions; years T. Source: a sinking fund (derived). Raises OutOfRange.
    """
    if not (cost >= 0 and saved >= 0):
        raise OutOfRange("a cost and savings are no less than nothing")
    if not 0 < years <= 100:
        raise OutOfRange(f"the cost falls due within 100 years and later than today, got {years:g}")
    if not (-0.5 < rise < 0.5 and 0 <= interest < 0.5):
        raise OutOfRange("a rise of prices or interest of half and more in a year is no plan")
    payments = max(1, int(years + 1e-9))
    then = cost * (1 + rise) ** years
    grown = (1 + interest) ** payments
    short = max(0.0, then - saved * grown)
    return SetAside(then, short * interest / (grown - 1) if interest else short / payments, payments)


def _kernel(cost: float, years: float, rise: float, interest: float = 0.0, saved: float = 0.0) -> SetAside:
    return set_aside(cost, years / _YEAR, rise, interest, saved)


def outputs_of(found: SetAside) -> Mapping[str, float]:
    """Give it as the outputs of the method."""
    return {"cost_then": found.cost_then, "yearly": found.yearly, "payments": found.payments}


METHOD = Method(
    name="cost.set-aside",
    title="What is set aside each year for a cost that rises",
    formula="C_T = C (1 + e)^T; A = (C_T - S (1 + i)^n) i/((1 + i)^n - 1)",
    source=Citation("Sinking fund", standing="derived"),
    valid="up to 100 years; one rise and one interest for all of them",
    inputs={
        "cost": number("The cost at today's prices.", minimum=0),
        "years": quantity("time", "Time until it falls due."),
        "rise": quantity("fraction", "Rise of prices in a year."),
        "interest": quantity("fraction", "Interest on what is set aside, in a year; none unless given."),
        "saved": number("What is set aside already.", minimum=0),
    },
    outputs=(
        Symbol("cost_then", "cost when it falls due", "", ""),
        Symbol("yearly", "to be set aside each year", "", ""),
        Symbol("payments", "number of years in which it is", "", ""),
    ),
    kernel=_kernel,
    figures=outputs_of,
    example={"cost": 800000, "years": "5 yr", "rise": "3 %"},
    optional=frozenset({"interest", "saved"}),
)
