"""One place of the shell: its rate drawn to its neighbours', and its thickness at the dockings ahead."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

import numpy as np

from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, number, quantity, record
from tenderwright.calculations.thickness.analysis import CONFIDENCE, Outlook
from tenderwright.calculations.thickness.drawn_rate import METHOD as DRAWN_RATE
from tenderwright.calculations.thickness.drawn_rate import Neighbours
from tenderwright.calculations.thickness.forecast import CALLS, forecast
from tenderwright.calculations.thickness.forecast import METHOD as FORECAST
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY

_YEAR = 365.25 * 86400.0


def forecast_place(
    as_built: float,
    least: float,
    allowable: float,
    to_docking: float,
    interval: float,
    own: float | None = None,
    own_uncertainty: float | None = None,
    neighbours: Mapping[str, Any] | None = None,
    shared: float = 0.0,
    uncertainty: float = READING_UNCERTAINTY,
    confidence: float = CONFIDENCE,
) -> Mapping[str, Any]:
    """Draw the rate of a place to its neighbours', and carry its reading on.

    Formula: as `neighbours_of` and `forecast`; the least thickness at the next docking t - r T - z sqrt((u T)² +
    sigma²) with the factor z of the confidence. Symbols: as_built, least reading and uncertainty sigma in m; times in
    s; own rate, neighbours' mean, spread and uncertainties in m/s; shared, what the surveys' calibration makes of it.
    Source: as the methods that it joins. Raises OutOfRange.
    """
    if own is not None and own_uncertainty is None:
        raise OutOfRange("a rate needs its uncertainty")
    rate, total, share = (np.full(1, own or 0.0) * _YEAR, np.full(1, math.hypot(own_uncertainty or 0.0, shared)), 0.0)
    total = total * _YEAR
    if neighbours is not None:
        common = Neighbours(
            neighbours["rate"] * _YEAR,
            neighbours["uncertainty"] * _YEAR,
            neighbours["spread"] * _YEAR,
            neighbours["places"],
        )
        mine = np.full(1, math.nan if own is None else own) * _YEAR
        rate, total, drawn = common.drawn(mine, np.full(1, own_uncertainty or math.nan) * _YEAR, shared * _YEAR)
        share = float(drawn[0])
    known = own is not None or neighbours is not None
    outlook = Outlook(0.0, interval / _YEAR, uncertainty, confidence)
    years = to_docking / _YEAR
    rate = rate if known else np.full(1, math.nan)
    upper = np.fmax(rate, 0.0) + outlook.factor * np.hypot(total, uncertainty / max(years + outlook.interval, 1e-9))
    ahead = forecast(np.full(1, least), np.full(1, as_built), allowable, rate, upper, years, outlook.interval)
    outputs: dict[str, Any] = {
        "as_built": as_built,
        "least": least,
        "at_docking": float(ahead.at_docking[0]),
        "at_next": float(ahead.at_next[0]),
        "least_at_next": float(ahead.least_at_next[0]),
        "renewal_thickness": float(renewal_thickness(as_built, allowable)),
        "call": CALLS[int(ahead.call[0])],
    }
    if known:
        outputs |= {"rate": float(rate[0]) / _YEAR, "uncertainty": float(total[0]) / _YEAR, "drawn": share}
    life = float(ahead.life[0])
    return outputs if math.isnan(life) else outputs | {"life": life * _YEAR}


METHOD = Method(
    name="shell.plate",
    title="The place of a plate that decides what it is called for: its rate, and its thickness at the dockings ahead",
    formula=f"{DRAWN_RATE.formula}; {FORECAST.formula}; least t - r T - z sqrt((u T)^2 + sigma^2)",
    source=DRAWN_RATE.source,
    valid=f"{DRAWN_RATE.valid}; {FORECAST.valid}",
    inputs={
        "as_built": length("Thickness as built."),
        "least": length("The reading."),
        "allowable": quantity("fraction", "What the plate may lose before it is renewed."),
        "to_docking": quantity("time", "From the reading to the docking planned."),
        "interval": quantity("time", "From that docking to the next."),
        "own": quantity("rate_of_loss", "Rate of its frame space; left out where it has none."),
        "own_uncertainty": quantity("rate_of_loss", "Its standard uncertainty."),
        "neighbours": record(
            "The frame spaces of its zone; left out where none has a rate.",
            ("rate", "uncertainty", "spread", "places"),
            rate=quantity("rate_of_loss", "Mean of their rates."),
            uncertainty=quantity("rate_of_loss", "Its standard uncertainty, calibration left out."),
            spread=quantity("rate_of_loss", "Spread from place to place beyond chance."),
            places=number("How many have a rate of their own.", minimum=1),
        ),
        "shared": quantity("rate_of_loss", "Uncertainty by the calibration of the surveys."),
        "uncertainty": length("Uncertainty of the reading; 0.1 mm unless given.", "0.1 mm"),
        "confidence": quantity("fraction", "One-sided confidence of the least thickness; 90 % unless given.", "90 %"),
    },
    outputs=(
        Symbol("as_built", "thickness as built", "length", "mm"),
        Symbol("least", "the reading", "length", "mm"),
        Symbol("rate", "rate of loss that it is carried on at", "rate_of_loss", "mm/yr"),
        Symbol("uncertainty", "its standard uncertainty", "rate_of_loss", "mm/yr"),
        Symbol("drawn", "by how much it was drawn to the neighbours' mean", "fraction", "%"),
        *(symbol for symbol in FORECAST.outputs if symbol.name != "note"),
    ),
    kernel=forecast_place,
    example={
        "as_built": "9.5 mm",
        "least": "7.6 mm",
        "allowable": "25 %",
        "to_docking": "1.6 yr",
        "interval": "5 yr",
        "own": "0.06 mm/yr",
        "own_uncertainty": "0.02 mm/yr",
        "neighbours": {
            "rate": "0.03 mm/yr",
            "uncertainty": "0.002 mm/yr",
            "spread": "0.015 mm/yr",
            "places": 32,
        },
        "shared": "0.008 mm/yr",
    },
    optional=frozenset({"own", "own_uncertainty", "neighbours", "shared", "uncertainty", "confidence"}),
    cautions=(*FORECAST.cautions, *DRAWN_RATE.cautions),
)
