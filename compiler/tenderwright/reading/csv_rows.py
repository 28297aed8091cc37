"""Read a CSV file whose rows are things of the package: as plain data, with the place of every cell."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator, Sequence

from tenderwright.notices import Notice, Place
from tenderwright.reading.scalars import Todo, read_block
from tenderwright.reading.source import Path, Source, Span

_SEPARATORS = (",", ";", "\t")
"""What spreadsheets put between cells, by the language that they are set to; the first row says which."""
_QUOTED = re.compile(r'[ ]*"((?:[^"]|"")*)"[ ]*')

_Cell = tuple[str, int, int]
"""A cell as read, with where it begins and ends in the text."""


def read_rows(path: str, text: str, name: str) -> tuple[Source, list[Notice]]:
    """Read a CSV file into a list of that name: each row by its headings, which may be written in words or capitals.

    An empty cell is as if it were not there, and a row of empty cells is passed over.
    """
    first = text.partition("\n")[0]
    rows = _rows(text, max(_SEPARATORS, key=first.count))
    headings = [(_key(cell), start, end) for cell, start, end in next(rows, [])]
    lines = _Lines(text)
    notices = [*_twice(path, headings, lines)]
    values: dict[Path, Span] = {(): (1, 1, 0), (name,): (1, 1, 0)}
    keys: dict[Path, Span] = {}
    ends: dict[Path, tuple[int, int]] = {}
    todos: list[Path] = []
    data: list[dict[str, str]] = []
    for cells in rows:
        row: dict[str, str] = {}
        at: Path = (name, len(data))
        for number, (cell, start, end) in enumerate(cells):
            heading, *above = headings[number] if number < len(headings) else ("", 0, 0)
            if not cell or heading in row:
                continue
            if not heading:
                notices.append(_under_nothing(path, cell, lines.span(start, end)))
                break
            row[heading] = value = read_block(cell)
            values[*at, heading], ends[*at, heading] = lines.span(start, end), (start, end)
            keys[*at, heading] = lines.span(*above)
            todos += [(*at, heading)] if value.__class__ is Todo else []
        if row:
            values[at] = keys[at] = lines.span(cells[0][1], cells[0][1])
            data.append(row)
    return Source(path, text, {name: data}, values, keys, ends, todos=tuple(todos)), notices


def _twice(path: str, headings: Sequence[_Cell], lines: _Lines) -> Iterator[Notice]:
    for number, (heading, start, end) in enumerate(headings):
        if heading and heading in [one for one, _, _ in headings[:number]]:
            message = f"column `{heading}` is named twice in the first row, and the second is not read"
            yield Notice("duplicate-key", Place(path, *lines.span(start, end)), message, hints=("keep one of the two",))


def _under_nothing(path: str, cell: str, span: Span) -> Notice:
    message = f"`{cell}` stands under no heading, so it and what follows in its row are not read"
    hint = 'a cell with a comma in it stands in quotes: "Seam of strake C, weeping"'
    return Notice("row-too-long", Place(path, *span), message, hints=(hint,))


def _key(heading: str) -> str:
    """Give the key that a heading means: `May be published` is `may_be_published`."""
    return re.sub(r"[^a-z0-9]+", "_", heading.strip().lower()).strip("_")


def _rows(text: str, separator: str) -> Iterator[list[_Cell]]:
    """Yield the rows of a text, whose quoted cells may hold separators, line ends and doubled quotes (RFC 4180)."""
    position, cells = 0, list[_Cell]()
    plain = re.compile(f"[^{re.escape(separator)}\n]*")
    while position < len(text):
        quoted = _QUOTED.match(text, position)
        if quoted is not None and text[quoted.end() : quoted.end() + 1] in (separator, "\n", ""):
            cells.append((quoted[1].replace('""', '"').strip(), *quoted.span()))
            position = quoted.end()
        else:
            found = plain.match(text, position)
            assert found is not None
            cell = found[0].strip()
            start = found.start() + (len(found[0]) - len(found[0].lstrip()))
            cells.append((cell, start, start + len(cell)))
            position = found.end()
        if text[position : position + 1] == separator:
            position += 1
            if position < len(text):
                continue
        else:
            position += 1
        yield cells
        cells = []


class _Lines:
    """Where the lines of a text begin, to turn offsets that grow into lines and columns."""

    def __init__(self, text: str) -> None:
        self.starts = [0, *(found.end() for found in re.finditer("\n", text))]

    def span(self, start: int, end: int) -> Span:
        line = bisect_right(self.starts, start)
        column = start - self.starts[line - 1] + 1
        return line, column, column + end - start if end > start else column + 1
