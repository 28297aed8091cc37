"""A line priced by a rate has a tendered quantity with its unit.

Ground: every bidder prices the same quantity (common practice, no source); ASCE J. Constr. Eng. 135(11), p. 1138, on
flawed quantities and unbalanced bids.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import key_in
from tenderwright.model.item import Line
from tenderwright.notices import Notice

CODE = "contingent-without-quantity"
BY_QUANTITY = ("rate", "day", "hours")


def check(context: Context) -> Iterator[Notice]:
    """Report lines priced by a rate without quantity or unit."""
    for item in context.live_items:
        for line in item.lines:
            index = item.written(line)
            if line.price not in BY_QUANTITY:
                continue
            about = f"{item.kind_of(line)} line {item.number}.{line.line}, `{line.text}`,"
            place = key_in(item, "lines", index, "price")
            if line.quantity is None and line.takes is None and line.takes_line is None:
                message = f"{about} has no tendered quantity"
                yield Notice(CODE, place, message, hints=("add one with its unit, as in `quantity: 40 each`",))
            elif line.quantity is None and not _unit(context, line):
                yield Notice(CODE, place, f"{about} takes a value and names no unit", hints=("add `unit`",))


def _unit(context: Context, line: Line) -> str:
    """Give the unit of a line that takes a value; a value that failed has been told of already."""
    value = context.record.values.get(line.takes.name) if line.takes is not None else None
    return line.unit or (value.unit if value is not None else "unknown")
