"""Reads what a yard filled into the tables of the price form, row by row by the name of the row."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from tenderwright.notices import Notice, Place
from tenderwright.pricing.bids.columns import Table, tables
from tenderwright.pricing.bids.expected import ExpectedForm, ExpectedTable
from tenderwright.pricing.bids.telling import told, whole
from tenderwright.pricing.bids.words import bare, folded
from tenderwright.reading.workbook.cells import Cell, Workbook

Filled = Mapping[str, Mapping[str, str]]
"""By the name of a row, what stands under each heading that the yard fills."""


def read_filled(book: Workbook, form: ExpectedForm) -> tuple[Filled, list[Notice]]:
    """Read every cell that the yard was to fill, and tell of rows that are gone and of cells left empty."""
    rows: dict[str, tuple[Table, int]] = {}
    for sheet in book.sheets:
        for table in tables(sheet):
            for row in table.rows if table.kind == "rows" else ():
                rows.setdefault(folded(sheet.at(row, table.columns["row"]).text), (table, row))
    found: dict[str, dict[str, str]] = {}
    notices: list[Notice] = []
    for expected in form.tables:
        empty = 0
        for name in expected.rows:
            if name not in rows:
                notices.append(Notice("bid-incomplete", Place(book.path), f"row {name} of the tables is missing"))
                continue
            cells = _row(book, *rows[name], expected, notices)
            empty += sum(1 for text in cells.values() if not text)
            found[name] = {heading: text for heading, text in cells.items() if text}
        if empty:
            message = f"{empty} cells of table {expected.name} are left empty"
            notices.append(Notice("bid-incomplete", Place(book.path), message, hints=("ask the yard",)))
    return {name: cells for name, cells in found.items() if cells}, notices


def _row(book: Workbook, table: Table, row: int, expected: ExpectedTable, notices: list[Notice]) -> dict[str, str]:
    found = {}
    for place, (heading, filled, unit) in enumerate(expected.columns, start=1):
        if not filled:
            continue
        cell = table.sheet.at(row, _column(table, heading, place))
        if unit and cell.text and not isinstance(cell.value, Decimal):
            message = f"`{whole(cell.text)}` is not a number of {unit}: {heading}"
            notices.append(told("bid-unread", cell, message, "ask the yard for the figure"))
        if not cell.formula:
            book.take(cell)
        found[heading] = _text(cell)
    return found


def _text(cell: Cell) -> str:
    return f"{cell.value:f}" if isinstance(cell.value, Decimal) else cell.text


def _column(table: Table, heading: str, place: int) -> int:
    """Find a column by its heading; where that was reworded, by its place on the form as issued."""
    heads = (cell for cell in table.sheet.rows[table.head] if bare(cell.text) == bare(heading))
    return next((cell.column for cell in heads), table.columns["row"] + place)
