"""Finds which prices of an older form of a tender hold on a newer one: those of the same number, words and unit."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from decimal import Decimal

from tenderwright.pricing.bids.beside import labelled
from tenderwright.pricing.bids.find_lines import FoundLine, find_lines
from tenderwright.pricing.bids.telling import shown
from tenderwright.pricing.bids.words import bare, folded
from tenderwright.quantities.display import shown_unit
from tenderwright.reading.workbook.cells import Cell, Value, Workbook

_QUOTED = re.compile(r'"[^"]*"|\\.')
_SHARE = re.compile(r"\(1\+|N\(")
"""What the formula of an amount has where a percentage is asked."""
_SAME = ("Tender", "Currency")
"""What two forms must have alike."""


@dataclass
class Carried:
    """What is put into the newer form, and what there is to say of each line that is not simply carried."""

    cells: list[tuple[Cell, Value]] = field(default_factory=list)
    """Empty cells of the newer form, each with what is put there."""
    lines: int = 0
    """How many lines were carried."""
    changed: list[str] = field(default_factory=list)
    """Carried, and to be looked at."""
    left: list[str] = field(default_factory=list)
    """Not carried."""
    gone: list[str] = field(default_factory=list)
    """Priced on the older form, and no longer asked."""


def unlike(old: Workbook, new: Workbook) -> str:
    """Say why prices of one form cannot hold on another; empty where they can."""
    for label in _SAME:
        said = [next((cell.text for cell in labelled(book, label)), "") for book in (old, new)]
        if not all(said):
            return f"the {label.lower()} is not on {'both forms' if not any(said) else 'one of the forms'}"
        if folded(said[0]) != folded(said[1]):
            return f"one form is of {label.lower()} {shown(said[0])}, the other of {shown(said[1])}"
    return ""


def carry(old: Workbook, new: Workbook) -> Carried:
    """Carry status and price of each line over, where nothing stands on the newer form yet."""
    asked = {one.number: one for one in find_lines(new, ())}
    found: dict[str, list[FoundLine]] = {}
    for one in find_lines(old, asked):
        found.setdefault(one.number, []).append(one)
    made = Carried()
    for number, line in asked.items():
        if not _typed(line):  # the owner's own sums stand there as numbers
            _line(line, found.get(number, []), made)
    made.gone = [number for number, rows in found.items() if number not in asked and _answers(rows[0])]
    return made


def _line(line: FoundLine, rows: list[FoundLine], made: Carried) -> None:
    """Carry one line, or say why it is left."""
    if not rows:
        made.left.append(f"{line.number}: not on the older form")
        return
    if len(rows) > 1:
        made.left.append(f"{line.number}: stands on several rows of the older form")
        return
    before = rows[0]
    if not _answers(before):
        if _typed(before):
            made.left.append(f"{line.number}: has an amount, {before.of('amount').text}, and no price")
        return
    if not set(_words(before)) & set(_words(line)):
        made.left.append(f"{line.number}: its words changed, from `{shown(before.of('description').text, 100)}`")
    elif not set(_units(before)) & set(_units(line)):
        made.left.append(f"{line.number}: its unit was {before.of('unit').text}, and is {line.of('unit').text}")
    elif _answers(line):
        made.left.append(f"{line.number}: priced on the newer form already")
    else:
        _put(line, before, made)


def _put(line: FoundLine, before: FoundLine, made: Carried) -> None:
    rate, status = before.of("rate"), before.of("status")
    price, why = _price(rate, line)
    if why or (status.formula and status.value is None):
        made.left.append(f"{line.number}: {why or 'its status is a formula without a result'}")
        return
    put = ((line.of("rate"), price), (line.of("status"), status.value))
    made.cells += [(cell, value) for cell, value in put if value not in (None, "")]
    made.lines += 1
    if _typed(before):
        made.changed.append(f"{line.number}: its amount was written as {before.of('amount').text}, and now follows")
    quantities = [one.of("quantity").text for one in (before, line)]
    if quantities[0] != quantities[1] and not any(one.of("quantity").formula for one in (before, line)):
        made.changed.append(f"{line.number}: its quantity was {quantities[0]}, and is {quantities[1]}")


def _price(cell: Cell, line: FoundLine) -> tuple[Value, str]:
    """Give a price as the newer form shows it, and why it is not carried where it is not."""
    if cell.error or (cell.formula and cell.value is None):
        return None, "its price is a formula without a result"
    value = cell.value
    if (
        isinstance(value, Decimal)
        and _SHARE.search(line.of("amount").formula)
        and "%" not in _QUOTED.sub("", cell.number_format)
    ):
        if 0 < value <= 1:
            return None, f"`{value}` may mean {value} % or {value * 100} %"
        value = value / 100
    return value, ""


def _answers(line: FoundLine) -> bool:
    return not line.of("rate").empty or not line.of("status").empty


def _typed(line: FoundLine) -> bool:
    """Tell whether the amount is a number that somebody wrote, and no formula."""
    amount = line.of("amount")
    return isinstance(amount.value, Decimal) and not amount.formula


def _words(line: FoundLine) -> Iterator[str]:
    """Give the words of a line as they stand in its row, and with the title of its item above."""
    words = line.of("description").text
    yield bare(words)
    title = _title(line)
    if title:
        yield bare(f"{title}: {words}")


def _units(line: FoundLine) -> Iterator[str]:
    """Give the unit as it stands, and as the form shows it."""
    unit = line.of("unit").text
    yield from (folded(unit), folded(shown_unit(unit)))


def _title(line: FoundLine) -> str:
    sheet, columns = line.table.sheet, line.table.columns
    item = line.number.partition(".")[0]
    rows = (row for row in sorted(sheet.rows, reverse=True) if row < line.row)
    row = next((row for row in rows if sheet.at(row, columns["line"]).text == item), None)
    return sheet.at(row, columns["description"]).text if row is not None and "description" in columns else ""
