"""Tells of a cell: the notice stands at its row and column and names the sheet."""

from __future__ import annotations

from tenderwright.notices import Notice
from tenderwright.reading.workbook.cells import Cell


def told(code: str, cell: Cell, message: str, *hints: str) -> Notice:
    """Make the notice of a code about a cell."""
    return Notice(code, cell.place, f"`{cell.address}`: {message}", hints=hints)


def shown(text: str, most: int = 60) -> str:
    """Give a text on one line, cut where it is long."""
    line = " ".join(text.split())
    return line if len(line) <= most else line[: most - 1] + "…"


def whole(text: str) -> str:
    """Give a text on one line, whole."""
    return " ".join(text.split())
