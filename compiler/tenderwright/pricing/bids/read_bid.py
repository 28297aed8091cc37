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
from tenderwright.pricing.bids.amounts import decimal_sign
from tenderwright.pricing.bids.answers import read_addenda, read_offer, read_questions, read_remarks, signed_for
from tenderwright.pricing.bids.dock_given import read_dock
from tenderwright.pricing.bids.expected import ExpectedForm, ExpectedLine
from tenderwright.pricing.bids.find_lines import FoundLine, find_lines
from tenderwright.pricing.bids.prices import PriceReader
from tenderwright.pricing.bids.sums_written import written_sums
from tenderwright.pricing.bids.tables_filled import read_filled
from tenderwright.pricing.bids.telling import told
from tenderwright.pricing.bids.words import bare
from tenderwright.reading.workbook.cells import Workbook


@dataclass(frozen=True)
class BidRead:
    """A bid as read, and what there is to tell of it; a bid with errors is not to be used."""

    bid: Bid
    notices: tuple[Notice, ...]

    @property
    def sound(self) -> bool:
        """Tell whether nothing keeps the bid from being taken."""
        return not any(notice.severity == "error" for notice in self.notices)


def read_bid(book: Workbook, form: ExpectedForm, yard: str, received: date) -> BidRead:
    """Read a returned form; `yard` may be empty where the yard signed the form with its name."""
    found = find_lines(book, form.by_number)
    lines, unread, notices = _lines(found, form)
    edition, edition_notices = changes.edition_changes(book, form)
    addenda, addenda_notices = read_addenda(book, form)
    offer, offer_notices = read_offer(book, form)
    filled, filled_notices = read_filled(book, form)
    dock, dock_notices = read_dock(book, form.dock_units)
    remarks = read_remarks(book, lines, form.by_number)
    notices += [*edition_notices, *addenda_notices, *offer_notices, *filled_notices, *dock_notices, *remarks.notices]
    notices += [*changes.missing_lines(found, form, book.path), *changes.unknown_lines(found, form)]
    notices += [*changes.unnumbered_prices(book, found), *changes.shared_prices(found)]
    notices += [*changes.currency_changes(book, form), *changes.day_cost_changes(book, form)]
    notices += [*_left_empty(lines, unread, book.path), *_late(received, form, book.path)]
    notices = sort_notices(notices)
    sums = written_sums(book)
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
        answers=read_questions(book, form),
        tables=filled,
        doubts=tuple(dict.fromkeys(notice.message for notice in notices if notice.severity == "warning")),
    )
    return BidRead(bid, tuple(notices))


def _lines(found: list[FoundLine], form: ExpectedForm) -> tuple[dict[str, BidLine], set[str], list[Notice]]:
    """Read the lines in the order of the form; a line that is nowhere is left out, one that is unread is named."""
    by_number: dict[str, list[FoundLine]] = {}
    for one in found:
        by_number.setdefault(one.number, []).append(one)
    written = (one.of(column) for one in found for column in ("rate", "amount"))
    reader = PriceReader(form.currency, decimal_sign(cell.text for cell in written if isinstance(cell.value, str)))
    lines: dict[str, BidLine] = {}
    unread: set[str] = set()
    notices: list[Notice] = []
    for expected in form.lines:
        rows = by_number.get(expected.number, [])
        for one in rows:
            notices += changes.line_changes(one, expected)
        if expected.kind == "fixed" or not rows:
            continue
        answer, told_of = _answer(rows, expected, reader)
        lines[expected.number] = answer
        notices += told_of
        if any(notice.severity == "error" for notice in told_of):
            unread.add(expected.number)
    return lines, unread, notices


def _answer(rows: list[FoundLine], expected: ExpectedLine, reader: PriceReader) -> tuple[BidLine, list[Notice]]:
    """Read a line; where it stands on several rows they must say the same, or all but one nothing."""
    read = [reader.line(one, expected) for one in rows]
    notices = [notice for _, told_of in read for notice in told_of]
    answered = [line for line, _ in read if line.status != "empty"] or [read[0][0]]
    if len(rows) > 1:
        places = ", ".join(f"`{one.cell.address}`" for one in rows)
        agree = all((line.rate, line.status) == (answered[0].rate, answered[0].status) for line in answered)
        code = "bid-form-reworded" if agree else "bid-form-changed"
        ending = "and its answers agree" if agree else "with different answers"
        notices.append(told(code, rows[1].cell, f"line {expected.number} stands on several rows, {places}, {ending}"))
    return answered[0], notices


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
    hint = "an empty line is not answered; it is neither 0 nor included nor no bid"
    return [Notice("bid-incomplete", Place(path), message, hints=(hint,))]


def _late(received: date, form: ExpectedForm, path: str) -> list[Notice]:
    if received <= form.closing:
        return []
    return [
        Notice("bid-late", Place(path), f"the bid was received on {received}, and tenders closed on {form.closing}")
    ]
