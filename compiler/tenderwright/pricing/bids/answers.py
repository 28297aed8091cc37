"""Reads what a yard says beside its prices: addenda, dates, days, exclusions, and answers to the owner's questions."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from decimal import Decimal

from tenderwright.model.bid import BidAnswer, Exclusion
from tenderwright.notices import Notice, Place
from tenderwright.pricing.bids.beside import labels, right_of
from tenderwright.pricing.bids.columns import Table, tables
from tenderwright.pricing.bids.expected import ExpectedForm
from tenderwright.pricing.bids.find_lines import lines_named, names_only_lines
from tenderwright.pricing.bids.telling import shown, told, whole
from tenderwright.pricing.bids.words import bare, folded, plain
from tenderwright.reading.workbook.cells import Cell, Workbook

VISITED = "The ship was visited before tendering"
TERMS = "The terms of the tender are accepted as they stand"
ACCEPTED = "The dates of the tender are accepted as they stand"
EARLIEST = "Earliest date in dock, if another"
STANDS = "The offer stands for this many days after closing"
DOCK_DAYS = "Days in dock, by the yard's own plan"
DAYS = "Days from arrival to redelivery, by the yard's programme"
SIGNED = "Signed for the yard"
_SIGNED = ("yard", "name", "position", "date", "signature")
_MOST_DAYS = 1000
_KINDS = ("exclusion", "assumption", "alternative")


@dataclass(frozen=True)
class Offer:
    """What the yard offers beside its prices; None where it is not said."""

    site_visit: bool | None
    terms_accepted: bool | None
    dates_accepted: bool | None
    earliest_docking: date | None
    valid_until: date | None
    days: int | None
    dock_days: int | None


def yes_or_no(text: str) -> bool | None:
    """Read yes or no as people write it; None where it is neither."""
    word = bare(text)
    if word in ("yes", "y", "x", "true", "ok", "received", "acknowledged", "accepted", "agreed"):
        return True
    return False if word in ("no", "n", "false", "not received", "not accepted") else None


def read_offer(book: Workbook, form: ExpectedForm) -> tuple[Offer, list[Notice]]:
    """Read the answers about the visit, the dates and the days."""
    notices: list[Notice] = []
    stands = _whole(book, STANDS, notices)
    offer = Offer(
        site_visit=_yes_or_no(book, VISITED, notices),
        terms_accepted=_yes_or_no(book, TERMS, notices),
        dates_accepted=_yes_or_no(book, ACCEPTED, notices),
        earliest_docking=_date(book, EARLIEST, notices),
        valid_until=form.closing + timedelta(days=stands) if stands is not None else None,
        days=_whole(book, DAYS, notices),
        dock_days=_whole(book, DOCK_DAYS, notices),
    )
    for _, label in labels(book, TERMS):
        if not _beside(book, TERMS):
            notices.append(told("bid-incomplete", label, "it is not said whether the terms of the tender are accepted"))
    if form.day_cost is not None and offer.days is None:
        message = "the days from arrival to redelivery are not given, and the owner's cost of them is in the award"
        notices.append(Notice("bid-incomplete", Place(book.path), message))
    return offer, notices


def _beside(book: Workbook, label: str) -> list[Cell]:
    return [cell for sheet, found in labels(book, label) for cell in right_of(sheet, found)]


def _yes_or_no(book: Workbook, label: str, notices: list[Notice]) -> bool | None:
    cells = _beside(book, label)
    for cell in cells:
        said = yes_or_no(cell.text)
        if said is not None:
            book.take(cell)
            return said
    if cells:
        notices.append(told("bid-unread", cells[0], f"`{whole(cells[0].text)}` is neither yes nor no: {label}"))
    return None


def _whole(book: Workbook, label: str, notices: list[Notice]) -> int | None:
    for cell in _beside(book, label):
        number = _days(cell)
        if number is not None:
            book.take(*([] if cell.formula else [cell]))
            return number
        message = f"`{whole(cell.text or cell.formula)}` is not a number of whole days: {label}"
        notices.append(told("bid-unread", cell, message))
        return None
    return None


def _days(cell: Cell) -> int | None:
    """Read a number of days, such as 37, `37`, or `37 days`."""
    match = re.fullmatch(r"(\d{1,4})(?:\.0+)? ?(?:d|days?)?(?: from closing| after closing)?", folded(cell.text))
    number = int(match[1]) if match is not None else None
    if isinstance(cell.value, Decimal):
        number = int(cell.value) if cell.value == cell.value.to_integral_value() else None
    return number if number is not None and 0 <= number <= _MOST_DAYS else None


def _date(book: Workbook, label: str, notices: list[Notice]) -> date | None:
    cells = _beside(book, label)
    for cell in cells:
        found = read_date(cell)
        if found is not None:
            book.take(cell)
            return found
    if cells and bare(cells[0].text) not in ("n a", "no", "none", "as tendered", ""):
        message = f"`{whole(cells[0].text)}` is not read as a date, since it is not year-month-day: {label}"
        notices.append(told("bid-unread", cells[0], message))
    elif cells:
        book.take(cells[0])
    return None


def read_date(cell: Cell) -> date | None:
    """Read a date that a spreadsheet knows as one, or one written year-month-day; others can mean two things."""
    if isinstance(cell.value, datetime):
        return cell.value.date()
    if isinstance(cell.value, date):
        return cell.value
    try:
        return date.fromisoformat(plain(cell.text))
    except ValueError:
        return None


def read_addenda(book: Workbook, form: ExpectedForm) -> tuple[tuple[int, ...], list[Notice]]:
    """Read which addenda the yard acknowledges, and tell which of those listed it does not."""
    found: set[int] = set()
    for table in _tables(book, "addenda"):
        for row in table.rows:
            named = table.sheet.at(row, table.columns["addendum"])
            number = _addendum_number(named.text, form)
            answers = [cell for cell in table.sheet.rows[row] if cell.column != table.columns["addendum"]]
            if number is None:
                continue
            book.take(*([named] if bare(named.text) in (str(number), f"addendum {number}") else []))
            book.take(*(cell for cell in answers if yes_or_no(cell.text) is not None))
            if any(yes_or_no(cell.text) for cell in answers):
                found.add(number)
    missing = [number for number, _ in form.addenda if number not in found]
    notices = [
        Notice("bid-incomplete", Place(book.path), f"addendum {number} is not acknowledged", hints=("ask the yard",))
        for number in missing
    ]
    return tuple(sorted(found)), notices


def _addendum_number(text: str, form: ExpectedForm) -> int | None:
    for number, words in form.addenda:
        if bare(words) == bare(text):
            return number
    match = re.match(r"(?:addendum )?(?:no |nr )?(\d{1,3})\b(?! \d)", bare(text))
    return int(match[1]) if match is not None and int(match[1]) > 0 else None


@dataclass(frozen=True)
class Remarks:
    """What the yard says beside its answers: what it leaves out, assumes or offers instead, and remarks by line."""

    exclusions: tuple[Exclusion, ...]
    notes: Mapping[str, str]
    """By line, its remarks."""
    notices: tuple[Notice, ...]


def read_remarks(book: Workbook, priced: Collection[str], known: Collection[str]) -> Remarks:
    """Read the sheet of remarks; one of a line that is not priced, or of none, is left to a person."""
    exclusions: list[Exclusion] = []
    notes: dict[str, list[str]] = {}
    notices: list[Notice] = []
    for table in _tables(book, "exclusions"):
        for said in _said(table):
            cell, kind = said["excluded"], bare(_text(said, "kind"))
            one = _exclusion(said, known)
            book.take(*_taken(said, known))
            if kind not in ("remark", "remarks"):
                exclusions.append(one)
                continue
            lines = lines_named(_text(said, "line"), known) or one.lines
            words = one.text + (f" (effect on the price: {one.effect})" if one.effect else "")
            if not lines or not set(lines) <= set(priced):
                where = f"of line {', '.join(lines)}, which nobody prices" if lines else "that names no line"
                notices.append(told("bid-remark", cell, f"a remark {where}: {whole(words)}"))
            for line in lines:
                notes.setdefault(line, []).append(words)
    return Remarks(tuple(exclusions), {line: "; ".join(words) for line, words in notes.items()}, tuple(notices))


def _said(table: Table) -> Iterator[dict[str, Cell]]:
    """Yield the rows of a table of remarks in which something is said, by column."""
    for row in table.rows:
        said = {name: table.sheet.at(row, column) for name, column in table.columns.items()}
        cell = said["excluded"]
        if cell.row == row and (cell.text or _text(said, "line") or _text(said, "effect")):
            yield said


def _taken(said: dict[str, Cell], known: Collection[str]) -> Iterator[Cell]:
    """Give the cells of a row of remarks that are kept as they stand, or are read without a word left over."""
    yield said["excluded"]
    for name, cell in said.items():
        words = bare(cell.text)
        kept = name == "effect" or (name == "kind" and words in (*_KINDS, "remark", "remarks"))
        if kept or (name == "line" and names_only_lines(cell.text, known)):
            yield cell


def _exclusion(said: dict[str, Cell], known: Collection[str]) -> Exclusion:
    cell, line, effect = said["excluded"], _text(said, "line"), _text(said, "effect")
    text = cell.text or f"(no words; line {line or '-'}, effect {effect or '-'})"
    kind = next((kind for kind in _KINDS if kind in bare(_text(said, "kind"))), "exclusion")
    lines = tuple(dict.fromkeys([*lines_named(line, known), *_lines_in_words(text, known)]))
    return Exclusion(text=text, lines=lines, kind=kind, effect=effect, here=cell.place)


def _text(said: dict[str, Cell], name: str) -> str:
    return said[name].text if name in said else ""


def _lines_in_words(text: str, known: Collection[str]) -> list[str]:
    """List the lines that running text names just as they are numbered."""
    numbers = re.findall(r"(?<![\d.])\d{1,4}\.[a-z]{1,2}\b(?:\.[a-z0-9]+(?:-[a-z0-9]+)*)?", text)
    whole = [number if number in known else ".".join(number.split(".")[:2]) for number in numbers]
    return [number for number in whole if number in known]


def read_questions(book: Workbook, form: ExpectedForm) -> tuple[BidAnswer, ...]:
    """Read the answers to the owner's questions, those left open being left out."""
    found = []
    for ask in form.questions:
        for sheet, label in labels(book, ask):
            table = next((one for one in tables(sheet) if one.kind == "answers" and label.row in one.rows), None)
            answer = _answer(table, label, right_of(sheet, label))
            if answer is not None and answer.text:
                book.take(*([] if answer.formula else [answer]))
                found.append(BidAnswer(ask=ask, answer=answer.text))
                break
    return tuple(found)


def _answer(table: Table | None, label: Cell, beside: list[Cell]) -> Cell | None:
    """Give the cell in the column of answers; on a sheet without one, the last on the row."""
    if table is not None and "answer" in table.columns:
        return table.sheet.at(label.row, table.columns["answer"])
    return beside[-1] if len(beside) > 1 else None


def read_signed(book: Workbook) -> tuple[BidAnswer, ...]:
    """Read who signed, in which position and when."""
    found = []
    for sheet, head in labels(book, SIGNED):
        for row in range(head.row + 1, head.row + 6):
            label = sheet.at(row, head.column)
            beside = right_of(sheet, label)
            if bare(label.text) in _SIGNED and beside and not beside[0].formula:
                book.take(beside[0])
                found.append(BidAnswer(ask=f"{SIGNED}: {label.text}", answer=beside[0].text))
    return tuple(found)


def read_beside(book: Workbook, form: ExpectedForm) -> tuple[tuple[BidAnswer, ...], list[Notice]]:
    """Read the days and the remarks beside addenda and offers; a remark there is left to a person."""
    found, notices = [], []
    for table in [*_tables(book, "addenda"), *_tables(book, "offers")]:
        label = table.columns.get("addendum", table.columns.get("offer", 0))
        for row in table.rows:
            asked = table.sheet.at(row, label).text
            number = _addendum_number(asked, form) if table.kind == "addenda" else None
            asked = f"Addendum {number}" if number is not None else asked
            for cell in table.sheet.rows[row]:
                if cell.address in book.taken or cell.formula or not asked or cell.column <= label + 1:
                    continue
                if cell.column == table.columns.get("remarks"):
                    notices.append(told("bid-remark", cell, f"a remark on `{shown(asked, 100)}`: {whole(cell.text)}"))
                elif read_date(cell) is not None:
                    book.take(cell)
                    found.append(BidAnswer(ask=f"{asked}: date", answer=cell.text))
    return tuple(found), notices


def signed_for(book: Workbook) -> str:
    """Give the name of the yard as signed; empty where it is not."""
    return next((cell.text for cell in _beside(book, "Yard") if isinstance(cell.value, str) and cell.text), "")


def _tables(book: Workbook, kind: str) -> list[Table]:
    return [table for sheet in book.sheets for table in tables(sheet) if table.kind == kind]
