"""What a yard filled in dock belongs to rows and columns of the tables that were tendered, in their units."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.model.findings import RowFilled
from tenderwright.model.item_table import IN_DOCK, TableColumn
from tenderwright.model.table_rows import filled_in, rows_of
from tenderwright.notices import Notice, Place
from tenderwright.notices.suggest import did_you_mean
from tenderwright.quantities.quantity import QuantityError, parse_quantity
from tenderwright.quantities.units import unit


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report tables, rows and columns that were not tendered, rows that stand twice, and figures in other units."""
    seen: set[tuple[str, str, str]] = set()
    for number, one in enumerate(context.findings.tables):
        name = (one.item.name, one.table, one.row)
        if name in seen:
            yield Notice("duplicate-name", one.here, f"row `{one.row}` of table `{one.table}` is listed twice")
        seen.add(name)
        if one.item.name in context.package.item_by_name:
            yield from _row(context, number, one)


def _row(context: ClosingContext, number: int, one: RowFilled) -> Iterator[Notice]:
    package, item = context.package, context.package.item_by_name[one.item.name]
    table = next((table for table in item.tables if table.table.name == one.table), None)
    if table is None:
        hints = did_you_mean(one.table, [table.table.name for table in item.tables])
        message = f"item {item.number} has no table `{one.table}`"
        yield Notice("dead-reference", context.at("tables", number, "table"), message, hints=hints)
        return
    rows = [row.row for row in rows_of(package, item, table)]
    if one.row not in rows:
        message = f"table `{one.table}` of item {item.number} has no row `{one.row}`"
        place = context.at("tables", number, "row")
        yield Notice("dead-reference", place, message, hints=did_you_mean(one.row, rows))
    columns = {column.column: column for column in filled_in(table, IN_DOCK)}
    for heading, text in one.cells.items():
        place = context.at("tables", number, "cells", heading)
        if heading not in columns:
            message = f"table `{one.table}` of item {item.number} has no column `{heading}` to fill in dock"
            yield Notice("dead-reference", place, message, hints=did_you_mean(heading, columns))
        elif columns[heading].unit:
            yield from _measured(columns[heading], text, place)


def _measured(column: TableColumn, text: str, place: Place) -> Iterator[Notice]:
    try:
        measured = parse_quantity(text, "any")
    except QuantityError as error:
        yield Notice(error.code, place, f"{column.column}: {error.message}", hints=error.hints)
        return
    if unit(measured.unit).signature != unit(column.unit).signature:
        message = f"`{text}` does not measure `{column.column}`"
        yield Notice("wrong-dimension", place, message, hints=(f"write it as in `1 {column.unit}`",))
