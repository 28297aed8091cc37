"""Read one YAML file: compose with PyYAML, then one walk that makes data and the side table of places."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

import yaml

from tenderwright.notices import Note, Notice, Place
from tenderwright.reading.scalars import Todo, read_block, read_scalar
from tenderwright.reading.source import Path, Source, Span

_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

MAX_BYTES = 8_000_000
"""Of a file that people write."""
MAX_SURVEY_BYTES = 200_000_000
"""Of a survey, which instruments write: a million readings and more."""
MAX_DEPTH = 24

_NUMBER_SIGN = re.compile(" #[0-9]")


_BLOCKS = ("|", ">")
"""The styles of text on lines of its own."""
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x80-\x9f\ufffe\uffff\ud800-\udfff]")
"""Characters that an escape can bring into text, and that no output can hold (XML 1.0, section 2.2)."""


class _TooDeep(Exception):
    """The file is nested deeper than the limit."""


def _span(event: Any) -> Span:
    start, end = event.start_mark, event.end_mark
    line, column = start.line, start.column + 1
    return line + 1, column, (end.column + 1 if end.line == line else column + 1)


class _Walk:
    """One walk over the parser's events that makes the data and the side table."""

    def __init__(self, path: str, text: str) -> None:
        self.path, self.text = path, text
        self.values: dict[Path, Span] = {}
        self.keys: dict[Path, Span] = {}
        self.ends: dict[Path, tuple[int, int]] = {}
        self.twice: dict[Path, list[Place]] = {}
        self.todos: list[Path] = []
        self.notices: list[Notice] = []
        self.next: Callable[[], Any] = _LOADER(text).get_event

    def document(self) -> Any:
        """Read the one document of the file; None where there is none."""
        data: Any = None
        documents = 0
        while not isinstance(event := self.next(), yaml.StreamEndEvent):
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents == 2:
                    self.feature(
                        event,
                        "`---` begins a second document here",
                        "delete the line, or put what follows in a file of its own",
                    )
            elif isinstance(event, yaml.NodeEvent):
                read = self.node(event, ())
                data = read if documents == 1 else data
        return data

    def place(self, event: Any) -> Place:
        return Place(self.path, *_span(event))

    def feature(self, event: Any, message: str, hint: str) -> None:
        self.notices.append(Notice("yaml-feature", self.place(event), message, hints=(hint,)))

    def refuse_features(self, event: Any) -> None:
        if isinstance(event, yaml.AliasEvent) or event.anchor is not None:
            self.feature(event, "`&name` and `*name` are not used in a package", "write the value out")
        if getattr(event, "tag", None) is not None:
            self.feature(
                event,
                "a word after `!` at the start of a value is not used in a package",
                "leave it out, or put the text in quotes",
            )

    def node(self, event: Any, at: Path) -> Any:
        self.values[at] = _span(event)
        start, end = event.start_mark, event.end_mark
        if event.__class__ is not yaml.ScalarEvent or event.anchor is not None or event.tag is not None:
            self.refuse_features(event)
        if isinstance(event, yaml.ScalarEvent):
            self.ends[at] = (start.index, end.index)
            text = event.value
            if not text.isprintable() and (control := _CONTROL.search(text)):
                self.feature(
                    event, f"control character U+{ord(control[0]):04X} is not used in a package", "leave it out"
                )
                return _CONTROL.sub("", text)
            value = read_scalar(text, plain=not event.style) if event.style not in _BLOCKS else read_block(text)
            if value.__class__ is Todo:
                self.todos.append(at)
            return value
        if len(at) >= MAX_DEPTH:
            self.notices.append(Notice("too-deep", self.place(event), f"nested deeper than {MAX_DEPTH} levels"))
            raise _TooDeep
        if isinstance(event, yaml.SequenceStartEvent):
            return self.sequence(at)
        return self.mapping(at) if isinstance(event, yaml.MappingStartEvent) else None

    def sequence(self, at: Path) -> list[Any]:
        data: list[Any] = []
        while (event := self.next()).__class__ is not yaml.SequenceEndEvent:
            data.append(self.node(event, (*at, len(data))))
        return data

    def mapping(self, at: Path) -> dict[str, Any]:
        data: dict[str, Any] = {}
        while (event := self.next()).__class__ is not yaml.MappingEndEvent:
            if event.__class__ is not yaml.ScalarEvent:
                if not isinstance(event, yaml.AliasEvent):
                    self.notices.append(Notice("yaml-feature", self.place(event), "a key has to be a plain word"))
                self.node(event, (*at, ""))
                self.node(self.next(), (*at, ""))
                continue
            key = event.value
            if event.anchor is not None or event.tag is not None:
                self.refuse_features(event)
            if key == "<<" and not event.style:
                self.feature(event, "`<<` is not used in a package", "write the keys out")
            if key in data:
                self.twice.setdefault((*at, key), []).append(self.place(event))
                self.node(self.next(), (*at, f"{key} again"))
                continue
            below = (*at, key)
            self.keys[below] = _span(event)
            data[key] = self.node(self.next(), below)
        return data

    def duplicates(self) -> list[Notice]:
        """Report the keys that stand twice, of one mapping at once."""
        mappings: dict[Path, list[Path]] = {}
        for at in self.twice:
            mappings.setdefault(at[:-1], []).append(at)
        return [self.duplicate(keys) for keys in mappings.values()]

    def duplicate(self, keys: list[Path]) -> Notice:
        first, *also = [place for at in keys for place in self.twice[at]]
        listed = ", ".join(f"`{at[-1]}`" for at in keys)
        message = f"key {listed} stands twice in one place"
        hints = ("keep one of the two",)
        if len(keys) > 1:
            message = f"keys {listed} stand twice in one place"
            hints = ("perhaps the line that begins the second entry, with `- `, is missing above",)
        note = Note("the first one is here", Place(self.path, *self.keys[keys[0]]))
        return Notice("duplicate-key", first, message, (note,), hints, f"{first}" if also else "", tuple(also))


_LOOK = "look at the indent, the quotes and the brackets, here and on the lines above"
_IN_OUR_WORDS = (
    (
        "mapping values are not allowed",
        "a colon and a space stand inside text",
        "put the text in quotes, or on lines of its own after `|`",
    ),
    ("cannot start any token", "a value cannot begin with this sign", "put the text in quotes"),
    (
        "could not find expected ':'",
        "a key has no colon after it",
        "write a colon and a space after the key; put text of several lines after `|`",
    ),
    ("control characters", "here is a character that no text has", "delete the character"),
    ("special characters", "here is a character that no text has", "delete the character"),
    ("expected ',' or ']'", "a list in `[ ]` is not closed, or lacks a comma", "write `]` at its end, or the comma"),
    ("expected ',' or '}'", "keys in `{ }` are not closed, or lack a comma", "write `}` at their end, or the comma"),
    (
        "expected node content",
        "a bracket is not closed, or a value is missing",
        "close the bracket, or write the value",
    ),
    ("unexpected end of stream", "a quote or a bracket is not closed", "close it; it may stand on a line above"),
    ("unknown escape character", "a backslash in double quotes stands before a letter", "use single quotes"),
    ("expected '-' indicator", "an entry of a list does not begin with `- `", "indent it as the entries above it"),
    ("expected key", "this line is not indented as the one above it", "indent it as the keys beside it"),
    ("block sequence entries", "a list begins on the line of its key", "put its first `- ` on a line of its own"),
)
"""What the parser's sentences hold, what is wrong then, and how to mend it."""


def _in_our_words(text: str, problem: str, line: int) -> tuple[str, str]:
    """Say what is wrong with a file that is not YAML, and how to mend it."""
    lines = text.split("\n")
    bad = lines[line - 1] if 1 <= line <= len(lines) else ""
    if "\t" in bad[: len(bad) - len(bad.lstrip()) + 1]:
        return "a tab stands in the indent", "use spaces"
    for words, wrong, cure in _IN_OUR_WORDS:
        if words in problem:
            return wrong, cure
    return "the file cannot be read from here on", _LOOK


def _syntax_place(path: str, text: str, error: yaml.YAMLError, problem: str) -> Place:
    """Place a syntax error where it begins, rather than where the parser gave up at the end of the file."""
    if isinstance(error, yaml.reader.ReaderError):
        bad = yaml.reader.Reader.NON_PRINTABLE.search(text)
        return Source(path, text).place_of(bad.start()) if bad else Place(path)
    written = text.rstrip()
    marks = [getattr(error, name, None) for name in ("problem_mark", "context_mark")]
    if "could not find expected ':'" in problem:
        marks.reverse()
    for mark in marks:
        if mark is not None and mark.line <= written.count("\n"):
            return Place(path, mark.line + 1, mark.column + 1)
    return Source(path, text).place_of(len(written))


def _syntax(path: str, text: str, error: yaml.YAMLError) -> Notice:
    problem = str(getattr(error, "problem", None) or getattr(error, "reason", None) or "")
    place = _syntax_place(path, text, error, problem)
    message, hint = _in_our_words(text, problem, place.line)
    return Notice("yaml-syntax", place, message, hints=(hint,))


def read_yaml(path: str, text: str) -> tuple[Source, list[Notice]]:
    """Read YAML text into a Source; where a notice says it could not be read, its data is None."""
    try:
        walk = _Walk(path, text)
    except yaml.YAMLError as error:
        return Source(path, text), [_syntax(path, text, error)]
    try:
        data = walk.document()
    except yaml.YAMLError as error:
        return Source(path, text), [*walk.notices, *walk.duplicates(), _syntax(path, text, error)]
    except _TooDeep:
        return Source(path, text), [*walk.notices, *walk.duplicates()]
    walk.values.setdefault((), (1, 1, 0))
    source = Source(path, text, data, walk.values, walk.keys, walk.ends, tuple(walk.twice), tuple(walk.todos))
    return source, [*walk.notices, *walk.duplicates(), *_lost_comments(walk)]


def _lost_comments(walk: _Walk) -> list[Notice]:
    """Report ` #4` after plain text, which YAML drops as a comment though a number was meant."""
    notices: list[Notice] = []
    if not _NUMBER_SIGN.search(walk.text):
        return notices
    for at, (_, end) in walk.ends.items():
        rest = walk.text[end : end + 24]
        if rest.startswith(" #") and rest[2:3].isdigit() and at in walk.values:
            line, _, stop = walk.values[at]
            notices.append(
                Notice(
                    "lost-comment",
                    Place(walk.path, line, stop + 1, stop + 3),
                    "text after ` #` is dropped as a comment",
                    hints=("put the whole text in quotes if the number belongs to it",),
                )
            )
    return notices
