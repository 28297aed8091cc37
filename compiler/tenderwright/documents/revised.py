"""Which items are no longer what yards have, in their own words, lines, figures or tables, and bear the same revision.

A page on which only the name or number of something else is another is no revision of its item.
"""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Edition, Part, Table
from tenderwright.documents.replacement import essence
from tenderwright.documents.table_changes import table_changes
from tenderwright.model.item import Item, said


def not_raised(before: Desk, after: Desk, old: Edition, new: Edition) -> tuple[Item, ...]:
    """Give the items that changed between two yard editions and whose revision was not raised."""
    parts, earlier = _items(new), before.package.item_by_name
    return tuple(
        item
        for item in after.package.items
        for was, part in [(earlier.get(item.number), parts.get(item.number))]
        if was is not None and part is not None and not was.withdrawn and item.revision <= was.revision
        if _revised(before, after, was, item) or _shown_otherwise(_items(old)[item.number], part)
    )


def _items(edition: Edition) -> Mapping[str, Part]:
    return {part.number: part for part in edition.parts if part.kind == "item"}


def _revised(before: Desk, after: Desk, was: Item, item: Item) -> bool:
    """Tell whether an item says something else, or shows another figure in its words."""
    sources = was.scope.source.data, item.scope.source.data
    return said(sources[0]) != said(sources[1]) or _figures(before, was) != _figures(after, item)


def _figures(desk: Desk, item: Item) -> dict[str, str]:
    shown = [use.name for use in desk.links.uses if use.kind == "value" and use.by == ("item", item.number)]
    values = {name: desk.record.values.get(name) for name in shown}
    return {name: desk.figure(value) for name, value in values.items() if value is not None}


def _shown_otherwise(old: Part, new: Part) -> bool:
    return bool(table_changes(old, new)) or _lines(old) != _lines(new)


def _lines(part: Part) -> list[str]:
    return [
        essence(block.rows) for block in part.blocks if isinstance(block, Table) and block.anchor.startswith("lines-")
    ]
