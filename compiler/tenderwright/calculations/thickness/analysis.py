"""The analysis of a ship's readings: what each has lost, what each plate is like, and what it is called for."""

from __future__ import annotations

from typing import Literal

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.diminution import Diminution, classify, diminution
from tenderwright.calculations.thickness.forecast import Forecast, forecast
from tenderwright.calculations.thickness.plates import PlateGrid, PlateSummary, summarise_plates
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY, Rate, rates
from tenderwright.calculations.thickness.readings import Readings

Basis = Literal["least", "mean"]


class Outlook(Struct, frozen=True):
    """What the forecast looks to, and how it is made."""

    docking: float
    """Date of the docking planned, as years and decimals."""
    interval: float
    """Years from that docking to the next."""
    basis: Basis = "least"
    """Which reading of a plate is forecast: the least of the latest survey (the safe side), or their mean,
    in which readings above nominal count as nominal."""
    uncertainty: float = READING_UNCERTAINTY
    """Uncertainty of a survey's mean thickness, m."""
    built: float | None = None
    """Year built: gives plates that one survey alone gauged a rate since then."""


class Assessed(Struct, frozen=True, eq=False):
    """Readings against their limits; one element per reading."""

    plate: Ints
    """Plate of each reading."""
    found: Diminution
    state: NDArray[np.int8]
    """Class of each reading."""
    latest: Flags
    """Whether the reading belongs to the latest survey of its plate."""
    allowable: Floats


class Analysis(Struct, frozen=True, eq=False):
    """Readings and plates, analysed. Arrays of plates follow the order of `plates.plate`."""

    plate: Ints
    """Plate of each reading."""
    found: Diminution
    state: NDArray[np.int8]
    """Class of each reading."""
    latest: Flags
    """Whether the reading belongs to the latest survey of its plate."""
    plates: PlateSummary
    """Plates as the latest survey of each found them."""
    rate: Rate
    """Per plate of `plates`, from all surveys."""
    rate_used: Floats
    """Rate forecast with, m/yr: from the surveys, else since she was built, else nan."""
    since_built: Flags
    """Whether the rate used is that since she was built."""
    ahead: Forecast


def analyse(readings: Readings, grid: PlateGrid, allowable: Floats, outlook: Outlook) -> Analysis:
    """Analyse readings of one or more surveys.

    Symbols: grid of plates; allowable diminution by strake, or one for each reading. Of each plate the latest survey
    that gauged it tells its state, and all surveys tell its rate; the rate is uncertain by least squares, and the
    greater of that upper rate and the conservative pair's is looked at too. Cost is linear in readings.
    Source: as the methods it calls. Raises OutOfRange.
    """
    plate = grid.plate_of(readings.strake, readings.side, readings.x)
    assessed = assess(readings, plate, grid.count, _allowed(readings, allowable, len(grid.edges)))
    return look_ahead(readings, assessed, grid.count, outlook)


def assess(readings: Readings, plate: Ints, plates: int, allowable: Floats) -> Assessed:
    """Set each reading against its limit, and tell which survey was the latest of each plate.

    Symbols: plate of each reading, from 0 to plates - 1, or below 0 where there is none; allowable of each.
    Source: as `diminution` and `classify`. Raises OutOfRange.
    """
    found = diminution(readings.as_built, readings.measured)
    state = classify(found.fraction, allowable)
    inside = plate >= 0
    last = np.full(plates, -1, np.int64)
    np.maximum.at(last, plate[inside], readings.survey[inside])
    latest = inside & (readings.survey == last[plate])
    return Assessed(plate, found, state, latest, allowable)


def look_ahead(readings: Readings, assessed: Assessed, plates: int, outlook: Outlook) -> Analysis:
    """Gather assessed readings by plate, and carry each plate on at its rate; see `analyse`. Raises OutOfRange."""
    plate, found, state, latest = assessed.plate, assessed.found, assessed.state, assessed.latest
    summary = summarise_plates(
        np.where(latest, plate, -1), plates, readings.as_built, readings.measured, found, state, assessed.allowable
    )
    rate = rates(
        plate,
        plates,
        readings.survey,
        readings.year,
        readings.as_built,
        readings.measured,
        outlook.uncertainty,
    )
    rate = _rows(rate, summary.plate)
    when = _when(readings, plate, latest, summary.plate)
    used, since = _rate_used(rate, summary, when, outlook.built)
    upper = np.fmax(rate.rate + rate.uncertainty, rate.conservative)
    thickness = summary.least
    if outlook.basis == "mean":
        thickness = summary.as_built * (1.0 - summary.mean_diminution)
    ahead = forecast(
        thickness,
        summary.as_built,
        summary.allowable,
        used,
        np.where(since, used, upper),
        outlook.docking - when,
        outlook.interval,
    )
    return Analysis(plate, found, state, latest, summary, rate, used, since, ahead)


def _allowed(readings: Readings, allowable: Floats, strakes: int) -> Floats:
    if allowable.size == strakes and strakes != len(readings):
        return allowable[readings.strake]
    if allowable.shape != readings.x.shape:
        raise OutOfRange("give an allowable diminution for each strake, or for each reading")
    return allowable


def _rows(rate: Rate, plates: Ints) -> Rate:
    return Rate(
        rate.rate[plates],
        rate.uncertainty[plates],
        rate.conservative[plates],
        rate.surveys[plates],
        rate.span[plates],
    )


def _when(readings: Readings, plate: Ints, latest: Flags, plates: Ints) -> Floats:
    """Give the mean date of the latest survey of each plate."""
    size = int(plate.max(initial=0)) + 1
    number = np.bincount(plate[latest], minlength=size)[plates]
    return np.bincount(plate[latest], readings.year[latest], size)[plates] / number


def _rate_used(rate: Rate, plates: PlateSummary, when: Floats, built: float | None) -> tuple[Floats, Flags]:
    if built is None:
        return rate.rate, np.zeros(when.size, np.bool_)
    if (when <= built).any():
        raise OutOfRange("a survey is dated before the ship was built")
    since = np.isnan(rate.rate)
    return np.where(since, plates.mean_diminution * plates.as_built / (when - built), rate.rate), since
