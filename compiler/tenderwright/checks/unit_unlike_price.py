"""What is priced by the unit is counted, measured, weighed or timed, alone or over a time; a lump sum is none of these.

Ground: a rate for a length times a mass, or for a pressure, buys nothing; staging stands by area and week and pumps run
by number and day (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.item import Item, Line
from tenderwright.notices import Notice
from tenderwright.quantities.units import signature, unit

CODE = "unit-unlike-price"
_BOUGHT = ("each", "length", "area", "volume", "mass", "energy", "person_hour", "time")
"""What can be bought by the unit."""
_HELD = ("each", "length", "area", "volume", "mass")
"""What can be had for a time: staging, a berth, a tent, ballast, a pump."""


def check(context: Context) -> Iterator[Notice]:
    """Report lump sums with a quantity of more than one, and rates for what nobody can buy."""
    for item in context.live_items:
        for line in item.lines:
            if line.quantity is not None and line.quantity.unit:
                yield from _line(item, line)


def _line(item: Item, line: Line) -> Iterator[Notice]:
    written = line.quantity
    if written is None:
        return
    place = place_in(item, "lines", item.written(line), "quantity")
    what = f"line {item.number}.{line.line} is priced"
    measured = unit(written.unit).signature
    by_time = {f"{signature(one)} * {signature('time')}" for one in _HELD}
    if line.price in ("lump", "fixed") and measured in by_time:
        message = f"{what} as a lump sum, and {written} are a quantity by unit and time"
        yield Notice(CODE, place, message, hints=("write `price: rate`, or leave out the quantity",))
    elif line.price == "rate" and measured not in by_time | {signature(one) for one in _BOUGHT}:
        message = f"{what} by the unit, and `{written.unit}` is none by which work is bought"
        hint = "count, measure, weigh or time it, as in `40 each`, `120 m2`, `3 t`, `240 m2*week`"
        yield Notice(CODE, place, message, hints=(hint,))
    elif line.price in ("day", "hours") and measured in by_time:
        message = f"{what} by the {line.price.removesuffix('s')}, and {written} are a quantity by unit and time"
        yield Notice(CODE, place, message, hints=("write `price: rate`",))
