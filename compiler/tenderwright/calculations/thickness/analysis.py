"""The analysis of a ship's readings: what each has lost, what each plate is like, and what it is called for."""

from __future__ import annotations

from statistics import NormalDist

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.diminution import Diminution, classify, diminution
from tenderwright.calculations.thickness.forecast import Forecast, forecast
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.place_rates import PlaceRates, place_rates
from tenderwright.calculations.thickness.plates import PlateSummary, least_by, summarise_plates
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY
from tenderwright.calculations.thickness.readings import Readings

CONFIDENCE = 0.90
"""One-sided confidence at which a plate is watched (common practice, no source)."""


class Outlook(Struct, frozen=True):
    """What the forecast looks to, and how it is made."""

    docking: float
    """Date of the docking planned, as years and decimals."""
    interval: float
    """Years from that docking to the next."""
    uncertainty: float = READING_UNCERTAINTY
    """Uncertainty of a reading, and of a survey's mean thickness, m."""
    confidence: float = CONFIDENCE
    built: float | None = None
    """Year built: gives zones that one survey alone gauged a rate since then."""

    @property
    def factor(self) -> float:
        """Give the standard uncertainties that the confidence takes, one-sided, of a normal distribution."""
        if not 0.5 <= self.confidence < 1.0:
            raise OutOfRange(f"a confidence is at least 50 % and under 100 %, got {100.0 * self.confidence:g} %")
        return NormalDist().inv_cdf(self.confidence)


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


class PlaceForecast(Struct, frozen=True, eq=False):
    """Rates of the places of all zones, as each reading of the latest survey takes them; m a year."""

    row: Ints
    """The readings, by their numbers."""
    own: Floats
    """Own rate of the frame space; nan where one survey alone gauged it."""
    own_uncertainty: Floats
    rate: Floats
    """Rate forecast with: drawn to the neighbours', else since she was built, else nan."""
    uncertainty: Floats
    since_built: Flags
    """Whether the rate used is that since she was built."""
    ahead: Forecast


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
    places: PlaceForecast
    zones: tuple[PlaceRates, ...]
    """What was found of each zone."""
    governing: Ints
    """Of each plate, the reading that decides what it is called for, by its place in `places`."""

    @property
    def call(self) -> NDArray[np.int8]:
        """Give the code of what each plate is called for."""
        return self.places.ahead.call[self.governing]


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


def look_ahead(
    readings: Readings, assessed: Assessed, plates: int, outlook: Outlook, zone: Ints, strakes: int, frames: Floats
) -> Analysis:
    """Carry every reading of the latest survey on at the rate of its frame space, and gather readings by plate.

    Formula: rates of the frame spaces of a zone drawn to each other as `neighbours_of`; each reading as `forecast`, the
    least at the confidence with the uncertainties of its rate and of the reading. A plate is called for what the worst
    of its readings is. Symbols: zone of each reading, from 0; frames, their places in m. Cost is linear in readings.
    Source: as the methods it calls. Raises OutOfRange.
    """
    plate, found, state, latest = assessed.plate, assessed.found, assessed.state, assessed.latest
    summary = summarise_plates(
        np.where(latest, plate, -1), plates, readings.as_built, readings.measured, found, state, assessed.allowable
    )
    of_zones = [np.flatnonzero(zone == one) for one in range(int(zone.max(initial=-1)) + 1)]
    zones = tuple(place_rates(readings.only(rows), strakes, frames, outlook.uncertainty) for rows in of_zones)
    row = np.flatnonzero(latest)
    number = np.cumsum(latest) - 1
    own, own_uncertainty, rate, uncertainty = (np.full(row.size, np.nan) for _ in range(4))
    for rows, rated in zip(of_zones, zones, strict=True):
        is_latest = np.flatnonzero(latest[rows])
        to, of = number[rows[is_latest]], rated.place[is_latest]
        drawn, drawn_uncertainty, _ = rated.drawn()
        own[to], own_uncertainty[to] = rated.own[of], rated.own_uncertainty[of]
        rate[to], uncertainty[to] = drawn[of], drawn_uncertainty[of]
    since = np.isnan(rate) if outlook.built is not None else np.zeros(row.size, np.bool_)
    if outlook.built is not None:
        if (readings.year[row] <= outlook.built).any():
            raise OutOfRange("a survey is dated before the ship was built")
        age = readings.year[row] - outlook.built
        rate = np.where(since, np.maximum(readings.as_built[row] - readings.measured[row], 0.0) / age, rate)
        uncertainty = np.where(since, outlook.uncertainty / age, uncertainty)
    ahead = _forecast(readings, row, assessed.allowable[row], rate, uncertainty, outlook)
    places = PlaceForecast(row, own, own_uncertainty, rate, uncertainty, since, ahead)
    governing = _governing(plate[row], readings.as_built[row], assessed.allowable[row], places)
    return Analysis(plate, found, state, latest, summary, places, zones, governing)


def _forecast(
    readings: Readings, row: Ints, allowable: Floats, rate: Floats, uncertainty: Floats, outlook: Outlook
) -> Forecast:
    years = outlook.docking - readings.year[row]
    whole = np.maximum(years + outlook.interval, 1e-9)
    upper = np.fmax(rate, 0.0) + outlook.factor * np.hypot(uncertainty, outlook.uncertainty / whole)
    return forecast(readings.measured[row], readings.as_built[row], allowable, rate, upper, years, outlook.interval)


def _governing(plate: Ints, as_built: Floats, allowable: Floats, places: PlaceForecast) -> Ints:
    """Give of each plate that has any the latest reading that is called for most, and of those the thinnest ahead."""
    if not plate.size:
        return np.zeros(0, np.int64)
    spare = np.nan_to_num(places.ahead.at_next - renewal_thickness(as_built, allowable), nan=np.inf)
    plates, call = int(plate.max()) + 1, places.ahead.call
    most = np.full(plates, -1, call.dtype)
    np.maximum.at(most, plate, call)
    called = np.flatnonzero(call == most[plate])
    least = least_by(plate[called], spare[called], plates)
    thinnest = called[np.flatnonzero(spare[called] == least[plate[called]])]
    governing = np.full(plates, -1, np.int64)
    governing[plate[thinnest[::-1]]] = thinnest[::-1]  # of equal ones the first
    return governing[np.flatnonzero(governing >= 0)]
