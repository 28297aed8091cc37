"""Reads a returned price form as a bid: every line answered, empty or told of, and what was changed."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date

from msgspec.structs import replace

from tenderwright.model.bid import Bid, BidLine
from tenderwright.model.build import Reference
from tenderwright.notices import Notice, Place, sort_notices
from tenderwright.pricing.bids import form_changes as changes
from tenderwright.pricing.bids.amounts import DecimalSign, decimal_sign
from tenderwright.pricing.bids.answers import (
    read_addenda,
    read_beside,
    read_offer,
    read_questions,
    read_remarks,
    read_signed,
    signed_for,
)
from tenderwright.pricing.bids.dock_given import read_dock
from tenderwright.pricing.bids.expected import ExpectedForm, ExpectedLine
from tenderwright.pricing.bids.find_lines import FoundLine, find_lines
from tenderwright.pricing.bids.form_compared import is_own, own_formula, unread
from tenderwright.pricing.bids.prices import PriceReader
from tenderwright.pricing.bids.sums_written import written_sums
from tenderwright.pricing.bids.tables_filled import read_filled
from tenderwright.pricing.bids.telling import told
from tenderwright.pricing.bids.words import bare
from tenderwright.reading.workbook.cells import Workbook

REFUSED = "bid-edition"
"""The code of what keeps a form from being taken as a bid to this tender."""
_SHOWN = ("bid-incomplete", "bid-late")
"""Codes of what the bid itself shows by what it has not, told of the whole form; the comparison judges it."""


@dataclass(frozen=True)
class BidRead:
    """A bid as read, and what there is to tell of it."""

    bid: Bid
    notices: tuple[Notice, ...]

    @property
    def refused(self) -> bool:
        """Tell whether it is the form of another tender or edition, and so no bid to this one."""
        return any(notice.code == REFUSED for notice in self.notices)


def read_bid(book: Workbook, form: ExpectedForm, yard: str, received: date) -> BidRead:
    """Read a returned form; `yard` may be empty where the yard signed the form with its name."""
    found = find_lines(book, form.by_number)
    lines, unread_lines, typed, notices = _lines(book, found, form)
    edition, edition_notices = changes.edition_changes(book, form)
    addenda, addenda_notices = read_addenda(book, form)
    offer, offer_notices = read_offer(book, form)
    filled, filled_notices = read_filled(book, form)
    dock, dock_notices = read_dock(book, form.dock_units)
    remarks = read_remarks(book, lines, form.by_number)
    answers = (*read_questions(book, form), *read_signed(book))
    beside, beside_notices = read_beside(book, form)
    notices += [*edition_notices, *addenda_notices, *offer_notices, *filled_notices, *dock_notices, *remarks.notices]
    notices += [*changes.missing_lines(found, form, book.path), *changes.unknown_lines(found, form)]
    notices += beside_notices
    notices += [*_left_empty(lines, unread_lines, book.path), *_late(received, form, book.path)]
    sums = written_sums(book, is_own(form.issued), typed)
    if not any(notice.code == REFUSED for notice in notices):
        priced = {one.of("rate").address for one in found}
        numbered = {one.cell.address: one.number for one in found}
        notices += unread(book, form.issued, notices, priced, numbered)
    notices = sort_notices(notices)
    yard = yard or signed_for(book)
    bid = Bid(
        yard=yard,
        facility=_listed(yard, form, book.path),
        dock=dock,
        received=received,
        lines={number: _with(line, remarks.notes.get(number, "")) for number, line in lines.items()},
        here=Place(book.path),
        file=book.path.replace("\\", "/").rsplit("/", 1)[-1],
        sha256=book.sha256,
        edition=edition,
        currency=form.currency,
        valid_until=offer.valid_until,
        section_totals=sums.sections,
        base_total=sums.base,
        total=sums.evaluated,
        exclusions=remarks.exclusions,
        addenda=addenda,
        site_visit=offer.site_visit,
        terms_accepted=offer.terms_accepted,
        dates_accepted=offer.dates_accepted,
        earliest_docking=offer.earliest_docking,
        days=offer.days,
        dock_days=offer.dock_days,
        answers=(*answers, *beside),
        tables=filled,
        doubts=tuple(
            dict.fromkeys(one.message for one in notices if one.code not in _SHOWN or one.message.startswith("`"))
        ),
    )
    return BidRead(bid, tuple(notices))


def _lines(
    book: Workbook, found: list[FoundLine], form: ExpectedForm
) -> tuple[dict[str, BidLine], set[str], set[str], list[Notice]]:
    """Read the lines in the order of the form; a line that is nowhere is left out.

    Named are also those whose answer cannot be read, and the sections with a rate that was typed as text.
    """
    by_number: dict[str, list[FoundLine]] = {}
    for one in found:
        by_number.setdefault(one.number, []).append(one)
    own = is_own(form.issued)
    reader = PriceReader(form.currency, _habit(found), lambda cell: own_formula(cell, own), book.take)
    lines: dict[str, BidLine] = {}
    unread_lines: set[str] = set()
    notices: list[Notice] = []
    untaken = {**changes.shared_prices(found), **changes.exchanged(found, form)}
    notices += dict.fromkeys(untaken.values())
    for expected in form.lines:
        rows = by_number.get(expected.number, [])
        if expected.number in untaken and rows:
            book.take(*(one.cell for one in rows), *(one.of("description") for one in rows))
            if expected.kind != "fixed":
                lines[expected.number] = _left(rows)
                unread_lines.add(expected.number)
            continue
        for one in rows:
            notices += changes.line_changes(book, one, expected)
        if expected.kind == "fixed" or not rows:
            continue
        answer, told_of, readable = _answer(rows, expected, reader)
        lines[expected.number] = answer
        notices += told_of
        if not readable:
            unread_lines.add(expected.number)
    sections = {line.number: line.section for line in form.lines}
    typed = {
        sections[one.number]
        for one in found
        if one.number in sections and lines.get(one.number, BidLine()).rate is not None and _left_out(one, own)
    }
    return lines, unread_lines, typed, [*notices, *reader.together()]


def _left_out(one: FoundLine, own: Collection[str]) -> bool:
    """Tell whether the rate of a row was typed as text, so that the form's own formula could not count it."""
    return isinstance(one.of("rate").value, str) and own_formula(one.of("amount"), own)


def _habit(found: list[FoundLine]) -> DecimalSign:
    written = (one.of(column) for one in found for column in ("rate", "amount"))
    return decimal_sign(cell.text for cell in written if isinstance(cell.value, str))


def _left(rows: list[FoundLine]) -> BidLine:
    """Give a line whose answer is not taken, with what stood there."""
    words = "; ".join(f"{one.of('rate').address} {one.of('rate').text or '-'}" for one in rows)
    return BidLine(status="empty", as_written=words, here=rows[0].of("rate").place)


def _answer(rows: list[FoundLine], expected: ExpectedLine, reader: PriceReader) -> tuple[BidLine, list[Notice], bool]:
    """Read a line; where it stands on several rows they must say the same, or all but one nothing."""
    read = [reader.line(one, expected) for one in rows]
    notices = [notice for _, told_of, _ in read for notice in told_of]
    readable = all(sound for _, _, sound in read)
    answered = [line for line, _, _ in read if line.status != "empty"] or [read[0][0]]
    if len(rows) > 1:
        agree = all((line.rate, line.status) == (answered[0].rate, answered[0].status) for line in answered)
        code = "bid-form-reworded" if agree else "bid-form-changed"
        ending = "and its answers agree" if agree else "with different answers, none of which is taken"
        said = ", ".join(f"`{one.cell.address}` with `{one.of('rate').text}`" for one in rows)
        notices.append(told(code, rows[1].cell, f"line {expected.number} stands on several rows, {said}, {ending}"))
        if not agree:
            return _left(rows), notices, False
    return answered[0], notices, readable


def _listed(yard: str, form: ExpectedForm, path: str) -> Reference | None:
    """Find the dock of the list that has the name of the yard."""
    found = [facility for name, facility in form.facilities.items() if bare(name) == bare(yard)]
    return Reference("facility", found[0], Place(path)) if len(found) == 1 else None


def _with(line: BidLine, note: str) -> BidLine:
    """Give a line with a remark made elsewhere on the form beside the one in its row."""
    return replace(line, note="; ".join(filter(None, (line.note, note)))) if note else line


def _left_empty(lines: Mapping[str, BidLine], unread: Collection[str], path: str) -> list[Notice]:
    """Tell which lines have no answer; one whose answer cannot be read is told of at its cell."""
    empty = [number for number, line in lines.items() if line.status == "empty" and number not in unread]
    if not empty:
        return []
    message = f"{len(empty)} of {len(lines)} lines are left empty: {', '.join(empty)}"
    hint = "ask the yard whether it means 0, `included` or `no bid`"
    return [Notice("bid-incomplete", Place(path), message, hints=(hint,))]


def _late(received: date, form: ExpectedForm, path: str) -> list[Notice]:
    if received <= form.closing:
        return []
    return [
        Notice("bid-late", Place(path), f"the bid was received on {received}, and tenders closed on {form.closing}")
    ]
