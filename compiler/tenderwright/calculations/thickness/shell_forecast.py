"""What the plates of the shell are called for: renewal now, at the next docking, or to be watched."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Method, Symbol
from tenderwright.calculations.schema import length, listed, quantity, record
from tenderwright.calculations.thickness.analysis import CONFIDENCE, Analysis, Outlook, look_ahead
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Floats
from tenderwright.calculations.thickness.drawn_rate import METHOD as DRAWN_RATE
from tenderwright.calculations.thickness.forecast import CALL_NEXT, CALL_NOW, CALL_SOUND, CALL_WATCH, CALLS
from tenderwright.calculations.thickness.forecast import METHOD as FORECAST
from tenderwright.calculations.thickness.limits import renewal_thickness
from tenderwright.calculations.thickness.named_plates import NamedPlates
from tenderwright.calculations.thickness.named_readings import SIDES
from tenderwright.calculations.thickness.plates import PlateGrid
from tenderwright.calculations.thickness.rate import READING_UNCERTAINTY
from tenderwright.calculations.thickness.readings import Readings, year_of
from tenderwright.calculations.thickness.shell_survey import (
    EXAMPLE_SURVEY,
    SURVEY,
    Surveyed,
    Zones,
    surveyed_from_input,
)

_YEAR = 365.25 * 86400.0

OUTLOOK: Mapping[str, Any] = {
    "docking": {
        "type": "string",
        "format": "date",
        "description": "Day of the docking planned; that of the last reading where that is later.",
    },
    "interval": quantity("time", "From that docking to the next."),
    "uncertainty": length("Uncertainty of a reading and of a survey's mean; 0.1 mm unless given.", "0.1 mm"),
    "confidence": quantity("fraction", "One-sided confidence of the least thickness; 90 % unless given.", "90 %"),
    "built": {
        "type": "integer",
        "description": "Year in which she was built, for the rate of what one survey alone gauged.",
    },
}


class PlateCall(Struct, frozen=True):
    """A plate with what it is called for; places in m forward of the after perpendicular."""

    name: str
    """Such as `B5 port`: strake, number from aft, side."""
    strake: str
    side: str
    aft: float
    forward: float
    row: int
    """Its row in the analysis."""
    call: str


class ShellCondition(Struct, frozen=True, eq=False):
    """The readings of the shell, analysed; thicknesses in m."""

    strakes: tuple[str, ...]
    readings: Readings
    """Of plate, all surveys."""
    zones: Zones
    zone: Ints
    """Zone of each reading, by its place in the list of zones."""
    allowable: Floats
    analysis: Analysis
    plates: PlateGrid
    outlook: Outlook
    calls: tuple[PlateCall, ...]
    """Plates called for something, worst first."""
    at_docking: Floats
    """Thickness of each reading expected at the docking; nan for readings of earlier surveys."""
    at_next: Floats
    """The same at the docking after it."""
    given: Mapping[str, Any]
    """What it was built from."""

    def as_input(self) -> Mapping[str, Any]:
        """Give what it was built from."""
        return self.given


def outlook_of(
    readings: Readings,
    docking: str,
    interval: float,
    uncertainty: float = READING_UNCERTAINTY,
    confidence: float = CONFIDENCE,
    built: int | None = None,
) -> Outlook:
    """Look ahead from the docking planned, or from the last reading where that is later: a survey taken in dock."""
    return Outlook(
        docking=max(year_of(docking), float(readings.year.max())),
        interval=interval / _YEAR,
        uncertainty=uncertainty,
        confidence=confidence,
        built=None if built is None else float(built),
    )


def call_plates(
    survey: Mapping[str, Any] | Surveyed,
    frames: Sequence[float],
    docking: str,
    interval: float,
    uncertainty: float = READING_UNCERTAINTY,
    confidence: float = CONFIDENCE,
    built: int | None = None,
) -> ShellCondition:
    """Carry every plate on to the dockings ahead and call it; see `look_ahead`.

    Symbols: frames in m forward; docking, the day planned; interval in s; uncertainty of a survey's mean thickness in
    m; built, the year. Source: as `forecast` and `neighbours_of`. Raises OutOfRange.
    """
    surveyed = surveyed_from_input(survey)
    readings, plates = surveyed.named.readings, surveyed.plates
    outlook = outlook_of(readings, docking, interval, uncertainty, confidence, built)
    places, strakes = np.array(frames, np.float64), len(plates.strakes)
    found = look_ahead(readings, surveyed.assessed, plates.grid.count, outlook, surveyed.zone, strakes, places)
    given = {
        "survey": surveyed,
        "frames": frames,
        "docking": docking,
        "interval": interval,
        "uncertainty": uncertainty,
        "confidence": confidence,
    }
    at_docking, at_next = (np.full(len(readings), np.nan) for _ in range(2))
    at_docking[found.places.row], at_next[found.places.row] = found.places.ahead.at_docking, found.places.ahead.at_next
    return ShellCondition(
        plates.strakes,
        readings,
        surveyed.zones,
        surveyed.zone,
        surveyed.allowable,
        found,
        plates.grid,
        outlook,
        _calls(found, plates, renewal_thickness(readings.as_built, surveyed.allowable)),
        at_docking,
        at_next,
        given if built is None else {**given, "built": built},
    )


def forecast_from_input(forecast: Mapping[str, Any] | ShellCondition) -> ShellCondition:
    """Carry the shell on by converted input, or take what was carried on. Raises OutOfRange."""
    return forecast if isinstance(forecast, ShellCondition) else call_plates(**forecast)


def _calls(found: Analysis, named: NamedPlates, limit: Floats) -> tuple[PlateCall, ...]:
    """List the plates called for something, worst first: by call, then by what is left over the limit."""
    code = found.call
    strake, side, aft, forward = named.grid.place_of(found.plates.plate)
    spare = found.places.ahead.at_next[found.governing] - limit[found.places.row[found.governing]]
    order = np.lexsort((spare, -code))
    calls = []
    for row in order.tolist():
        if code[row] == CALL_SOUND:
            break
        edges = named.grid.edges[int(strake[row])]
        number = int(np.searchsorted(edges, aft[row] + 1e-9, side="right"))
        name, of_side = named.strakes[int(strake[row])], SIDES[int(side[row])]
        calls.append(
            PlateCall(
                f"{name}{number} {of_side}",
                name,
                of_side,
                float(aft[row]),
                float(forward[row]),
                row,
                CALLS[int(code[row])],
            )
        )
    return tuple(calls)


def outputs_of(shell: ShellCondition) -> dict[str, float]:
    """Give the numbers of plates by their calls as the outputs of the method."""
    call = shell.analysis.call
    return {
        "gauged": float(call.size),
        "now": float((call == CALL_NOW).sum()),
        "next": float((call == CALL_NEXT).sum()),
        "watch": float((call == CALL_WATCH).sum()),
        "sound": float((call == CALL_SOUND).sum()),
    }


FRAMES = listed(length("Forward of the after perpendicular."), "The frames, from aft.", 2)
FORECAST_INPUT = record(
    "The shell carried on to the dockings ahead, as `shell.plates` takes it.",
    ("survey", "frames", "docking", "interval"),
    survey=SURVEY,
    frames=FRAMES,
    **OUTLOOK,
)
EXAMPLE_FORECAST: Mapping[str, Any] = {
    "survey": EXAMPLE_SURVEY,
    "frames": ["12.0 m", "12.6 m", "13.2 m", "13.8 m", "14.4 m"],
    "docking": "2027-05-04",
    "interval": "5 yr",
    "built": 1934,
}

METHOD = Method(
    name="shell.plates",
    title="Plates called for renewal now, at the next docking, or to be watched",
    formula=f"{DRAWN_RATE.formula}; {FORECAST.formula}",
    source=DRAWN_RATE.source,
    valid="plates gauged at least once; rates of frame spaces by two surveys or more, otherwise since she was built",
    inputs={"survey": SURVEY, "frames": FRAMES, **OUTLOOK},
    outputs=(
        Symbol("gauged", "plates gauged", "each", "each"),
        Symbol("now", "plates with steel to renew at this docking", "each", "each"),
        Symbol("next", "plates to renew now, for they pass their limit before the next docking", "each", "each"),
        Symbol("watch", "plates to watch", "each", "each"),
        Symbol("sound", "plates called sound", "each", "each"),
    ),
    kernel=call_plates,
    figures=outputs_of,
    example=EXAMPLE_FORECAST,
    optional=frozenset({"uncertainty", "confidence", "built"}),
    cautions=(
        "Each reading goes on at the rate of its frame space: a spot that wastes faster than that is thinner.",
        *DRAWN_RATE.cautions,
    ),
)
