"""Blocks of item numbers stand apart, no item between them, and addenda are numbered as they come.

Ground: a bidder finds an item, and acknowledges an addendum, by its number alone (derived).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.tender import Tender
from tenderwright.notices import Note, Notice

CODE = "numbering"


def check(context: Context) -> Iterator[Notice]:
    """Report blocks that overlap or end before they begin, items between them, and addenda out of number."""
    tender = context.package.tender
    if tender is None:
        return
    yield from _blocks(context, tender)
    yield from _items(context, tender)
    for index, addendum in enumerate(tender.addenda):
        if addendum.number != index + 1:
            message = f"addendum {addendum.number} is listed where addendum {index + 1} is due"
            hint = f"write `number: {index + 1}`, or put the addenda in the order of their days"
            place = context.at("package.yaml", "addenda", index, "number")
            yield Notice("addendum-out-of-order", place, message, hints=(hint,))


def _blocks(context: Context, tender: Tender) -> Iterator[Notice]:
    for index, block in enumerate(tender.sections):
        at = context.at("package.yaml", "sections", index, "to")
        if block.to < block.from_:
            yield Notice(
                CODE, at, f"the block of item numbers `{block.title}` ends at {block.to}, before {block.from_}"
            )
        for number, other in enumerate(tender.sections[:index]):
            if block.from_ <= other.to and other.from_ <= block.to:
                message = f"the blocks `{other.title}` and `{block.title}` share item numbers"
                note = Note("the other block is here", context.at("package.yaml", "sections", number))
                yield Notice(CODE, context.at("package.yaml", "sections", index, "from"), message, (note,))


def _items(context: Context, tender: Tender) -> Iterator[Notice]:
    """Report items in a gap between two blocks; beyond the last block there may be work of another kind."""
    for item in context.live_items:
        before = [index for index, block in enumerate(tender.sections) if block.to < item.item]
        after = [block for block in tender.sections if block.from_ > item.item]
        if before and after and not any(block.from_ <= item.item <= block.to for block in tender.sections):
            message = f"item {item.number} stands between two blocks of item numbers, in neither"
            note = Note("the block before it is here", context.at("package.yaml", "sections", before[-1]))
            hints = ("mend the ends of the blocks under `sections`",)
            yield Notice(CODE, place_in(item, "item"), message, (note,), hints, cause="blocks of item numbers")
