"""Hot work on a hull of wood has a competent person's hold before it.

Ground: planking, felt and oakum take fire out of sight and burn for hours (common practice, no source); work with fire
aboard is permitted by a competent person (29 CFR 1915.14).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.calculations.ship.timber import of_wood
from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_of_word
from tenderwright.notices import Notice

_RELEASES = ("competent person", "marine chemist")


def check(context: Context) -> Iterator[Notice]:
    """Warn of each item of hot work that no competent person releases."""
    if not of_wood(context.package.particulars):
        return
    for item in context.live_items:
        if "hot work" in item.does and not any(who in hold.by for hold in item.holds for who in _RELEASES):
            message = f"item {item.number} does hot work on a hull of wood, and no competent person releases it"
            hint = "do it ashore, or add a hold by the competent person, with a watch on both faces of the planking"
            yield Notice("hot-work-on-wood", place_of_word(item, "does", "hot work"), message, hints=(hint,))
