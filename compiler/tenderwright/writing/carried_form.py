"""Writes prices into a copy of a price form; its formulas are left for a spreadsheet program to calculate again."""

from __future__ import annotations

import io
from collections.abc import Iterable
from decimal import Decimal

from tenderwright.reading.workbook.cells import Cell, Value


def carried_form(form: bytes, cells: Iterable[tuple[Cell, Value]]) -> bytes:
    """Give a copy of a form with values put into cells of it; no results are stored beside its formulas.

    The form must have been looked through. Text stays text whatever it begins with.
    """
    import openpyxl

    book = openpyxl.load_workbook(io.BytesIO(form))
    for cell, value in cells:
        target = book[cell.sheet].cell(cell.row, cell.column)
        target.value = float(value) if isinstance(value, Decimal) else value
        if isinstance(value, str):
            target.data_type = "s"
    output = io.BytesIO()
    book.save(output)
    return output.getvalue()
