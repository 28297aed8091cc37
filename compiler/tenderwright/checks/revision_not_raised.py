"""An item that no longer says what it said when it was issued bears a higher revision.

Ground: a revision table keys each change to the items of the edition before, so that a page is known by its revision
(common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.item import said
from tenderwright.notices import Notice


def check(context: Context) -> Iterator[Notice]:
    """Report each item that differs from that of the last issue that held it and bears its revision."""
    for item in context.live_items:
        before = context.issued_items.get(item.number)
        if before is None or item.revision > before.revision or said(item.scope.source.data) == before.said:
            continue
        place = place_in(item, "revision" if "revision" in item.scope.source.data else "item")
        message = f"item {item.number} has changed since `{before.tag}`, and is still revision {item.revision}"
        hint = f"write `revision: {before.revision + 1}`"
        yield Notice("revision-not-raised", place, message, hints=(hint,))
