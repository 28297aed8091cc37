"""A number, once issued, stays with its work: no item or line of an earlier issue has become another.

Ground: bids, questions and addenda name work by its number, and what an amendment leaves unnamed stays as it was
(FAR 52.214-3); that numbers are never used again is common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.model.issued_item import IssuedItem
from tenderwright.model.item import Item, Line
from tenderwright.notices import Notice

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
    """Report each item of an earlier issue that has another number or is other work now, and each such line."""
    now = context.package.item_by_name
    for number, before in context.issued_items.items():
        if context.package.broken.may_hold("item", number):
            continue
        item = now.get(number)
        if item is None:
            yield from _renumbered(context, before)
        elif other_work(item, before):
            message = f"item {number} was `{before.title}` in issue `{before.tag}`, and is other work now"
            hint = "give the new work a number that was never used, and bring the old item back, `withdrawn: true`"
            yield Notice(_CODE, place_in(item, "title"), message, hints=(hint,))
        elif not item.withdrawn:
            yield from _lines(context, item, before)


def _renumbered(context: Context, before: IssuedItem) -> Iterator[Notice]:
    """Report an item that stands under a number of its own now."""
    renumbered = under_another_number(context, before)
    if renumbered is not None:
        message = f"item {renumbered.number} was item {before.number} in issue `{before.tag}`"
        hint = f"give it the number {before.number} and the name `{before.path}` again"
        yield Notice(_CODE, place_in(renumbered, "item"), message, hints=(hint,))


def under_another_number(context: Context, before: IssuedItem) -> Item | None:
    """Find the item that has the title of one that is gone, under a number that was never issued."""
    fresh = [item for item in context.package.items if item.number not in context.issued_items]
    return next((item for item in fresh if item.title.casefold() == before.title.casefold()), None)


def other_work(item: Item, before: IssuedItem) -> bool:
    """Tell whether an item is other work than it was: the noun of its title and its kind are both new."""
    return _other(_noun(item.title), _noun(before.title)) and item.kind != before.kind


def _lines(context: Context, item: Item, before: IssuedItem) -> Iterator[Notice]:
    at = lines_by_letter(context, item)
    for letter, text in before.lines.items():
        if letter in at and _other(at[letter].text, text):
            message = f"line {item.number}.{letter} was `{text}` in issue `{before.tag}`, and is other work now"
            hint = "give the new line a letter that was never used, and bring the old line back"
            yield Notice(_CODE, place_in(item, "lines", item.written(at[letter]), "text"), message, hints=(hint,))


def lines_by_letter(context: Context, item: Item) -> dict[str, Line]:
    """Give the lines of an item, the withdrawn ones too, by their letters."""
    lines = (*item.lines, *context.package.withdrawn_lines.get(item.number, ()))
    return {line.line.partition(".")[0]: line for line in lines}


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
