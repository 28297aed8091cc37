"""Split CSV into cells with numpy alone: where each cell of each row begins and ends in the bytes."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

Bytes = NDArray[np.uint8]
Ints = NDArray[np.int64]

_NEWLINE, _RETURN, _SPACE, _TAB = 10, 13, 32, 9
_BLANKS = (_SPACE, _TAB, _RETURN)
_BLOCK = 4 << 20
"""Bytes worked on at once: arrays of a block stay in the processor's cache, and memory stays small."""
_PADDING = 8
"""Bytes of nothing kept after a block, so that eight bytes can be fetched from wherever a cell begins."""


class Plain(Struct, frozen=True):
    """A table as bytes without quotes: one row a line, and what stands between its cells."""

    header: tuple[str, ...]
    body: bytes
    """The rows after the header, the last one too with a newline at its end."""
    separator: int
    lines: Ints | None
    """Line of each row of the body where cells were quoted; else each row is the next line, from 2."""

    def blocks(self) -> Iterator[Cells]:
        """Split the rows into cells, some megabytes at a time."""
        begin, row = 0, 0
        while begin < len(self.body):
            end = self.body.rfind(b"\n", begin, begin + _BLOCK) + 1
            end = end or self.body.index(b"\n", begin) + 1
            cells, rows = self._split(self.body[begin:end], row)
            begin, row = end, row + rows
            yield cells

    def _split(self, block: bytes, row: int) -> tuple[Cells, int]:
        data = np.frombuffer(block + bytes(_PADDING), np.uint8)
        body = data[: len(block)]
        is_newline = body == _NEWLINE
        separators = np.flatnonzero((body == self.separator) | is_newline)
        newlines = np.flatnonzero(is_newline[separators])
        counts = np.diff(newlines, prepend=-1)
        ends = separators[newlines]
        begins = np.concatenate([[0], ends[:-1] + 1])
        lines = np.arange(row + 2, row + 2 + counts.size)
        lines = lines if self.lines is None else self.lines[row : row + counts.size]
        blank = (counts == 1) & ((begins == ends) | ((ends - begins == 1) & (data[begins] == _RETURN)))
        good = ~blank & (counts == len(self.header))
        bad = np.flatnonzero(~blank & ~good)
        ragged = tuple(zip(lines[bad].tolist(), counts[bad].tolist(), strict=True))
        has_blanks = any(blank in block for blank in _BLANKS)
        return Cells(data, self.header, lines[good], ragged, separators, newlines[good], has_blanks), counts.size


class Cells(Struct, frozen=True, eq=False):
    """The rows of a block that have as many cells as the header; cells are spans of bytes."""

    data: Bytes
    header: tuple[str, ...]
    line: Ints
    """Line of each good row in the file, counted from 1."""
    ragged: tuple[tuple[int, int], ...]
    """Line and number of cells of each row that has more or fewer cells than the header."""
    separators: Ints
    last: Ints
    """Per good row, where its last separator (the end of the line) stands among the separators."""
    has_blanks: bool
    """Whether any byte is a space, a tab or a return."""

    def column(self, name: str) -> tuple[Ints, Ints]:
        """Give where the cells of a column begin and end, without the blanks about them."""
        place, width = self.header.index(name), len(self.header)
        if self.last.size * width == self.separators.size:  # every row is good
            grid = self.separators.reshape(-1, width)
            before = grid[:, place - 1] if place else np.concatenate([[-1], grid[:-1, -1]])
            start, end = before + 1, grid[:, place]
        else:
            after = self.last - (width - 1 - place)
            start, end = np.where(after > 0, self.separators[after - 1] + 1, 0), self.separators[after]
        return _without_blanks(self.data, start, end) if self.has_blanks else (start, end)


def plain_table(text: bytes) -> Plain:
    """Take the header off a CSV file, and the quotes off its cells where there are any."""
    text = text.removeprefix(b"\xef\xbb\xbf")
    if b'"' not in text:
        head, _, body = text.partition(b"\n")
        body = body if body.endswith(b"\n") or not body else body + b"\n"
        return Plain(_header(head.decode("utf-8", "replace").split(",")), body, ord(","), None)
    reader = csv.reader(io.StringIO(text.decode("utf-8", "replace"), newline=""))
    header = _header(next(reader, []))
    rows, lines, first = [], [], reader.line_num + 1
    for row in reader:
        rows.append("\x1f".join(" ".join(cell.splitlines()) for cell in row) + "\n")
        lines.append(first)
        first = reader.line_num + 1
    return Plain(header, "".join(rows).encode(), 0x1F, np.array(lines, np.int64))


def _header(cells: list[str]) -> tuple[str, ...]:
    return tuple(cell.strip() for cell in cells)


def _without_blanks(data: Bytes, start: Ints, end: Ints) -> tuple[Ints, Ints]:
    start, end = start.copy(), end.copy()
    rows = np.flatnonzero((end > start) & _blank(data[start]))
    while rows.size:
        start[rows] += 1
        rows = rows[(end[rows] > start[rows]) & _blank(data[start[rows]])]
    rows = np.flatnonzero((end > start) & _blank(data[end - 1]))
    while rows.size:
        end[rows] -= 1
        rows = rows[(end[rows] > start[rows]) & _blank(data[end[rows] - 1])]
    return start, end


def _blank(byte: Bytes) -> NDArray[np.bool_]:
    blank: NDArray[np.bool_] = (byte == _SPACE) | (byte == _TAB) | (byte == _RETURN)
    return blank
