"""A CSV file that somebody delivered, read by forms of its cells, such as `Frame {frame} {side}`."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Collection, Iterator, Mapping
from contextlib import suppress
from datetime import datetime
from functools import cache

from msgspec import Struct

from tenderwright.model.delivered_columns import DeliveredColumns
from tenderwright.notices import Notice, Place
from tenderwright.notices.suggest import did_you_mean

ANY = "any"
"""In a form, what is passed over."""
SIDES = {"p": "port", "ps": "port", "port": "port", "s": "starboard", "sb": "starboard", "stb": "starboard",
         "stbd": "starboard", "starboard": "starboard"}  # fmt: skip
BARE = re.compile(r"[0-9 ./½¼¾⅛⅜⅝⅞-]+")
"""A number or a fraction without a unit."""
_SEPARATORS = {"comma": ",", "semicolon": ";", "tab": "\t"}
_DATES = {
    "year-month-day": ("%Y-%m-%d",),
    "day/month/year": ("%d/%m/%Y", "%d/%m/%y", "%d.%m.%Y"),
    "month/day/year": ("%m/%d/%Y", "%m/%d/%y"),
}


class CannotRead(ValueError):
    """A row that cannot be read, and why."""


class Rows(Struct, frozen=True):
    """The rows of a file below its headings, but for empty ones, each with the line on which it ends."""

    headings: tuple[str, ...]
    rows: tuple[tuple[int, tuple[str, ...]], ...]

    def beside(self, named: Collection[str]) -> list[str]:
        """List the headings, but for those named, under which anything stands."""
        filled = {at for _, cells in self.rows for at, cell in enumerate(cells) if cell}
        return [one for at, one in enumerate(self.headings) if one not in named and at in filled]


def rows_of_text(text: str, said: DeliveredColumns) -> Rows:
    """Split a file into headings and rows; blanks in and about cells count once."""
    reader = csv.reader(io.StringIO(text), delimiter=_SEPARATORS[said.separator])
    rows = [(reader.line_num, tuple(" ".join(cell.split()) for cell in cells)) for cells in reader]
    below = [(line, cells) for line, cells in rows if line >= said.heading_row]
    return Rows(below[0][1] if below else (), tuple((line, cells) for line, cells in below[1:] if any(cells)))


def by_heading(headings: tuple[str, ...], cells: tuple[str, ...]) -> dict[str, str]:
    """Give the cells of a row by their headings; raises CannotRead where there are more of them."""
    if len(cells) > len(headings):
        raise CannotRead(f"it has {len(cells)} cells, and there are {len(headings)} headings")
    return dict(zip(headings, cells, strict=False))


def pieces_of(form: str) -> list[str]:
    """List what a form reads."""
    return _split(form)[1::2]


def _split(form: str) -> list[str]:
    return re.split(r"\{([\w.]*)\}", form)


def read_cell(cell: str, heading: str, forms: tuple[str, ...], patterns: Mapping[str, str]) -> dict[str, str]:
    """Read a cell by the first form that fits, each piece by its own pattern; raises CannotRead."""
    for form in forms:
        pieces = pieces_of(form)
        match = _compiled(form, tuple(patterns[piece] for piece in pieces)).fullmatch(cell)
        if match:
            return {piece: text.strip() for piece, text in zip(pieces, match.groups(), strict=True) if text.strip()}
    listed = ", ".join(f"`{form}`" for form in forms)
    raise CannotRead(f"`{cell}` under `{heading}` is of none of the forms {listed}")


@cache
def _compiled(form: str, patterns: tuple[str, ...]) -> re.Pattern[str]:
    """Make the pattern of a form: blanks may be more or fewer, letters capital or small."""
    words = [r"\s*".join(map(re.escape, part.split(" "))) for part in _split(form)[::2]]
    groups = [f"({pattern})" for pattern in patterns]
    return re.compile("".join(word + group for word, group in zip(words, [*groups, ""], strict=True)), re.IGNORECASE)


@cache
def day_of(text: str, written: str) -> str:
    """Give a date as year-month-day; raises CannotRead."""
    for form in _DATES[written]:
        with suppress(ValueError):
            return datetime.strptime(text, form).date().isoformat()
    raise CannotRead(f"`{text}` is not a date written {written}")


def wrong_column(column: str, rows: Rows, said: DeliveredColumns, path: str, at: Place) -> Iterator[Notice]:
    """Tell of a column that the file has not, or has twice."""
    if rows.headings.count(column) != 1:
        have = "several columns" if column in rows.headings else "no column"
        message = f"line {said.heading_row} of {path} has {have} `{column}`"
        yield Notice("delivered-columns", at, message, hints=did_you_mean(column, rows.headings))


def wrong_form(form: str, known: Collection[str], at: Place) -> Iterator[Notice]:
    """Tell of what a form reads and nothing has, or reads twice."""
    pieces = pieces_of(form)
    off = [name for name in pieces if name not in known]
    twice = [name for name in pieces if pieces.count(name) > 1 and name != ANY]
    if off or twice:
        message = f"the form `{form}` reads `{(off or twice)[0]}`" + ("" if off else " twice")
        yield Notice("delivered-columns", at, message, hints=(f"a form reads {', '.join(known)}",))


def unread_columns(path: str, line: int, unread: list[str], by: str) -> Iterator[Notice]:
    """Tell of columns that nothing reads; `by` is the file that may say what they hold."""
    if unread:
        message = f"there are columns that are not read: {', '.join(f'`{one}`' for one in unread)}"
        hint = f"{by} may say what is read from a column, and which are left out"
        yield Notice("delivered-unread", Place(path, line), message, hints=(hint,))
