"""A thickness survey: readings as CSV."""

from __future__ import annotations

import csv
from dataclasses import dataclass, field
from datetime import date

from tenderwright.notices import Notice, Place
from tenderwright.reading.source import Source

COLUMNS = ("strake", "frame", "side", "as_built_mm", "measured_mm", "date", "instrument", "stage")


@dataclass(frozen=True)
class Reading:
    """One thickness reading; thicknesses in m."""

    strake: str
    frame: str
    side: str
    as_built: float
    measured: float
    date: date
    instrument: str
    stage: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Survey:
    """The readings of one survey."""

    name: str
    readings: tuple[Reading, ...]
    here: Place = field(compare=False)


def read_survey(source: Source) -> tuple[Survey, list[Notice]]:
    """Read a survey; each row that cannot be read gives a notice and is left out."""
    name = source.path.rsplit("/", 1)[-1].removesuffix(".csv")
    notices: list[Notice] = []
    readings: list[Reading] = []
    lines = source.text.splitlines()
    header = tuple(next(csv.reader(lines[:1]), ()))
    if header != COLUMNS:
        message = f"the first row must be {','.join(COLUMNS)}"
        return Survey(name, (), Place(source.path)), [Notice("bad-survey", Place(source.path), message)]
    for number, row in enumerate(csv.reader(lines[1:]), start=2):
        place = Place(source.path, number)
        try:
            readings.append(_reading(row, place))
        except ValueError as error:
            notices.append(Notice("bad-survey", place, f"cannot read the row: {error}"))
    return Survey(name, tuple(readings), Place(source.path)), notices


def _reading(row: list[str], place: Place) -> Reading:
    if len(row) != len(COLUMNS):
        raise ValueError(f"it has {len(row)} cells, not {len(COLUMNS)}")
    strake, frame, side, as_built, measured, day, instrument, stage = (cell.strip() for cell in row)
    built, found = float(as_built) / 1000, float(measured) / 1000
    if not (0 < built < 0.5 and 0 < found < 0.5):
        raise ValueError("a thickness must lie between 0 and 500 mm")
    return Reading(strake, frame, side, built, found, date.fromisoformat(day), instrument, stage, place)
