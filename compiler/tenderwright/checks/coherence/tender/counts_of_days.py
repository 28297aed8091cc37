"""Days that are counted in two places agree, and nothing takes longer than the docking it is part of.

Ground: the days of the programme; how far a count may be off before it is a slip: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.item import Item, Line
from tenderwright.model.tender import Programme
from tenderwright.notices import Notice

CODE = "days-differ"
DAY = 86400.0
_NOTICE = (900.0, 21 * DAY)
"""The least and the most notice of an inspection [s]."""


def check(context: Context) -> Iterator[Notice]:
    """Report days on blocks that differ from the days of the programme, and times that are absurd."""
    tender = context.package.tender
    for docking in context.package.history:
        span = (docking.undocked - docking.docked).days
        if docking.days is not None and span > 0 and abs(docking.days - span) > max(2, span / 10):
            message = f"{docking.days} days on blocks, and from docking to undocking are {span}"
            yield Notice(CODE, context.at(docking.here.path, "days"), message)
    if tender is not None and tender.programme is not None:
        yield from _included(context, tender.programme)
        for item in context.live_items:
            yield from _of_item(item, tender.programme)


def _included(context: Context, plan: Programme) -> Iterator[Notice]:
    span = (plan.undocking - plan.docking).days
    if plan.dock_days is not None and span > 0 and abs(plan.dock_days - span) > max(3, span / 2):
        message = f"{plan.dock_days} days on blocks are included, and from docking to undocking are {span}"
        yield Notice(CODE, context.at("package.yaml", "programme", "dock_days"), message)


def _of_item(item: Item, plan: Programme) -> Iterator[Notice]:
    in_order = plan.arrival <= plan.docking < plan.undocking <= plan.redelivery
    stay, on_blocks = (plan.redelivery - plan.arrival).days, (plan.undocking - plan.docking).days
    for line in item.lines if in_order else ():
        yield from _line(item, item.written(line), line, stay, max(on_blocks, plan.dock_days or 0))
    least, most = _NOTICE
    for hold in item.holds:
        if not least <= hold.notice.si <= most:
            message = f"{hold.notice} of notice for {hold.hold} of item {item.number} is not what an inspection takes"
            yield Notice(CODE, hold.notice.at, message, hints=("is the unit the right one?",))
    if item.decision is not None and in_order and item.decision.within.si > stay * DAY / 2:
        within = item.decision.within
        message = f"item {item.number} is decided within {within}, and the ship is at the yard for {stay} days"
        yield Notice(CODE, within.at, message, hints=("is the unit the right one?",))


def _line(item: Item, index: int, line: Line, stay: int, on_blocks: int) -> Iterator[Notice]:
    if line.quantity is None or line.price not in ("day", "hours") or line.quantity.dimension != "time":
        return
    place, what = place_in(item, "lines", index, "quantity"), f"line {item.number}.{line.line}"
    days = line.quantity.si / DAY
    text = line.text.lower()
    if line.price == "hours":
        if line.quantity.unit not in ("h", "hour", "hours"):
            yield Notice(CODE, place, f"{what} is priced by the hour, and {line.quantity} are tendered")
    elif abs(days - round(days)) > 1e-6:
        yield Notice(CODE, place, f"{what} is priced by the day, and {line.quantity} is not a whole number of days")
    elif "on the blocks" in text and days > 1.5 * on_blocks:
        yield Notice(CODE, place, f"{what} counts {line.quantity} on the blocks, and {on_blocks} are planned")
    elif days > stay and "berth" in text:
        yield Notice(CODE, place, f"{what} counts {line.quantity} at a berth, and she is at the yard for {stay} days")
    elif days > 5 * stay:
        yield Notice(CODE, place, f"{what} counts {line.quantity}, and she is at the yard for {stay} days")
