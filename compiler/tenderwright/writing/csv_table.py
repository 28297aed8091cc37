"""Writes tables as CSV that spreadsheets read as text and numbers, never as formulas."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence
from decimal import Decimal

Cell = str | int | Decimal | None

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")
_NUMBER = re.compile(r"[+-]?\d+(\.\d+)?")


def csv_table(header: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """Write a table as CSV (RFC 4180, UTF-8, lines ended by CR LF).

    Text that a spreadsheet would take for a formula is preceded by an apostrophe. Raises `ValueError` where a
    row is longer or shorter than the header.
    """
    output = io.StringIO(newline="")
    writer = csv.writer(output, lineterminator="\r\n")
    writer.writerow([_safe(title) for title in header])
    for number, row in enumerate(rows, start=1):
        if len(row) != len(header):
            raise ValueError(f"row {number} has {len(row)} cells under {len(header)} columns")
        writer.writerow([_safe(cell) for cell in row])
    return output.getvalue().encode("utf-8")


def _safe(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, Decimal):
        return format(cell, "f")
    if isinstance(cell, int) or _NUMBER.fullmatch(cell):
        return str(cell)
    looks_like_formula = cell.startswith(_FORMULA_STARTS) or cell.lstrip().startswith(_FORMULA_STARTS)
    return f"'{cell}" if looks_like_formula else cell
