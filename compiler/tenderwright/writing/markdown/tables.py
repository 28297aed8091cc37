"""Writes tables as GitHub reads them: one line a row, a line of dashes that says how columns line up."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from tenderwright.documents.edition import Row, Table
from tenderwright.writing.markdown.inline import cell, paragraph
from tenderwright.writing.runs import Runs, span_runs, text_runs
from tenderwright.writing.table_cells import row_cells

_DASHES = {"left": "---", "right": "---:", "decimal": "---:", "centre": ":---:"}


def table_pieces(table: Table, slugs: Mapping[str, str]) -> tuple[str, ...]:
    """Write a table with its caption above and its note below; groups, sub-totals and totals are strong."""
    titles = [text_runs(column.title) for column in table.columns]
    aligns = [column.align for column in table.columns]
    rows = [_cells(table, row) for row in table.rows]
    caption = paragraph(text_runs(table.caption, strong=True), slugs)
    return caption, table_lines(titles, aligns, rows, slugs), paragraph(span_runs(table.note), slugs)


def table_lines(
    titles: Sequence[Runs], aligns: Sequence[str], rows: Iterable[Sequence[Runs]], slugs: Mapping[str, str]
) -> str:
    """Write the lines of a table."""
    lines = [[cell(title, slugs) for title in titles], [_DASHES[align] for align in aligns]]
    lines += [[cell(runs, slugs) for runs in row] for row in rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines)


def _cells(table: Table, row: Row) -> list[Runs]:
    return [span_runs(text, strong=row.weight != "normal") for text in row_cells(table, row)]
