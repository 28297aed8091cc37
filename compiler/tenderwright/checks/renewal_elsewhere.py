"""Plate that the survey names for renewal lies where the item that renews it says that it works.

Ground: an item whose strakes, side or frames leave out a plate of its own list is priced without it; a doubler four
frame spaces from the wasted plate is what comes of that (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.renewal.shell_renewal import PlannedRenewal
from tenderwright.calculations.ship.renewals import shell_renewal
from tenderwright.checks.context import Context
from tenderwright.model.item import Item
from tenderwright.notices import Notice
from tenderwright.quantities.position import FrameTable

TAKES = "shell.renewal."
NEAR = 0.005
"""Metres."""


def check(context: Context) -> Iterator[Notice]:
    """Warn of each outline of renewal that no item that prices it covers."""
    takers, frames = [item for item in context.live_items if _takes(item)], context.package.frames
    condition = context.package.condition
    if not takers and (condition is None or not condition.apart):
        return
    plan = context.found(shell_renewal)
    if plan is None or frames is None:
        return
    items = {item.number: item for item in context.live_items}
    for one in plan.inserts:
        of_its_own = items.get(one.apart)
        holders = takers if not one.apart else [of_its_own] if of_its_own is not None else []
        if holders and not any(_covers(item, one) for item in holders):
            yield _notice(one, holders[0], frames)


def _takes(item: Item) -> bool:
    return any(line.takes is not None and line.takes.name.startswith(TAKES) for line in item.lines)


def _covers(item: Item, one: PlannedRenewal) -> bool:
    where = item.where
    strakes = {reference.name for reference in where.strakes}
    if strakes and not strakes >= set(one.strakes):
        return False
    if where.side in ("port", "starboard") and where.side != one.side:
        return False
    if where.extent is None:
        return True
    ends = sorted((where.extent.from_.x, where.extent.to.x))
    return ends[0] <= one.aft + NEAR and one.forward <= ends[1] + NEAR


def _notice(one: PlannedRenewal, item: Item, frames: FrameTable) -> Notice:
    strakes, ends = " and ".join(one.strakes), f"{frames.label(one.aft)} to {frames.label(one.forward)}"
    message = (
        f"the survey names plate of strake {strakes}, {one.side}, {ends}, for renewal, which lies outside `where` "
        f"of item {item.number}"
    )
    extent = item.where.extent
    place = extent.from_.at if extent is not None else item.here
    hint = (
        "widen strakes, side or extent of the item, or give the plate to another under `apart` in vessel/condition.yaml"
    )
    return Notice("renewal-elsewhere", place, message, hints=(hint,))
