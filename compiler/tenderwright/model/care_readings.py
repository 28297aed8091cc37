"""Readings between dockings, from the CSV files under care/."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator
from datetime import date

from msgspec import Struct

from tenderwright.model.care import COLUMNS, KINDS
from tenderwright.notices import Notice, Place
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.quantity import QuantityError, parse_quantity
from tenderwright.reading.source import Source

MEASURES = {
    "potential": "potential",
    "anode": "fraction",
    "leak": "volume",
    "pump": "time",
    "humidity": "fraction",
    "moisture": "fraction",
}
"""The kinds that have a figure, with what it measures."""
CELLS = ("silver", "silver gel", "copper", "calomel", "zinc")
"""Reference cells that a potential may be read with."""
FAULT, IN_ORDER = "fault", "in order"
LEAST_SALINITY = 0.5
"""Salinity below which an open silver cell reads nothing that can be corrected, g/kg."""
_NEEDED = ("date", "kind", "place")
_MOST = {"potential": 3.0, "fraction": 1.0, "volume": 1e5, "time": 86400.0}
"""Beyond which a figure is taken for a mistake of unit, SI."""
MOST_NOTICES = 20
"""Rows of one file that are told one by one; the rest are counted."""


class CareReading(Struct, frozen=True):
    """One row; figures in SI, leaks as m3 in a day, pumps as s in a day."""

    day: date
    kind: str
    place: str
    si: float | None
    fault: bool
    method: str
    by: str
    salinity: float | None
    temperature: float | None
    remark: str
    here: Place


def all_care_readings(sources: Iterable[Source]) -> tuple[tuple[CareReading, ...], list[Notice]]:
    """Read all the CSV files among these, in order of time; each row that cannot be read gives a notice."""
    rows, notices = [], []
    for source in sources:
        if source.path.endswith(".csv"):
            read, told = care_readings(source)
            rows += read
            notices += told
    return tuple(sorted(rows, key=lambda one: one.day)), notices


def care_readings(source: Source) -> tuple[list[CareReading], list[Notice]]:
    """Read a file; each row that cannot be read gives a notice and is left out."""
    reader = csv.reader(io.StringIO(source.text))
    columns = [cell.strip() for cell in next(reader, ())]
    if wrong := _wrong_columns(columns):
        hints = (f"the columns are {', '.join(COLUMNS)}",)
        return [], [Notice("bad-care-reading", Place(source.path, 1), wrong, hints=hints)]
    rows, told = [], []
    for cells in reader:
        place = Place(source.path, reader.line_num)
        if not any(cell.strip() for cell in cells):
            continue
        try:
            if len(cells) != len(columns):
                raise ValueError(f"it has {len(cells)} cells, and the first row names {len(columns)} columns")
            rows.append(_row({name: cell.strip() for name, cell in zip(columns, cells, strict=True)}, place))
        except (ValueError, QuantityError) as error:
            told.append(Notice("bad-care-reading", place, f"the row cannot be read: {error}"))
    return rows, list(_few(told))


def _few(told: list[Notice]) -> Iterator[Notice]:
    yield from told[:MOST_NOTICES]
    if len(told) > MOST_NOTICES:
        message = f"from here {len(told) - MOST_NOTICES} more rows cannot be read"
        yield Notice("bad-care-reading", told[MOST_NOTICES].place, message)


def _wrong_columns(columns: list[str]) -> str:
    for number, name in enumerate(columns):
        if name not in COLUMNS:
            meant = "".join(f"; {hint}" for hint in did_you_mean(name, COLUMNS))
            return f"there is no column `{name}`{meant}"
        if name in columns[:number]:
            return f"the column `{name}` is named twice"
    missing = [name for name in _NEEDED if name not in columns]
    return f"the first row does not name the column `{missing[0]}`" if missing else ""


def _row(cells: dict[str, str], here: Place) -> CareReading:
    kind, value = cells["kind"], cells.get("value", "")
    if kind not in KINDS:
        raise ValueError(f"`{kind}` is none of the kinds: {', '.join(KINDS)}")
    if not cells["place"]:
        raise ValueError("it names no place")
    method = cells.get("method", "")
    if kind == "potential" and method not in CELLS:
        raise ValueError(f"`method` must name the reference cell, one of {', '.join(CELLS)}, not `{method}`")
    salinity = _number("salinity", cells.get("salinity", ""), 0.0, 45.0)
    if kind == "potential" and method == "silver" and salinity is not None and salinity < LEAST_SALINITY:
        raise ValueError(
            f"an open silver cell reads nothing true below {LEAST_SALINITY:g} g/kg: use a sealed one or copper"
        )
    si = _figure(kind, value, cells.get("unit", "")) if kind in MEASURES else None
    if kind not in MEASURES and value not in ("", FAULT, IN_ORDER):
        raise ValueError(f"the value of `{kind}` is `{IN_ORDER}`, `{FAULT}` or nothing, not `{value}`")
    return CareReading(
        _day(cells["date"]),
        kind,
        cells["place"],
        si,
        value == FAULT,
        method,
        cells.get("by", ""),
        salinity,
        _number("temperature", cells.get("temperature", ""), -30.0, 50.0),
        cells.get("remark", ""),
        here,
    )


def _day(written: str) -> date:
    try:
        return date.fromisoformat(written)
    except ValueError:
        raise ValueError(f"`{written}` is not a day written year-month-day, such as 2026-05-04") from None


def _figure(kind: str, value: str, unit: str) -> float:
    dimension = MEASURES[kind]
    if not value or not unit:
        raise ValueError(f"`{kind}` needs a value and its unit")
    read = parse_quantity(f"{value} {unit}", dimension)
    if not (-_MOST[dimension] if kind == "potential" else 0.0) <= read.si <= _MOST[dimension]:
        raise ValueError(f"{value} {unit} is no likely figure for `{kind}`")
    return read.si


def _number(name: str, cell: str, least: float, most: float) -> float | None:
    if not cell:
        return None
    try:
        found = float(cell)
    except ValueError:
        raise ValueError(f"`{name}` is `{cell}`, which is not a number") from None
    if not least <= found <= most:
        raise ValueError(f"`{name}` lies between {least:g} and {most:g}, and here it is {cell}")
    return found
