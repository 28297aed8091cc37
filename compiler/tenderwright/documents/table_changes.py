"""What changed in the tables and short facts of a part: figures that no text of the package names."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tenderwright.documents.edition import Facts, Heading, Part, Row, Table, each_block, plain

_PRICED = "lines-"
"""How the anchors of tables of priced lines begin, whose changes are told line by line."""


@dataclass(frozen=True)
class Cell:
    """One cell before and now."""

    column: str
    old: str
    new: str


@dataclass(frozen=True)
class RowChange:
    """A row of a table, or a fact, that is another now, came or went."""

    label: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True)
class TableChange:
    """A table with the rows in it that changed."""

    title: str
    rows: tuple[RowChange, ...]
    of: int
    """How many rows it has now."""


_Rows = dict[tuple[str, int], tuple[tuple[str, str], ...]]
"""By label, and which of that label it is, the column and text of each further cell."""


def table_changes(old: Part, new: Part) -> tuple[TableChange, ...]:
    """Find the rows and facts that differ between two states of a part, table by table in the order of the page."""
    before, after = dict(_tables(old)), dict(_tables(new))
    found = []
    for key in dict.fromkeys((*after, *before)):
        rows = tuple(_differing(before.get(key, {}), after.get(key, {})))
        if rows:
            found.append(TableChange(key[0], rows, len(after.get(key, {}))))
    return tuple(found)


def _tables(part: Part) -> Iterator[tuple[tuple[str, int], _Rows]]:
    """Yield each table and list of facts by the heading above it, and which under that heading it is."""
    seen: dict[str, int] = {}
    heading = ""
    for block in each_block(part.blocks):
        if isinstance(block, Heading):
            heading = block.text
        elif isinstance(block, Table) and not block.anchor.startswith(_PRICED):
            title = block.caption or heading
            yield (title, _count(seen, title)), _rows(block)
        elif isinstance(block, Facts):
            counted: dict[str, int] = {}
            pairs: _Rows = {(term, _count(counted, term)): (("", plain(text)),) for term, text in block.pairs}
            yield (heading, _count(seen, heading)), pairs


def _rows(table: Table) -> _Rows:
    counted: dict[str, int] = {}
    titles = [column.title for column in table.columns]
    rows = [row for row in table.rows if row.weight != "group"]
    return {(label, _count(counted, label)): _cells(titles, row) for row in rows for label in [plain(row.cells[0])]}


def _cells(titles: list[str], row: Row) -> tuple[tuple[str, str], ...]:
    return tuple((title, plain(cell)) for title, cell in zip(titles[1:], row.cells[1:], strict=False))


def _count(seen: dict[str, int], name: str) -> int:
    seen[name] = seen.get(name, -1) + 1
    return seen[name]


def _differing(before: _Rows, after: _Rows) -> Iterator[RowChange]:
    for key in dict.fromkeys((*after, *before)):
        old, new = dict(before.get(key, ())), dict(after.get(key, ()))
        columns = dict.fromkeys((*new, *old))
        cells = tuple(
            Cell(column, old.get(column, ""), new.get(column, ""))
            for column in columns
            if old.get(column, "") != new.get(column, "")
        )
        if cells:
            yield RowChange(key[0], cells)
