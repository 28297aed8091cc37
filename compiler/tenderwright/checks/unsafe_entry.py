"""A confined space is entered with precautions written and after a gas-free certificate.

Ground: 29 CFR 1915.12 (oxygen, then flammability, then toxicity are tested before entry); 29 CFR 1915.13 and 1915.15
(cleaning, and keeping conditions safe).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.doer import depend_on
from tenderwright.checks.item_place import place_of_word
from tenderwright.model.item import Item
from tenderwright.notices import Notice, Place

_INSIDE = ("cleans tank", "coats", "hot work")
"""Work that, where an item names a tank, is done inside it."""


def check(context: Context) -> Iterator[Notice]:
    """Report each item that enters a confined space without precautions or without a certificate before it."""
    certifiers = {item.number for item in context.live_items if "certifies gas-free" in item.does}
    for item in context.live_items:
        entry = _entry(context, item)
        if entry is None:
            continue
        place, space = entry
        missing = []
        if item.precautions is None and "confined space" not in item.hazards:
            missing.append("precautions")
        certified = item.number in certifiers or certifiers & context.before(item)
        if not certified and not context.rests_on_broken(item):
            missing.append("a gas-free certificate before it")
        if missing:
            message = f"item {item.number} enters {space} without {' and without '.join(missing)}"
            hints: tuple[str, ...] = (
                ("add `precautions` or hazard `confined space`",) if "precautions" in missing else ()
            )
            if len(missing) > len(hints):
                hints += (depend_on(context, "certifies gas-free", "gas-free-certificates"),)
            yield Notice("unsafe-entry", place, message, hints=hints)


def _entry(context: Context, item: Item) -> tuple[Place, str] | None:
    """Find what the item enters and where it says so."""
    if "enters confined space" in item.does:
        return place_of_word(item, "does", "enters confined space"), "a confined space"
    if not any(word in item.does for word in _INSIDE):
        return None
    confined = {tank.tank for tank in context.package.tanks if tank.confined}
    named = next((ref for ref in item.where.tanks if ref.name in confined), None)
    return (named.at, f"`{named}`, a confined space,") if named is not None else None
