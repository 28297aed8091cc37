"""One plate of the shell, from its readings to the dockings ahead."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from tenderwright.calculations.method import Method, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.calculations.thickness.analysis import assess, look_ahead
from tenderwright.calculations.thickness.forecast import CALLS
from tenderwright.calculations.thickness.forecast import METHOD as FORECAST
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.named_readings import READINGS, NamedReadings, readings_from_input
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY
from tenderwright.calculations.thickness.shell_forecast import OUTLOOK, outlook_of

_YEAR = 365.25 * 86400.0


def forecast_plate(
    readings: Sequence[Mapping[str, Any]] | NamedReadings,
    allowable: float,
    docking: str,
    interval: float,
    uncertainty: float = READING_UNCERTAINTY,
    built: int | None = None,
) -> Mapping[str, Any]:
    """Find the state and rate of a plate from its readings, and carry its least reading on at that rate.

    Symbols: readings of one plate, all surveys; the rest as `call_plates`. Source: as `analyse`. Raises OutOfRange.
    """
    taken = readings_from_input(readings).readings
    alike = np.zeros(len(taken), np.int64)
    assessed = assess(taken, alike, 1, np.full(len(taken), allowable))
    found = look_ahead(taken, assessed, 1, outlook_of(taken, docking, interval, uncertainty, built))
    plates, ahead = found.plates, found.ahead
    outputs: dict[str, Any] = {
        "as_built": float(plates.as_built[0]),
        "least": float(plates.least[0]),
        "rate": float(found.rate_used[0]) / _YEAR,
        "uncertainty": float(found.rate.uncertainty[0]) / _YEAR,
        "at_docking": float(ahead.at_docking[0]),
        "at_next": float(ahead.at_next[0]),
        "least_at_next": float(ahead.least_at_next[0]),
        "renewal_thickness": float(renewal_thickness(float(plates.as_built[0]), allowable)),
        "life": float(ahead.life[0]) * _YEAR,
    }
    return {name: figure for name, figure in outputs.items() if not math.isnan(figure)} | {
        "call": CALLS[int(ahead.call[0])]
    }


METHOD = Method(
    name="shell.plate",
    title="One plate: its readings, its rate of loss, and its thickness at the dockings ahead",
    formula=f"rate by least squares over the surveys (thickness.rate), or since she was built; {FORECAST.formula}",
    source=FORECAST.source,
    valid=FORECAST.valid,
    inputs={
        "readings": READINGS,
        "allowable": quantity("fraction", "What the plate may lose before it is renewed."),
        **OUTLOOK,
    },
    outputs=(
        Symbol("as_built", "thickness as built", "length", "mm"),
        Symbol("least", "least reading of the latest survey", "length", "mm"),
        Symbol("rate", "rate of loss; since she was built where one survey alone gauged it", "rate_of_loss", "mm/yr"),
        Symbol("uncertainty", "uncertainty of the rate, where surveys give it", "rate_of_loss", "mm/yr"),
        *(symbol for symbol in FORECAST.outputs if symbol.name != "note"),
    ),
    kernel=forecast_plate,
    example={
        "readings": [
            {"survey": 1, "date": "2007-09-15", "as_built": "9.5 mm", "measured": "8.5 mm"},
            {"survey": 2, "date": "2025-10-06", "as_built": "9.5 mm", "measured": "6.8 mm"},
            {"survey": 2, "date": "2025-10-06", "as_built": "9.5 mm", "measured": "7.4 mm"},
        ],
        "allowable": "25 %",
        "docking": "2027-05-04",
        "interval": "5 yr",
    },
    optional=frozenset({"uncertainty", "built"}),
    cautions=FORECAST.cautions,
)
