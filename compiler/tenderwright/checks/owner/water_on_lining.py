"""No water is put on a coating that still cures: in a lined tank by test or ballast, or on the shell by flooding.

Ground: water on an uncured film blushes, blisters or washes it off (common practice, no source; the data sheet of the
paint's maker gives the time).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec import Struct

from tenderwright.checks.owner.context import OwnerContext
from tenderwright.model.coating import Zone
from tenderwright.model.item import Item
from tenderwright.model.particulars import Particulars
from tenderwright.notices import Note, Notice, Place
from tenderwright.planning.coats import PutOn, put_on
from tenderwright.planning.durations import DAY
from tenderwright.planning.schedule import Schedule
from tenderwright.quantities.quantity import Quantity

_BY_WATER = re.compile(r"\b(?:by|with) water\b")
_PART = 0.01
"""Days."""


class _Water(Struct, frozen=True):
    """Water on a zone: what brings it, on which day from arrival, and where that is said."""

    what: str
    day: float
    place: Place


def check(context: OwnerContext) -> Iterator[Notice]:
    """Report water that comes before the time of the scheme has passed, at likely durations."""
    schedule = context.schedule
    if schedule is None:
        return
    zones = {zone.zone: zone for zone in context.package.zones}
    for name, coats in put_on(schedule, context.package).items():
        zone, last = zones.get(name), max(coats, key=lambda one: one.activity.finish)
        time = last.scheme.before_water
        if zone is None or time is None:
            continue
        first = min(one.activity.start for one in coats)
        for water in (*_tank(context, schedule, zone), *_shell(context, schedule, zone)):
            if first <= water.day < last.activity.finish + time.si / DAY - _PART:
                yield _notice(zone, last, time, water)


def _tank(context: OwnerContext, schedule: Schedule, zone: Zone) -> Iterator[_Water]:
    """Give the water that comes into the tank of a lined zone: what she floats off with, and tests by water."""
    if zone.tank is None:
        return
    flooded = schedule.activities[0].start
    for one in schedule.activities:
        item = one.node.item
        if one.node.kind == "undocking":
            flooded = one.start
        elif item is not None and one.node.kind == "work" and _wets(item, zone.tank.name):
            yield _Water(
                f"activity `{one.node.name}` of item {item.number} puts water into it", one.start, zone.tank.at
            )
    plan = context.package.docking_plan
    for entry in plan.tanks_at_undocking if plan is not None else ():
        if entry.tank.name == zone.tank.name and entry.volume is not None and entry.volume.si > 0:
            yield _Water(f"she floats off with {entry.volume} of {entry.liquid} in it", flooded, entry.tank.at)


def _wets(item: Item, tank: str) -> bool:
    """Tell whether the item tries the tank by water."""
    named = any(reference.name == tank for reference in item.where.tanks)
    return named and ("tests tightness" in item.does or any(_BY_WATER.search(test.test) for test in item.tests))


def _shell(context: OwnerContext, schedule: Schedule, zone: Zone) -> Iterator[_Water]:
    """Give the flooding of the dock, for a band of shell that begins below her draft."""
    particulars = context.package.particulars
    if zone.surface == "shell band" and particulars is not None and _immersed(zone, particulars):
        node = next(one for one in schedule.activities if one.node.kind == "undocking")
        place = node.node.source.here if node.node.source is not None else zone.here
        yield _Water("the dock is flooded", node.start, place)


def _immersed(zone: Zone, particulars: Particulars) -> bool:
    lower = zone.lower
    return lower == "keel" or (
        lower is not None and not isinstance(lower, str) and lower.si < particulars.dimensions.draft.si
    )


def _notice(zone: Zone, last: PutOn, time: Quantity, water: _Water) -> Notice:
    waited = water.day - last.activity.finish
    when = f"{waited:.1f} d after its last coat" if waited >= 0 else "before its last coat is on"
    message = f"zone `{zone.zone}` takes water {time} after its last coat, and {water.what} {when}"
    hint = "put the water in later or leave the tank empty, coat earlier, or choose a product that cures faster"
    return Notice("water-on-lining", water.place, message, (Note("the time is here", time.at),), (hint,))
