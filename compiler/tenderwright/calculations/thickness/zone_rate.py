"""Rate of loss of a zone, from frame spaces that two or more surveys gauged, and what it comes to."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, listed, quantity, text
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.diminution import RENEW, SUBSTANTIAL, classify, diminution
from tenderwright.calculations.thickness.named_readings import PLACED_LATEST, NamedReadings, readings_from_input
from tenderwright.calculations.thickness.plates import bay_of
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY, rates
from tenderwright.calculations.thickness.readings import Readings, year_of
from tenderwright.calculations.thickness.shell_forecast import OUTLOOK

_YEAR = 365.25 * 86400.0


class ZoneSummary(Struct, frozen=True):
    """One zone of the shell as the latest readings found it; rates in m a year."""

    readings: int
    mean_loss: float
    """Mean diminution, readings above nominal as nothing."""
    greatest_loss: float
    substantial: int
    """Readings whose corrosion is substantial or worse."""
    renew: int
    rate: float
    """nan where no frame space was gauged twice."""
    uncertainty: float
    bays: int
    """Frame spaces gauged at two surveys, from which the rate is."""
    upper_at_next: float
    """Mean diminution expected at the next docking at the upper rate, or at present where there is no rate."""
    mean_at_next: float
    means: tuple[tuple[float, float], ...]
    """Year and mean diminution of each survey, over the frame spaces that all of them gauged."""


def zone_rate(
    readings: Sequence[Mapping[str, Any]] | NamedReadings,
    strakes: Sequence[str],
    frames: Sequence[float],
    limit: float,
    docking: str,
    interval: float,
    uncertainty: float = READING_UNCERTAINTY,
) -> ZoneSummary:
    """Sum up a zone.

    Formula: r = mean of the rates of its frame spaces; u = sqrt(u0² + s²/n), with u0 = sigma sqrt(2) / T of the gauges
    over the years T between the first and the last survey, and s the spread of n spaces; D' = D + r (T' + dt) / t0.
    Symbols: readings of the zone by all surveys, each told whether it is of the latest that gauged its plate; strakes
    from the keel; frames in m forward; limit, the diminution allowed; docking, the day planned; interval dt in s;
    uncertainty sigma in m. Source: derived. Raises OutOfRange.
    """
    named = readings_from_input(readings, strakes)
    taken, places = named.readings, np.array(frames, np.float64)
    latest = named.latest if named.latest is not None else np.zeros(0, np.bool_)
    if not latest.any():
        raise OutOfRange("no reading of the zone is of the latest survey of its plate")
    found = diminution(taken.as_built, taken.measured)
    loss, state = found.fraction[latest], classify(found.fraction[latest], limit)
    bay, size = _bays(taken, places, len(strakes))
    rate = rates(bay, size, taken.survey, taken.year, taken.as_built, taken.measured, uncertainty).rate
    known = ~np.isnan(rate)
    bays = int(known.sum())
    means, span = _means(taken, found.fraction, known[bay], bay)
    mean_rate = spread_rate = math.nan
    if bays:
        mean_rate = float(rate[known].mean())
        own = uncertainty * math.sqrt(2.0) / span if span > 0.0 else 0.0
        spread = float(rate[known].std(ddof=1)) / math.sqrt(bays) if bays > 1 else 0.0
        spread_rate = math.hypot(own, spread)
    mean = float(loss.mean())
    ahead = year_of(docking) + interval / _YEAR - float(taken.year[latest].mean())
    built = float(taken.as_built[latest].mean())
    used = max(0.0, mean_rate) if bays else 0.0
    upper = max(0.0, mean_rate + spread_rate) if bays else 0.0
    return ZoneSummary(
        int(latest.sum()),
        mean,
        float(loss.max()),
        int((state >= SUBSTANTIAL).sum()),
        int((state == RENEW).sum()),
        mean_rate,
        spread_rate,
        bays,
        min(1.0, mean + upper * ahead / built),
        min(1.0, mean + used * ahead / built),
        means,
    )


def _bays(readings: Readings, frames: Floats, strakes: int) -> tuple[Ints, int]:
    """Number the frame space of each reading, and give how many numbers there are."""
    spaces = frames.size - 1
    return (readings.strake * 2 + readings.side) * spaces + bay_of(frames, readings.x), 2 * strakes * spaces


def _means(readings: Readings, loss: Floats, rows: Flags, bay: Ints) -> tuple[tuple[tuple[float, float], ...], float]:
    """Give year and mean diminution of each survey over frame spaces gauged twice, and the years between the ends."""
    means = []
    for survey in range(int(readings.survey.max(initial=-1)) + 1):
        of_survey = rows & (readings.survey == survey)
        if of_survey.any():
            number = np.bincount(bay[of_survey])
            total = np.bincount(bay[of_survey], loss[of_survey])
            there = number > 0
            means.append((float(readings.year[of_survey].mean()), float((total[there] / number[there]).mean())))
    return tuple(means), means[-1][0] - means[0][0] if means else 0.0


def outputs_of(found: ZoneSummary) -> dict[str, float]:
    """Give the zone as the outputs of the method; without a rate where no frame space was gauged twice."""
    outputs = {"mean_loss": found.mean_loss, "greatest_loss": found.greatest_loss}
    if found.bays:
        outputs |= {
            "rate": found.rate / _YEAR,
            "uncertainty": found.uncertainty / _YEAR,
            "at_next": found.mean_at_next,
            "at_next_upper": found.upper_at_next,
        }
    return outputs


METHOD = Method(
    name="shell.zone-rate",
    title="Rate of loss of a zone, and its diminution at the next docking",
    formula="r = mean of the rates of its frame spaces; u = sqrt(u0^2 + s^2/n); D' = D + r (T + dt) / t0",
    source=Citation("Least squares by frame space as thickness.rate; the mean and its uncertainty", standing="derived"),
    valid="frame spaces of a strake that two or more surveys gauged; u0 is the gauges' own, shared by a survey",
    inputs={
        "readings": PLACED_LATEST,
        "strakes": listed(text("Name of a strake."), "The strakes from the keel."),
        "frames": listed(length("Forward of the after perpendicular."), "The frames, from aft.", 2),
        "limit": quantity("fraction", "What plate of the zone may lose before it is renewed."),
        **{name: OUTLOOK[name] for name in ("docking", "interval", "uncertainty")},
    },
    outputs=(
        Symbol("mean_loss", "mean diminution of the latest readings", "fraction", "%"),
        Symbol("greatest_loss", "greatest diminution of the latest readings", "fraction", "%"),
        Symbol("rate", "rate of loss", "rate_of_loss", "mm/yr"),
        Symbol("uncertainty", "uncertainty of the rate", "rate_of_loss", "mm/yr"),
        Symbol("at_next", "mean diminution expected at the next docking", "fraction", "%"),
        Symbol("at_next_upper", "the same at the rate and its uncertainty", "fraction", "%"),
    ),
    kernel=zone_rate,
    figures=outputs_of,
    example={
        "readings": [
            {
                "survey": number,
                "date": date,
                "as_built": "9.5 mm",
                "measured": measured,
                "strake": "F",
                "side": "port",
                "at": at,
                "latest": number == 2,
            }
            for number, date, at, measured in (
                (1, "2007-09-15", "24.3 m", "9.0 mm"),
                (1, "2007-09-15", "30.3 m", "9.0 mm"),
                (2, "2025-09-15", "24.3 m", "8.6 mm"),
                (2, "2025-09-15", "30.3 m", "8.3 mm"),
            )
        ],
        "strakes": ["F"],
        "frames": ["24.0 m", "24.6 m", "30.0 m", "30.6 m"],
        "limit": "25 %",
        "docking": "2027-05-04",
        "interval": "5 yr",
    },
    optional=frozenset({"uncertainty"}),
    cautions=("Surveys gauge other spots of a frame space: the spread of the spaces counts for that.",),
)
