"""What is in the tanks when she docks and undocks is what the conditions reckon with, or an item sees to it.

Ground: tanks are sounded afresh before docking and before flooding because they leak, are used and are forgotten; 60 d
is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from tenderwright.calculations.ship.wanted import trim_tolerance
from tenderwright.calculations.verdict import within
from tenderwright.checks.context import Context
from tenderwright.model.docking_plan import DockingPlan
from tenderwright.model.services import service_answers
from tenderwright.model.tank import Tank
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "tank-state-differs"
OLD = timedelta(days=60)
SERVICE = "soundings-before-docking"
EMPTIES = ("cleans tank", "tests tightness")


def check(context: Context) -> Iterator[Notice]:
    """Warn of old soundings, of liquid that no item moves, and of tanks emptied that undocking reckons full."""
    plan = context.package.docking_plan
    if plan is None:
        context.lacks_file("vessel/docking-plan.yaml")
        return
    yield from _old(context)
    yield from _movement(context)
    yield from _undocking(context, plan)


def _old(context: Context) -> Iterator[Notice]:
    """Tell of tanks sounded long before docking, unless an item sounds them again."""
    tender = context.package.tender
    if tender is None or tender.programme is None:
        return
    answer = service_answers(context.package).get(SERVICE)
    if answer is not None and answer.item is not None:
        return
    for tank in context.package.tanks:
        read = tank.contents.read
        if _holds(tank) and (read is None or tender.programme.docking - read > OLD):
            yield _stale(tank, read, tender.programme.docking)


def _stale(tank: Tank, read: date | None, docking: date) -> Notice:
    when = "has no day on which it was sounded"
    if read is not None:
        when = f"was sounded on {read}, {(docking - read).days} d before docking"
    message = f"tank `{tank.tank}` {when}, and no item sounds it again"
    return Notice(CODE, tank.contents.here, message, hints=(f"name `{SERVICE}` under `services` of an item",))


def _movement(context: Context) -> Iterator[Notice]:
    """Tell of a trim for docking that needs liquid moved, where no item names any of the tanks that may be moved."""
    lightship = context.package.lightship
    if lightship is None or lightship.docking is None:
        return
    trim = context.value("condition.arrival.trim")
    if trim is None:
        return
    movable = {tank.tank for tank in context.package.tanks if tank.movable}
    ordered = any(
        movable & {reference.name for reference in item.where.tanks}
        for item in context.live_items
        if item.phase in ("before docking", "any")
    )
    wanted = lightship.docking.trim
    if movable and not ordered and not within(abs(float(trim.si) - wanted.si), trim_tolerance(lightship).si):
        message = (
            f"she arrives with a trim of {show(float(trim.si), 'trim')}, {wanted} is wanted for docking, "
            "and no item moves liquid"
        )
        hint = "name the tanks in `where: tanks` of an item that is done before docking"
        yield Notice(CODE, wanted.at, message, hints=(hint,))


def _undocking(context: Context, plan: DockingPlan) -> Iterator[Notice]:
    """Tell of tanks that an item empties, though at undocking they are reckoned as full as on docking."""
    changed = {entry.tank.name for entry in plan.tanks_at_undocking}
    for tank in context.package.tanks:
        if tank.tank in changed or not _holds(tank):
            continue
        for item in context.live_items:
            if item.phase != "dry" or tank.tank not in {reference.name for reference in item.where.tanks}:
                continue
            if any(word in item.does for word in EMPTIES):
                message = (
                    f"item {item.number} empties tank `{tank.tank}`, "
                    "which the undocking condition reckons as on docking"
                )
                hint = "add the tank to `tanks_at_undocking` of vessel/docking-plan.yaml"
                yield Notice(CODE, tank.contents.here, message, hints=(hint,))
                break


def _holds(tank: Tank) -> bool:
    contents = tank.contents
    readings = [one for one in (contents.sounding, contents.volume, contents.full, contents.mass) if one is not None]
    return contents.liquid != "none" and (contents.ullage is not None or any(one.si > 0 for one in readings))
