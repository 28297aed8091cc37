"""A number, once issued, stays with its work: no item or line of an earlier issue is gone or has become another.

Ground: bids, questions and addenda name work by its number, and what an amendment leaves unnamed stays as it was
(FAR 52.214-3); that numbers are never used again is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import key_in, place_in
from tenderwright.model.issued_item import IssuedItem
from tenderwright.model.item import Item
from tenderwright.notices import Notice, Place

_CODE = "item-number-reused"
_WORD = re.compile(r"\w+")
_SMALL = frozenset(
    (
        "a",
        "all",
        "an",
        "and",
        "any",
        "as",
        "at",
        "by",
        "each",
        "for",
        "from",
        "in",
        "of",
        "on",
        "one",
        "or",
        "per",
        "the",
        "to",
    )
)
"""Words that say nothing of the work."""


def check(context: Context) -> Iterator[Notice]:
    """Report each item of an earlier issue that is gone or other work now, and each such line of those that stay."""
    now = context.package.item_by_name
    for number, before in context.issued_items.items():
        if context.package.broken.may_hold("item", number):
            continue
        item = now.get(number)
        if item is None:
            yield _gone(context, before)
        elif _other(_noun(item.title), _noun(before.title)) and item.kind != before.kind:
            message = f"item {number} was `{before.title}` in issue `{before.tag}`, and is other work now"
            hint = "give the new work a number that was never used, and bring the old item back, `withdrawn: true`"
            yield Notice(_CODE, place_in(item, "title"), message, hints=(hint,))
        elif not item.withdrawn:
            yield from _lines(context, item, before)


def _gone(context: Context, before: IssuedItem) -> Notice:
    """Tell of an item that is gone: at the item that has its title now, or else at the number of the tender."""
    fresh = [item for item in context.package.items if item.number not in context.issued_items]
    renumbered = next((item for item in fresh if item.title.casefold() == before.title.casefold()), None)
    if renumbered is not None:
        message = f"item {renumbered.number} was item {before.number} in issue `{before.tag}`"
        hint = f"give it the number {before.number} and the name `{before.path}` again"
        return Notice(_CODE, place_in(renumbered, "item"), message, hints=(hint,))
    tender = context.package.tender
    place = tender.award.evaluated.source.place(("tender", "number")) if tender is not None else Place("package.yaml")
    message = f"item {before.number} of issue `{before.tag}` is gone"
    hint = f"bring `{before.path}` back, with `withdrawn: true` where the work is not wanted"
    return Notice(_CODE, place, message, hints=(hint,))


def _lines(context: Context, item: Item, before: IssuedItem) -> Iterator[Notice]:
    lines = (*item.lines, *context.package.withdrawn_lines.get(item.number, ()))
    at = {line.line.partition(".")[0]: line for line in lines}
    for letter, text in before.lines.items():
        name = f"line {item.number}.{letter}"
        if letter not in at:
            hint = "bring the line back, with `withdrawn: true` where it is not wanted"
            yield Notice(_CODE, key_in(item, "lines"), f"{name} of issue `{before.tag}` is gone", hints=(hint,))
        elif _other(at[letter].text, text):
            message = f"{name} was `{text}` in issue `{before.tag}`, and is other work now"
            hint = "give the new line a letter that was never used, and bring the old line back"
            yield Notice(_CODE, place_in(item, "lines", item.written(at[letter]), "text"), message, hints=(hint,))


def _noun(title: str) -> str:
    """Give what the work is done to: `Rivets` of `Rivets, renew`."""
    return title.split(",")[0]


def _other(one: str, other: str) -> bool:
    """Tell whether two texts have no word in common that says something of the work."""
    words, others = _words(one), _words(other)
    return bool(words and others) and not words & others


def _words(text: str) -> set[str]:
    """Give the words of a text in small letters and in the singular, about."""
    words = set(_WORD.findall(text.casefold())) - _SMALL
    return {word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word for word in words}
