"""The figures that an addendum changes and that stand in tables alone, part by part."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.marked import marked
from tenderwright.documents.replacement import Replacement
from tenderwright.documents.table_changes import RowChange, TableChange, table_changes

_COLUMNS = (Column("Table", width=2.2), Column("Row", width=2.6), Column("Before and now", width=5.2))
_TOLD_ELSEWHERE = ("revision-record", "schedule", "lists", "questions")
"""Parts whose tables gather what is told by itself."""
_MOST_ROWS = 12
"""Rows of one table that are told one by one; where more changed, the page is the better list."""

Changed = Mapping[str, tuple[TableChange, ...]]
"""By the anchor of a part, the tables that changed in it."""


def changed_tables(old: Mapping[str, Part], found: tuple[Replacement, ...]) -> Changed:
    """Find the tables that changed in the parts that are replaced."""
    replaced = [one.part for one in found if one.does == "replaced" and one.part.anchor not in _TOLD_ELSEWHERE]
    changes = {part.anchor: table_changes(old[part.anchor], part) for part in replaced}
    return {anchor: tables for anchor, tables in changes.items() if tables}


def tables_part(found: tuple[Replacement, ...], changed: Changed) -> Part | None:
    """Compose the rows that changed, or None where no table did."""
    blocks: list[Block] = []
    for one in found:
        tables = changed.get(one.part.anchor, ())
        if tables:
            rows = tuple(row for table in tables for row in _rows(table))
            blocks += [Heading(f"{one.part.number} {one.part.title}".strip()), Table(_COLUMNS, rows)]
    if not blocks:
        return None
    words = (
        "What changed in tables and short facts, as the pages to replace show it. It follows from the changes listed "
        "before."
    )
    return Part(
        "addendum-tables", "", "Tables changed", "front", "", (Paragraph(inline(words)), *blocks), audience="yard"
    )


def _rows(table: TableChange) -> list[Row]:
    if len(table.rows) > _MOST_ROWS:
        words = f"{len(table.rows)} rows changed, of {table.of}: see the page, where a bar stands beside each"
        return [Row((inline(table.title), inline("–"), inline(words)))]
    return [Row((inline(table.title), inline(row.label or "–"), _told(row))) for row in table.rows]


def _told(row: RowChange) -> Inline:
    spans: list[Span] = []
    for cell in row.cells:
        spans += [Span("; ")] if spans else []
        spans += [Span(f"{cell.column}: ", faint=True)] if cell.column else []
        spans += marked(cell.old, cell.new)
    return tuple(spans)
