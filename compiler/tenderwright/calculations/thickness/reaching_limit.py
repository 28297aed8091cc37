"""How long the gauged places of the shell have until the first reaches its renewal thickness."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import listed, text
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.readings import day_of
from tenderwright.calculations.thickness.shell_forecast import (
    EXAMPLE_FORECAST,
    FORECAST_INPUT,
    ShellCondition,
    forecast_from_input,
)

_YEAR = 365.25 * 86400.0
_LEAST_RATE = 1e-9
"""A rate under this, m/yr, is nothing."""


class ReachingLimit(Struct, frozen=True):
    """The place that reaches its limit first; lengths in m, rates in m a year."""

    plate: str
    """Such as `B5 port`."""
    thickness: float
    limit: float
    rate: float
    u: float
    early: str
    """Day at the rate and two standard uncertainties; empty where no place has a rate."""
    likely: str
    """Day at the rate; empty where it loses nothing."""
    places: int
    """Readings that were looked at."""


def reaching_limit(
    forecast: Mapping[str, Any] | ShellCondition, renewed: Sequence[str] | Collection[str] = ()
) -> ReachingLimit:
    """Find the gauged place that first comes to its renewal thickness.

    Formula: n = (t - t_limit)/(r + 2 u_r), the least over the latest readings of all plates; r no less than nothing, as
    `neighbours_of` draws it, u_r its standard uncertainty. Symbols: forecast, the shell carried on; renewed, the plates
    that are left out, since they are made new. Source: derived. Raises OutOfRange. Where no place that stays has a
    rate, nothing is named and no day given.
    """
    shell = forecast_from_input(forecast)
    found = shell.analysis.places
    plate = shell.analysis.plate[found.row]
    names = _names(shell)
    left_out = {number for number, name in names.items() if name in set(renewed)}
    rate, u = np.fmax(found.rate, 0.0), found.uncertainty
    steep = rate + 2.0 * u
    use = np.flatnonzero((plate >= 0) & ~np.isin(plate, list(left_out)) & np.isfinite(steep) & (steep > _LEAST_RATE))
    if not use.size:
        return ReachingLimit("", 0.0, 0.0, 0.0, 0.0, "", "", 0)
    rows = found.row[use]
    thickness = shell.readings.measured[rows]
    limit = renewal_thickness(shell.readings.as_built[rows], shell.allowable[rows])
    spare = np.maximum(thickness - limit, 0.0)
    due = shell.readings.year[rows] + spare / steep[use]
    at = int(np.argmin(due))
    of, seen, row = int(use[at]), float(shell.readings.year[rows[at]]), int(rows[at])
    loss = float(rate[of])
    likely = seen + float(spare[at]) / loss if loss > _LEAST_RATE else None
    name = names.get(int(plate[of])) or f"{shell.strakes[int(shell.readings.strake[row])]}"
    return ReachingLimit(
        name,
        float(thickness[at]),
        float(limit[at]),
        loss,
        float(u[of]),
        day_of(min(float(due[at]), 9000.0)),
        "" if likely is None or likely > 9000.0 else day_of(likely),
        int(use.size),
    )


def _names(shell: ShellCondition) -> dict[int, str]:
    """Name the plates by number, as the calls do."""
    number = np.unique(shell.analysis.plate[shell.analysis.plate >= 0])
    strake, side, aft, _ = shell.plates.place_of(number)
    names = {}
    for one, of, where, start in zip(number.tolist(), strake.tolist(), side.tolist(), aft.tolist(), strict=True):
        edges = shell.plates.edges[int(of)]
        count = int(np.searchsorted(edges, start + 1e-9, side="right"))
        names[int(one)] = f"{shell.strakes[int(of)]}{count} {SIDES[int(where)]}"
    return names


def outputs_of(found: ReachingLimit) -> Mapping[str, Any]:
    """Give it as the outputs of the method."""
    return {
        "plate": found.plate,
        "thickness": found.thickness,
        "limit": found.limit,
        "rate": found.rate / _YEAR,
        "u": found.u / _YEAR,
        "early": found.early,
        "likely": found.likely,
        "places": found.places,
    }


METHOD = Method(
    name="shell.reaching-limit",
    title="The gauged place that first reaches its renewal thickness",
    formula="n = min (t - t_limit)/(r + 2 u_r)",
    source=Citation("Loss by years", standing="derived"),
    valid="readings of plate that stays; what was not gauged is not known",
    inputs={
        "forecast": FORECAST_INPUT,
        "renewed": listed(text("Such as `B5 port`."), "Plates left out, since they are made new.", 0),
    },
    outputs=(
        Symbol("plate", "the plate", "text", ""),
        Symbol("thickness", "its reading", "length", "mm"),
        Symbol("limit", "its renewal thickness", "length", "mm"),
        Symbol("rate", "rate of loss", "rate_of_loss", "mm/yr"),
        Symbol("u", "standard uncertainty of the rate", "rate_of_loss", "mm/yr"),
        Symbol("early", "day at the rate and two uncertainties", "text", ""),
        Symbol("likely", "day at the rate", "text", ""),
        Symbol("places", "readings that were looked at", "each", "each"),
    ),
    kernel=reaching_limit,
    figures=outputs_of,
    example={"forecast": EXAMPLE_FORECAST, "renewed": []},
    optional=frozenset({"renewed"}),
)
