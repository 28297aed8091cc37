"""Finds what stands beside a label, wherever on a sheet the label is now."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.pricing.bids.words import bare
from tenderwright.reading.workbook.cells import Cell, Sheet, Workbook


def labels(book: Workbook, label: str) -> Iterator[tuple[Sheet, Cell]]:
    """Yield each cell that holds a label, letters and figures alone compared, with its sheet."""
    wanted = bare(label)
    for sheet in book.sheets:
        for row in sheet.rows.values():
            for cell in row:
                if isinstance(cell.value, str) and bare(cell.text) == wanted:
                    yield sheet, cell


def right_of(sheet: Sheet, cell: Cell) -> list[Cell]:
    """List the filled cells right of a cell on its row, from left to right."""
    return [one for one in sheet.rows.get(cell.row, ()) if one.column > cell.column]


def labelled(book: Workbook, label: str) -> list[Cell]:
    """Give the first filled cell right of each cell that holds a label."""
    return [beside[0] for sheet, cell in labels(book, label) if (beside := right_of(sheet, cell))]
