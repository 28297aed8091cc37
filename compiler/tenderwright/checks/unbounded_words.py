"""Words that bound nothing stand nowhere that is priced, unless a quantity bounds them in the same sentence.

Ground: "as required" and "repair as necessary" without a quantity are among the errors that bidders price as risk
(common practice, no source); GAO decision B-420065 (2021): where the extent is not defined, the bidder carries the
risk.
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.checks.unbounded_phrases import Found, find_unbounded
from tenderwright.model.item import Item
from tenderwright.notices import Notice
from tenderwright.reading.source import Path, Source

_FIELDS: tuple[tuple[str, ...], ...] = (
    ("title",), ("scope",), ("requirements", "*"), ("where", "text"), ("access", "*"), ("precautions",),
    ("owner_furnished", "*", "what"), ("yard_furnished", "*", "what"), ("yard_furnished", "*", "standard"),
    ("tests", "*", "*"), ("holds", "*", "at"), ("holds", "*", "accept"), ("holds", "*", "record"),
    ("reports", "*", "report"), ("decision", "on"), ("lines", "*", "text"), ("lines", "*", "where"),
)  # fmt: skip
"""The texts of an item that a yard prices or is held to."""


def check(context: Context) -> Iterator[Notice]:
    """Report unbounded words in items and clauses, at the words."""
    for item in context.live_items:
        source = item.scope.source
        for found in _in_item(item, source):
            yield _notice(source, f"item {item.number}", found)
    for clause in context.package.clauses:
        source = clause.text.source
        for found in find_unbounded(source.text, 0, len(source.text)):
            yield _notice(source, f"clause `{clause.clause}`", found)


def _in_item(item: Item, source: Source) -> Iterator[Found]:
    for pattern in _FIELDS:
        for path in _matching(source.data, pattern, ()):
            yield from find_unbounded(source.text, *source.ends[path])


def _matching(data: object, pattern: tuple[str, ...], at: Path) -> Iterator[Path]:
    """Yield the paths of the texts that a pattern of keys leads to; `*` stands for every key or entry."""
    if not pattern:
        if isinstance(data, str):
            yield at
    elif isinstance(data, dict):
        for key in data if pattern[0] == "*" else pattern[:1]:
            if key in data:
                yield from _matching(data[key], pattern[1:], (*at, key))
    elif isinstance(data, list) and pattern[0] == "*":
        for index, entry in enumerate(data):
            yield from _matching(entry, pattern[1:], (*at, index))


def _notice(source: Source, what: str, found: Found) -> Notice:
    place = source.place_of(found.start, len(found.on_first_line))
    message = f"{what} says `{found.words}`, which bounds nothing"
    return Notice("unbounded-words", place, message, hints=(found.hint,))
