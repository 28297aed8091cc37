"""An item ends no earlier than it begins, and its days hold what it takes.

Ground: a time that cannot hold the work is refused or priced as overtime (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.item import Item
from tenderwright.notices import Notice

CODE = "item-ends-early"
_ORDER = {"before docking": 0, "dry": 1, "after undocking": 2}
_DAY = 86400.0


def check(context: Context) -> Iterator[Notice]:
    """Report items whose end comes before their beginning, or whose days are fewer than they take."""
    tender = context.package.tender
    events = tender.events if tender is not None else {}
    for item in context.live_items:
        if _ORDER.get(item.last_phase, 2) < _ORDER.get(item.phase, 0):
            message = f"item {item.number} ends `{item.ends}`, and begins `{item.phase}`"
            yield Notice(CODE, place_in(item, "ends"), message, hints=("put `phase` or `ends` right",))
        begins = item.begins_on.on(events) if item.begins_on is not None else None
        ends = item.ends_on.on(events) if item.ends_on is not None else None
        if begins is None or ends is None:
            continue
        days = (ends - begins).days + 1
        if days < 1:
            message = f"item {item.number} is to be done by {item.ends_on}, and begins on {item.begins_on}"
            yield Notice(CODE, place_in(item, "ends_on"), message, hints=("put one of the days right",))
        elif item.duration is not None and item.duration.si > days * _DAY:
            message = f"item {item.number} takes {item.duration}, and from its beginning to its end are {days} days"
            yield Notice(CODE, place_in(item, "duration"), message, hints=(_hint(item),))


def _hint(item: Item) -> str:
    return f"begin earlier than {item.begins_on}, end later than {item.ends_on}, or take less time"
