"""Days that pass while a number of working days is worked, with days off in the week and days lost to the weather."""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity

Floats = NDArray[np.float64]
WEEK = 7.0
MOST_DAYS = 1e6

_DAY = 86400.0


def elapsed(working: float, week: float = WEEK, workable: float = 1.0) -> float:
    """Give the mean number of days that pass.

    Formula: D = n 7/(w p). Symbols: n working days; w days worked a week, up to 7; p share of working days on which
    the weather lets the work go on, up to 1. Source: derived; n/p is the mean of `elapsed_trials`. Raises OutOfRange.
    """
    _check(working, working, week, workable)
    return working * WEEK / week / workable


def elapsed_deviation(working: float, week: float = WEEK, workable: float = 1.0) -> float:
    """Give the standard deviation of the days that pass, of the weather alone.

    Formula: s = 7/w sqrt(n (1 - p))/p. Symbols and range as `elapsed`. Source: variance of the negative binomial
    distribution. Raises OutOfRange.
    """
    _check(working, working, week, workable)
    return math.sqrt(working * (1.0 - workable)) / workable * WEEK / week


def elapsed_trials(working: Floats, week: float, workable: float, generator: np.random.Generator) -> Floats:
    """Draw the days that pass in each trial, of the shape of the working days.

    Formula: D = (n + N) 7/w, N ~ NB(n, p) days lost. Symbols: n working days, of any shape, not only whole ones; else
    as `elapsed`. Each working day is lost or not by itself, so that spells of bad weather are not in it. Source: the
    negative binomial distribution counts the failures before the n-th success. Raises OutOfRange.
    """
    if not working.size:
        return np.zeros_like(working, dtype=np.float64)
    _check(float(working.min()), float(working.max()), week, workable)
    days = np.array(working, dtype=np.float64)
    if workable < 1.0:
        some = days > 0.0
        days[some] += generator.negative_binomial(days[some], workable)
    days *= WEEK / week
    return days


def _check(least: float, most: float, week: float, workable: float) -> None:
    if not (math.isfinite(least) and math.isfinite(most) and least >= 0.0):
        raise OutOfRange(f"working days must be a number, no less than nothing, got {least:g} to {most:g}")
    if not 0.0 < week <= WEEK:
        raise OutOfRange(f"more than 0 and up to 7 days are worked in a week, got {week:g}")
    if not 0.0 < workable <= 1.0:
        raise OutOfRange(f"the workable share lies above 0 and up to 1, got {workable:g}")
    if most > MOST_DAYS * workable:
        raise OutOfRange(f"the work would take more than {MOST_DAYS:,.0f} days, at {workable:g} of days workable")


def _kernel(working: float, week: float = WEEK, workable: float = 1.0) -> Mapping[str, float]:
    days = working / _DAY
    return {
        "elapsed": elapsed(days, week, workable) * _DAY,
        "deviation": elapsed_deviation(days, week, workable) * _DAY,
    }


METHOD = Method(
    name="time.elapsed",
    title="Days that pass while working days are worked",
    formula="D = n·7/(w·p), s = 7/w·√(n(1 − p))/p",
    source=Citation("mean and variance of the negative binomial distribution", standing="derived"),
    valid="up to seven days worked a week; each day lost to the weather by itself",
    inputs={
        "working": quantity("time", "Working days that the work takes."),
        "week": number("Days worked in a week; 7 unless given.", exclusiveMinimum=0, maximum=7),
        "workable": quantity("fraction", "Share of days on which the weather lets it go on; all unless given."),
    },
    outputs=(
        Symbol("elapsed", "mean days that pass", "time", "d"),
        Symbol("deviation", "standard deviation, of the weather alone", "time", "d"),
    ),
    kernel=_kernel,
    example={"working": "10 d", "week": 5, "workable": "70 %"},
    optional=frozenset({"week", "workable"}),
    cautions=(
        "bad days come in spells: the true spread is wider than this",
        "holidays are not counted, nor on which weekday the work begins",
    ),
)
