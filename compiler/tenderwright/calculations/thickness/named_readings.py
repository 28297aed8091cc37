"""Readings as an input: one record for each, and how they become arrays."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Literal

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schema import length, listed, record, text
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Flags
from tenderwright.calculations.thickness.readings import Readings, year_of

Side = Literal["port", "starboard"]
SIDES: tuple[Side, Side] = ("port", "starboard")

READING: Mapping[str, Any] = {
    "survey": {"type": "integer", "minimum": 1, "description": "Number of its survey, in order of time."},
    "date": {
        "type": "string",
        "format": "date",
        "description": "Day on which it was taken.",
    },
    "as_built": length("Thickness as built."),
    "measured": length("Thickness measured."),
}
PLACE: Mapping[str, Any] = {
    "strake": text("Name of the strake."),
    "side": {"type": "string", "enum": list(SIDES), "description": "Side of the ship."},
    "at": length("Place forward of the after perpendicular.", "21.3 m"),
}
READINGS = listed(record("One reading.", tuple(READING), **READING, **PLACE), "The readings of all surveys.")
PLACED = listed(record("One reading.", (*READING, *PLACE), **READING, **PLACE), "The readings of all surveys.")


class NamedReadings(Struct, frozen=True, eq=False):
    """Readings with the names of the strakes; without any they are of one thing, and their places count for nothing."""

    readings: Readings
    strakes: tuple[str, ...] = ()

    def as_input(self) -> list[dict[str, Any]]:
        """Give what it was built from."""
        readings = self.readings
        days = np.rint((readings.year - 1970.0) * 365.25).astype(np.int64).astype("datetime64[D]")
        columns: dict[str, Any] = {
            "survey": (readings.survey + 1).tolist(),
            "date": np.datetime_as_string(days).tolist(),
            "as_built": readings.as_built.tolist(),
            "measured": readings.measured.tolist(),
        }
        if self.strakes:
            columns["strake"] = [self.strakes[code] for code in readings.strake.tolist()]
            columns["side"] = [SIDES[code] for code in readings.side.tolist()]
            columns["at"] = readings.x.tolist()
        return [dict(zip(columns, row, strict=True)) for row in zip(*columns.values(), strict=True)]

    def only(self, rows: Flags | Ints) -> NamedReadings:
        """Give some of the readings: those marked, or those numbered."""
        return NamedReadings(self.readings.only(rows), self.strakes)


def readings_from_input(
    readings: Sequence[Mapping[str, Any]] | NamedReadings, strakes: Sequence[str] = ()
) -> NamedReadings:
    """Make arrays of converted records, or take those that are made; strakes from the keel. Raises OutOfRange."""
    if isinstance(readings, NamedReadings):
        return readings
    code = {name: index for index, name in enumerate(strakes)}
    unknown = next((one["strake"] for one in readings if strakes and one["strake"] not in code), None)
    if unknown is not None:
        raise OutOfRange(f"`{unknown}` is not one of the strakes")

    def column(name: str, kind: type, other: float = 0) -> Any:
        return np.array([one.get(name, other) for one in readings], kind)

    found = Readings(
        np.array([code[one["strake"]] if strakes else 0 for one in readings], np.int64),
        np.array([SIDES.index(one.get("side", SIDES[0])) for one in readings], np.int64),
        np.zeros(len(readings), np.int64),
        column("survey", np.int64) - 1,
        column("at", np.float64),
        column("as_built", np.float64),
        column("measured", np.float64),
        np.array([year_of(one["date"]) for one in readings], np.float64),
    )
    return NamedReadings(found, tuple(strakes))
