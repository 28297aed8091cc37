"""The tanks were sounded shortly before docking, or an item sounds them again.

Ground: tanks are sounded afresh before docking because they leak, are used and are forgotten; 60 d is common practice,
no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from tenderwright.checks.context import Context
from tenderwright.checks.tanks_holding import holds_liquid
from tenderwright.model.services import service_answers
from tenderwright.model.tank import Tank
from tenderwright.notices import Notice

CODE = "soundings-too-old"
OLD = timedelta(days=60)
SERVICE = "soundings-before-docking"


def check(context: Context) -> Iterator[Notice]:
    """Warn of tanks sounded long before docking, or on no day, unless an item sounds them again."""
    if context.package.docking_plan is None:
        context.lacks_file("vessel/docking-plan.yaml")
        return
    tender = context.package.tender
    if tender is None or tender.programme is None:
        return
    answer = service_answers(context.package).get(SERVICE)
    if answer is not None and answer.item is not None:
        return
    for tank in context.package.tanks:
        read = tank.contents.read
        if holds_liquid(tank) and (read is None or tender.programme.docking - read > OLD):
            yield _stale(tank, read, tender.programme.docking)


def _stale(tank: Tank, read: date | None, docking: date) -> Notice:
    when = "does not say on which day it was sounded"
    if read is not None:
        when = f"was sounded on {read}, {(docking - read).days} days before docking"
    message = f"tank `{tank.tank}` {when}, and no item sounds it again"
    hint = f"name `{SERVICE}` under `services` of the item in which the tanks are sounded before docking"
    return Notice(CODE, tank.contents.here, message, hints=(hint,))
