"""A source file as plain data, with the place of every key and value."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from tenderwright.notices import Place

Path = tuple[str | int, ...]
"""Keys and indices from the top of a file's data down to one value."""


@dataclass(frozen=True)
class Source:
    """One file: its path in the package, text, data, and where each value and key stands."""

    path: str
    text: str
    data: Any = None
    values: Mapping[Path, Place] = field(default_factory=dict)
    keys: Mapping[Path, Place] = field(default_factory=dict)
    ends: Mapping[Path, tuple[int, int]] = field(default_factory=dict)
    """Start and end offset of each text value in the file, for finding a word inside it."""

    def place(self, path: Path) -> Place:
        """Find the place of a value, or of the nearest thing that holds it."""
        while path not in self.values and path:
            path = path[:-1]
        return self.values.get(path, Place(self.path))

    def key_place(self, path: Path) -> Place:
        """Find the place of a key, or of its value."""
        return self.keys.get(path) or self.place(path)

    def find_in(self, path: Path, words: str, nth: int = 0) -> Place:
        """Find the place of the nth occurrence of some words inside a text value."""
        start, end = self.ends.get(path, (0, len(self.text)))
        position = start - 1
        for _ in range(nth + 1):
            found = self.text.find(words, position + 1, end)
            if found < 0:
                return self.place(path)
            position = found
        return self.place_of(position, len(words))

    def place_of(self, offset: int, length: int = 1) -> Place:
        """Turn an offset in the text into a place."""
        line = self.text.count("\n", 0, offset) + 1
        column = offset - (self.text.rfind("\n", 0, offset) + 1) + 1
        return Place(self.path, line, column, column + length)
