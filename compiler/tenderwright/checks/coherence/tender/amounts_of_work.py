"""How much is tendered fits what the item names: its openings, tanks, anodes and zones, and the length of its place.

Ground: derived. A line counts what the item lists, so that it is not several times as much; areas and lengths are held
against the whole of the place, with room for both sides and all strakes.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.coherence.tender.calculated import number_of
from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.item import Item, Line
from tenderwright.notices import Notice, Place
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

CODE = "quantity-unlikely"
_COUNTED = ("surveyed", "drawing")
_NAMED = {
    "openings": re.compile(r"\b(valve|opening|sea chest|plug|scupper|blank)", re.IGNORECASE),
    "anodes": re.compile(r"\banode", re.IGNORECASE),
    "tanks": re.compile(r"\b(tank|space|void|double[- ]bottom|cofferdam)", re.IGNORECASE),
}
"""Words by which a line counts what the item lists."""
_PARTS = re.compile(r"\b(bolt|nut|stud|gasket|rivet|reading|hole|plate|sample|renewal)", re.IGNORECASE)
_RUNS = re.compile(r"\b(bilge keel|keel|rubbing|fender|belting|rail)", re.IGNORECASE)
"""Members that run along the ship once on each side."""
_STAGED = 2.0
"""How much more than its zones an item covers at the most, staging and sheeting included."""


def check(context: Context) -> Iterator[Notice]:
    """Report quantities beyond what the item itself names."""
    for item in context.live_items:
        for line in item.lines:
            index = item.written(line)
            if line.quantity is not None:
                yield from _written(context, item, line, line.quantity, place_in(item, "lines", index, "quantity"))
            yield from _step(context, item, index, line)
        yield from _furnished(context, item)
    yield from _tows(context)


def _written(context: Context, item: Item, line: Line, quantity: Quantity, place: Place) -> Iterator[Notice]:
    where, what = item.where, f"line {item.number}.{line.line} asks for {quantity}"
    lists = (("openings", where.openings), ("anodes", where.anodes), ("tanks", where.tanks))
    name, listed = next(((name, len(found)) for name, found in lists if found), ("", 0))
    counted = quantity.dimension == "each" and line.basis in _COUNTED and listed > 0 and _NAMED[name].search(line.text)
    if counted and not _PARTS.search(line.text) and quantity.si > 2 * listed:
        yield Notice(CODE, place, f"{what} by {line.basis}, and the item lists {listed} {name}")
    if quantity.dimension == "area" and where.zones:
        areas = [number_of(context.record, f"zone.{zone.name}.area") for zone in where.zones]
        if None not in areas and quantity.si > _STAGED * sum(area or 0.0 for area in areas):
            whole = sum(area or 0.0 for area in areas)
            yield Notice(CODE, place, f"{what}, and its zones are {show(whole, 'area', more=-1)} together")
    if quantity.dimension == "length" and where.extent is not None and _RUNS.search(line.text):
        reach = where.extent.to.x - where.extent.from_.x
        if reach > 0 and quantity.si > 4 * reach:
            yield Notice(CODE, place, f"{what}, and its place is {show(reach, 'centre', more=-1)} long on each side")


def _step(context: Context, item: Item, index: int, line: Line) -> Iterator[Notice]:
    """Report a step of rounding that is as large as the quantity itself."""
    taken = number_of(context.record, line.takes.name) if line.takes is not None else None
    if line.round_up is None or not taken or line.round_up.si <= 2 * taken:
        return
    message = f"line {item.number}.{line.line} is rounded up to a whole number of {line.round_up}, twice what it is"
    yield Notice(CODE, place_in(item, "lines", index, "round_up"), message)


def _furnished(context: Context, item: Item) -> Iterator[Notice]:
    """Report material far beyond what all the lines of the item take."""
    for one in item.yard_furnished:
        given = one.quantity
        if given is None or given.dimension != "mass":
            continue
        taken = sum(_taken(context, line) for line in item.lines)
        if taken > 0 and given.si > 10 * taken:
            message = (
                f"`{one.what}` is {given}, and the lines of item {item.number} take "
                f"{show(taken, 'small part', more=-1)}"
            )
            yield Notice(CODE, given.at, message, hints=("is the unit the right one?",))


def _taken(context: Context, line: Line) -> float:
    """Give the mass that a line takes [kg]; nothing where it is counted otherwise."""
    if line.quantity is not None:
        return line.quantity.si if line.quantity.dimension == "mass" else 0.0
    value = context.record.values.get(line.takes.name) if line.takes is not None else None
    return (number_of(context.record, value.name) or 0.0) if value is not None and value.dimension == "mass" else 0.0


_FARTHEST = 5.0e6
"""Of a tow to a dock [m]: across an ocean; common practice, no source."""


def _tows(context: Context) -> Iterator[Notice]:
    for facility in context.package.facilities:
        if facility.tow is not None and facility.tow.si > _FARTHEST:
            message = f"the tow to {facility.name} is {facility.tow}, farther than across an ocean"
            yield Notice(CODE, facility.tow.at, message, hints=("is the unit the right one?",))
