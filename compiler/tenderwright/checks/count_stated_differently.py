"""How many plugs, valves, tanks or anodes an item says that it is about is how many it names in `where`.

Ground: a plug that the words leave out is not drawn, and one that the list leaves out is not counted before flooding
(common practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.texts import Text, of_item, pattern
from tenderwright.model.item import Item
from tenderwright.notices import Notice

_NUMBERS = (
    "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen",
    "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
)  # fmt: skip
_NUMBER = rf"(?P<number>\d{{1,2}}|{'|'.join(_NUMBERS)})"
_SAID = (
    pattern(rf"\b(?:all|the) {_NUMBER}(?: (?:bronze|docking|sea))* (?P<what>plugs|valves|anodes)\b(?! that)"),
    pattern(rf"\ball {_NUMBER} (?P<what>tanks|double bottoms)\b"),
)
"""Of tanks, `the two` may be any two of them."""
_LISTS = {"plugs": "openings", "valves": "openings", "tanks": "tanks", "double bottoms": "tanks", "anodes": "anodes"}


def check(context: Context) -> Iterator[Notice]:
    """Warn of items whose words count other than their lists."""
    for item in context.live_items:
        for text in of_item(item, (("scope",), ("requirements", "*"), ("lines", "*", "text"), ("lines", "*", "where"))):
            for said in _SAID:
                for match in said.finditer(text.source.text, text.start, text.end):
                    yield from _compare(item, text, match)


def _compare(item: Item, text: Text, match: re.Match[str]) -> Iterator[Notice]:
    what = " ".join(match["what"].split())
    named = len(getattr(item.where, _LISTS[what]))
    if named and _number(match["number"]) != named:
        message = f"item {item.number} speaks of {match['number']} {what}, and `where` names {named}"
        hint = f"put the words right, or `{_LISTS[what]}` of `where`"
        yield Notice("count-stated-differently", text.place(match, "number"), message, hints=(hint,))


def _number(word: str) -> int:
    return int(word) if word.isdigit() else _NUMBERS.index(word) + 2
