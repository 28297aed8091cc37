"""The texts of the tender, each as a stretch of its file, so that what is found in one has a place."""

from __future__ import annotations

import re
from collections.abc import Iterator

from msgspec import Struct

from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.notices import Place
from tenderwright.reading.source import Path, Source

ITEM_FIELDS: tuple[tuple[str, ...], ...] = (
    ("title",), ("scope",), ("requirements", "*"), ("where", "text"), ("access", "*"), ("precautions",),
    ("owner_furnished", "*", "what"), ("yard_furnished", "*", "what"), ("yard_furnished", "*", "standard"),
    ("tests", "*", "*"), ("holds", "*", "at"), ("holds", "*", "accept"), ("holds", "*", "record"),
    ("reports", "*", "report"), ("decision", "who"), ("decision", "on"),
    ("lines", "*", "text"), ("lines", "*", "where"),
)  # fmt: skip
"""The texts of an item that a yard prices or is held to."""

_SENTENCE_END = re.compile(r"[.!?](?=\s)|\n\s*\n|\n\s*[-*] ")


class Text(Struct, frozen=True):
    """A text of the tender, or a sentence of one."""

    whose: str
    """Such as `item 410` or `clause hot-work`."""
    item: Item | None
    source: Source
    start: int
    end: int

    @property
    def words(self) -> str:
        """Give the text as it stands in the file, line ends included."""
        return self.source.text[self.start : self.end]

    def place(self, match: re.Match[str], group: int | str = 0) -> Place:
        """Find the place of what a search in the file's text found."""
        start, end = match.span(group)
        stop = self.source.text.find("\n", start, end)
        return self.source.place_of(start, (end if stop < 0 else stop) - start)

    def sentences(self) -> Iterator[Text]:
        """Give the sentences of the text, entries of lists and paragraphs apart."""
        first = self.start
        for stop in _SENTENCE_END.finditer(self.source.text, self.start, self.end):
            yield Text(self.whose, self.item, self.source, first, stop.end())
            first = stop.end()
        if first < self.end:
            yield Text(self.whose, self.item, self.source, first, self.end)

    def sentence_of(self, match: re.Match[str]) -> str:
        """Give the sentence in which a match stands, on one line."""
        found = next(one for one in self.sentences() if one.start <= match.start() < one.end)
        return " ".join(found.words.split())


def of_item(item: Item, fields: tuple[tuple[str, ...], ...] = ITEM_FIELDS) -> Iterator[Text]:
    """Give the texts of an item; `*` in a field stands for every key or entry."""
    source = item.scope.source
    for field in fields:
        for path in _matching(source.data, field, ()):
            if not (path[0] == "lines" and source.data["lines"][path[1]].get("withdrawn")):
                yield Text(f"item {item.number}", item, source, *source.ends[path])


def of_package(package: Package) -> Iterator[Text]:
    """Give all the texts of the tender: rules of award, clauses, items not withdrawn, and the answers to questions."""
    tender = package.tender
    if tender is not None:
        source = tender.award.evaluated.source
        for path in _matching(source.data, ("award", "criteria", "*"), ()):
            yield Text("the rule of award", None, source, *source.ends[path])
    for clause in package.clauses:
        yield Text(f"clause `{clause.clause}`", None, clause.text.source, 0, len(clause.text.source.text))
    for item in package.items:
        if not item.withdrawn:
            yield from of_item(item)
    for question in package.questions:
        source = question.ask.source
        for key in ("ask", "answer"):
            if (key,) in source.ends:
                yield Text(f"question {question.question}", None, source, *source.ends[(key,)])


def pattern(words: str) -> re.Pattern[str]:
    """Make a pattern that goes across line ends: each space stands for any run of white space."""
    return re.compile(words.replace(" ", r"\s+"))


def _matching(data: object, field: tuple[str, ...], at: Path) -> Iterator[Path]:
    """Yield the paths of the texts that a field leads to."""
    if not field:
        if isinstance(data, str):
            yield at
    elif isinstance(data, dict):
        for key in data if field[0] == "*" else field[:1]:
            if key in data:
                yield from _matching(data[key], field[1:], (*at, key))
    elif isinstance(data, list) and field[0] == "*":
        for index, entry in enumerate(data):
            yield from _matching(entry, field[1:], (*at, index))
