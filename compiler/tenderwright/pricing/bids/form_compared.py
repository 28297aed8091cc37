"""Holds a returned form whole against the form as issued: what differs and was not read becomes a doubt that quotes it.

Cells are compared by what they hold. One that stands where it was issued is the owner's, and so is one that has only
moved, as many times as the form has it. What was taken as a price, an answer or a remark is the bidder's and read.
Everything else is told, and so is what a cell shows beside its value and what is said beside the cells.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.notices import Notice, Place
from tenderwright.pricing.bids.number_shown import shows
from tenderwright.pricing.bids.telling import shown, told, whole
from tenderwright.pricing.bids.words import bare, plain
from tenderwright.reading.workbook.cells import Cell, Workbook

_LITERAL = re.compile(r'"((?:[^"]|"")*)"')
_CELL = re.compile(r"\$?\b([A-Z]{1,3})\$?(\d{1,7})\b")
_NUMBER = re.compile(r"\b\d+\.\d+\b")
_Key = tuple[str, str]
_At = tuple[str, int, int]


@dataclass(frozen=True)
class _Held:
    """What was found when the cells of two forms were held against each other."""

    others: list[Cell]
    """Cells that hold what the form as issued does not."""
    pasted: list[Cell]
    """Numbers where the form as issued calculates."""
    gone: list[Cell]
    """Cells of the form as issued whose words are nowhere."""


def is_own(issued: Workbook) -> Collection[str]:
    """Give the formulas of a form as issued, as far as they are the same in every row."""
    return frozenset(_formula(cell) for cell in issued.cells if cell.formula)


def own_formula(cell: Cell, own: Collection[str]) -> bool:
    """Tell whether the formula of a cell is the form's own."""
    return _formula(cell) in own


def unread(
    book: Workbook,
    issued: Workbook,
    notices: Iterable[Notice],
    priced: Collection[str] = (),
    numbered: Mapping[str, str] | None = None,
) -> list[Notice]:
    """Tell of everything on a returned form that is not the form as issued, was not read, and is not told of yet.

    `priced` are cells of prices, whose numbers have been judged by how they are shown; `numbered` those in which the
    number of a line was read, however it is typed.
    """
    notices = list(notices)
    own = is_own(issued)
    held = _held(book, issued, numbered or {})
    others = [cell for cell in held.others if not own_formula(cell, own)]
    found = [_other(cell) for cell in others if not _is_told(cell, notices)]
    gone = [cell for cell in held.gone if not _line_is_told(cell, issued, notices)]
    found += [*_pasted(held.pasted), *_gone(gone, book), *_results(book, others)]
    found += [*_looks(book, issued, notices, priced), *_hidden(book), *_sheets(book, issued), *_beside(book, issued)]
    return found


def _held(book: Workbook, issued: Workbook, numbered: Mapping[str, str]) -> _Held:
    was = {_at(cell): cell for cell in issued.cells}
    there = {_at(cell): cell for cell in book.cells}
    same = {at for at, cell in there.items() if at in was and _same(cell, was[at])}
    left = Counter(_key(cell) for at, cell in was.items() if at not in same)
    others, pasted = [], []
    for at, cell in there.items():
        if at in same:
            continue
        key = ("str", numbered[cell.address]) if cell.address in numbered else _key(cell)
        if left[key] or (key := _calculated(cell, left)) in left:
            left[key] -= 1
        elif cell.address in book.taken:
            continue
        elif isinstance(cell.value, Decimal) and not cell.formula and at in was and was[at].formula:
            pasted.append(cell)
            left[_key(was[at])] -= 1
        else:
            others.append(cell)
    return _Held(others, pasted, list(_remaining(was, same, there, left)))


def _remaining(
    was: Mapping[_At, Cell], same: Collection[_At], there: Mapping[_At, Cell], left: Counter[_Key]
) -> Iterator[Cell]:
    for at, cell in was.items():
        key = _key(cell)
        if at not in same and left[key] > 0:
            left[key] -= 1
            if not cell.formula and at not in there:
                yield cell


def _calculated(cell: Cell, left: Counter[_Key]) -> _Key:
    """Find the formula that a word may be the result of, where a form came back with its results alone."""
    if cell.formula or not isinstance(cell.value, str):
        return ("", "")
    words = cell.text
    return next(
        (key for key, count in left.items() if count > 0 and key[0] == "formula" and words in _LITERAL.findall(key[1])),
        ("", ""),
    )


def _at(cell: Cell) -> _At:
    return cell.sheet, cell.row, cell.column


def _same(cell: Cell, was: Cell) -> bool:
    if cell.formula or was.formula:
        return _written(cell.formula) == _written(was.formula)
    return _key(cell) == _key(was)


def _key(cell: Cell) -> _Key:
    """Give what a cell holds in a form in which it can be told from others, wherever it stands."""
    if cell.formula:
        return "formula", _formula(cell)
    if isinstance(cell.value, Decimal):
        return "number", f"{cell.value.normalize():f}"
    return type(cell.value).__name__, plain(cell.text)


def _written(formula: str) -> str:
    """Give a formula as every program writes it: without blanks, and numbers without noughts at their end."""
    pieces = re.split(r'("(?:[^"]|"")*")', formula)
    return "".join(
        piece if piece.startswith('"') else _NUMBER.sub(lambda m: m[0].rstrip("0").rstrip("."), piece.replace(" ", ""))
        for piece in pieces
    )


def _formula(cell: Cell) -> str:
    """Give a formula with the cells that it names on its own row told from those elsewhere."""
    return _CELL.sub(lambda m: f"{m[1]}{'' if int(m[2]) == cell.row else '#'}", _written(cell.formula))


def _is_told(cell: Cell, notices: Iterable[Notice]) -> bool:
    words = whole(cell.text or cell.formula)
    return any(f"`{cell.address}`" in one.message and words in one.message for one in notices)


def _line_is_told(cell: Cell, issued: Workbook, notices: Iterable[Notice]) -> bool:
    """Tell whether a cell of the form as issued stood in the row of a line that something is told of."""
    row = next(sheet.rows[cell.row] for sheet in issued.sheets if sheet.title == cell.sheet)
    number = re.compile(rf"(?<![\w.]){re.escape(row[0].text)}(?![\w.])")
    return any(char.isdigit() for char in row[0].text) and any(number.search(one.message) for one in notices)


def _other(cell: Cell) -> Notice:
    if cell.formula:
        result = f", which shows `{whole(cell.text)}`" if cell.text else ""
        return told("bid-unread", cell, f"a formula that is not the form's own is not read: `{cell.formula}`{result}")
    return told(
        "bid-unread", cell, f"what is written here is not read as a price, an answer or a remark: `{whole(cell.text)}`"
    )


def _pasted(cells: list[Cell]) -> Iterator[Notice]:
    if cells:
        which = "; ".join(f"`{cell.address}` {cell.text}" for cell in cells)
        message = f"where the form calculates, {len(cells)} cells hold numbers of their own: {which}"
        yield Notice("bid-unread", cells[0].place, message)


def _gone(cells: list[Cell], book: Workbook) -> Iterator[Notice]:
    if cells:
        which = "; ".join(f"`{cell.address}` {shown(cell.text)}" for cell in cells)
        yield Notice(
            "bid-form-reworded", Place(book.path), f"{len(cells)} texts of the form as issued are gone: {which}"
        )


def _results(book: Workbook, others: list[Cell]) -> Iterator[Notice]:
    """Tell of words stored beside a formula that it cannot have as its result."""
    for cell in book.cells:
        words = cell.value if cell.formula and isinstance(cell.value, str) else ""
        if words and cell not in others and words not in _LITERAL.findall(cell.formula):
            yield told("bid-unread", cell, f"beside the formula stands a result that is not its own: `{whole(words)}`")


def _looks(book: Workbook, issued: Workbook, notices: Iterable[Notice], priced: Collection[str]) -> Iterator[Notice]:
    """Tell of what a cell shows beside its value: words struck out or raised, a number that it hides or scales."""
    shapes = {_at(cell): cell.number_format for cell in issued.cells}
    for cell in book.cells:
        odd = list(cell.odd)
        issued_so = cell.number_format == shapes.get(_at(cell)) or cell.address in priced
        if isinstance(cell.value, Decimal) and not issued_so:
            seen = shows(cell.value, cell.number_format)
            odd += [f"it shows {seen}"] if seen else []
        told_of = [one.message for one in notices if one.message.startswith(f"`{cell.address}`")]
        odd = [words for words in odd if not any(words in message for message in told_of)]
        if odd:
            yield told("bid-unread", cell, f"`{whole(cell.text)}` is not plain: {', '.join(odd)}")


def _hidden(book: Workbook) -> Iterator[Notice]:
    by_place: dict[tuple[str, str], list[Cell]] = {}
    for cell in book.cells:
        if cell.hidden:
            by_place.setdefault((cell.sheet, cell.hidden), []).append(cell)
    for (sheet, place), cells in by_place.items():
        words = ", ".join(f"`{shown(cell.text or cell.formula)}`" for cell in cells)
        yield Notice("bid-unread", cells[0].place, f"`{sheet}`: {place} is hidden; in it stand {words}")


def _sheets(book: Workbook, issued: Workbook) -> Iterator[Notice]:
    known = {bare(sheet.title) for sheet in issued.sheets}
    for sheet in book.sheets:
        if bare(sheet.title) not in known:
            yield Notice(
                "bid-unread", Place(book.path), f"a sheet is called `{sheet.title}`, which the form does not have"
            )


def _beside(book: Workbook, issued: Workbook) -> Iterator[Notice]:
    known = {bare(one.words) for one in issued.beside}
    in_cells = {plain(cell.text) for cell in book.cells}
    for one in book.beside:
        if not one.words:
            yield Notice("bid-unread", Place(book.path), f"{one.where} has no words that can be read; look at it")
        elif not (bare(one.words) in known and bare(one.words)) and plain(one.words) not in in_cells:
            yield Notice("bid-unread", Place(book.path), f"{one.where} says `{whole(one.words)}`")
