"""Where the trim wanted for docking is not the trim she arrives with, an item moves liquid.

Ground: trim is set by moving liquid, which somebody has to do and to price (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.wanted import trim_tolerance
from tenderwright.calculations.verdict import within
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show

CODE = "ballast-not-moved"


def check(context: Context) -> Iterator[Notice]:
    """Warn of a trim for docking that needs liquid moved, where no item names any of the tanks that may be moved."""
    if context.package.docking_plan is None:
        context.lacks_file("vessel/docking-plan.yaml")
        return
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
        hint = "name the tanks under `where: tanks` of the item that moves the liquid before docking"
        yield Notice(CODE, wanted.at, message, hints=(hint,))
