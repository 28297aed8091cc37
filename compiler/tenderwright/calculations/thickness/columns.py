"""Turn the cells of a column into an array: codes of a few names, decimal numbers, or dates."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import TypeVar

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.thickness.cells import Bytes, Ints

Number = TypeVar("Number", np.int64, np.uint64)

Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]

_POINT, _MINUS, _PLUS, _ZERO = ord("."), ord("-"), ord("+"), ord("0")
_MOST_DIGITS = 15
"""Digits of a decimal that a double holds exactly, so that the quick way gives what `float` gives."""
_MULTIPLIERS = (0x9E3779B97F4A7C15, 0xC2B2AE3D27D4EB4F, 0x165667B19E3779F9)
_MASKS = np.array([(1 << (8 * n)) - 1 for n in range(9)], np.uint64)
_NUMBER = re.compile(rb"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?")


class Codes(Struct, frozen=True, eq=False):
    """A column of few distinct names: a code per row, and the names by code in order of the alphabet."""

    code: NDArray[np.int32]
    names: tuple[str, ...]


def read_codes(data: Bytes, start: Ints, end: Ints) -> Codes:
    """Give each distinct cell a code. Cost is linear in the bytes: rows are matched in a table of hashes.

    A row takes the code of one that falls in its place in the table, once their bytes are found equal; the rest go
    round again with another hash. A column that says the same in every row, as many do, needs no table.
    """
    cells = _Spans(data, start, end - start)
    every = rows = np.arange(start.size)
    leader = np.zeros(start.size, np.int64)
    some = rows[:: max(1, rows.size // 64)]
    if cells.equal(some, leader[some]).all() and cells.equal(rows, leader).all():
        rows = rows[:0]
    size, turn = 1 << max(12, int(start.size).bit_length()), 0
    while rows.size:
        place = (cells.hashed(rows, turn) & np.uint64(size - 1)).astype(np.int64)
        table = np.empty(size, np.int64)
        table[place] = rows
        leader[rows] = found = table[place]  # those that prove unequal are matched again
        rows = rows[np.flatnonzero(~cells.equal(rows, found))]
        turn += 1
    leaders = np.flatnonzero(leader == every)
    view = data.data
    spans = zip(start[leaders].tolist(), end[leaders].tolist(), strict=True)
    texts = [str(view[begin:stop], "utf-8", "replace") for begin, stop in spans]
    names = sorted(set(texts))
    code_of = {name: code for code, name in enumerate(names)}
    codes = np.empty(start.size, np.int32)
    codes[leaders] = [code_of[text] for text in texts]
    return Codes(codes[leader], tuple(names))


def join_codes(parts: list[Codes]) -> Codes:
    """Put the codes of several blocks of rows into one, with the names of all in one order."""
    names = sorted({name for part in parts for name in part.names})
    code_of = {name: code for code, name in enumerate(names)}
    kept = [np.array([code_of[name] for name in part.names], np.int32)[part.code] for part in parts]
    return Codes(np.concatenate(kept) if kept else np.zeros(0, np.int32), tuple(names))


def read_numbers(data: Bytes, start: Ints, end: Ints) -> tuple[Floats, Flags]:
    """Read decimal numbers; also which rows hold one. A row with an exponent is read one at a time."""
    length = end - start
    first = data[start]
    signed = (length > 0) & ((first == _MINUS) | (first == _PLUS))
    digits = np.zeros(start.size, np.int64)
    before_point = np.full(start.size, -1, np.int64)
    plain = (length > signed) & (length <= _MOST_DIGITS)
    for at in range(min(_MOST_DIGITS, int(length.max(initial=0)))):
        rows = (at < length) & ~((at == 0) & signed)
        byte = data[start + np.minimum(at, length)]
        point = rows & (byte == _POINT)
        digit = byte - np.uint8(_ZERO)
        is_digit = rows & (digit < 10)
        plain &= ~rows | is_digit | (point & (before_point < 0))
        before_point[point & (before_point < 0)] = at
        digits = np.where(is_digit, 10 * digits + digit, digits)
    decimals = np.where(before_point >= 0, length - 1 - before_point, 0)
    plain &= (before_point < 0) | (length - signed > 1)
    value = digits / 10.0 ** np.clip(decimals, 0, _MOST_DIGITS)
    value = np.where(signed & (first == _MINUS), -value, value)
    good = plain.copy()
    for row in np.flatnonzero(~plain).tolist():
        text = data[start[row] : end[row]].tobytes()
        good[row] = _NUMBER.fullmatch(text) is not None and np.isfinite(float(text))
        value[row] = float(text) if good[row] else np.nan
    return value, good


def read_dates(data: Bytes, start: Ints, end: Ints) -> tuple[Ints, Flags]:
    """Read dates written YYYY-MM-DD as days since 1970-01-01; also which rows hold one."""
    shown = read_codes(data, start, end)
    days, good = np.zeros(len(shown.names), np.int64), np.zeros(len(shown.names), np.bool_)
    for code, name in enumerate(shown.names):
        if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", name):
            try:
                days[code] = date.fromisoformat(name).toordinal() - date(1970, 1, 1).toordinal()
            except ValueError:
                continue
            good[code] = True
    return days[shown.code], good[shown.code]


def _at(values: NDArray[Number], rows: Ints) -> NDArray[Number]:
    """Give the values of some rows in rising order; where they are all rows, the values themselves."""
    return values if rows.size == values.size else values[rows]


class _Spans:
    """The cells of a column as spans of bytes, looked at eight bytes at a time."""

    def __init__(self, data: Bytes, start: Ints, length: Ints) -> None:
        self.words = np.ndarray((data.size - 7,), np.dtype("<u8"), data, strides=(1,))
        self.start, self.length = start, length
        self.head = self.words[start] & _MASKS[np.minimum(length, 8)]

    def hashed(self, rows: Ints, turn: int) -> NDArray[np.uint64]:
        """Hash some of the cells, each turn in another way."""
        multiplier = np.uint64(_MULTIPLIERS[turn % 3] + 2 * turn)
        length = _at(self.length, rows)
        product = (length.astype(np.uint64) ^ _at(self.head, rows)) * multiplier
        mixed = product ^ (product >> np.uint64(29))
        for at, longer in self._beyond(rows, length > 8):
            product = (mixed[longer] ^ self._word(rows[longer], rows[longer], at)) * multiplier
            mixed[longer] = product ^ (product >> np.uint64(29))
        return (mixed * multiplier) >> np.uint64(20)

    def equal(self, rows: Ints, others: Ints) -> Flags:
        """Tell which cells are equal to which others, pair by pair."""
        length = _at(self.length, rows)
        same: Flags = (length == self.length[others]) & (_at(self.head, rows) == self.head[others])
        for at, longer in self._beyond(rows, same & (length > 8)):
            row, other = rows[longer], others[longer]
            same[longer] &= self._word(row, row, at) == self._word(row, other, at)
        return same

    def _beyond(self, rows: Ints, longer: Flags) -> Iterator[tuple[int, Ints]]:
        """Yield the places from the ninth byte on, each with those of some cells that reach beyond it."""
        at, left = 8, np.flatnonzero(longer)
        while left.size:
            yield at, left
            at += 8
            left = left[self.length[rows[left]] > at]

    def _word(self, rows: Ints, of: Ints, at: int) -> NDArray[np.uint64]:
        """Give the bytes from a place on of some cells, as many of them as other cells have there."""
        return self.words[self.start[of] + at] & _MASKS[np.minimum(self.length[rows] - at, 8)]
