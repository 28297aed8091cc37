"""How many plugs, valves, tanks or anodes an item says that it is about is how many it names in `where`.

Ground: a plug that the words leave out is not drawn, and one that the list leaves out is not counted before flooding
(common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.item_place import place_in
from tenderwright.checks.texts import Text, of_item, pattern
from tenderwright.model.item import Item
from tenderwright.notices import Notice

CODE = "count-stated-differently"
_NUMBERS = (
    "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen",
    "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
)  # fmt: skip
_NUMBER = rf"(?P<number>\d{{1,2}}|{'|'.join(_NUMBERS)})"
_SAID = (
    pattern(rf"\b(?:all|the) {_NUMBER}(?: (?:bronze|docking|sea))* (?P<what>plugs|valves|anodes)\b(?! that)"),
    pattern(rf"\b{_NUMBER} (?P<what>covers) (?:of|off)\b"),
    pattern(rf"\ball {_NUMBER} (?P<what>tanks|double bottoms)\b"),
)
"""Of tanks, `the two` may be any two of them."""
_FIELDS = (
    ("scope",), ("requirements", "*"), ("holds", "*", "accept"), ("lines", "*", "text"), ("lines", "*", "where"),
)  # fmt: skip
_PAIRS = pattern(rf"\b{_NUMBER} pairs of side blocks\b")
_LISTS = {
    "plugs": "openings",
    "valves": "openings",
    "tanks": "tanks",
    "double bottoms": "tanks",
    "anodes": "anodes",
    "covers": "anodes",
}
_WORDS = ("pairs", *_LISTS)


def check(context: Context) -> Iterator[Notice]:
    """Warn of items whose words count other than their lists."""
    for item in context.live_items:
        yield from _furnished(item)
        words = item.scope.source.text
        if not any(word in words and (word == "pairs" or getattr(item.where, _LISTS[word])) for word in _WORDS):
            continue
        for text in of_item(item, _FIELDS):
            yield from _side_blocks(context, text)
            for said in _SAID:
                for match in said.finditer(text.source.text, text.start, text.end):
                    yield from _compare(item, text, match)


def _furnished(item: Item) -> Iterator[Notice]:
    """Tell of anodes that the yard furnishes in another number than the item fits."""
    named = len(item.where.anodes)
    for index, one in enumerate(item.yard_furnished):
        said = one.quantity
        if named and said is not None and said.unit == "each" and "anode" in one.what.lower() and said.si != named:
            message = f"the yard furnishes {said} of anodes for item {item.number}, and `where` names {named}"
            hint = "put the quantity right, or `anodes` of `where`"
            yield Notice(CODE, place_in(item, "yard_furnished", index, "quantity"), message, hints=(hint,))


def _side_blocks(context: Context, text: Text) -> Iterator[Notice]:
    """Tell of pairs of side blocks in another number than the docking plan sets."""
    plan = context.package.docking_plan
    for match in _PAIRS.finditer(text.source.text, text.start, text.end) if plan is not None else ():
        planned = len(plan.side_blocks) if plan is not None else 0
        if planned and _number(match["number"]) != planned:
            message = (
                f"{text.whose} speaks of {match['number']} pairs of side blocks, and the docking plan sets {planned}"
            )
            hint = "put the words right, or `side_blocks` in vessel/docking-plan.yaml"
            yield Notice(CODE, text.place(match, "number"), message, hints=(hint,))


def _compare(item: Item, text: Text, match: re.Match[str]) -> Iterator[Notice]:
    what = " ".join(match["what"].split())
    named = len(getattr(item.where, _LISTS[what]))
    if named and _number(match["number"]) != named:
        message = f"item {item.number} speaks of {match['number']} {what}, and `where` names {named}"
        hint = f"put the words right, or `{_LISTS[what]}` of `where`"
        yield Notice(CODE, text.place(match, "number"), message, hints=(hint,))


def _number(word: str) -> int:
    return int(word) if word.isdigit() else _NUMBERS.index(word) + 2
