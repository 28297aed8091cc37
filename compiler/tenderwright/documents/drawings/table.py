"""Small tables on a sheet: ruled lines of text in columns, with a swatch where a hatching is explained."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.hatch import Hatch

ROW = 3.5
"""Height of a row, mm."""


@dataclass(frozen=True)
class Column:
    """A column: title, width in mm, and the side on which its text lines up."""

    title: str
    width: float
    align: Literal["left", "right"] = "left"
    gap: float = 1.4
    """Space kept free after its text, mm."""


@dataclass(frozen=True)
class Line:
    """A row: text by column, a hatching drawn in place of its first empty cell, and whether it is stressed."""

    cells: tuple[str, ...]
    hatch: Hatch | None = None
    strong: bool = False


def height(rows: int) -> float:
    """Give the height of a table with its head, mm."""
    return (rows + 1) * ROW + 0.8


def table(columns: Sequence[Column], lines: Sequence[Line], left: float, top: float, kind: str = "") -> str:
    """Draw a table; text too long for its column is shortened."""
    total = sum(column.width for column in columns)
    marks = [_row(columns, Line(tuple(c.title for c in columns)), left, top + 2.6, "", pen.FAINT)]
    marks.append(pen.line((left, top + ROW), (left + total, top + ROW), pen.FINE))
    for index, one in enumerate(lines):
        marks.append(_row(columns, one, left, top + ROW * (index + 1) + 3.0, kind, pen.INK))
    return "".join(marks)


def _row(columns: Sequence[Column], one: Line, left: float, baseline: float, kind: str, colour: str) -> str:
    marks, hatch = [], one.hatch
    for column, cell in zip(columns, one.cells, strict=True):
        shown = pen.shortened(cell, pen.SMALL, column.width - column.gap, one.strong)
        at = (left, baseline) if column.align == "left" else (left + column.width - column.gap, baseline)
        if shown:
            anchor = "start" if column.align == "left" else "end"
            marks.append(pen.text(at, shown, pen.SMALL, anchor, one.strong, colour, kind))
        elif hatch is not None:
            marks.append(hatch.swatch(left, baseline - 0.9, column.width - 2.0))
            hatch = None
        left += column.width
    return "".join(marks)
