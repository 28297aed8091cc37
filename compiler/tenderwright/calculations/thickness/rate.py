"""Rate of loss of thickness from two or more surveys, with its uncertainty."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.plates import least_by
from tenderwright.calculations.thickness.readings import require_thickness, year_of
from tenderwright.quantities.display import plainly

MOST_SURVEYS = 1000
"""More than any ship has had, so that a mistyped number does not fill the memory."""
READING_UNCERTAINTY = 1e-4
"""Uncertainty of a thickness found by ultrasonic gauge, m: ±0.1 mm (common practice, no source)."""

NO_MEASURABLE_LOSS = "no measurable loss"
_YEAR = 365.25 * 86400.0


class Rate(Struct, frozen=True, eq=False):
    """Rate of loss by plate; every array has one element per plate, nan where only one survey gauged it."""

    rate: Floats
    """Loss per year by least squares over the surveys' means, m/yr; nothing or less: no measurable loss."""
    uncertainty: Floats
    """Of the rate, m/yr: from the uncertainty of a survey's mean, or from the scatter about the line if greater."""
    conservative: Floats
    """Greatest loss at the last survey less the least loss at the one before it, by the years between, m/yr."""
    surveys: Ints
    """Number of surveys that gauged the plate."""
    span: Floats
    """Years between the first and last of them."""

    @property
    def measurable(self) -> Flags:
        """Tell where there is a loss at all; false also where only one survey gauged the plate."""
        return self.rate > 0.0

    @property
    def certain(self) -> Flags:
        """Tell where the loss is more than its uncertainty."""
        return self.rate > self.uncertainty


def rates(
    plate: Ints,
    plates: int,
    survey: Ints,
    year: Floats,
    as_built: Floats,
    measured: Floats,
    uncertainty: float = READING_UNCERTAINTY,
) -> Rate:
    """Find the rate of loss of each plate.

    Formula: r = -sum((y - ym)(t - tm)) / S, S = sum((y - ym)²), over the mean date and mean thickness that each
    survey found; u = sigma / sqrt(S), which for two surveys is sigma sqrt(2) / dt, and with three or more not less
    than sqrt(sum(residual²) / (n - 2)) / sqrt(S). Symbols: plate per reading (below 0: left out), survey from 0
    in order of time, year, thicknesses in m, sigma the uncertainty of a survey's mean in m.
    Range: sigma is not divided by the number of readings, for one survey's readings share their calibration.
    Source: least squares and the conservative pair from the HSE guide to statistics of thickness readings;
    ±0.1 mm a reading, so ±0.14/dt, is common practice. Raises OutOfRange.
    """
    if not (math.isfinite(uncertainty) and uncertainty > 0.0):
        raise OutOfRange(
            f"the uncertainty of a reading must be more than nothing, got {plainly(uncertainty, 'centre')}"
        )
    on_plate = plate >= 0
    rows = slice(None) if on_plate.all() else np.flatnonzero(on_plate)
    count = int(survey[rows].max(initial=-1)) + 1
    if count > MOST_SURVEYS:
        raise OutOfRange(f"surveys are counted from 0 in order of time, up to {MOST_SURVEYS}, got {count - 1}")
    key = plate[rows] * count + survey[rows]
    size = plates * count
    number = np.bincount(key, minlength=size)
    per = np.maximum(number, 1)
    found = (number > 0).reshape(plates, count)
    date = (np.bincount(key, year[rows], size) / per).reshape(plates, count)
    mean = (np.bincount(key, measured[rows], size) / per).reshape(plates, count)
    lost = np.maximum(as_built[rows] - measured[rows], 0.0)
    least_loss = least_by(key, lost, size).reshape(plates, count)
    greatest_loss = -least_by(key, -lost, size).reshape(plates, count)
    rate, spread = _least_squares(found, date, mean, uncertainty)
    pair, span = _conservative_pair(found, date, least_loss, greatest_loss)
    return Rate(rate, spread, pair, found.sum(axis=1), span)


def _least_squares(found: Flags, date: Floats, mean: Floats, sigma: float) -> tuple[Floats, Floats]:
    number = found.sum(axis=1)
    per = np.maximum(number, 1)
    away = np.where(found, date - ((date * found).sum(axis=1) / per)[:, None], 0.0)
    above = np.where(found, mean - ((mean * found).sum(axis=1) / per)[:, None], 0.0)
    weight = (away**2).sum(axis=1)
    usable = (number >= 2) & (weight > 0.0)
    safe = np.where(usable, weight, 1.0)
    slope = (away * above).sum(axis=1) / safe
    residual = ((above - slope[:, None] * away) ** 2).sum(axis=1)
    scatter = np.sqrt(residual / np.maximum(number - 2, 1))
    noise = np.where(number > 2, np.maximum(sigma, scatter), sigma)
    return np.where(usable, -slope, np.nan), np.where(usable, noise / np.sqrt(safe), np.nan)


def _conservative_pair(found: Flags, date: Floats, least: Floats, greatest: Floats) -> tuple[Floats, Floats]:
    plates, count = found.shape
    if count == 0:
        return np.full(plates, np.nan), np.full(plates, np.nan)
    at = np.where(found, np.arange(count), -1)
    first = np.where(found, np.arange(count), count).min(axis=1, initial=count)
    last = at.max(axis=1, initial=-1)
    before = np.where(at < last[:, None], at, -1).max(axis=1, initial=-1)
    usable = before >= 0
    row = np.arange(plates)
    latest, previous, earliest = last * usable, before * usable, first * usable
    step = np.where(usable, date[row, latest] - date[row, previous], 1.0)
    if (step <= 0.0).any():
        raise OutOfRange("surveys must be numbered in order of time, and lie apart in time")
    pair = (np.where(usable, greatest[row, latest], 0.0) - np.where(usable, least[row, previous], 0.0)) / step
    span = date[row, latest] - date[row, earliest]
    return np.where(usable, pair, np.nan), np.where(usable, span, np.nan)


def verdict_of(rate: float, uncertainty: float) -> str:
    """Say what a rate of loss amounts to; source: derived."""
    if rate <= 0.0:
        return NO_MEASURABLE_LOSS
    return "loss" if rate > uncertainty else "loss within its uncertainty"


def _kernel(
    as_built: float, surveys: Sequence[Mapping[str, Any]], uncertainty: float = READING_UNCERTAINTY
) -> Mapping[str, Any]:
    ordered = sorted(surveys, key=lambda survey: year_of(survey["date"]))
    sizes = [len(survey["measured"]) for survey in ordered]
    measured = np.array([reading for survey in ordered for reading in survey["measured"]], np.float64)
    year = np.repeat([year_of(survey["date"]) for survey in ordered], sizes)
    index = np.repeat(np.arange(len(ordered)), sizes)
    built = np.full(measured.size, as_built)
    require_thickness(built, "as built")
    require_thickness(measured, "measured")
    found = rates(np.zeros(measured.size, np.int64), 1, index, year, built, measured, uncertainty)
    rate, spread = float(found.rate[0]), float(found.uncertainty[0])
    return {
        "rate": rate / _YEAR,
        "uncertainty": spread / _YEAR,
        "conservative": float(found.conservative[0]) / _YEAR,
        "verdict": verdict_of(rate, spread),
    }


METHOD = Method(
    name="thickness.rate",
    title="Rate of loss of thickness from surveys",
    formula="r = −Σ(y − ȳ)(t − t̄) / Σ(y − ȳ)²; u = σ / √Σ(y − ȳ)² (0.14 mm / Δt for two surveys of ±0.1 mm)",
    source=Citation("HSE, guide to statistics of thickness readings", "least squares; conservative pair"),
    valid="two or more surveys of the same plate; where r ≤ 0 there is no measurable loss, not endless life",
    inputs={
        "as_built": quantity("length", "Thickness as built."),
        "surveys": listed(
            {
                "type": "object",
                "properties": {
                    "date": {"type": "string", "description": "Day of the survey."},
                    "measured": listed(quantity("length", "One reading."), "Readings of the plate."),
                },
                "required": ["date", "measured"],
                "additionalProperties": False,
            },
            "Surveys of the plate.",
            2,
        ),
        "uncertainty": quantity("length", "Uncertainty of a survey's mean; 0.1 mm unless given.", "0.1 mm"),
    },
    outputs=(
        Symbol("rate", "rate of loss", "rate_of_loss", "mm/yr"),
        Symbol("uncertainty", "uncertainty of the rate", "rate_of_loss", "mm/yr"),
        Symbol("conservative", "greatest loss last less least loss before, by the time", "rate_of_loss", "mm/yr"),
        Symbol("verdict", "loss, loss within its uncertainty, or no measurable loss", "text", ""),
    ),
    kernel=_kernel,
    example={
        "as_built": "11.1 mm",
        "surveys": [
            {"date": "2007-05-12", "measured": ["10.6 mm", "10.4 mm"]},
            {"date": "2025-10-06", "measured": ["9.9 mm", "9.6 mm"]},
        ],
    },
    optional=frozenset({"uncertainty"}),
    cautions=(
        "the uncertainty of ±0.1 mm a reading is common practice, with no source",
        "surveys seldom gauge the same spots: means of a plate differ for that too",
    ),
)
