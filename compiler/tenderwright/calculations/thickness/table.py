"""Read a survey's CSV into arrays, with the rows that cannot be read listed by their lines."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Literal, TypeVar

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.cells import Cells, Ints, plain_table
from tenderwright.calculations.thickness.columns import (
    Codes,
    Flags,
    Floats,
    join_codes,
    read_codes,
    read_dates,
    read_numbers,
)

Kind = Literal["name", "number", "date"]
Number = TypeVar("Number", np.float64, np.int64)

_EPOCH = 1970.0
_DAYS_IN_YEAR = 365.25


class Refused(Struct, frozen=True):
    """A row that could not be read."""

    line: int
    why: str


class Table(Struct, frozen=True, eq=False):
    """The rows of a CSV that could be read, by column, and those that could not."""

    names: Mapping[str, Codes]
    numbers: Mapping[str, Floats]
    dates: Mapping[str, Ints]
    """Days since 1970-01-01."""
    line: Ints
    """Line of each row in the file, counted from 1."""
    refused: tuple[Refused, ...]
    """In order of their lines."""

    def years(self, column: str) -> Floats:
        """Give a column of dates as years and decimals, of 365.25 days from 1970.0."""
        return _EPOCH + self.dates[column] / _DAYS_IN_YEAR

    def only(self, rows: Flags) -> Table:
        """Give the same table with some of its rows."""
        return Table(
            {name: Codes(codes.code[rows], codes.names) for name, codes in self.names.items()},
            {name: values[rows] for name, values in self.numbers.items()},
            {name: days[rows] for name, days in self.dates.items()},
            self.line[rows],
            self.refused,
        )


def read_table(
    text: bytes | str,
    columns: Mapping[str, Kind],
    optional: Collection[str] = (),
    may_be_empty: Collection[str] = (),
) -> Table:
    """Read CSV whose first row names its columns; columns that are not asked for are passed over.

    Symbols: columns by name and kind; those in `optional` may be missing from the file, and cells of a column of
    numbers in `may_be_empty` may be empty (nan). Cost is linear in the bytes. Raises OutOfRange where the header
    lacks a column or names one twice.
    """
    plain = plain_table(text.encode() if isinstance(text, str) else text)
    for name in columns:
        if plain.header.count(name) > 1:
            raise OutOfRange(f"the first row names the column {name!r} twice")
        if name not in plain.header and name not in optional:
            raise OutOfRange(f"the first row names no column {name!r}")
    asked = {name: kind for name, kind in columns.items() if name in plain.header}
    blocks = [_read_block(cells, asked, may_be_empty) for cells in plain.blocks()]
    return _join(blocks, asked)


def _read_block(cells: Cells, asked: Mapping[str, Kind], may_be_empty: Collection[str]) -> Table:
    refused = [Refused(line, f"it has {count} cells, not {len(cells.header)}") for line, count in cells.ragged]
    good: Flags = np.ones(cells.line.size, np.bool_)
    names: dict[str, Codes] = {}
    numbers: dict[str, Floats] = {}
    dates: dict[str, Ints] = {}
    for name, kind in asked.items():
        start, end = cells.column(name)
        if kind == "name":
            names[name] = read_codes(cells.data, start, end)
            continue
        if kind == "number":
            numbers[name], fine = read_numbers(cells.data, start, end)
            fine = fine | (end == start) if name in may_be_empty else fine
        else:
            dates[name], fine = read_dates(cells.data, start, end)
        for row in np.flatnonzero(good & ~fine).tolist():
            shown = cells.data[start[row] : end[row]].tobytes().decode("utf-8", "replace")
            refused.append(Refused(int(cells.line[row]), f"{shown!r} is no {kind} ({name})"))
        good &= fine
    whole = Table(names, numbers, dates, cells.line, tuple(refused))
    return whole if good.all() else whole.only(good)


def _join(blocks: list[Table], asked: Mapping[str, Kind]) -> Table:
    of_kind = {kind: [name for name, its in asked.items() if its == kind] for kind in ("name", "number", "date")}
    return Table(
        {name: join_codes([block.names[name] for block in blocks]) for name in of_kind["name"]},
        {name: _joined([block.numbers[name] for block in blocks], np.float64) for name in of_kind["number"]},
        {name: _joined([block.dates[name] for block in blocks], np.int64) for name in of_kind["date"]},
        _joined([block.line for block in blocks], np.int64),
        tuple(sorted((row for block in blocks for row in block.refused), key=lambda row: row.line)),
    )


def _joined(parts: list[NDArray[Number]], dtype: type[Number]) -> NDArray[Number]:
    return np.concatenate(parts) if parts else np.zeros(0, dtype)
