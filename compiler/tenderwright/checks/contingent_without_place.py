"""A contingent line priced by a rate says where the work is, or who chooses.

Ground: bidders cannot price work that may be anywhere (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import key_in
from tenderwright.model.item import Item
from tenderwright.notices import Notice

CODE = "contingent-without-place"


def check(context: Context) -> Iterator[Notice]:
    """Report contingent lines priced by a rate of which neither the line nor its item says where."""
    for item in context.live_items:
        for line in item.lines:
            if item.kind_of(line) == "contingent" and line.price == "rate" and not line.where and not _says_where(item):
                message = f"contingent line {item.number}.{line.line}, `{line.text}`, does not say where the work is"
                hint = "add `where` to the line, if only `any two places, at the owner's choice`"
                place = key_in(item, "lines", item.written(line), "price")
                yield Notice(CODE, place, message, hints=(hint,))


def _says_where(item: Item) -> bool:
    where = item.where
    return bool(where.text or where.extent or where.tanks or where.openings or where.anodes or where.strakes)
