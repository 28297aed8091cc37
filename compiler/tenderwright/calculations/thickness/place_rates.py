"""The rates of the places of a zone: each frame space of a strake by its own surveys, and by its neighbours."""

from __future__ import annotations

import math

import numpy as np
from msgspec import Struct

from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.drawn_rate import Neighbours, neighbours_of
from tenderwright.calculations.thickness.plates import bay_of
from tenderwright.calculations.thickness.rate import rates
from tenderwright.calculations.thickness.readings import Readings


class PlaceRates(Struct, frozen=True, eq=False):
    """Rates of the frame spaces of one zone, m a year."""

    place: Ints
    """Frame space of each reading."""
    own: Floats
    """Rate of each frame space by its own readings; nan where one survey alone gauged it."""
    own_uncertainty: Floats
    """Of it, by the scatter from spot to spot."""
    neighbours: Neighbours
    shared: float
    """Uncertainty of every rate by the calibration of the surveys, which their readings share."""
    means: tuple[tuple[float, float], ...]
    """Year and mean diminution of each survey, over the frame spaces that two or more gauged."""

    def drawn(self) -> tuple[Floats, Floats, Floats]:
        """Give the rate of each frame space drawn to its neighbours', its uncertainty, and by how much."""
        return self.neighbours.drawn(self.own, self.own_uncertainty, self.shared)


def place_rates(readings: Readings, strakes: int, frames: Floats, uncertainty: float) -> PlaceRates:
    """Find the rates of the frame spaces of one zone.

    Formula: own rate by least squares as `rates`, of the loss; its variance sum (y - ym)²/S² v/n over the surveys, with
    the variance v of a spot about the mean of its frame space, pooled over the zone with one spot at sigma; shared
    u0 = sigma sqrt(2)/T over the years T between the first and the last survey. Symbols: readings of the zone by all
    surveys; sigma, the uncertainty of a survey's mean in m. Source: least squares, derived. Raises OutOfRange.
    """
    spaces = frames.size - 1
    place = (readings.strake * 2 + readings.side) * spaces + bay_of(frames, readings.x)
    size = 2 * strakes * spaces
    lost = readings.as_built - readings.measured
    own = rates(place, size, readings.survey, readings.year, np.zeros(lost.size), -lost, uncertainty).rate
    known = ~np.isnan(own)
    means = _means(readings, lost / readings.as_built, known[place], place)
    shared = uncertainty * math.sqrt(2.0) / (means[-1][0] - means[0][0]) if len(means) > 1 else 0.0
    own_uncertainty = np.sqrt(_variance(readings, lost, place, size, uncertainty))
    return PlaceRates(place, own, own_uncertainty, neighbours_of(own, own_uncertainty), shared, means)


def _variance(readings: Readings, lost: Floats, place: Ints, size: int, sigma: float) -> Floats:
    """Give the variance of the rate of each place; nan where it has none."""
    surveys = int(readings.survey.max(initial=0)) + 1
    key = place * surveys + readings.survey
    number = np.bincount(key, minlength=size * surveys)
    per = np.maximum(number, 1)
    mean = np.bincount(key, lost, size * surveys) / per
    beyond = float(((lost - mean[key]) ** 2).sum())
    spot = (beyond + sigma**2) / (lost.size - int((number > 0).sum()) + 1)
    year = (np.bincount(key, readings.year, size * surveys) / per).reshape(size, surveys)
    number = number.reshape(size, surveys)
    found = number > 0
    away = np.where(found, year - ((year * found).sum(axis=1) / np.maximum(found.sum(axis=1), 1))[:, None], 0.0)
    weight = (away**2).sum(axis=1)
    usable = weight > 0.0
    safe = np.where(usable, weight, 1.0)
    spread = (away**2 / np.maximum(number, 1)).sum(axis=1) * spot / safe**2
    return np.where(usable, spread, np.nan)


def _means(readings: Readings, loss: Floats, rows: Flags, place: Ints) -> tuple[tuple[float, float], ...]:
    """Give year and mean diminution of each survey over places gauged twice, those above nominal as nothing."""
    means = []
    clipped = np.clip(loss, 0.0, None)
    for survey in range(int(readings.survey.max(initial=-1)) + 1):
        of_survey = rows & (readings.survey == survey)
        if of_survey.any():
            number = np.bincount(place[of_survey])
            total = np.bincount(place[of_survey], clipped[of_survey])
            there = number > 0
            means.append((float(readings.year[of_survey].mean()), float((total[there] / number[there]).mean())))
    return tuple(means)
