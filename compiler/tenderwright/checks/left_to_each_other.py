"""No two items leave staging, or what is in the way, each to the other, nor does the item that holds it pass it on.

Ground: each bidder leaves out of both what the other is said to hold, and the first day on the job is a claim (common
practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.item import Item
from tenderwright.model.services import service_answers
from tenderwright.notices import Note, Notice

_SERVICE = {"staging": "staging", "interference": "interference-removal"}
"""The service of the checklist that each text of `access` is about."""
_ITEM = re.compile(r"(?:<|\()item:(\d+)[>)]")


def check(context: Context) -> Iterator[Notice]:
    """Report pairs of items whose `access` sends the same service to and fro, and items that send it to themselves."""
    items = {item.number: item for item in context.live_items}
    for field in _SERVICE:
        left = {number: _left_to(item, field) for number, item in items.items()}
        for number, others in left.items():
            for other in sorted(others):
                if number in left.get(other, ()) and number <= other:
                    yield _notice(items[number], items[other], field)
                elif number == _holder(context, field):
                    yield _passed_on(items[number], other, field)


def _holder(context: Context, field: str) -> str | None:
    """Give the item that the checklist of services says holds the staging, or the removal of what is in the way."""
    answer = service_answers(context.package).get(_SERVICE[field])
    return answer.item.name if answer is not None and answer.item is not None else None


def _passed_on(item: Item, other: str, field: str) -> Notice:
    place = place_in(item, "access", field)
    message = (
        f"item {item.number} holds service `{_SERVICE[field]}` of the checklist, and leaves its {field} to item {other}"
    )
    hint = "let the item that holds the service say that it is in its rate, or answer the service with the other item"
    return Notice("left-to-each-other", place, message, hints=(hint,))


def _left_to(item: Item, field: str) -> set[str]:
    text = getattr(item.access, field) if item.access is not None else None
    return set(_ITEM.findall(text.text)) if text is not None else set()


def _notice(first: Item, second: Item, field: str) -> Notice:
    place = place_in(second, "access", field)
    hint = f"decide which of them holds the {field}, and say so there, with `in this item's rate`"
    if first is second:
        return Notice("left-to-each-other", place, f"item {first.number} leaves its {field} to itself", hints=(hint,))
    message = (
        f"item {second.number} leaves its {field} to item {first.number}, and that item leaves it to {second.number}"
    )
    note = Note("the other leaves it here", place_in(first, "access", field))
    return Notice("left-to-each-other", place, message, (note,), (hint,))
