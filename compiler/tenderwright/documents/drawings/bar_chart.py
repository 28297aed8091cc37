"""The programme as bars against days and dates: critical activities, floats, cures, decisions, the days on blocks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from math import ceil

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.legend import ROW, Entry, legend, rows
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.sheet import OWNERS, TITLE_HEIGHT, sheet_of
from tenderwright.documents.drawings.view import LANDSCAPE
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.planning.network import ARRIVAL, REDELIVERY
from tenderwright.planning.schedule import Schedule, Scheduled
from tenderwright.quantities.customs import day_of_year
from tenderwright.quantities.display import decimals, show

MOST = 36
"""How many activities stand on one sheet."""
WORK = Hatch((45,), 0.9, 0.14)
CURE = Hatch((90,), 0.7, 0.14)
ON_BLOCKS, _WEEK_LINE = "#e9e9e9", "#999999"
_NAME, _NUMBER, _RIGHT, _HEAD = 66.0, 9.0, 4.0, 12.5
_ROW, _GAP = 3.6, 0.6
"""The greatest height of a row, and the space over the first and under the last, mm."""
_WEEK = 7


@dataclass(frozen=True)
class _Field:
    """Where days and rows lie on the sheet."""

    days: float
    rows: int
    pitch: float

    @property
    def per_day(self) -> float:
        return (LANDSCAPE.width - _NAME - _RIGHT) / self.days

    @property
    def foot(self) -> float:
        return _HEAD + 2 * _GAP + self.rows * self.pitch

    def x(self, day: float) -> float:
        return _NAME + day * self.per_day

    def middle(self, row: int) -> float:
        return _HEAD + _GAP + (row + 0.5) * self.pitch


def bar_chart(package: Package, schedule: Schedule) -> tuple[Figure, ...]:
    """Draw the activities in the order in which they start, on as many sheets as they need, all to one scale."""
    milestones = (ARRIVAL, REDELIVERY)
    shown = [one for one in schedule.activities if one.node.name not in milestones]
    count = max(1, ceil(len(shown) / MOST))
    each = ceil(len(shown) / count)
    parts = [shown[start : start + each] for start in range(0, len(shown), each)]
    room = LANDSCAPE.height - TITLE_HEIGHT - _HEAD - _key() - 2 * _GAP
    field = _Field(_length(schedule), each, min(_ROW, room / each)) if parts else None
    return tuple(
        _figure(package, schedule, part, (number, len(parts)), field) for number, part in enumerate(parts, 1) if field
    )


def _key() -> float:
    """Give the height of the key, mm."""
    return 2.0 + ROW * len(rows(_KEY_ENTRIES, LANDSCAPE.width))


def _length(schedule: Schedule) -> float:
    """Give the days that the axis covers: whole days past redelivery, and past the latest finish that float allows."""
    return max(1, ceil(max([schedule.yard_days, *(one.finish + one.total_float for one in schedule.activities)])))


def _figure(
    package: Package, schedule: Schedule, part: Sequence[Scheduled], sheets: tuple[int, int], field: _Field
) -> Figure:
    number, of = sheets
    name, title = (
        ("bar-chart", "Programme") if of == 1 else (f"bar-chart-{number}", f"Programme, sheet {number} of {of}")
    )
    field = replace(field, rows=len(part))
    made = sheet_of(package, name, title, LANDSCAPE.width, field.foot + _key() + TITLE_HEIGHT, OWNERS)
    sheet = replace(made, unscaled=f"1 day = {show(field.per_day / 1000, 'paper')}")
    marks = [
        *_blocks(schedule, field),
        *_axis(schedule, field),
        _blocks_named(schedule, field),
        *_milestones(schedule, field),
        *(_row(one, row, field) for row, one in enumerate(part)),
        legend(_KEY_ENTRIES, 0.5, field.foot + 3.2, LANDSCAPE.width),
    ]
    critical = [one.node.title for one in part if one.critical]
    words = (
        f"Bar chart of {len(part)} activities from day {decimals(part[0].start, 1)} to day "
        f"{decimals(max(one.finish for one in part), 1)} after arrival. On blocks {decimals(schedule.dock_days, 1)} "
        f"days. On the critical path: {'; '.join(critical) or 'none of them'}."
    )
    caption = "Likely durations, as days that pass. Each activity starts as soon as what it waits for lets it."
    return Figure(name, sheet.svg(marks, words), caption, words, title=title)


def _blocks(schedule: Schedule, field: _Field) -> list[str]:
    """Shade the days on blocks, from the end of docking to the end of undocking."""
    start, end = _on_blocks(schedule)
    a, b = field.x(start), field.x(end)
    box = [(a, _HEAD), (b, _HEAD), (b, field.foot), (a, field.foot)]
    edges = [((a, _HEAD - 3.4), (a, field.foot)), ((b, _HEAD - 3.4), (b, field.foot))]
    return [pen.polygon(box, 0, fill=ON_BLOCKS), pen.strokes(edges, pen.MEDIUM, pen.LIMIT)]


def _blocks_named(schedule: Schedule, field: _Field) -> str:
    start, end = _on_blocks(schedule)
    words = f"on blocks {decimals(schedule.dock_days, 1)} d"
    if pen.text_width(words, pen.SMALL, True) + 2 > (end - start) * field.per_day:
        return ""
    return pen.label((field.x((start + end) / 2), _HEAD - 2.4), words, pen.SMALL, "middle", True, kind="on-blocks")


def _on_blocks(schedule: Schedule) -> tuple[float, float]:
    finish, network = schedule.path.early_finish, schedule.network
    return finish[network.of_kind("docking")], finish[network.of_kind("undocking")]


def _axis(schedule: Schedule, field: _Field) -> list[str]:
    """Draw the days, and the weeks with their dates, or with the count of days where there is no date of arrival."""
    left, right = field.x(0), field.x(field.days)
    days = [((field.x(day), _HEAD - 0.7), (field.x(day), _HEAD)) for day in range(int(field.days) + 1)]
    marks = [
        pen.line((0.5, _HEAD), (right, _HEAD), pen.MEDIUM),
        pen.line((0.5, field.foot), (right, field.foot), pen.FINE),
    ]
    marks += [pen.strokes(days, pen.FINE), pen.line((left, _HEAD), (left, field.foot), pen.FINE)]
    weeks = _weeks(schedule.arrival, field.days)
    lines = [((field.x(day), _HEAD - 4.2), (field.x(day), field.foot)) for day, _ in weeks]
    marks.append(pen.strokes(lines, pen.FINE, "", _WEEK_LINE))
    last = 0.0
    for day, words in weeks:
        x = field.x(day) + 0.6
        wide = pen.text_width(words, pen.SMALL)
        if x >= last and x + wide <= LANDSCAPE.width:
            marks.append(pen.text((x, 3.2), words, pen.SMALL, kind="week"))
            last = x + wide + 1.5
    heads = ((0.5, "Item"), (_NUMBER, "Activity"))
    return marks + [pen.text((x, _HEAD - 1.6), words, pen.SMALL, colour=pen.FAINT) for x, words in heads]


def _weeks(arrival: date | None, days: float) -> list[tuple[int, str]]:
    """Give the day of each tick with its words: Mondays, or every seventh day."""
    if arrival is None:
        return [(day, f"day {day}") for day in range(0, int(days) + 1, _WEEK)]
    first = -arrival.weekday() % _WEEK
    mondays = [(day, arrival + timedelta(days=day)) for day in range(first, int(days) + 1, _WEEK)]
    return [(day, f"Mon {day_of_year(when, short=True)}") for day, when in mondays]


def _milestones(schedule: Schedule, field: _Field) -> list[str]:
    """Mark arrival and redelivery over the bars."""
    marks = []
    for day, words, anchor in ((0.0, "arrival", "end"), (schedule.yard_days, "redelivery", "start")):
        x, out = field.x(day), -1.8 if anchor == "end" else 1.8
        if anchor == "start" and x + out + pen.text_width(words, pen.SMALL) > LANDSCAPE.width:
            out, anchor = -1.8, "end"
        marks.append(_diamond((x, 6.0), 1.2, True))
        marks.append(pen.text((x + out, 6.9), words, pen.SMALL, anchor, kind="milestone"))
    return marks


def _row(one: Scheduled, row: int, field: _Field) -> str:
    node, middle = one.node, field.middle(row)
    start, end = field.x(one.start), field.x(one.finish)
    title = pen.shortened(node.title, pen.SMALL, _NAME - _NUMBER - 1.5, one.critical)
    number = node.item.number if node.item is not None else ""
    name_end = _NUMBER + pen.text_width(title, pen.SMALL, one.critical) + 0.8
    marks = [
        pen.strokes([((name_end, middle), (start - 0.8, middle))], pen.FINE, "0.25 1.6", pen.FAINT),
        pen.text((0.5, middle + 0.9), number, pen.SMALL, colour=pen.FAINT, kind="number") if number else "",
        pen.text((_NUMBER, middle + 0.9), title, pen.SMALL, "start", one.critical, kind="activity"),
        _float(one, middle, field),
        _bar(one, start, max(end, start + 0.3), middle, field.pitch),
    ]
    return "".join(marks)


def _float(one: Scheduled, middle: float, field: _Field) -> str:
    if one.critical:
        return ""
    a, b = field.x(one.finish), field.x(one.finish + one.total_float)
    return pen.strokes([((a, middle), (b, middle)), ((b, middle - 0.6), (b, middle + 0.6))], pen.FINE)


def _bar(one: Scheduled, start: float, end: float, middle: float, pitch: float) -> str:
    kind = one.node.kind
    waits = kind in ("cure", "milestone")
    high = pitch * (0.36 if waits else 0.66) / 2
    box = [(start, middle - high), (end, middle - high), (end, middle + high), (start, middle + high)]
    if kind == "decision":
        outline = pen.polygon(box, pen.MEDIUM if one.critical else pen.FINE, fill=pen.PAPER)
        return outline + _diamond((end, middle), high + 0.35, one.critical)
    if one.critical:
        return pen.polygon(box, pen.FINE, fill=pen.INK)
    return pen.polygon(box, 0, fill=pen.PAPER) + (CURE if waits else WORK).over([box]) + pen.polygon(box, pen.FINE)


def _diamond(at: Point, half: float, solid: bool) -> str:
    x, y = at
    corners = [(x - half, y), (x, y - half), (x + half, y), (x, y + half)]
    return pen.polygon(corners, pen.FINE, fill=pen.INK if solid else pen.PAPER)


def _sample(high: float, hatch: Hatch | None, fill: str = pen.PAPER) -> str:
    box = [(-4.0, -high), (4.0, -high), (4.0, high), (-4.0, high)]
    return pen.polygon(box, 0, fill=fill) + (hatch.over([box]) if hatch else "") + pen.polygon(box, pen.FINE)


_KEY_ENTRIES = (
    Entry("holds her: late here is late home", _sample(1.1, None, pen.INK), 8.0),
    Entry("work that may wait", _sample(1.1, WORK), 8.0),
    Entry("hardening or waiting, solid where it holds her", _sample(0.6, CURE), 8.0),
    Entry("owner's answer", _sample(1.1, None) + _diamond((4.0, 0.0), 1.4, False), 11.0),
    Entry("how long it may wait", pen.strokes([((-4.0, 0.0), (4.0, 0.0)), ((4.0, -0.6), (4.0, 0.6))], pen.FINE), 8.0),
    Entry("on blocks", pen.polygon([(-4, -1.1), (4, -1.1), (4, 1.1), (-4, 1.1)], 0, fill=ON_BLOCKS), 8.0),
)
