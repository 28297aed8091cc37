"""The days on which points come up, by the owner's programme; reports on the day they are due."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date

from tenderwright.planning.inspection.results import PointResult
from tenderwright.planning.schedule import Schedule

Days = tuple[date | None, date | None]
"""The first and the last day on which a point may come up."""


def days_of(
    points: Iterable[PointResult], schedule: Schedule | None, events: Mapping[str, date | None]
) -> dict[str, Days]:
    """Give the days of each point by its name: those of its item's work, and of what failed the day set for it."""
    work = _work(schedule)
    found: dict[str, Days] = {}
    for one in points:
        due = one.point.due.on(events) if one.point.due is not None else None
        days = (due, due) if one.point.due is not None else work.get(one.point.item.number, (None, None))
        again = one.last.again if one.last is not None and one.state == "failed" else None
        found[one.point.name] = (again, again) if again is not None else days
    return found


def _work(schedule: Schedule | None) -> dict[str, Days]:
    found: dict[str, Days] = {}
    for one in schedule.activities if schedule is not None else ():
        if one.node.item is not None and one.begins is not None and one.ends is not None:
            first, last = found.get(one.node.item.number, (one.begins, one.ends))
            found[one.node.item.number] = (min(first or one.begins, one.begins), max(last or one.ends, one.ends))
    return found
