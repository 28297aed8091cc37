"""Priced work on coating, structure or openings has a hold or witness point, or a test of its own.

Ground: what the next coat, plate or the water covers cannot be inspected afterwards (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_of_word
from tenderwright.notices import Notice

_COVERED = {
    "opens hull": "opens the hull",
    "removes plug": "draws plugs",
    "blanks opening": "blanks an opening",
    "hot work": "does hot work",
    "coats": "coats",
}
"""By the word under `does`, how it is told."""


def check(context: Context) -> Iterator[Notice]:
    """Report each priced item that opens the hull, welds or coats, and at which nothing is inspected or tested.

    Of an item that applies a scheme, `coating-without-hold` judges.
    """
    for item in context.live_items:
        word = next((one for one in _COVERED if one in item.does), None)
        if word is None or not item.lines or item.holds or item.tests or item.schemes:
            continue
        message = f"item {item.number} {_COVERED[word]}, and nothing of it is inspected or tested"
        hint = "add `holds:` with what is inspected, who attends and what passes"
        yield Notice("no-inspection-point", place_of_word(item, "does", word), message, hints=(hint,))
