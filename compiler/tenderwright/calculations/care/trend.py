"""The trend of readings at one place, and when it comes to a limit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import exp, log, sqrt
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number
from tenderwright.calculations.thickness.readings import year_of

LEAST = 4
"""Readings from which a trend is drawn (judgement, no source)."""
_SAME = 1e-12


class Trend(Struct, frozen=True):
    """A line through readings, or through their logarithms; times in years."""

    first: float
    """What the line gives on the first day."""
    last: float
    """What it gives on the last day."""
    span: float
    """From the first day to the last."""
    slope: float
    """Of the readings, or of their logarithms, in a year."""
    u: float
    """Its standard uncertainty."""
    reaches: float | None
    """Years after the last day to the limit by the line; nothing where it is passed; None where it moves away."""
    early: float | None
    """The same with the slope two standard uncertainties steeper towards the limit."""

    @property
    def sure(self) -> bool:
        """Tell whether the slope differs from nothing by more than twice its uncertainty."""
        return abs(self.slope) > 2 * self.u


def trend(days: Sequence[str], values: Sequence[float], limit: float, *, growth: bool = False) -> Trend:
    """Draw a line through readings by least squares, and find when it comes to a limit from below.

    Formula: y = a + b t, with y the readings, or their logarithms for what grows in proportion (`growth`); b by least
    squares, u(b) = s/sqrt(sum (t - t_mean)^2), s^2 = sum r^2/(n - 2); T = (y_limit - y_last)/b; early with b + 2u(b).
    Symbols: days, values and limit in one unit. Range: four readings and more, of two days at least; above nothing for
    growth. Source: derived (least squares). Raises OutOfRange.
    """
    if len(days) != len(values) or len(days) < LEAST:
        raise OutOfRange(f"a trend needs {LEAST} readings at least, got {min(len(days), len(values))}")
    if growth and (min(values) <= 0 or limit <= 0):
        raise OutOfRange("what grows in proportion is more than nothing")
    t = [year_of(day) for day in days]
    y = [log(value) for value in values] if growth else list(values)
    mean_t, mean_y = sum(t) / len(t), sum(y) / len(y)
    square = sum((one - mean_t) ** 2 for one in t)
    if square <= _SAME:
        raise OutOfRange("a trend needs readings of two days at least")
    slope = sum((a - mean_t) * (b - mean_y) for a, b in zip(t, y, strict=True)) / square
    left = sum((b - mean_y - slope * (a - mean_t)) ** 2 for a, b in zip(t, y, strict=True))
    u = sqrt(left / (len(t) - 2) / square)
    first, last = (mean_y + slope * (at - mean_t) for at in (min(t), max(t)))
    goal = log(limit) if growth else limit
    reaches, early = (_until(goal - last, by) for by in (slope, slope + 2 * u))
    first, last = (exp(first), exp(last)) if growth else (first, last)
    return Trend(first, last, max(t) - min(t), slope, u, reaches, early)


def _until(left: float, slope: float) -> float | None:
    if left <= 0:
        return 0.0
    return left / slope if slope > _SAME else None


def outputs_of(found: Trend) -> Mapping[str, Any]:
    """Give it as the outputs of the method."""
    year = 365.25 * 86400.0
    return {
        "first": found.first,
        "last": found.last,
        "slope": found.slope,
        "u": found.u,
        "sure": found.sure,
        "reaches": None if found.reaches is None else found.reaches * year,
        "early": None if found.early is None else found.early * year,
    }


METHOD = Method(
    name="care.trend",
    title="Trend of readings, and when it comes to a limit",
    formula="y = a + b t by least squares; T = (limit - y_last)/b, early with b + 2 u(b)",
    source=Citation("Least squares", standing="derived"),
    valid="four readings or more from below the limit; a cause that changes changes the trend",
    inputs={
        "days": listed({"type": "string", "format": "date", "description": "A day."}, "Days of the readings.", LEAST),
        "values": listed(number("A reading."), "The readings, in one unit.", LEAST),
        "limit": number("What they may come to, in that unit."),
        "growth": {"type": "boolean", "description": "Whether they grow in proportion, as a leak does."},
    },
    outputs=(
        Symbol("first", "what the line gives on the first day", "", ""),
        Symbol("last", "what it gives on the last day", "", ""),
        Symbol("slope", "slope in a year, of logarithms for growth", "", ""),
        Symbol("u", "standard uncertainty of the slope", "", ""),
        Symbol("sure", "whether the slope is more than twice its uncertainty", "truth", ""),
        Symbol("reaches", "time from the last day to the limit", "time", "yr"),
        Symbol("early", "the same with the slope two uncertainties steeper", "time", "yr"),
    ),
    kernel=trend,
    figures=outputs_of,
    example={
        "days": ["2026-01-05", "2026-02-02", "2026-03-02", "2026-04-06"],
        "values": [20, 22, 25, 27],
        "limit": 40,
        "growth": True,
    },
    optional=frozenset({"growth"}),
)
