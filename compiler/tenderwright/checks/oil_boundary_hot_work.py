"""Hot work on the boundary of a tank that held oil comes after the tank is cleaned and certified gas-free.

Ground: 29 CFR 1915.14 (hot work next to spaces that hold or held flammable liquids waits for a marine chemist's
certificate); 29 CFR 1915.11 and 1915.12 (adjacent spaces are those in all directions, corners and diagonals included);
29 CFR 1915.13 (cleaning).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.hot_work_tanks import tanks_touched
from tenderwright.checks.item_place import place_of_word
from tenderwright.model.item import Item
from tenderwright.notices import Notice, Place


def check(context: Context) -> Iterator[Notice]:
    """Report each item of hot work at a tank that held oil and is not both cleaned and certified beforehand."""
    for item in context.live_items:
        if "hot work" not in item.does and "hot work" not in item.hazards:
            continue
        for tank, at, how in tanks_touched(context.package, item):
            missing = [words for word, words in _NEEDED.items() if not _done_before(context, item, word, tank)]
            if missing and not context.rests_on_broken(item):
                yield _notice(item, tank, at, how, " and ".join(missing))


_NEEDED = {"cleans tank": "cleaned", "certifies gas-free": "certified gas-free"}


def _done_before(context: Context, item: Item, word: str, tank: str) -> bool:
    earlier = context.before(item)
    return any(
        word in other.does and any(reference.name == tank for reference in other.where.tanks)
        for other in context.live_items
        if other.number in earlier
    )


def _notice(item: Item, tank: str, at: Place | None, how: str, missing: str) -> Notice:
    place = at or place_of_word(item, "does" if "hot work" in item.does else "hazards", "hot work")
    message = f"item {item.number} does hot work {how} `{tank}`, which held oil, before the tank is {missing}"
    hint = f"let it depend on items that name `{tank}` in `where.tanks` and do `cleans tank` and `certifies gas-free`"
    return Notice("oil-boundary-hot-work", place, message, hints=(hint,))
