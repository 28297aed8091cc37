"""A source file as plain data, with the place of every key and value."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct, field

from tenderwright.notices import Place

Path = tuple[str | int, ...]
"""Keys and indices from the top of a file's data down to one value."""

Span = tuple[int, int, int]
"""Line, column and end column of a place in a file; kept in place of a Place, which costs more to make."""


def whole_words(text: str, words: str, start: int = 0, end: int | None = None) -> Iterator[int]:
    """Yield where words stand in a text as a name of their own: `item:42` is not the beginning of `item:420`."""
    stop = len(text) if end is None else end
    position = text.find(words, start, stop)
    while position >= 0:
        after = position + len(words)
        before, following = text[max(position - 1, start) : position], text[after : min(after + 2, stop)]
        goes_on = _in_name(following[:1]) or (following[:1] == "." and _in_name(following[1:]))
        if not _in_name(before) and not goes_on:
            yield position
        position = text.find(words, position + 1, stop)


def _in_name(letter: str) -> bool:
    return letter.isalnum() or letter in ("-", "_")


class Source(Struct, frozen=True):
    """One file: its path in the package, text, data, and where each value and key stands."""

    path: str
    text: str
    data: Any = None
    values: Mapping[Path, Span] = field(default_factory=dict)
    keys: Mapping[Path, Span] = field(default_factory=dict)
    ends: Mapping[Path, tuple[int, int]] = field(default_factory=dict)
    """Start and end offset of each text value in the file, for finding a word inside it."""

    twice: tuple[Path, ...] = ()
    """Paths of the keys that stand twice in one mapping."""
    todos: tuple[Path, ...] = ()
    """Paths of the values that are still `todo`."""

    def place(self, path: Path) -> Place:
        """Find the place of a value, or of the nearest thing that holds it."""
        while path not in self.values and path:
            path = path[:-1]
        span = self.values.get(path)
        return Place(self.path, *span) if span else Place(self.path)

    def key_place(self, path: Path) -> Place:
        """Find the place of a key, or of its value."""
        span = self.keys.get(path)
        return Place(self.path, *span) if span else self.place(path)

    def find_in(self, path: Path, words: str, nth: int = 0) -> Place:
        """Find the place of the nth occurrence of some words inside a text value, as whole words."""
        start, end = self.ends.get(path, (0, len(self.text)))
        for position in whole_words(self.text, words, start, end):
            if nth == 0:
                return self.place_of(position, len(words))
            nth -= 1
        return self.place(path)

    def place_of(self, offset: int, length: int = 1) -> Place:
        """Turn an offset in the text into a place."""
        line = self.text.count("\n", 0, offset) + 1
        column = offset - (self.text.rfind("\n", 0, offset) + 1) + 1
        return Place(self.path, line, column, column + length)
