"""Finds what a returned form changed that is the owner's: lines, quantities, units, wording, sums, edition."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from decimal import Decimal

from tenderwright.notices import Notice, Place
from tenderwright.pricing.amount import PERCENTS
from tenderwright.pricing.bids.amounts import read_amount
from tenderwright.pricing.bids.beside import labelled
from tenderwright.pricing.bids.expected import ExpectedForm, ExpectedLine
from tenderwright.pricing.bids.find_lines import FoundLine
from tenderwright.pricing.bids.telling import shown, told, whole
from tenderwright.pricing.bids.words import folded
from tenderwright.quantities.display import shown_unit
from tenderwright.reading.workbook.cells import Cell, Workbook

_MARKS = re.compile(r"[\s.,;:'\"()-]")
"""What may be typed otherwise in the words of a line without changing them."""


def line_changes(book: Workbook, found: FoundLine, expected: ExpectedLine) -> Iterator[Notice]:
    """Tell of a line whose quantity, unit, owner's sum or wording is no longer that of the form as issued."""
    yield from _quantity_change(book, found, expected)
    unit = found.of("unit")
    book.take(found.cell)
    if "unit" in found.table.columns and _same_unit(unit.text, expected.unit):
        book.take(unit)
    elif "unit" in found.table.columns:
        message = f"the unit of line {expected.number} is `{shown(unit.text)}`; the owner's is `{expected.unit}`"
        yield told("bid-form-changed", unit, message)
    if expected.kind == "fixed":
        yield from _sum_change(book, found, expected)
    words = found.of("description")
    if "description" in found.table.columns and not described(words.text, expected):
        message = f"the description of line {expected.number} is not the owner's: `{whole(words.text)}`"
        yield told("bid-form-reworded", words, message, f"as issued: {expected.text}")
    else:
        book.take(words)


def described(text: str, line: ExpectedLine) -> bool:
    """Tell whether a text is the description of a line, but for case, blanks and stops."""
    return _without_marks(text) in map(_without_marks, line.descriptions)


def _without_marks(text: str) -> str:
    return _MARKS.sub("", folded(text))


def exchanged(found: Iterable[FoundLine], form: ExpectedForm) -> dict[str, Notice]:
    """Give by line the rows that have its number and the description of another line."""
    by_words: dict[str, set[str]] = {}
    for line in form.lines:
        for text in line.descriptions:
            by_words.setdefault(_without_marks(text), set()).add(line.number)
    notices = {}
    for one in found:
        words = one.of("description")
        others = by_words.get(_without_marks(words.text), set()) if "description" in one.table.columns else set()
        if one.number in form.by_number and others and one.number not in others:
            other = ", ".join(sorted(others))
            message = f"the row numbered {one.number} has the words of line {other}; its price is not read"
            hint = "ask the yard which line is priced here, and read the rows by their words until it has answered"
            notices[one.number] = told("bid-form-changed", one.cell, message, hint)
    return notices


def _quantity_change(book: Workbook, found: FoundLine, expected: ExpectedLine) -> Iterator[Notice]:
    if "quantity" not in found.table.columns or expected.kind in PERCENTS:  # the sum of lines follows from their prices
        return
    cell = found.of("quantity")
    number = _number(cell)
    if number is not None and abs(number - expected.quantity) <= abs(expected.quantity) * Decimal("1e-9"):
        book.take(*([] if cell.formula else [cell]))
    else:
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


def _sum_change(book: Workbook, found: FoundLine, expected: ExpectedLine) -> Iterator[Notice]:
    """Tell of a provisional sum that is no longer the owner's, or of a price written beside it."""
    price, amount = found.of("rate"), found.of("amount")
    for cell in (price, amount):
        number = _number(cell)
        if number == expected.fixed_amount:
            book.take(*([] if cell.formula else [cell]))
        elif number is not None:
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
        yield Notice("bid-edition", Place(path), message, hints=("is it the price form of this tender?",))
    elif missing:
        yield Notice("bid-form-changed", Place(path), f"lines of the form are missing: {', '.join(missing)}")


def unknown_lines(found: Iterable[FoundLine], form: ExpectedForm) -> Iterator[Notice]:
    """Tell of line numbers that the form does not have."""
    for one in found:
        if one.number not in form.by_number:
            hint = "what a yard adds belongs among exclusions and alternatives"
            yield told("bid-form-changed", one.cell, f"there is no line {one.number} in this tender", hint)


def shared_prices(found: Iterable[FoundLine]) -> dict[str, Notice]:
    """Give by line the merged cell that stands for the prices of several."""
    by_cell: dict[str, list[FoundLine]] = {}
    for one in found:
        cell = one.of("rate")
        if not cell.empty:
            by_cell.setdefault(cell.address, []).append(one)
    notices = {}
    for together in by_cell.values():
        numbers = list(dict.fromkeys(one.number for one in together))
        cell = together[0].of("rate")
        if len(numbers) > 1:
            message = f"one merged cell, `{whole(cell.text)}`, stands for the prices of lines {', '.join(numbers)}"
            notice = told("bid-amount", cell, message, "ask the yard for a price of each")
            notices.update(dict.fromkeys(numbers, notice))
    return notices


def edition_changes(book: Workbook, form: ExpectedForm) -> tuple[str, list[Notice]]:
    """Find the mark of the edition on the form, and refuse the form of another tender or edition by its name."""
    cells = [one for one in labelled(book, "edition hash") if one.text]
    stored = book.properties.get("Edition hash", "")
    for cell in cells:
        if cell.text != form.edition_hash:
            return cell.text, [told("bid-edition", cell, *_another(book, form, cell.text))]
    if stored and stored != form.edition_hash:
        message, *hints = _another(book, form, stored)
        return stored, [
            Notice("bid-edition", Place(book.path), f"by the properties of the file {message}", hints=tuple(hints))
        ]
    if not cells and not stored:
        message = "the edition hash is not on the form; its lines alone tell that it is of this edition"
        return "", [Notice("bid-form-reworded", Place(book.path), message)]
    book.take(*cells)
    return form.edition_hash, []


def _another(book: Workbook, form: ExpectedForm, mark: str) -> tuple[str, str]:
    """Say of which tender and edition a form is, and what to do."""
    tender = next((one.text for one in labelled(book, "tender") if one.text), "")
    currency = next((one.text for one in labelled(book, "currency") if one.text), "")
    stamp = next((one.text for one in labelled(book, "stamp") if one.text), "")
    if tender and folded(tender) != folded(form.tender):
        message = f"the form is that of another tender, `{shown(tender)}`; this is tender `{form.tender}`"
        return message, "read it with the package of its own tender, or ask for the form of this one"
    prices = (
        f", with prices in `{shown(currency, 20)}`" if currency and folded(currency) != folded(form.currency) else ""
    )
    of = f", `{shown(stamp)}`" if stamp else ""
    marked = f"marked `{shown(mark, 20)}`{prices}"
    message = f"the form is that of another edition{of}, {marked}; this one is `{form.edition_hash}`"
    return message, "ask for the form of this edition, or read it beside the commit that it was issued from"
