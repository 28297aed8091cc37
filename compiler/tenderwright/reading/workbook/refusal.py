"""Why a workbook is not read, and where a cell stands by its address."""

from __future__ import annotations

import re
from dataclasses import dataclass

MAX_ROWS, MAX_COLUMNS = 20_000, 200
"""The largest sheet that is read; a price form has some hundred rows and a dozen columns."""

_ADDRESS = re.compile(r"\$?([A-Za-z]{1,9})\$?([0-9]{1,15})")


class Refusal(Exception):
    """A workbook that is not read: the code of the notice, the sentence, and hints."""

    def __init__(self, code: str, message: str, *hints: str) -> None:
        super().__init__(message)
        self.code, self.message, self.hints = code, message, hints


def unsafe(message: str, *hints: str) -> Refusal:
    """Make the refusal of a workbook that may do harm."""
    return Refusal("unsafe-workbook", message, *hints)


def unreadable(message: str, *hints: str) -> Refusal:
    """Make the refusal of a file that is no workbook, or a damaged one."""
    return Refusal("unreadable-workbook", message, *hints)


@dataclass(frozen=True)
class Area:
    """A rectangle of cells, both corners within it; rows and columns count from 1."""

    top: int
    left: int
    bottom: int
    right: int

    @property
    def size(self) -> int:
        """Count its cells."""
        return (self.bottom - self.top + 1) * (self.right - self.left + 1)


def area_of(reference: str) -> Area:
    """Read an address such as `B3` or `B3:D9`; raises `Refusal` where it is none or lies beyond the largest sheet."""
    corners = [_ADDRESS.fullmatch(part) for part in reference.split(":")]
    found = [match for match in corners if match is not None]
    if not 1 <= len(corners) <= 2 or len(found) < len(corners):
        raise unreadable(f"`{reference[:40]}` is not the address of a cell")
    rows = [int(match[2]) for match in found]
    columns = [column_number(match[1]) for match in found]
    if max(rows) > MAX_ROWS or max(columns) > MAX_COLUMNS:
        raise unsafe(
            f"a sheet reaches to `{reference[:40]}`, beyond {MAX_ROWS:,} rows or {MAX_COLUMNS} columns",
            "delete the empty rows and columns after the form, save the file, and return it again",
        )
    if min(rows) < 1:
        raise unreadable(f"`{reference[:40]}` is not the address of a cell")
    return Area(min(rows), min(columns), max(rows), max(columns))


def column_number(letters: str) -> int:
    """Give the number of a column from its letters."""
    number = 0
    for letter in letters.upper():
        number = number * 26 + ord(letter) - 64
    return number


def column_letters(number: int) -> str:
    """Give the letters of a column from its number."""
    letters = ""
    while number:
        number, last = divmod(number - 1, 26)
        letters = chr(65 + last) + letters
    return letters
