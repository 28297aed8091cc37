"""No item or line that was issued is gone without being withdrawn.

Ground: what an amendment leaves unnamed stays as it was (FAR 52.214-3), so work that is only deleted is still tendered.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_number_reused import lines_by_letter, other_work, under_another_number
from tenderwright.checks.item_place import key_in
from tenderwright.model.issued_item import IssuedItem
from tenderwright.model.item import Item
from tenderwright.notices import Notice, Place

CODE = "issued-work-gone"


def check(context: Context) -> Iterator[Notice]:
    """Report each item of an earlier issue that is gone, and each line that is gone from an item that stays."""
    now = context.package.item_by_name
    for number, before in context.issued_items.items():
        if context.package.broken.may_hold("item", number):
            continue
        item = now.get(number)
        if item is not None and not item.withdrawn and not other_work(item, before):
            yield from _lines(context, item, before)
        elif item is None and under_another_number(context, before) is None:
            yield _gone(context, before)


def _gone(context: Context, before: IssuedItem) -> Notice:
    """Tell of an item that is gone, at the number of the tender."""
    tender = context.package.tender
    place = tender.award.evaluated.source.place(("tender", "number")) if tender is not None else Place("package.yaml")
    message = f"item {before.number} of issue `{before.tag}` is gone"
    hint = f"bring `{before.path}` back, with `withdrawn: true` where the work is not wanted"
    return Notice(CODE, place, message, hints=(hint,))


def _lines(context: Context, item: Item, before: IssuedItem) -> Iterator[Notice]:
    at = lines_by_letter(context, item)
    for letter in before.lines:
        if letter not in at:
            message = f"line {item.number}.{letter} of issue `{before.tag}` is gone"
            hint = "bring the line back, with `withdrawn: true` where it is not wanted"
            yield Notice(CODE, key_in(item, "lines"), message, hints=(hint,))
