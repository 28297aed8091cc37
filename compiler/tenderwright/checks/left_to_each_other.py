"""No two items leave staging, or what is in the way, each to the other.

Ground: each bidder leaves out of both what the other is said to hold, and the first day on the job is a claim (common
practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.item import Item
from tenderwright.notices import Note, Notice

_FIELDS = ("staging", "interference")
_ITEM = re.compile(r"(?:<|\()item:(\d+)[>)]")


def check(context: Context) -> Iterator[Notice]:
    """Report pairs of items whose `access` sends the same service to and fro, and items that send it to themselves."""
    items = {item.number: item for item in context.live_items}
    for field in _FIELDS:
        left = {number: _left_to(item, field) for number, item in items.items()}
        for number, others in left.items():
            for other in sorted(others):
                if number in left.get(other, ()) and number <= other:
                    yield _notice(items[number], items[other], field)


def _left_to(item: Item, field: str) -> set[str]:
    text = getattr(item.access, field) if item.access is not None else None
    return set(_ITEM.findall(text.text)) if text is not None else set()


def _notice(first: Item, second: Item, field: str) -> Notice:
    place = place_in(second, "access", field)
    hint = f"let one of them hold the {field} and say so there, with `in this item's rate`"
    if first is second:
        return Notice("left-to-each-other", place, f"item {first.number} leaves its {field} to itself", hints=(hint,))
    message = (
        f"item {second.number} leaves its {field} to item {first.number}, and that item leaves it to {second.number}"
    )
    note = Note("the other leaves it here", place_in(first, "access", field))
    return Notice("left-to-each-other", place, message, (note,), (hint,))
