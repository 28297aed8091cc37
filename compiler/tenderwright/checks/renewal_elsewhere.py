"""Plate that the survey names for renewal lies where the item that renews it says that it works.

Ground: an item whose strakes, side or frames leave out a plate of its own list is priced without it; a doubler four
frame spaces from the wasted plate is what comes of that (common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.calculations.renewal.shell_renewal import PlannedRenewal
from tenderwright.calculations.ship.renewals import shell_renewal
from tenderwright.checks.context import Context
from tenderwright.checks.texts import of_item, pattern
from tenderwright.model.item import Item
from tenderwright.notices import Notice
from tenderwright.quantities.display import show
from tenderwright.quantities.position import FrameTable

TAKES = "shell.renewal."
CODE = "renewal-elsewhere"
NEAR = 0.005
"""Metres."""
RIVETS_SHARE = 0.20
"""A count from a drawing against one by pitch (common practice, no source)."""
_FRAMES = pattern(r"Fr (-?\d+) to Fr (-?\d+)")
_RENEWS = re.compile(r"\b(?:crop|insert|renew)", re.IGNORECASE)
GAUGE = 0.00055
"""Metres: the next thickness of metric plate may be half a millimetre off (common practice, no source)."""
_PLATE = pattern(r"\b[Ff]it a plate of (\d+(?:\.\d+)?) mm")
_RIVETS = pattern(r"\b(\d+) rivets, counted")


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
        elif of_its_own is not None:
            yield from _in_words(of_its_own, one, frames)


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


def _in_words(item: Item, one: PlannedRenewal, frames: FrameTable) -> Iterator[Notice]:
    """Tell of lines that renew other frames than those of the outline, and of another count of its rivets."""
    for text in of_item(item, (("lines", "*", "text"),)):
        match = _FRAMES.search(text.source.text, text.start, text.end)
        if match is None or not _RENEWS.search(text.words):
            continue
        ends = sorted(frames.x(int(match[group])) for group in (1, 2) if int(match[group]) in frames.numbers)
        if len(ends) == 2 and not (ends[0] <= one.aft + NEAR and one.forward <= ends[1] + NEAR):
            named = f"{frames.label(one.aft)} to {frames.label(one.forward)}"
            message = f"a line of item {item.number} renews {' '.join(match[0].split())}, and the survey names {named}"
            hint = "mark the frames on the ship, and put the item or `apart` in vessel/condition.yaml right"
            yield Notice(CODE, text.place(match), message, hints=(hint,))
    counted = one.made.rivets.renewed
    for text in of_item(item, (("requirements", "*"),)):
        match = _PLATE.search(text.source.text, text.start, text.end)
        if match is not None and abs(float(match[1]) / 1e3 - one.thickness) > GAUGE:
            built = show(one.thickness, "thickness")
            message = (
                f"item {item.number} fits a plate of {match[1]} mm, and the plate of the survey was built as {built}"
            )
            hint = "fit plate of the as-built thickness, or put vessel/strakes.yaml right"
            yield Notice(CODE, text.place(match), message, hints=(hint,))
        match = _RIVETS.search(text.source.text, text.start, text.end)
        if match is not None and abs(int(match[1]) - counted) > RIVETS_SHARE * counted:
            message = f"item {item.number} has {match[1]} rivets, and the outline of the survey has {counted}"
            hint = "count again from the shell expansion, or put rows and pitches right in vessel/condition.yaml"
            yield Notice(CODE, text.place(match), message, hints=(hint,))


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
    return Notice(CODE, place, message, hints=(hint,))
