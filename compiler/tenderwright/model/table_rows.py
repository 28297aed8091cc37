"""The rows of the tables of items: drawn from the things of the ship or written, and the lines that are priced by row."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from tenderwright.model.bands import band_mistakes, band_of
from tenderwright.model.build import Name, Reference
from tenderwright.model.clearances import clearances_of
from tenderwright.model.item import Item, Line
from tenderwright.model.item_table import IN_DOCK, ItemTable, TableColumn
from tenderwright.model.package import Broken, Package
from tenderwright.notices import Notice
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity, QuantityError, parse_quantity

MOST_COLUMNS = 12
Cell = Quantity | Position | str | None
"""What stands in a cell; None where the yard fills it."""
_Show = Mapping[str, Callable[[Any], Cell]]


class Drawn(Struct, frozen=True):
    """A row of a table."""

    row: str
    """By which its lines are numbered; it stays with the thing that the row is about."""
    name: str
    cells: tuple[Cell, ...]
    """One for each column."""
    quantity: Quantity | None = None


class _Kind(Struct, frozen=True):
    """How rows are drawn from one kind of thing."""

    file: str
    key: str
    """By which a thing is named."""
    group: str
    """What `of` may give in place of an identifier."""
    shows: _Show


def _across(bounds: Any) -> Cell:
    return f"{bounds.from_} to {bounds.to}" if bounds is not None else ""


_PLACED: _Show = {"place": lambda t: t.at, "side": lambda t: t.side, "height": lambda t: t.height}
_KINDS: Mapping[str, _Kind] = {
    "openings": _Kind(
        "vessel/openings.yaml",
        "opening",
        "kind",
        {
            **_PLACED,
            "name": lambda t: t.name,
            "kind": lambda t: t.kind,
            "off centre": lambda t: t.off_centre or "",
            "bore": lambda t: t.bore or "",
            "length": lambda t: t.length or "",
            "valve": lambda t: t.valve,
            "state": lambda t: t.state,
        },
    ),
    "anodes": _Kind(
        "vessel/anodes.yaml",
        "anode",
        "alloy",
        {
            **_PLACED,
            "name": lambda t: t.anode,
            "alloy": lambda t: t.alloy,
            "mass": lambda t: t.mass,
            "fixing": lambda t: t.fixing,
            "left": lambda t: t.left or "",
        },
    ),
    "tanks": _Kind(
        "vessel/tanks.yaml",
        "tank",
        "use",
        {
            "name": lambda t: t.name,
            "use": lambda t: t.use,
            "place": lambda t: _across(t.bounds),
            "side": lambda t: t.side,
            "capacity": lambda t: t.capacity or "",
            "held oil": lambda t: "yes" if t.held_oil else "no",
        },
    ),
    "clearances": _Kind(
        "vessel/condition.yaml",
        "what",
        "what",
        {
            "name": lambda t: t.what,
            "limit": lambda t: t.limit,
            "last found": lambda t: t.found[-1].clearance,
        },
    ),
}


def rows_of(package: Package, item: Item, table: ItemTable) -> tuple[Drawn, ...]:
    """Give the rows of a table: those drawn, as they stand in `of` or in the file of the things, then those written."""
    kind = _KINDS.get(table.rows_from)
    found: list[Drawn] = []
    if kind is not None:
        for thing in _chosen(table, kind, _things(package, table.rows_from), item):
            name = getattr(thing, "name", "") or str(getattr(thing, kind.key))
            cells = tuple(_shown(column, kind, thing) for column in table.columns)
            found.append(Drawn(_row_of(thing, kind), name, cells))
    for row in table.rows:
        texts = {"name": row.text, "band": band_of(row)}
        cells = tuple(
            None if column.filled else row.cells.get(column.column, texts.get(column.shows, ""))
            for column in table.columns
        )
        found.append(Drawn(row.row, row.text, cells, row.quantity))
    return tuple(found)


def row_names(package: Package) -> tuple[str, ...]:
    """Give the rows of all tables as the price form names them, such as `520.valves.suction-fire`."""
    return tuple(
        f"{item.number}.{table.table}.{row.row}"
        for item in package.items
        for table in item.tables
        for row in rows_of(package, item, table)
    )


def rows_to_fill(package: Package) -> tuple[tuple[str, str, str], ...]:
    """Give item, table and row of each row with cells that the yard fills in dock."""
    return tuple(
        (item.number, table.table.name, row.row)
        for item in package.items
        for table in (item.tables if not item.withdrawn else ())
        if filled_in(table, IN_DOCK)
        for row in rows_of(package, item, table)
    )


def filled_in(table: ItemTable, when: str) -> list[TableColumn]:
    """Give the columns that the yard fills with the tender, or in dock."""
    return [column for column in table.columns if column.filled == when]


def _things(package: Package, rows_from: str) -> Sequence[Any]:
    if rows_from == "clearances":
        return clearances_of(package)
    things: Sequence[Any] = getattr(package, rows_from)
    return things


def _row_of(thing: Any, kind: _Kind) -> str:
    """Give the identifier of a thing; what has none is known by its words."""
    return re.sub(r"[^a-z0-9]+", "-", str(getattr(thing, kind.key)).lower()).strip("-")


def _chosen(table: ItemTable, kind: _Kind, things: Sequence[Any], item: Item) -> Iterator[Any]:
    named: Iterable[Name | Reference] = table.of or getattr(item.where, table.rows_from, ())
    if not named:
        yield from things
        return
    seen: set[int] = set()
    for name in named:
        for thing in things:
            if name.name in (_row_of(thing, kind), getattr(thing, kind.group)) and id(thing) not in seen:
                seen.add(id(thing))
                yield thing


def _shown(column: TableColumn, kind: _Kind, thing: Any) -> Cell:
    if column.filled:
        return None
    show = kind.shows.get(column.shows)
    return show(thing) if show is not None else ""


def with_row_lines(package: Package) -> tuple[Package, list[Notice]]:
    """Put in the place of each line that is priced by row one line for each row, and tell what does not fit.

    Where the things that rows are drawn from are broken, the item is known to have lines that are not there.
    """
    notices: list[Notice] = []
    items, lacking = [], set()
    for item in package.items:
        notices += [] if item.withdrawn else _mistakes(package, item)
        if any(table.rows_from and package.broken.among(_KINDS[table.rows_from].file) for table in item.tables):
            lacking.add(("item", item.number))
        by_row = any(line.each_row_of is not None for line in item.lines)
        lines = tuple(made for line in item.lines for made in _by_row(package, item, line, notices))
        items.append(replace(item, lines=lines) if by_row else item)
    broken = package.broken.joined(Broken(frozenset(lacking))).told(notices)
    return replace(package, items=tuple(items), broken=broken), notices


def _by_row(package: Package, item: Item, line: Line, notices: list[Notice]) -> Iterator[Line]:
    if line.each_row_of is None:
        yield line
        return
    table = next((one for one in item.tables if one.table.name == line.each_row_of.name), None)
    if table is None:
        hints = did_you_mean(line.each_row_of.name, [one.table.name for one in item.tables])
        message = f"item {item.number} has no table `{line.each_row_of}`"
        notices.append(Notice("dead-reference", line.each_row_of.at, message, hints=hints))
        return
    for row in rows_of(package, item, table):
        quantity = row.quantity or line.quantity
        yield replace(
            line, line=f"{line.line}.{row.row}", text=f"{line.text}: {row.name}", quantity=quantity, each_row_of=None
        )


def _mistakes(package: Package, item: Item) -> Iterator[Notice]:
    seen: set[str] = set()
    for table in item.tables:
        about = f"table `{table.table}` of item {item.number}"
        if table.table.name in seen:
            yield Notice("duplicate-name", table.table.at, f"{about} is there twice", hints=("name one otherwise",))
        seen.add(table.table.name)
        yield from _columns(table, about)
        yield from band_mistakes(table, about)
        kind = _KINDS.get(table.rows_from)
        if kind is not None and package.broken.among(kind.file):
            continue
        if kind is not None:
            yield from _dead(package, table, kind, about)
        rows = rows_of(package, item, table)
        if not rows and not _waits(package, item, table):
            hint = "say `rows_from` and `of`, or write the `rows`"
            yield Notice("bad-table", table.here, f"{about} has no row", hints=(hint,))
        twice = sorted({row.row for row in rows if [one.row for one in rows].count(row.row) > 1})
        for name in twice:
            yield Notice(
                "duplicate-name", table.here, f"{about} has the row `{name}` twice", hints=("name one otherwise",)
            )


def _waits(package: Package, item: Item, table: ItemTable) -> bool:
    """Tell whether the things that rows are drawn from, or which of them are meant, are still `todo`."""
    named = ("where", table.rows_from)
    open_here = any(todo.place.path == item.here.path and todo.at[:2] == named for todo in package.todos)
    return bool(table.rows_from) and (open_here or bool(package.broken.awaits(table.rows_from.removesuffix("s"))))


def _dead(package: Package, table: ItemTable, kind: _Kind, about: str) -> Iterator[Notice]:
    things = _things(package, table.rows_from)
    known = [word for thing in things for word in (_row_of(thing, kind), getattr(thing, kind.group))]
    for name in table.of:
        if name.name not in known and not package.broken.may_hold(kind.key, name.name):
            message = f"{about}: there are no {table.rows_from} of the kind or the name `{name}`"
            hints = did_you_mean(name.name, known) or (f"`{kind.file}` lists them",)
            yield Notice("dead-reference", name.at, message, hints=hints)


def _columns(table: ItemTable, about: str) -> Iterator[Notice]:
    headings = [column.column for column in table.columns]
    shows = _KINDS[table.rows_from].shows if table.rows_from else {"name": str, "band": str}
    if len(headings) > MOST_COLUMNS:
        message = f"{about} has {len(headings)} columns, and {MOST_COLUMNS} can be printed"
        yield Notice("bad-table", table.here, message, hints=("part it into two tables",))
    for column in table.columns:
        if headings.count(column.column) > 1:
            yield Notice("duplicate-name", column.here, f"{about} has the column `{column.column}` twice")
        if column.shows and column.filled:
            message = f"column `{column.column}` of {about} both shows something and is filled by the yard"
            yield Notice("bad-table", column.here, message, hints=("leave out `shows` or `filled`",))
        elif column.shows and column.shows not in shows:
            what = f"rows drawn from {table.rows_from}" if table.rows_from else "rows that are written"
            message = f"column `{column.column}` of {about} shows `{column.shows}`, which {what} do not have"
            yield Notice("bad-table", column.here, message, hints=(f"they have {', '.join(shows)}",))
        elif not (column.shows or column.filled or any(column.column in row.cells for row in table.rows)):
            hint = "add `shows`, or `filled: in dock`, or `cells` in the rows"
            yield Notice("bad-table", column.here, f"column `{column.column}` of {about} stays empty", hints=(hint,))
        yield from _unit(column, about)
    for row in table.rows:
        for heading in row.cells:
            if heading not in headings:
                message = f"row `{row.row}` of {about} has a cell under `{heading}`, and no column is headed so"
                yield Notice("bad-table", row.here, message, hints=did_you_mean(heading, headings))


def _unit(column: TableColumn, about: str) -> Iterator[Notice]:
    if not column.unit:
        return
    if not column.filled:
        message = f"column `{column.column}` of {about} names a unit, and the yard does not fill it"
        yield Notice("bad-table", column.here, message, hints=("leave out `unit`",))
        return
    try:
        parse_quantity(f"1 {column.unit}", "any")
    except QuantityError as error:
        message = f"column `{column.column}` of {about}: {error.message}"
        yield Notice(error.code, column.here, message, hints=error.hints)
