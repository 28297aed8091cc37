"""Finds what a returned form changed that is the owner's: lines, quantities, units, wording, sums, edition."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal

from tenderwright.notices import Notice, Place
from tenderwright.pricing.amount import PERCENTS
from tenderwright.pricing.bids.amounts import read_amount
from tenderwright.pricing.bids.beside import labelled
from tenderwright.pricing.bids.columns import tables
from tenderwright.pricing.bids.expected import ExpectedForm, ExpectedLine
from tenderwright.pricing.bids.find_lines import FoundLine
from tenderwright.pricing.bids.telling import shown, told
from tenderwright.pricing.bids.words import bare, folded
from tenderwright.quantities.display import shown_unit
from tenderwright.reading.workbook.cells import Cell, Workbook

_SUMS = re.compile(r"(?:sub ?-? ?)?totals?\b.*|sum\b.*|carried .*|brought .*")
_DAY_COST = re.compile(r"\bat ([A-Z]{3}) ?([\d,.' ]*\d) a day\b")
_DAY_FORMULA = re.compile(r"\*\s*([\d.]+)")


def line_changes(found: FoundLine, expected: ExpectedLine) -> Iterator[Notice]:
    """Tell of a line whose quantity, unit, owner's sum or wording is no longer that of the form as issued."""
    yield from _quantity_change(found, expected)
    unit = found.of("unit")
    if "unit" in found.table.columns and not _same_unit(unit.text, expected.unit):
        message = f"the unit of line {expected.number} is `{shown(unit.text)}`; the owner's is `{expected.unit}`"
        yield told("bid-form-changed", unit, message)
    if expected.kind == "fixed":
        yield from _sum_change(found, expected)
    words = found.of("description")
    if "description" in found.table.columns and bare(words.text) not in map(bare, expected.descriptions):
        message = f"the description of line {expected.number} is not the owner's: `{shown(words.text, 100)}`"
        yield told("bid-form-reworded", words, message, f"as issued: {expected.text}")


def _quantity_change(found: FoundLine, expected: ExpectedLine) -> Iterator[Notice]:
    if "quantity" not in found.table.columns or expected.kind in PERCENTS:  # the sum of lines follows from their prices
        return
    cell = found.of("quantity")
    number = _number(cell)
    if number is None or abs(number - expected.quantity) > abs(expected.quantity) * Decimal("1e-9"):
        has = f"is `{shown(cell.text)}`" if cell.text else "is taken out"
        message = f"the quantity of line {expected.number} {has}; the owner's is {expected.quantity:f} {expected.unit}"
        yield told("bid-form-changed", cell, message.rstrip(), "a yard that doubts a quantity says so in the remarks")


def _number(cell: Cell) -> Decimal | None:
    """Read a number of the owner's; one that can mean two things is taken as a decimal, as the form writes it."""
    if isinstance(cell.value, Decimal):
        return cell.value
    amount = read_amount(cell.text, ".") if isinstance(cell.value, str) else None
    return amount.number if amount is not None else None


def _same_unit(written: str, wanted: str) -> bool:
    return folded(written).replace(" ", "") in (folded(unit).replace(" ", "") for unit in (wanted, shown_unit(wanted)))


def _sum_change(found: FoundLine, expected: ExpectedLine) -> Iterator[Notice]:
    """Tell of a provisional sum that is no longer the owner's, or of a price written beside it."""
    price, amount = found.of("rate"), found.of("amount")
    for cell in (price, amount):
        number = _number(cell)
        if number is not None and number != expected.fixed_amount:
            message = f"the owner's sum of line {expected.number} is {expected.fixed_amount}; here stands {number:f}"
            yield told("bid-form-changed", cell, message)
    if _number(amount) is None and _number(price) is None and not amount.formula:
        yield told("bid-form-changed", amount, f"the owner's sum of line {expected.number} is taken out")


def missing_lines(found: Iterable[FoundLine], form: ExpectedForm, path: str) -> Iterator[Notice]:
    """Tell of the lines of the form that are nowhere in the workbook, several in one notice."""
    there = {one.number for one in found}
    missing = [line.number for line in form.lines if line.number not in there]
    if missing and not there:
        message = "no line of the price form is found in this workbook"
        yield Notice("bid-form-changed", Place(path), message, hints=("is it the price form of this tender?",))
    elif missing:
        yield Notice("bid-form-changed", Place(path), f"lines of the form are missing: {', '.join(missing)}")


def unknown_lines(found: Iterable[FoundLine], form: ExpectedForm) -> Iterator[Notice]:
    """Tell of line numbers that the form does not have."""
    for one in found:
        if one.number not in form.by_number:
            hint = "what a yard adds belongs among exclusions and alternatives"
            yield told("bid-form-changed", one.cell, f"there is no line {one.number} in this tender", hint)


def unnumbered_prices(book: Workbook, found: Sequence[FoundLine]) -> Iterator[Notice]:
    """Tell of prices in the table of lines that belong to no line."""
    rows = {(one.table.sheet.title, row) for one in found for row in range(one.row, one.last + 1)}
    for sheet in book.sheets:
        for table in tables(sheet):
            column = table.columns.get("rate")
            if table.kind != "lines" or column is None:
                continue
            for row in table.rows:
                cell = sheet.at(row, column)
                own = cell.row == row and (sheet.title, row) not in rows
                sums = any(_SUMS.fullmatch(bare(one.text)) for one in sheet.rows[row])
                if own and not sums and isinstance(cell.value, Decimal) and cell.value:
                    yield told("bid-form-changed", cell, f"the price {cell.text} belongs to no line of the form")


def shared_prices(found: Iterable[FoundLine]) -> Iterator[Notice]:
    """Tell of a merged cell that stands for the prices of several lines."""
    by_cell: dict[str, list[FoundLine]] = {}
    for one in found:
        cell = one.of("rate")
        if not cell.empty:
            by_cell.setdefault(cell.address, []).append(one)
    for together in by_cell.values():
        numbers = list(dict.fromkeys(one.number for one in together))
        if len(numbers) > 1:
            message = f"one merged cell stands for the prices of lines {', '.join(numbers)}"
            yield told("bid-amount", together[0].of("rate"), message, "ask the yard for a price of each")


def edition_changes(book: Workbook, form: ExpectedForm) -> tuple[str, list[Notice]]:
    """Find the edition hash on the form, and tell where it is that of another edition or is not there."""
    cells = [one for one in labelled(book, "edition hash") if one.text]
    stored = book.properties.get("Edition hash", "")
    for cell in cells:
        if cell.text != form.edition_hash:
            message = f"the form is that of another edition, `{shown(cell.text, 20)}`; this is `{form.edition_hash}`"
            hint = "ask for the form of this edition, or read it beside the commit that it was issued from"
            return cell.text, [told("bid-edition", cell, message, hint)]
    if stored and stored != form.edition_hash:
        message = f"the properties of the file name another edition, `{shown(stored, 20)}`"
        return stored, [Notice("bid-edition", Place(book.path), message)]
    if not cells and not stored:
        message = "the edition hash is not on the form; its lines alone tell that it is of this edition"
        return "", [Notice("bid-form-reworded", Place(book.path), message)]
    return form.edition_hash, []


def currency_changes(book: Workbook, form: ExpectedForm) -> Iterator[Notice]:
    """Tell of a form that names another currency."""
    for cell in labelled(book, "currency"):
        if cell.text and folded(cell.text) != folded(form.currency):
            message = f"the form says that prices are in `{shown(cell.text, 20)}`; the tender is in {form.currency}"
            yield told("bid-form-changed", cell, message)


def day_cost_changes(book: Workbook, form: ExpectedForm) -> Iterator[Notice]:
    """Tell of an owner's cost of a day that is no longer the one published."""
    for cell in book.cells:
        match = _DAY_COST.search(cell.text) if isinstance(cell.value, str) else None
        if match is None or form.day_cost is None:
            continue
        amount = read_amount(match[2], ".")
        formulas = [one.formula for one in _row(book, cell) if "ISNUMBER" in one.formula]
        in_formula = [Decimal(m[1]) for m in map(_DAY_FORMULA.search, formulas) if m is not None and m[1] != "."]
        if amount is None or any(one != form.day_cost for one in [amount.number, *in_formula]):
            message = f"the owner's cost of a day is not the {form.currency} {form.day_cost} that was published"
            yield told("bid-form-changed", cell, message)


def _row(book: Workbook, cell: Cell) -> list[Cell]:
    return next((sheet.rows[cell.row] for sheet in book.sheets if sheet.title == cell.sheet), [])
