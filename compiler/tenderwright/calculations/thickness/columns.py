"""Turn the cells of a column into an array: codes of a few names, decimal numbers, or dates."""

from __future__ import annotations

import re
from datetime import date

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.thickness.cells import Bytes, Ints

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

    A row takes the code of the first row that falls in its place in the table, once their bytes are found equal;
    the rest go round again with another hash.
    """
    length = end - start
    first = np.full(start.size, -1, np.int64)
    rows = np.arange(start.size)
    size = 1 << max(12, int(start.size).bit_length())
    turn = 0
    while rows.size:
        place = (_hash(data, start[rows], length[rows], turn) % np.uint64(size)).astype(np.int64)
        table = np.empty(size, np.int64)
        table[place[::-1]] = rows[::-1]
        found = table[place]
        same = _equal(data, start, length, rows, found)
        first[rows[same]] = found[same]
        rows = rows[~same]
        turn += 1
    leaders = np.flatnonzero(first == np.arange(start.size))
    texts = [data[start[row] : end[row]].tobytes().decode("utf-8", "replace") for row in leaders.tolist()]
    names = sorted(set(texts))
    code_of = {name: code for code, name in enumerate(names)}
    codes = np.empty(start.size, np.int32)
    codes[leaders] = [code_of[text] for text in texts]
    return Codes(codes[first], tuple(names))


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


def _words(data: Bytes) -> NDArray[np.uint64]:
    """Look at the bytes as eight at a time from every one of them."""
    return np.ndarray((data.size - 7,), np.dtype("<u8"), data, strides=(1,))


def _hash(data: Bytes, start: Ints, length: Ints, turn: int) -> NDArray[np.uint64]:
    words, multiplier = _words(data), np.uint64(_MULTIPLIERS[turn % 3] + 2 * turn)
    mixed = length.astype(np.uint64)
    for at in range(0, int(length.max(initial=0)), 8):
        rows = slice(None) if at == 0 else np.flatnonzero(length > at)
        word = words[start[rows] + at] & _MASKS[np.minimum(length[rows] - at, 8)]
        product = (mixed[rows] ^ word) * multiplier
        mixed[rows] = product ^ (product >> np.uint64(29))
    return (mixed * multiplier) >> np.uint64(20)


def _equal(data: Bytes, start: Ints, length: Ints, rows: Ints, others: Ints) -> Flags:
    words = _words(data)
    same: Flags = length[rows] == length[others]
    for at in range(0, int(length[rows].max(initial=0)), 8):
        left = slice(None) if at == 0 else np.flatnonzero(length[rows] > at)
        row, other = rows[left], others[left]
        mask = _MASKS[np.minimum(length[row] - at, 8)]
        there = np.minimum(start[other] + at, words.size - 1)
        same[left] &= (words[start[row] + at] & mask) == (words[there] & mask)
    return same
