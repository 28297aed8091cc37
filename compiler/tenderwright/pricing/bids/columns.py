"""Finds the tables on a sheet by their headings, and which column of a table is which."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from tenderwright.pricing.bids.words import bare
from tenderwright.reading.workbook.cells import Sheet

HEADINGS: dict[str, frozenset[str]] = {
    "row": frozenset({"row of the table"}),
    "line": frozenset({"line", "line no", "line number", "item", "item no", "pos"}),
    "description": frozenset({"description", "text", "work", "item description"}),
    "basis": frozenset({"basis", "quantity from"}),
    "quantity": frozenset({"quantity", "qty", "quantities"}),
    "unit": frozenset({"unit", "units", "uom"}),
    "status": frozenset({"status"}),
    "rate": frozenset({"rate or price", "rate", "price", "unit price", "unit rate", "rate price", "price or rate"}),
    "amount": frozenset({"amount", "total", "total price", "extension", "line total"}),
    "remarks": frozenset({"remarks of the yard", "remarks", "remark", "notes", "note", "comments", "comment"}),
    "excluded": frozenset(
        {
            "what is remarked excluded assumed or offered instead",
            "what is excluded assumed or offered instead",
            "exclusions",
            "exclusion",
            "excluded",
        }
    ),
    "kind": frozenset({"kind"}),
    "effect": frozenset({"effect on the price", "effect", "price effect"}),
    "addendum": frozenset({"addendum", "addenda"}),
    "received": frozenset({"received", "acknowledged"}),
    "dock": frozenset({"of the dock"}),
    "figure": frozenset({"figure of the yard", "figure"}),
    "asked": frozenset({"asked", "question"}),
    "answer": frozenset({"answer of the yard", "answer"}),
    "meant": frozenset({"what is meant"}),
    "offer": frozenset({"offer"}),
    "base": frozenset({"in the base price"}),
    "evaluated": frozenset({"in the evaluated total"}),
}
"""What each column may be headed, letters and figures alone."""

OFFSETS = {"description": 1, "quantity": 3, "unit": 4, "status": 5, "rate": 6, "amount": 7, "remarks": 11}
"""How far right of the line number each column stands on the form as issued."""

_CALLED = {heading: column for column, headings in HEADINGS.items() for heading in headings}
_KINDS: tuple[tuple[str, frozenset[str]], ...] = (
    ("rows", frozenset({"row"})),
    ("exclusions", frozenset({"excluded"})),
    ("addenda", frozenset({"addendum"})),
    ("dock", frozenset({"dock"})),
    ("answers", frozenset({"asked"})),
    ("offers", frozenset({"offer"})),
    ("totals", frozenset({"evaluated"})),
    ("lines", frozenset({"rate"})),
    ("lines", frozenset({"line", "quantity"})),
    ("lines", frozenset({"line", "amount"})),
)
"""The columns by which the kind of a table is known."""


@dataclass(frozen=True)
class Table:
    """A table on a sheet: what it is for, its rows, and its columns by name."""

    sheet: Sheet
    kind: str
    """rows, lines, exclusions, addenda, dock, answers, offers or totals."""
    head: int
    """The row of its headings; 0 where it has none."""
    last: int
    columns: Mapping[str, int]

    @property
    def rows(self) -> list[int]:
        """List its rows in which something stands."""
        return [row for row in self.sheet.rows if self.head < row <= self.last]


def tables(sheet: Sheet) -> list[Table]:
    """Find the tables of a sheet: each begins at a row with two headings or more and ends before the next one."""
    heads = [(row, kind, columns) for row in sheet.rows for kind, columns in _head(sheet, row)]
    after = [row for row, _, _ in heads[1:]] + [max(sheet.rows, default=0) + 1]
    return [Table(sheet, kind, row, end - 1, columns) for (row, kind, columns), end in zip(heads, after, strict=False)]


def _head(sheet: Sheet, row: int) -> list[tuple[str, dict[str, int]]]:
    """Read a row as the head of a table; gives nothing where it is none."""
    found: dict[str, int] = {}
    for cell in sheet.rows[row]:
        column = _CALLED.get(bare(cell.text)) if isinstance(cell.value, str) and len(cell.text) < 80 else None
        if column is not None and column not in found:
            found[column] = cell.column
    kinds = [kind for kind, marks in _KINDS if marks <= found.keys()]
    return [(kinds[0], found)] if kinds and (len(found) > 1 or kinds[0] == "rows") else []
