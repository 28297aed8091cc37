"""The calendar of her care: tasks that come again, from weekly to rarely, and what falls due once."""

from __future__ import annotations

import re
from datetime import timedelta

from tenderwright.documents.edition import Calendar, Event
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.planning.care.once import next_planned, once
from tenderwright.planning.care.plan import care_tasks

LEAST = 6.0
"""What is done more often than this many days stands on the wall of the wheelhouse, not in the calendar."""
_WITHOUT_PLAN = timedelta(days=5 * 366)


def care_calendar(desk: OwnerDesk) -> Calendar:
    """Give the calendar, up to the docking after the one planned, or for five years where nothing tells of it."""
    package, ship = desk.package, desk.tender.ship
    where = "-".join(re.findall("[a-z0-9]+", ship.lower())) or "ship"
    until = next_planned(package)
    events = [
        Event(
            f"{one.task}@{where}.care",
            one.due,
            f"{ship}: {one.what.partition(':')[0]}",
            f"{one.what}. By: {one.by}. {one.often.capitalize()}; {one.source}.",
            round(one.days),
            until or one.due + _WITHOUT_PLAN,
        )
        for one in care_tasks(package, desk.calculated)
        if not one.left_out and one.days > LEAST
    ]
    events += [
        Event(
            f"{one.name}@{where}.care",
            one.day,
            f"{ship}: {one.what}",
            " ".join(filter(None, (f"By: {one.by}.", one.source))),
        )
        for one in once(package, desk.calculated)
        if one.day is not None
    ]
    return Calendar(f"{ship}: care between dockings", tuple(sorted(events, key=lambda one: (one.day, one.uid))))
