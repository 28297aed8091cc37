"""A survey as delivered, read into the columns of the format: those of a gauging firm, or thicknesses in inches."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator, Mapping

from tenderwright.model.delivered_file import (
    ANY,
    BARE,
    SIDES,
    CannotRead,
    Rows,
    by_heading,
    day_of,
    pieces_of,
    read_cell,
    rows_of_text,
    unread_columns,
    wrong_column,
    wrong_form,
)
from tenderwright.model.survey import Survey, survey_name, told_rows
from tenderwright.model.survey_columns import ColumnRead, SameOfAll, SurveyColumns
from tenderwright.model.survey_row import COLUMNS
from tenderwright.notices import Notice, Place
from tenderwright.quantities.quantity import QuantityError, parse_quantity
from tenderwright.quantities.spellings import AmbiguousUnit
from tenderwright.quantities.units import UnknownUnit, signature, unit
from tenderwright.reading.source import Source

_THICKNESS = ("as_built", "measured")
_HEADING = re.compile(r"(as_built|measured)[_ ]*[(\[]?\s*([^)\]]+?)\s*[)\]]?", re.IGNORECASE)
"""A column of ours that says its unit: `measured_in`, `measured (in)`."""
_FIGURE = r"[+-]?[0-9]+(?:\.[0-9]+)?"
_LENGTH = r"[0-9.,][0-9.,/ ½¼¾⅛⅜⅝⅞-]*(?:mm|mils?|in\.?|[\"″”])?"
_PIECES = {
    "strake": r"[A-Za-z]{1,2}|[0-9]{1,2}", "frame": rf"{_FIGURE}(?:\s*[-/&]\s*{_FIGURE})?", "side": r"[A-Za-z]+",
    "tank": ".+?", "member": ".+?", "kind": ".+?", "as_built": _LENGTH, "measured": _LENGTH,
    "date": "[0-9][0-9./-]*[0-9]", "instrument": ".+?", "stage": ".+?", ANY: ".*",
}  # fmt: skip
"""What a form may read, and how it is written in a cell."""
_BETWEEN = re.compile(rf"({_FIGURE})\s*[-/&]\s*({_FIGURE})")


def survey_of(source: Source, columns: SurveyColumns | None = None) -> tuple[Survey, list[Notice]]:
    """Read a survey into the columns of the format; what is not read of it is told."""
    name, here = survey_name(source.path), Place(source.path)
    if columns is not None:
        return _Delivered(source, columns).survey()
    text, told = _in_mm(source)
    headings = _headings(text)
    unread = [one for one in headings if one not in COLUMNS] if set(headings) & set(COLUMNS) else []
    return Survey(name, text, here), [
        *told_rows(source.path, told),
        *unread_columns(source.path, 1, unread, _beside(name)),
    ]


def _beside(name: str) -> str:
    return f"surveys/{name}.yaml"


def _headings(text: str) -> list[str]:
    return [cell.strip() for cell in next(csv.reader(io.StringIO(text)), [])]


def _in_mm(source: Source) -> tuple[str, list[tuple[int, str]]]:
    """Bring columns of thickness that name another unit than mm to mm, each row on its own line."""
    units = {}
    headings = _headings(source.text)
    for at, heading in enumerate(headings):
        match = _HEADING.fullmatch(heading)
        if match and heading not in COLUMNS and _measures_length(match[2]):
            units[at] = match[2]
            headings[at] = f"{match[1].lower()}_mm"
    if not units:
        return source.text, []
    out = io.StringIO()
    told: list[tuple[int, str]] = []
    writer = csv.writer(out, lineterminator="\n")
    reader = csv.reader(io.StringIO(source.text))
    next(reader)
    writer.writerow(headings)
    for cells in reader:
        try:
            in_mm = [_mm(cell, units[at]) if cell.strip() and at in units else cell for at, cell in enumerate(cells)]
        except CannotRead as error:
            told.append((reader.line_num, f"cannot read the row: {error}"))
            in_mm = []
        writer.writerow(in_mm)
    return out.getvalue(), told


def _measures_length(name: str) -> bool:
    try:
        return unit(name).signature == signature("length")
    except (UnknownUnit, AmbiguousUnit):
        return False


def _mm(cell: str, unit_of_column: str) -> str:
    """Write a thickness in mm: a number or a fraction in the unit of its column, or a length with its own unit."""
    cell = cell.strip()
    try:
        mm = parse_quantity(f"{cell} {unit_of_column}" if BARE.fullmatch(cell) else cell, "length").si * 1000
    except QuantityError as error:
        raise CannotRead(error.message) from error
    return f"{mm:.9g}"


class _Delivered:
    """The file of a firm, read as its columns are said to be."""

    def __init__(self, source: Source, said: SurveyColumns) -> None:
        self.path, self.text, self.said = source.path, source.text, said
        self.words = {(one.of, one.written.strip().lower()): one.means for one in said.words}
        self.same = _same(said.same)
        self.above: dict[str, str] = {}

    def survey(self) -> tuple[Survey, list[Notice]]:
        """Read the whole file; a mistake in what is said of the columns leaves no row."""
        out, lines = io.StringIO(), [1]
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(COLUMNS)
        rows = rows_of_text(self.text, self.said)
        wrong = [*self._wrong(rows)]
        told: list[tuple[int, str]] = []
        empty = []
        for line, cells in rows.rows if not wrong else ():
            try:
                readings = self._readings(by_heading(rows.headings, cells))
            except CannotRead as error:
                told.append((line, f"cannot read the row: {error}"))
                continue
            empty += [line] if not readings else []
            writer.writerows([reading[column] for column in COLUMNS] for reading in readings)
            lines += [line] * len(readings)
        survey = Survey(survey_name(self.path), out.getvalue(), Place(self.path), tuple(lines))
        return survey, wrong or [*told_rows(self.path, told), *self._unread(rows, empty)]

    def _wrong(self, rows: Rows) -> Iterator[Notice]:
        """Say what of the columns does not fit the file, or leaves a reading without what it needs."""
        given = {name for name, value in self.same.items() if value}
        for one in self.said.columns:
            yield from wrong_column(one.column, rows, self.said, self.path, one.here)
            for form in one.reads:
                given |= {*pieces_of(form)}
                yield from wrong_form(form, _PIECES, one.here)
        for needed in ("measured", "as_built", "date"):
            if needed not in given:
                yield self._missing(f"no column has `{{{needed}}}`", needed)
        if not given & {"strake", "tank"}:
            yield self._missing("no column has `{strake}` or `{tank}`", "strake")

    def _missing(self, message: str, name: str) -> Notice:
        same = "" if name == "measured" else f", or give `{name}` under `same`"
        return Notice("delivered-columns", self.said.here, message, hints=(f"say which column it is read from{same}",))

    def _unread(self, rows: Rows, empty: list[int]) -> Iterator[Notice]:
        unread = rows.beside({*(one.column for one in self.said.columns), *self.said.left_out})
        yield from unread_columns(self.path, self.said.heading_row, unread, _beside(survey_name(self.path)))
        if empty:
            several = "1 row has" if len(empty) == 1 else f"{len(empty)} rows have"
            message = f"{several} no thickness measured and are not read, the first of them here"
            yield Notice("delivered-unread", Place(self.path, empty[0]), message)

    def _readings(self, row: Mapping[str, str]) -> list[dict[str, str]]:
        """Read a row: a reading for each column that holds a measured thickness."""
        found = [(one, self._cell(one, row.get(one.column, ""))) for one in self.said.columns]
        readings = []
        for one, pieces in found:
            if not pieces.get("measured"):
                continue
            reading = dict(self.same)
            if one.side:
                reading["side"] = one.side
            for other, its in found:
                if other is one or (not other.side or other.side == one.side):
                    reading |= {
                        name: text for name, text in its.items() if text and (name != "measured" or other is one)
                    }
            readings.append(self._reading(reading))
        return readings

    def _cell(self, one: ColumnRead, cell: str) -> dict[str, str]:
        if not cell and one.down:
            cell = self.above.get(one.column, "")
        self.above[one.column] = cell
        if not cell:
            return {}
        pieces = read_cell(cell, one.column, one.reads, _PIECES)
        pieces.pop(ANY, None)
        for name in _THICKNESS:
            if name in pieces:
                text = pieces[name].replace(",", ".") if self.said.decimal_comma else pieces[name]
                pieces[name] = _mm(text, one.unit)
        return {name: self.words.get((name, text.lower()), text) for name, text in pieces.items()}

    def _reading(self, reading: dict[str, str]) -> dict[str, str]:
        side, frame = reading.get("side", ""), reading.get("frame", "")
        for name, words in (("as_built", "thickness as built"), ("date", "date")):
            if not reading[name]:
                raise CannotRead(f"it has no {words}")
        if between := _BETWEEN.fullmatch(frame):
            frame = f"{(float(between[1]) + float(between[2])) / 2:g}"
        return {
            **dict.fromkeys(COLUMNS, ""),
            **reading,
            "strake": reading.get("strake", "").upper(),
            "frame": frame,
            "side": SIDES.get(side.lower(), side),
            "date": reading["date"]
            if reading["date"] == self.same["date"]
            else day_of(reading["date"], self.said.dates),
            "as_built_mm": reading["as_built"],
            "measured_mm": reading["measured"],
        }


def _same(same: SameOfAll | None) -> dict[str, str]:
    if same is None:
        return {"kind": "plate", "as_built": "", "date": ""}
    return {
        "strake": same.strake,
        "side": same.side,
        "tank": same.tank,
        "member": same.member,
        "kind": same.kind,
        "instrument": same.instrument,
        "stage": same.stage,
        "as_built": f"{same.as_built.si * 1000:.9g}" if same.as_built is not None else "",
        "date": same.date.isoformat() if same.date is not None else "",
    }
