"""The cells of a workbook as values: text, numbers, days, formulas with the results stored beside them."""

from __future__ import annotations

import posixpath
import re
import warnings
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from functools import cached_property
from io import BytesIO
from typing import Any
from xml.etree import ElementTree

from tenderwright.notices import Notice, Place
from tenderwright.reading.workbook.active_content import WORKBOOK_TYPE
from tenderwright.reading.workbook.beside_cells import Said, said_beside
from tenderwright.reading.workbook.guard import Guarded
from tenderwright.reading.workbook.looks import SheetLooks, sheet_looks
from tenderwright.reading.workbook.markup import MAX_CELLS
from tenderwright.reading.workbook.refusal import Area, Refusal, column_letters, unreadable, unsafe

MAX_SHEETS = 50
Value = None | str | Decimal | bool | date | time
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
"""Characters that show nothing, which no file of a package may hold."""
_RELATED = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"


@dataclass(frozen=True)
class Cell:
    """One cell: what it shows, and the formula that it comes from."""

    path: str
    sheet: str
    row: int
    column: int
    value: Value = None
    """A number to the fifteen digits that spreadsheets keep; of a formula, the result that is stored beside it."""
    formula: str = ""
    error: str = ""
    """Such as `#REF!`."""
    number_format: str = "General"
    odd: tuple[str, ...] = ()
    """What is odd of how it looks, such as that a word of it is struck out."""
    hidden: str = ""
    """The hidden row or column that it stands in."""

    @property
    def address(self) -> str:
        """Give sheet and cell, such as `Prices!F12`."""
        return f"{self.sheet}!{column_letters(self.column)}{self.row}"

    @property
    def place(self) -> Place:
        """Give the place for notices: the row as line, the column as column."""
        return Place(self.path, self.row, self.column)

    @property
    def text(self) -> str:
        """Give what it shows as text, blanks at the ends taken off."""
        if self.value is None:
            return self.error
        if isinstance(self.value, Decimal):
            return format(self.value, "f")
        return str(self.value).strip()

    @property
    def empty(self) -> bool:
        """Tell whether nothing stands in it, not even a formula."""
        return not self.text and not self.formula


@dataclass(frozen=True)
class Sheet:
    """One sheet: its cells that are not empty, by row and column."""

    path: str
    title: str
    cells: Mapping[tuple[int, int], Cell]
    merged: tuple[Area, ...] = ()

    @cached_property
    def _anchors(self) -> dict[tuple[int, int], Area]:
        return {
            (row, column): area
            for area in self.merged
            for row in range(area.top, area.bottom + 1)
            for column in range(area.left, area.right + 1)
        }

    def area(self, row: int, column: int) -> Area:
        """Give the merged cells that a cell belongs to, or the cell by itself."""
        return self._anchors.get((row, column), Area(row, column, row, column))

    def at(self, row: int, column: int) -> Cell:
        """Give the cell that shows in a place: of merged cells the first."""
        area = self.area(row, column)
        found = self.cells.get((area.top, area.left))
        return found if found is not None else Cell(self.path, self.title, area.top, area.left)

    @cached_property
    def rows(self) -> dict[int, list[Cell]]:
        """Give the cells of each row that are not empty, from left to right."""
        rows: dict[int, list[Cell]] = {}
        for (row, _), cell in sorted(self.cells.items()):
            rows.setdefault(row, []).append(cell)
        return rows


@dataclass(frozen=True)
class Workbook:
    """A workbook as values."""

    path: str
    sha256: str
    sheets: tuple[Sheet, ...]
    properties: Mapping[str, str] = field(default_factory=dict)
    """Its custom properties that are text."""
    beside: tuple[Said, ...] = ()
    """What is said beside its cells."""
    taken: set[str] = field(default_factory=set, compare=False)
    """Addresses of the cells that were read as what they were asked for; what is in no such cell is told."""

    def take(self, *cells: Cell) -> None:
        """Note that cells were read as what they were asked for."""
        self.taken.update(cell.address for cell in cells)

    @property
    def cells(self) -> Iterable[Cell]:
        """Yield every cell that is not empty, sheet by sheet and row by row."""
        return (cell for sheet in self.sheets for row in sheet.rows.values() for cell in row)


def read_cells(guarded: Guarded) -> tuple[Workbook | None, list[Notice]]:
    """Read the cells of a guarded workbook, hidden sheets and rows too; nothing in it is calculated or run."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # they tell what would be lost on saving, and nothing is saved
            return _read(guarded), []
    except Refusal as refusal:
        found = refusal
    except Exception as error:  # the library raises whatever a damaged part leads it to
        found = unreadable(f"the workbook is damaged and cannot be read ({type(error).__name__}: {str(error)[:200]})")
    return None, [Notice(found.code, Place(guarded.path), found.message, hints=found.hints)]


def _read(guarded: Guarded) -> Workbook:
    import openpyxl

    parts = _parts_by_title(guarded)
    looks = sheet_looks(guarded.members, parts)
    books = [
        openpyxl.load_workbook(BytesIO(guarded.data), read_only=True, data_only=stored, keep_links=False)
        for stored in (False, True)
    ]
    try:
        sheets, left = [], MAX_CELLS
        for live, stored in zip(books[0].worksheets, books[1].worksheets, strict=True):
            cells = _cells(guarded.path, live, stored, left, looks[live.title])
            left -= len(cells)
            sheets.append(Sheet(guarded.path, live.title, cells, guarded.merged.get(parts[live.title], ())))
        beside = tuple(
            Said(_CONTROL.sub("", one.where), _CONTROL.sub("", one.words))
            for one in said_beside(guarded.members, parts)
        )
        return Workbook(guarded.path, guarded.sha256, tuple(sheets), _properties(books[0]), beside)
    finally:
        for book in books:
            book.close()


def _cells(path: str, live: Any, stored: Any, most: int, looks: SheetLooks) -> dict[tuple[int, int], Cell]:
    results = {(cell.row, cell.column): cell for cell in _filled(stored, most)}
    found: dict[tuple[int, int], Cell] = {}
    for cell in _filled(live, most):
        at = (cell.row, cell.column)
        formula = _formula(cell)
        shown = results.get(at) if formula else cell
        value, error = _value(shown) if shown is not None else (None, "")
        shape = str(cell.number_format or "General")
        odd, hidden = looks.odd.get(at, ()), looks.hidden(*at)
        made = Cell(path, live.title, *at, value, formula, error, shape, odd, hidden)
        if not made.empty:
            found[at] = made
    return found


def _filled(sheet: Any, most: int) -> Iterable[Any]:
    """Yield the cells with a value; the extent that the sheet declares is not relied on."""
    sheet.reset_dimensions()
    count = 0
    for row in sheet.iter_rows():
        for cell in row:
            if cell.value is not None:
                count += 1
                if count > most:
                    raise unsafe(f"the workbook has more than {MAX_CELLS:,} cells")
                yield cell


def _formula(cell: Any) -> str:
    if cell.data_type != "f":
        return ""
    text = getattr(cell.value, "text", cell.value)
    text = text if isinstance(text, str) and text else "="
    return text if text.startswith("=") else f"={text}"


def _value(cell: Any) -> tuple[Value, str]:
    value = cell.value
    if cell.data_type == "e":
        return None, str(value)
    if isinstance(value, bool) or value is None:
        return value, ""
    if isinstance(value, (int, float)):
        number = Decimal(f"{value:.15g}")
        return (number, "") if number.is_finite() and abs(number) < Decimal("1e15") else (None, "#NUM!")
    if isinstance(value, datetime):
        return (value.date() if value.time() == time() else value), ""
    if isinstance(value, (date, time)):
        return value, ""
    if isinstance(value, timedelta):
        return str(value), ""
    return _CONTROL.sub("", str(value).replace("\r\n", "\n").replace("\r", "\n")), ""


def _properties(book: Any) -> dict[str, str]:
    return {str(one.name): one.value for one in book.custom_doc_props.props if isinstance(one.value, str)}


def _parts_by_title(guarded: Guarded) -> dict[str, str]:
    """Give the part of each sheet by its title, following the relationships of the workbook."""
    types = ElementTree.fromstring(guarded.members["[Content_Types].xml"])
    book = next(one.get("PartName", "") for one in types if one.get("ContentType") == WORKBOOK_TYPE).lstrip("/")
    folder, name = posixpath.split(book)
    related = ElementTree.fromstring(guarded.members[posixpath.join(folder, "_rels", f"{name}.rels")])
    parts = {one.get("Id"): posixpath.join("/", folder, one.get("Target", "")).lstrip("/") for one in related}
    sheets = [one for one in ElementTree.fromstring(guarded.members[book]).iter() if one.tag.endswith("}sheet")]
    if len(sheets) > MAX_SHEETS:
        raise unsafe(f"the workbook has {len(sheets)} sheets; at most {MAX_SHEETS} are read")
    return {one.get("name", ""): parts.get(one.get(_RELATED), "") for one in sheets}
