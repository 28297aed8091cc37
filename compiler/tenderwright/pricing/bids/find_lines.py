"""Finds the lines of the form in a returned workbook, on whichever sheet and row they stand now."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from tenderwright.pricing.bids.columns import OFFSETS, Table, tables
from tenderwright.pricing.bids.words import folded
from tenderwright.reading.workbook.cells import Cell, Sheet, Workbook

_ROW = r"((?:\.[a-z0-9]+(?:-[a-z0-9]+)*)?)"
"""The row of a table, where a line is priced for each of them."""
_AS_ISSUED = re.compile(rf"(\d{{1,4}})\.([a-z]{{1,2}}){_ROW}")
_AS_TYPED = re.compile(rf"(?:(?:line|item|no|nr|pos)\.? ?)*0*(\d{{1,4}}) ?[.,\-/: ]? ?([a-z]{{1,2}}){_ROW}\.?")
_NAMED = re.compile(rf"\b0*(\d{{1,4}}) ?[.\-/]? ?([a-z]{{1,2}})\b{_ROW}")
_ITEM = re.compile(r"(?:(?:line|item|no|nr|pos)\.? ?)*0*(\d{1,4})\.?")


@dataclass(frozen=True)
class FoundLine:
    """A row of the returned form that carries the number of a line."""

    number: str
    table: Table
    row: int
    last: int
    """The last row that its number covers, where cells were merged; else the row itself."""

    @property
    def cell(self) -> Cell:
        """Give the cell of the number."""
        return self.table.sheet.at(self.row, self.table.columns["line"])

    def of(self, column: str) -> Cell:
        """Give the cell of a column: the first that is filled of the rows that the number covers."""
        where = self.table.columns.get(column)
        if where is None:
            return Cell(self.table.sheet.path, self.table.sheet.title, self.row, self.cell.column)
        cells = [self.table.sheet.at(row, where) for row in range(self.row, self.last + 1)]
        return next((cell for cell in cells if not cell.empty), cells[0])


def line_number(text: str, known: Collection[str] = ()) -> str:
    """Read a line number as typed, such as ` 420 A`; empty where it is none.

    One that is typed otherwise than issued counts only where it is one of those known.
    """
    typed = folded(text)
    exact = _AS_ISSUED.fullmatch(typed)
    if exact is not None:
        return f"{int(exact[1])}.{exact[2]}{exact[3]}"
    match = _AS_TYPED.fullmatch(typed)
    number = f"{int(match[1])}.{match[2]}{match[3]}" if match is not None else ""
    return number if number in known else ""


def lines_named(text: str, known: Collection[str]) -> tuple[str, ...]:
    """List the lines that a text names, such as `420.a, 425.b`.

    An item by itself names all of its lines, and a line that is priced by row those of all its rows.
    """
    found: list[str] = []
    for part in re.split(r"[,;+&\n]|\band\b", text):
        item = _ITEM.fullmatch(folded(part))
        if item is not None:
            found += [number for number in known if number.split(".")[0] == str(int(item[1]))]
        else:
            for match in _NAMED.finditer(folded(part)):
                line = f"{int(match[1])}.{match[2]}"
                found.append(line + match[3] if line + match[3] in known else line)
                found += [] if match[3] else [number for number in known if number.startswith(f"{line}.")]
    return tuple(dict.fromkeys(number for number in found if number in known))


def names_only_lines(text: str, known: Collection[str]) -> bool:
    """Tell whether a text is nothing but lines and items of the form."""
    parts = [part for part in re.split(r"[,;+&\n]|\band\b", text) if part.strip()]
    items = {number.split(".")[0] for number in known}
    read = (_ITEM.fullmatch(folded(part)) for part in parts)
    return all(
        (item is not None and str(int(item[1])) in items) or line_number(part, known) in known
        for part, item in zip(parts, read, strict=True)
    )


def find_lines(book: Workbook, known: Collection[str]) -> list[FoundLine]:
    """Find every row with a line number, in tables with a heading for the price and on sheets without headings."""
    found: list[FoundLine] = []
    for sheet in book.sheets:
        headed = tables(sheet)
        for table in headed:
            if table.kind == "lines":
                found += _in_table(table, known)
        if not headed:
            found += _without_headings(sheet, known)
    return found


def _in_table(table: Table, known: Collection[str]) -> Iterator[FoundLine]:
    column = table.columns.get("line") or _line_column(table.sheet, table.rows, known)
    if column is None:
        return
    placed = Table(table.sheet, table.kind, table.head, table.last, _placed(table.columns, column))
    for row in table.rows:
        number = line_number(_own_text(table.sheet, row, column), known)
        if number:
            yield FoundLine(number, placed, row, min(table.sheet.area(row, column).bottom, table.last))


def _without_headings(sheet: Sheet, known: Collection[str]) -> Iterator[FoundLine]:
    """Find lines on a sheet without headings: only numbers of the form as issued, and columns by their position."""
    rows = list(sheet.rows)
    column = _line_column(sheet, rows, known)
    if column is None:
        return
    table = Table(sheet, "lines", 0, max(rows), _placed({}, column))
    for row in rows:
        number = line_number(_own_text(sheet, row, column), known)
        if number in known:
            yield FoundLine(number, table, row, sheet.area(row, column).bottom)


def _line_column(sheet: Sheet, rows: list[int], known: Collection[str]) -> int | None:
    """Find the column in which most cells are numbers of lines as issued."""
    counts: dict[int, int] = {}
    for row in rows:
        for cell in sheet.rows[row]:
            if line_number(cell.text, known) in known:
                counts[cell.column] = counts.get(cell.column, 0) + 1
    return max(counts, key=lambda column: (counts[column], -column), default=None)


def _placed(headed: Mapping[str, int], line: int) -> dict[str, int]:
    """Give all columns: by their headings, and the others by their distance from the line number."""
    taken = set(headed.values())
    by_place = {name: line + offset for name, offset in OFFSETS.items() if line + offset not in taken}
    return {**by_place, **headed, "line": line}


def _own_text(sheet: Sheet, row: int, column: int) -> str:
    """Give the text of a cell; none for one that another covers, so that a merged number is found once."""
    area = sheet.area(row, column)
    return sheet.at(row, column).text if (area.top, area.left) == (row, column) else ""
