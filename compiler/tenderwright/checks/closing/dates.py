"""The days of a docking follow each other, and what was done in it was done between its first day and its last."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.checks.closing.date_order import Dated, date_order
from tenderwright.notices import Notice
from tenderwright.reading.source import Path


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report each day out of its order."""
    findings, dates = context.findings, context.findings.dates
    steps = (
        ("arrived", "arrival", dates.arrived),
        ("docked", "docking", dates.docked),
        ("dry", "the dry dock", dates.dry),
        ("undocked", "undocking", dates.undocked),
        ("departed", "departure", dates.departed),
    )
    course: list[Dated] = [(("dates", key), what, day) for key, what, day in steps]
    yield from date_order(
        context.source, [*course, (("guarantee_until",), "the guarantee's end", findings.guarantee_until)]
    )
    for number, plug in enumerate(findings.plugs):
        drawn = (("plugs", number, "drawn"), "the plug drawn", plug.drawn)
        refitted = (("plugs", number, "refitted"), "the plug refitted", plug.refitted)
        yield from date_order(context.source, [drawn, refitted])
        yield from _inside(context, drawn[0], "a plug is drawn", plug.drawn)
        yield from _inside(context, refitted[0], "a plug is refitted", plug.refitted)
    for number, found in enumerate(findings.conditions_found):
        at: Path = ("conditions_found", number)
        pair: list[Dated] = [((*at, "day"), "the condition found", found.day)]
        yield from date_order(context.source, [*pair, ((*at, "decided"), "the decision", found.decided)])
        yield from _inside(context, (*at, "day"), "a condition is found", found.day, ashore=True)
    for number, test in enumerate(findings.tank_tests):
        yield from _inside(context, ("tank_tests", number, "day"), "a tank is tested", test.day, ashore=True)
    for reading in context.readings:
        message = _outside(context, reading.day, "a reading is taken", ashore=True)
        if message:
            yield Notice("date-order", reading.here, message)
    yield from _coats(context)


def _coats(context: ClosingContext) -> Iterator[Notice]:
    """Report coats ended before they were begun, begun before the one beneath was ended, or outside the docking."""
    for number, log in enumerate(context.findings.paint):
        before: tuple[str, datetime] | None = None
        for index, coat in enumerate(log.coats):
            for key, written in (("begun", coat.begun), ("ended", coat.ended)):
                if not written:
                    continue
                at = context.at("paint", number, "coats", index, key)
                moment = _moment(written)
                if moment is None:
                    yield Notice("bad-date", at, f"`{written}` is not a day and time of the calendar")
                    continue
                what = f"coat {coat.coat} {key}"
                if before is not None and moment < before[1]:
                    message = f"{what} on {written} comes before {before[0]} on {before[1]:%Y-%m-%d %H:%M}"
                    yield Notice("date-order", at, message)
                    continue
                yield from _inside(context, ("paint", number, "coats", index, key), what, moment.date(), ashore=True)
                before = (what, moment)


def _moment(written: str) -> datetime | None:
    try:
        return datetime.fromisoformat(written)
    except ValueError:
        return None


def _inside(
    context: ClosingContext, at: Path, what: str, day: date | None, *, ashore: bool = False
) -> Iterator[Notice]:
    message = _outside(context, day, what, ashore=ashore) if day else ""
    if message:
        yield Notice("date-order", context.at(*at), message)


def _outside(context: ClosingContext, day: date, what: str, *, ashore: bool) -> str:
    """Say that a day lies outside the docking; with `ashore`, outside her whole stay at the yard."""
    dates = context.findings.dates
    first = (dates.arrived if ashore else None) or dates.docked
    last = dates.departed if ashore else dates.undocked
    if day < first:
        return f"{what} on {day}, before she was {'at the yard' if ashore else 'docked'} on {first}"
    if last is not None and day > last:
        return f"{what} on {day}, after she {'left the yard' if ashore else 'was undocked'} on {last}"
    return ""
