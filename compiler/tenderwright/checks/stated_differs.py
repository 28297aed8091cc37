"""A figure that the papers state agrees with the one that the geometry gives.

Ground: a table or tank plan copied wrongly, or a draft misread, shows itself so. The limits are 1 % of displacement,
3 % of a tank's capacity and 50 mm of draft (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from tenderwright.calculations.ship.buoyancy import buoyancy
from tenderwright.checks.context import Context
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import Quantity

DISPLACEMENT_LIMIT = 0.01
CAPACITY_LIMIT = 0.03
DRAFT_LIMIT = 0.050
"""Metres."""


def check(context: Context) -> Iterator[Notice]:
    """Warn of stated displacement, capacities and observed drafts that differ from the calculated ones."""
    particulars, lightship = context.package.particulars, context.package.lightship
    if particulars is not None and particulars.displacement is not None:
        what = f"displacement at {particulars.dimensions.draft}"
        yield from _share(
            context, what, particulars.displacement, "hydrostatics.stated.displacement", DISPLACEMENT_LIMIT
        )
    for tank in context.package.tanks:
        if tank.capacity is not None:
            name = f"tank.{tank.tank}.capacity"
            yield from _share(context, f"capacity of tank `{tank.tank}`", tank.capacity, name, CAPACITY_LIMIT)
    if lightship is not None and lightship.observed is not None:
        floats = context.found(buoyancy)
        if floats is not None and floats.estimated:
            context.lacks(floats.estimated.why)
            return
        observed = lightship.observed
        for end, draft in (("aft", observed.aft), ("forward", observed.forward)):
            yield from _draft(context, end, draft, observed.read)


def _calculated(context: Context, name: str) -> float | None:
    value = context.value(name)
    return float(value.si) if value is not None else None


def _share(context: Context, what: str, stated: Quantity, name: str, limit: float) -> Iterator[Notice]:
    found = _calculated(context, name)
    if found is None or found <= 0:
        return
    difference = (stated.si - found) / found
    if abs(difference) > limit:
        shown = f"{found * stated.magnitude / stated.si:.4g} {stated.unit}" if stated.si else f"{found:.4g}"
        message = f"{what} is stated as {stated} and calculated as {shown}, {difference:+.1%}"
        yield Notice("stated-differs", stated.at, message, hints=(f"`tenderwright explain {name}` shows the working",))


def _draft(context: Context, end: str, observed: Quantity, read: date) -> Iterator[Notice]:
    name = f"condition.arrival.draft-{end}"
    found = _calculated(context, name)
    if found is not None and abs(observed.si - found) > DRAFT_LIMIT:
        difference = ("+" if observed.si > found else "") + show(observed.si - found, "size")
        message = (
            f"draft {end} was observed as {observed} on {read} and is calculated as {show(found, 'centre')}, "
            f"{difference}"
        )
        hint = f"look for a weight left out or a sounding misread; `tenderwright explain {name}` shows the working"
        yield Notice("stated-differs", observed.at, message, hints=(hint,))
