"""Rates of loss by zone, from frame spaces that two or more surveys gauged, and what they come to at the next "
"docking."""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from tenderwright.calculations.condition_results import ShellCondition, ZoneSummary
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.results import Results
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.diminution import RENEW, SUBSTANTIAL
from tenderwright.calculations.thickness.rate import rates
from tenderwright.calculations.value import Given, Record, given
from tenderwright.model.ship_condition import ShipCondition, WastageZone

_YEAR = 365.25 * 86400.0

ZONE_RATE: Method[Any] = Method(
    name="shell.zone-rate",
    title="Rate of loss of a zone, and its diminution at the next docking",
    formula="r = mean of the rates of its frame spaces; u = sqrt(u0^2 + s^2/n); D' = D + r (T + dt) / t0",
    source=Citation("Least squares by frame space as thickness.rate; the mean and its uncertainty", standing="derived"),
    valid="frame spaces of a strake that two or more surveys gauged; u0 is the gauges' own, shared by a survey",
    inputs={},
    outputs=(
        Symbol("mean_loss", "mean diminution of the latest readings", "fraction", "%"),
        Symbol("greatest_loss", "greatest diminution of the latest readings", "fraction", "%"),
        Symbol("rate", "rate of loss", "rate_of_loss", "mm/yr"),
        Symbol("uncertainty", "uncertainty of the rate", "rate_of_loss", "mm/yr"),
        Symbol("at_next", "mean diminution expected at the next docking", "fraction", "%"),
        Symbol("at_next_upper", "the same at the rate and its uncertainty", "fraction", "%"),
    ),
    kernel=lambda: {},
    example={},
    cautions=("Surveys gauge other spots of a frame space: the spread of the spaces counts for that.",),
)


def zone_rates(condition: ShipCondition, results: Results, record: Record) -> None:
    """Keep what each zone has lost, how fast it wastes, and what that comes to."""
    shell = results.condition.shell
    if shell is None:
        return
    bay, each = _bays(shell)
    rate = _rates_by_bay(shell, bay, each * len(condition.zones))
    made = []
    for index, zone in enumerate(condition.zones):
        inside = shell.zone == index
        if not (inside & shell.analysis.latest).any():
            continue
        of_zone = np.full(rate.size, np.nan)
        of_zone[index * each : (index + 1) * each] = rate[index * each : (index + 1) * each]
        summary = _summary(shell, zone.zone, inside, bay, of_zone)
        made.append(summary)
        _keep(zone, summary, condition, record)
    results.condition.zones = tuple(made)


def _bays(shell: ShellCondition) -> tuple[Ints, int]:
    """Number the frame space of each reading, zone by zone, and give how many numbers a zone has."""
    readings, grid = shell.readings, shell.grid
    cell = (readings.strake * 2 + readings.side) * grid.bays + grid.bay_of(readings.x)
    each = 2 * grid.strakes * grid.bays
    return shell.zone * each + cell, each


def _rates_by_bay(shell: ShellCondition, bay: Ints, size: int) -> Floats:
    """Give the rate of each frame space, nan where fewer than two surveys gauged it."""
    readings = shell.readings
    return rates(
        bay,
        size,
        readings.survey,
        readings.year,
        readings.as_built,
        readings.measured,
        shell.outlook.uncertainty,
    ).rate


def _summary(shell: ShellCondition, name: str, inside: Flags, bay: Ints, rate: Floats) -> ZoneSummary:
    """Sum up a zone, with the rates of its frame spaces and nan for those of others."""
    found, readings, outlook = shell.analysis, shell.readings, shell.outlook
    latest = inside & found.latest
    loss, state = found.found.fraction[latest], found.state[latest]
    of_zone = ~np.isnan(rate)
    bays = int(of_zone.sum())
    means, span = _means(shell, inside & of_zone[bay], bay)
    mean_rate = uncertainty = math.nan
    if bays:
        mean_rate = float(rate[of_zone].mean())
        own = outlook.uncertainty * math.sqrt(2.0) / span if span > 0.0 else 0.0
        spread = float(rate[of_zone].std(ddof=1)) / math.sqrt(bays) if bays > 1 else 0.0
        uncertainty = math.hypot(own, spread)
    mean = float(loss.mean())
    ahead = outlook.docking + outlook.interval - float(readings.year[latest].mean())
    built = float(readings.as_built[latest].mean())
    used = max(0.0, mean_rate) if bays else 0.0
    upper = max(0.0, mean_rate + uncertainty) if bays else 0.0
    return ZoneSummary(
        name,
        int(latest.sum()),
        mean,
        float(loss.max()),
        int((state >= SUBSTANTIAL).sum()),
        int((state == RENEW).sum()),
        mean_rate,
        uncertainty,
        bays,
        min(1.0, mean + upper * ahead / built),
        min(1.0, mean + used * ahead / built),
        means,
    )


def _means(shell: ShellCondition, rows: Flags, bay: Ints) -> tuple[tuple[tuple[float, float], ...], float]:
    """Give year and mean diminution of each survey over frame spaces gauged twice, and the years between the ends."""
    readings, loss = shell.readings, shell.analysis.found.fraction
    means = []
    for survey in range(int(readings.survey.max(initial=-1)) + 1):
        of_survey = rows & (readings.survey == survey)
        if of_survey.any():
            number = np.bincount(bay[of_survey])
            total = np.bincount(bay[of_survey], loss[of_survey])
            there = number > 0
            means.append((float(readings.year[of_survey].mean()), float((total[there] / number[there]).mean())))
    return tuple(means), means[-1][0] - means[0][0] if means else 0.0


def _keep(zone: WastageZone, found: ZoneSummary, condition: ShipCondition, record: Record) -> None:
    inputs = {
        "readings": given(record.values["shell.survey.readings"], f"{found.readings} of the latest in the zone"),
        "frame spaces": Given(None, f"{found.bays} gauged at two surveys or more", "counted from the surveys"),
        "limit": Given(zone.allowable.si, f"{zone.allowable}: {zone.source}", zone.allowable.at),
        "interval": given(condition.next_docking),
    }
    outputs = {"mean_loss": found.mean_loss, "greatest_loss": found.greatest_loss}
    if found.bays:
        outputs |= {
            "rate": found.rate / _YEAR,
            "uncertainty": found.uncertainty / _YEAR,
            "at_next": found.mean_at_next,
            "at_next_upper": found.upper_at_next,
        }
    record.keep(ZONE_RATE, f"shell.zone.{zone.zone}", zone.name, inputs, outputs)
