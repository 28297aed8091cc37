"""Breaks of a package: one line removed, doubled, emptied, mistyped or misspelt, or a whole file gone."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

KINDS = ("removed", "doubled", "emptied", "mistyped", "misspelt")
"""What may happen to one line."""

NUMBERED = "numbered"
"""One number of a line is another: huge, tiny, negative or nothing. What that brings is a law of its own."""

GONE = "gone"
"""What may happen to a file."""

_OTHER_TYPES = ("true", "[17]", "{odd: 1}", "-3", "2027-02-30", "many", "4 kg", "null", "''")
_OTHER_NUMBERS = (
    "0", "1", "2", "-1", "0.001", "0.000001", "7", "37", "100", "365", "999", "3650", "9999", "99999", "1000000",
    "12345678", "1e9", "1e15", "-1e9", "1e-9", "1e300", "99999999999999999999",
)  # fmt: skip
_NUMBER = re.compile(r"(?<![A-Za-z0-9_.-])-?[0-9]+(?:\.[0-9]+)?")
_WORD = re.compile(r"[A-Za-z]{3,}")
_VALUE = re.compile(r"^(\s*(?:- )*(?:[\w.-]+|\"[^\"]+\"): +|\s*(?:- )+)(\S.*)$")


@dataclass(frozen=True)
class Break:
    """One break: the file, the line counted from 1 (0 for the file as a whole), and what happens to it."""

    path: str
    line: int
    kind: str
    draw: int = 0
    """Which letters, or which other type."""

    def __str__(self) -> str:
        """Give the break as `path:line:kind:draw`, from which it can be made again."""
        return f"{self.path}:{self.line}:{self.kind}:{self.draw}"

    @classmethod
    def read(cls, written: str) -> Break:
        """Read a break as it was printed."""
        path, line, kind, draw = written.rsplit(":", 3)
        return cls(path, int(line), kind, int(draw))

    def of(self, text: str) -> str | None:
        """Give the text of the file with this break; None where the file is gone, the same text where nothing changes.

        A break of nothing but a comment or a blank line changes nothing.
        """
        if self.kind == GONE:
            return None
        lines = text.split("\n")
        line = lines[self.line - 1]
        if not line.strip() or (line.lstrip().startswith("#") and self.path.endswith(".yaml")):
            return text
        lines[self.line - 1 : self.line] = self._broken(line)
        return "\n".join(lines)

    def _broken(self, line: str) -> list[str]:
        if self.kind == "removed":
            return []
        if self.kind == "doubled":
            return [line, line]
        value = _VALUE.match(line)
        if self.kind == "emptied":
            if "," in line and self.path.endswith(".csv"):
                return [",".join(line.split(",")[:-1]) + ","]
            return [value[1].rstrip() if value else ""]
        if self.kind == "mistyped":
            other = _OTHER_TYPES[self.draw % len(_OTHER_TYPES)]
            if value:
                return [value[1] + other]
            head, comma, _ = line.rpartition(",")
            return [f"{head}{comma}{other}" if comma else line[: len(line) - len(line.lstrip())] + other]
        if self.kind == NUMBERED:
            return [self._numbered(line)]
        words = list(_WORD.finditer(line))
        if not words:
            return [line + "x"]
        word = words[self.draw % len(words)]
        at = word.start() + (self.draw // len(words)) % (len(word[0]) - 1)
        first, second = line[at : at + 2]
        swapped = second + first if first != second else first
        return [line[:at] + swapped + line[at + 2 :]]

    def _numbered(self, line: str) -> str:
        numbers = list(_NUMBER.finditer(line))
        if not numbers:
            return line
        which, other = divmod(self.draw, len(_OTHER_NUMBERS))
        number = numbers[which % len(numbers)]
        return line[: number.start()] + _OTHER_NUMBERS[other] + line[number.end() :]


def breaks(texts: Mapping[str, str], chance: random.Random, kinds: tuple[str, ...] = KINDS) -> Iterator[Break]:
    """Yield breaks of single lines without end, by chance; each changes something."""
    paths = sorted(path for path, text in texts.items() if text.strip())
    weights = [texts[path].count("\n") ** 0.5 + 1 for path in paths]
    while True:
        path = chance.choices(paths, weights)[0]
        line = chance.randint(1, texts[path].count("\n") or 1)
        one = Break(path, line, chance.choice(kinds), chance.randrange(1000))
        if one.of(texts[path]) != texts[path]:
            yield one
