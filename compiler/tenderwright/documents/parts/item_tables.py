"""The tables of an item, printed as ruled forms: what is known of each row, and blank cells for the yard."""

from __future__ import annotations

from dataclasses import replace

import msgspec

from tenderwright.documents.desk import Desk, capital, joined
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.model.item import Item
from tenderwright.model.item_table import IN_DOCK, WITH_TENDER, ItemTable, TableColumn
from tenderwright.model.table_rows import Cell, rows_of
from tenderwright.quantities.display import shown_unit
from tenderwright.quantities.quantity import Quantity

DASH = "–"
_MEASURE, _LETTER, _PADDING = 172.0, 1.6, 3.2
"""Width of a table, of a letter in it, and of what is left empty about the text of a cell, in millimetres."""
_BLANK, _WIDE = 14.0, 46.0
"""The least width of a column that is filled by hand, and the greatest that a column asks for."""


def item_tables(desk: Desk, item: Item) -> list[Block]:
    """Compose every table of an item."""
    blocks: list[Block] = []
    for table in item.tables:
        blocks += [Heading(table.title, 3), *([Paragraph(inline(_how(table)))] if _how(table) else [])]
        blocks.append(_table(desk, item, table))
    return blocks


def known_tables(desk: Desk, item: Item) -> list[Block]:
    """Compose what the tables of an item say already, for readers who fill nothing."""
    blocks: list[Block] = []
    for table in item.tables:
        known = msgspec.structs.replace(table, columns=tuple(one for one in table.columns if not one.filled))
        if known.columns:
            blocks.append(replace(_table(desk, item, known), anchor="", ruled=False, caption=table.title))
    return blocks


def heading_of(column: TableColumn) -> str:
    """Give the heading of a column with the unit in which the yard fills it."""
    return f"{column.column}, {shown_unit(column.unit)}" if column.unit else column.column


def cell_text(desk: Desk, cell: Cell) -> str:
    """Give what stands in a cell: nothing where the yard fills it, a dash where nothing is known."""
    if cell is None:
        return ""
    return capital(desk.quantity(cell) if isinstance(cell, Quantity) else str(cell)) or DASH


def line_width(numbers: list[str], usual: float) -> float:
    """Give the width of a column of line numbers, wider where lines are priced by row."""
    longest = max((len(number) for number in numbers), default=0)
    return usual if longest <= len("420.aa") else 2 * usual


def _how(table: ItemTable) -> str:
    """Say how the table is filled, and which of its columns when."""
    said = [table.note.rstrip(".") + "."] if table.note else []
    times = ((WITH_TENDER, "with the tender, in the price form"), (IN_DOCK, "in dock, and hands the table over"))
    for when, words in times:
        columns = [f"“{column.column}”" for column in table.columns if column.filled == when]
        said += [f"The yard fills {joined(columns)} {words}."] if columns else []
    return " ".join(said)


def _table(desk: Desk, item: Item, table: ItemTable) -> Table:
    rows = [tuple(cell_text(desk, cell) for cell in row.cells) for row in rows_of(desk.package, item, table)]
    texts = [[heading_of(column), *(row[place] for row in rows)] for place, column in enumerate(table.columns)]
    widths = _widths(texts, [_BLANK if column.filled else 0.0 for column in table.columns])
    columns = [Column(heading_of(column), width=width) for column, width in zip(table.columns, widths, strict=True)]
    cells = (Row(tuple(inline(text or " ") for text in row)) for row in rows)
    return Table(tuple(columns), tuple(cells), anchor=f"table-{item.number}-{table.table}", ruled=True)


def _widths(texts: list[list[str]], least: list[float]) -> list[float]:
    """Give each column the width of its longest word, and share what is left among those with longer texts."""
    words = [max(len(word) for text in column for word in text.split() or ("",)) for column in texts]
    narrow = [max(at_least, _PADDING + _LETTER * word) for at_least, word in zip(least, words, strict=True)]
    asked = [_PADDING + _LETTER * max(map(len, column[1:]), default=0) for column in texts]
    more = [max(0.0, min(ask, _WIDE) - width) for ask, width in zip(asked, narrow, strict=True)]
    spare = max(0.0, _MEASURE - sum(narrow))
    share = min(1.0, spare / sum(more)) if sum(more) else 0.0
    return [width + share * one for width, one in zip(narrow, more, strict=True)]
