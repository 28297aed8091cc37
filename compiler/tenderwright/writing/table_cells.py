"""Gives every row of a table as many cells as it has columns, for writers that lay out cell by cell."""

from __future__ import annotations

from tenderwright.documents.edition import Inline, Row, Table
from tenderwright.writing.errors import WritingError


def row_cells(table: Table, row: Row) -> tuple[Inline, ...]:
    """Give the cells of a row, empty ones added at its end.

    Raises `WritingError` where a row has more cells than the table has columns.
    """
    missing = len(table.columns) - len(row.cells)
    if missing < 0:
        raise WritingError(f"a row of table {table.caption!r} has {-missing} cells too many")
    return (*row.cells, *((),) * missing)
