"""Rate of loss of a zone, from frame spaces that two or more surveys gauged, and what it comes to."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import text
from tenderwright.calculations.thickness.diminution import RENEW, SUBSTANTIAL
from tenderwright.calculations.thickness.drawn_rate import SOURCE
from tenderwright.calculations.thickness.shell_forecast import (
    EXAMPLE_FORECAST,
    FORECAST_INPUT,
    ShellCondition,
    forecast_from_input,
)

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
    spread: float
    """From frame space to frame space, beyond what scatter explains."""
    bays: int
    """Frame spaces gauged at two surveys, from which the rate is."""
    upper_at_next: float
    """Mean diminution expected at the next docking at the upper rate, or at present where there is no rate."""
    mean_at_next: float
    means: tuple[tuple[float, float], ...]
    """Year and mean diminution of each survey, over the frame spaces that all of them gauged."""


def zone_rate(forecast: Mapping[str, Any] | ShellCondition, zone: str) -> ZoneSummary:
    """Sum up a zone.

    Formula: r, the mean of the rates of its frame spaces as `neighbours_of` finds it; u = sqrt(u0² + u(m)²), with u0
    of the gauges over the years between the first and the last survey; D' = D + r (T' + dt) / t0, and at the upper
    rate r + z u. Symbols: the shell carried on; the name of one of its zones; z, the factor of its confidence.
    Source: as `neighbours_of`. Raises OutOfRange.
    """
    shell = forecast_from_input(forecast)
    readings, found, outlook = shell.readings, shell.analysis, shell.outlook
    number = next((number for number, one in enumerate(shell.zones) if one.get("zone") == zone), None)
    if number is None:
        raise OutOfRange(f"the survey has no zone `{zone}`")
    latest = np.flatnonzero(found.latest & (shell.zone == number))
    if not latest.size:
        raise OutOfRange("no reading of the zone is of the latest survey of its plate")
    loss, state, rated = found.found.fraction[latest], found.state[latest], found.zones[number]
    common = rated.neighbours
    total = math.hypot(common.uncertainty, rated.shared)
    mean = float(loss.mean())
    ahead = outlook.docking + outlook.interval - float(readings.year[latest].mean())
    built = float(readings.as_built[latest].mean())
    used = max(0.0, common.rate) if common.places else 0.0
    upper = max(0.0, common.rate + outlook.factor * total) if common.places else 0.0
    return ZoneSummary(
        latest.size,
        mean,
        float(loss.max()),
        int((state >= SUBSTANTIAL).sum()),
        int((state == RENEW).sum()),
        common.rate,
        total,
        common.spread,
        common.places,
        min(1.0, mean + upper * ahead / built),
        min(1.0, mean + used * ahead / built),
        rated.means,
    )


def outputs_of(found: ZoneSummary) -> dict[str, float]:
    """Give the zone as the outputs of the method; without a rate where no frame space was gauged twice."""
    outputs = {"mean_loss": found.mean_loss, "greatest_loss": found.greatest_loss}
    if found.bays:
        outputs |= {
            "rate": found.rate / _YEAR,
            "uncertainty": found.uncertainty / _YEAR,
            "spread": found.spread / _YEAR,
            "at_next": found.mean_at_next,
            "at_next_upper": found.upper_at_next,
        }
    return outputs


METHOD = Method(
    name="shell.zone-rate",
    title="Rate of loss of a zone, and its diminution at the next docking",
    formula="r = mean of the rates of its frame spaces, each by what is known of it; u = sqrt(u0^2 + u(m)^2); "
    "D' = D + r (T + dt) / t0",
    source=SOURCE,
    valid="frame spaces of a strake that two or more surveys gauged; u0 is the gauges' own, shared by a survey",
    inputs={"forecast": FORECAST_INPUT, "zone": text("Name of one of its zones.")},
    outputs=(
        Symbol("mean_loss", "mean diminution of the latest readings", "fraction", "%"),
        Symbol("greatest_loss", "greatest diminution of the latest readings", "fraction", "%"),
        Symbol("rate", "rate of loss", "rate_of_loss", "mm/yr"),
        Symbol("uncertainty", "standard uncertainty of the rate", "rate_of_loss", "mm/yr"),
        Symbol("spread", "spread of the rate from frame space to frame space", "rate_of_loss", "mm/yr"),
        Symbol("at_next", "mean diminution expected at the next docking", "fraction", "%"),
        Symbol("at_next_upper", "the same at the upper rate, at the confidence given", "fraction", "%"),
    ),
    kernel=zone_rate,
    figures=outputs_of,
    example={"forecast": EXAMPLE_FORECAST, "zone": "bottom"},
    cautions=("Surveys gauge other spots of a frame space: the spread of the spaces counts for that.",),
)
