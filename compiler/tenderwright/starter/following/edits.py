"""Changes to a YAML file, made in its text, so that everything else stays as it was written."""

from __future__ import annotations

import textwrap

from tenderwright.reading.scalars import Todo
from tenderwright.reading.source import Path, Source
from tenderwright.writing.yaml_file import one_line

_SHORT = 70
_WIDTH = 110
_LONGEST = 130
"""Lines up to this length stay as they were broken."""


class Edits:
    """Changes to one file, told by the paths of its values and made all at once."""

    def __init__(self, source: Source, tender: str) -> None:
        """Begin with a file of a closed tender, whose number is named beside what is asked again."""
        self.source, self.tender = source, tender
        self._spans: dict[Path, tuple[int, int, str]] = {}
        starts = [0]
        for line in source.text.split("\n"):
            starts.append(starts[-1] + len(line) + 1)
        self._starts = starts

    def touched(self, at: Path) -> bool:
        """Tell whether a value, or what holds it, is changed already."""
        return any(at[:length] in self._spans for length in range(len(at) + 1))

    def put(self, at: Path, value: str | int) -> None:
        """Write another value in the place of one, where there is one."""
        if at in self.source.ends:
            start, end = self._span(at)
            self._spans[at] = (start, end, self._on_a_line(at, value))

    def ask(self, at: Path, said: str = "", *, keep: bool = True) -> None:
        """Write `todo` in the place of a value, with what the closed tender had; `said` goes before that."""
        if at not in self.source.ends:
            return
        start, end = self._span(at)
        self._spans[at] = (start, end, self._question(at, said, self._old(at) if keep else ""))

    def drop(self, at: Path) -> None:
        """Take away a key, or an entry of a list, with the lines that belong to it; not one within brackets."""
        place = self.source.keys.get(at) or self.source.values.get(at)
        if place is None or self._in_flow(at):
            return
        lines = self.source.text.split("\n")
        first = place[0] - 1
        margin = len(lines[first]) - len(lines[first].lstrip())
        last = first + 1
        while last < len(lines) and _goes_on(lines[last], margin, entries=not isinstance(at[-1], int)):
            last += 1
        self._spans[at] = (self._starts[first], min(self._starts[last], len(self.source.text)), "")

    @property
    def text(self) -> str:
        """Give the text with all changes."""
        text = self.source.text
        for start, end, new in sorted(self._spans.values(), reverse=True):
            text = text[:start] + new + text[end:]
        return text

    def _old(self, at: Path) -> str:
        value = self.source.data
        for key in at:
            value = value[key]
        return str(value).strip()

    def _span(self, at: Path) -> tuple[int, int]:
        """Give where a value is written, without the lines that end text on lines of its own."""
        start, end = self.source.ends[at]
        return start, start + len(self.source.text[start:end].rstrip("\n"))

    def _question(self, at: Path, said: str, old: str) -> str:
        if not said and not old:
            return "todo"
        if not said and len(old) <= _SHORT and "\n" not in old:
            written = self._on_a_line(at, Todo(f"todo ({self.tender} had {old})"))
            if not written.startswith('"'):
                return written
        if self._in_flow(at):
            return "todo"
        opening = f"todo, {said}" if said else f"todo, {self.tender} had"
        paragraphs = [*opening.split("\n"), *(["", *old.split("\n")] if old else [])]
        paragraphs[len(opening.split("\n")) - 1] += ":" if old else ""
        indent = " " * self._indent(at)
        lines = [line for one in paragraphs for line in _fitted(one, _WIDTH - len(indent))]
        return "|-\n" + "\n".join(f"{indent}{line}".rstrip() for line in lines)

    def _on_a_line(self, at: Path, value: str | int) -> str:
        return one_line([value])[1:-1] if self._in_flow(at) else one_line(value)

    def _indent(self, at: Path) -> int:
        if isinstance(at[-1], int):
            return self.source.values[at][1] - 1
        return self.source.keys[at][1] + 1

    def _in_flow(self, at: Path) -> bool:
        """Tell whether a value stands within brackets or braces."""
        for length in range(1, len(at)):
            line, column, _ = self.source.values[at[:length]]
            if self.source.text[self._starts[line - 1] + column - 1] in "[{":
                return True
        return False


def _fitted(line: str, width: int) -> list[str]:
    return textwrap.wrap(line, width) if len(line) > _LONGEST else [line]


def _goes_on(line: str, margin: int, *, entries: bool) -> bool:
    """Tell whether a line belongs to what began at a margin; entries of a list may stand at that of their key."""
    indent = len(line) - len(line.lstrip())
    return not line.strip() or indent > margin or (entries and indent == margin and line.lstrip().startswith("- "))
