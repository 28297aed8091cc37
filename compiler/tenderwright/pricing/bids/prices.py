"""Reads the price of one line: a number, a word that stands for one, or nothing."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from decimal import Decimal

from tenderwright.model.bid import BidLine
from tenderwright.notices import Notice
from tenderwright.pricing.amount import SHARES
from tenderwright.pricing.bids.amounts import DecimalSign, read_amount
from tenderwright.pricing.bids.expected import ExpectedLine
from tenderwright.pricing.bids.find_lines import FoundLine
from tenderwright.pricing.bids.number_shown import shows
from tenderwright.pricing.bids.statuses import Status, is_dash, said_plainly, status_said
from tenderwright.pricing.bids.telling import shown, told, whole
from tenderwright.pricing.money import BEYOND, CENT, cents, tendered
from tenderwright.reading.workbook.cells import Cell

_QUOTED = re.compile(r'"[^"]*"|\\.|\[\$[^\]]*\]')
_ASKED, _WRITE = "a percentage is asked", "write 15 % for fifteen per cent"
_ASK_WORDS = "ask the yard whether the line is priced, included or not bid"
_CURRENCY_SHOWN = re.compile(r'"([A-Z]{3})"|\[\$([^\]-]+)(?:-[^\]]*)?\]|([€£])')


@dataclass
class Priced:
    """What a cell of a price says: a number, or a word for one, and what there is to tell of it."""

    status: Status = "empty"
    number: Decimal | None = None
    notices: list[Notice] = field(default_factory=list)
    readable: bool = True


@dataclass(frozen=True)
class PriceReader:
    """Reads prices in the currency of the tender, with the decimal sign that the workbook uses."""

    currency: str
    habit: DecimalSign = ""
    own: Callable[[Cell], bool] = lambda cell: False
    """Tells whether a formula is the form's own."""
    take: Callable[[Cell], None] = lambda cell: None
    """Notes that a cell is read."""
    two_ways: list[tuple[Cell, str]] = field(default_factory=list)
    """Amounts that can mean two things, with what they may mean; told together."""
    foreign: list[tuple[Cell, str]] = field(default_factory=list)
    """Amounts with the sign of another currency; told together."""

    def line(self, found: FoundLine, expected: ExpectedLine) -> tuple[BidLine, list[Notice], bool]:
        """Read what a yard wrote for one line, and tell whether its answer can be read."""
        cell, status, amount = found.of("rate"), found.of("status"), found.of("amount")
        at = (cell.row, cell.column)
        priced = self.price(cell, expected.kind)
        note = found.of("remarks")
        self.take(note)
        notes = [note.text]
        if (status.row, status.column) != at:
            notes.append(self._settle(priced, status, cell))
        extension = None
        if (amount.row, amount.column) != at and not amount.empty:
            extension = self._extension(amount, priced, expected, typed=isinstance(cell.value, str))
        if priced.status == "empty" and extension and priced.readable:
            message = f"line {expected.number} has an amount and no rate; the amount alone is taken"
            hint = "ask the yard for the rate, or to confirm that the amount is for the whole line"
            priced.notices.append(told("amount-without-rate", amount, message, hint))
            priced.status = "priced"
        line = BidLine(
            rate=tendered(priced.number) if priced.number is not None else None,
            status=priced.status,
            extension=extension if priced.status == "priced" else None,
            note="; ".join(filter(None, notes)),
            as_written=_as_written(cell),
            here=cell.place,
        )
        return line, priced.notices, priced.readable

    def price(self, cell: Cell, kind: str) -> Priced:
        """Read the cell of a price by itself: one run of text or a number, plainly shown; all else is a doubt."""
        if cell.formula and cell.value is None and not cell.error:
            return Priced(notices=[_no_result(cell, "price")], readable=False)
        if cell.error:
            return self._unreadable(cell, f"the price shows `{cell.error}`")
        if cell.value is not None and cell.odd:
            return self._unreadable(
                cell, f"the price is not plain: it holds `{whole(cell.text)}`, and {', '.join(cell.odd)}"
            )
        priced = self._plain(cell, kind)
        if cell.formula:
            message = f"the price is worked out by a formula: it shows `{whole(cell.text)}` and holds `{cell.formula}`"
            hint = "ask the yard whether the figure that the formula shows is its price"
            priced.notices.append(told("price-by-formula", cell, message, hint))
        elif priced.readable:
            self.take(cell)
        return priced

    def _plain(self, cell: Cell, kind: str) -> Priced:
        if isinstance(cell.value, Decimal):
            shows_ = _shows(cell.value, cell.number_format, kind)
            if shows_:
                return self._unreadable(cell, f"the price is not plain: it shows {shows_} and holds `{cell.value:f}`")
            return self._number(cell, cell.value, kind)
        if isinstance(cell.value, str):
            return self._text(cell, cell.value.strip(), kind)
        if cell.value is None:
            return Priced()
        return self._unreadable(cell, f"`{shown(cell.text)}` is not a price; perhaps a program took it for a date")

    def _number(self, cell: Cell, number: Decimal, kind: str) -> Priced:
        match = _CURRENCY_SHOWN.search(cell.number_format)
        mark = next((one for one in match.groups() if one), "") if match else ""
        meant = read_amount(f"{mark} 1") if mark else None
        if mark and kind in SHARES:
            return self._unreadable(cell, f"the number is shown in `{mark}`, and {_ASKED}", _WRITE)
        if mark and (meant is None or (meant.currencies and self.currency not in meant.currencies)):
            return self._foreign(cell, f"{number:f} shown in {mark}")
        if kind in SHARES:
            shown_as = "%" in _QUOTED.sub("", cell.number_format)
            return self._percentage(cell, number * 100 if shown_as and number <= 1 else number, [], shown_as)
        return self._signed(cell, number, kind, [])

    def _percentage(self, cell: Cell, number: Decimal, told_of: list[Notice], sure: bool) -> Priced:
        """Read a percentage from 0 to 100; a share such as 0.15 without a sign of per cent can mean two things."""
        if 0 < number < 1 and not sure:
            message = f"`{whole(cell.text)}` can mean {number:f} % or {number * 100:f} %, and {_ASKED}"
            return self._unreadable(cell, message, _WRITE)
        if not 0 <= number <= 100:
            return self._unreadable(
                cell, f"`{whole(cell.text)}` is not a percentage from 0 % to 100 %, and {_ASKED}", _WRITE
            )
        if sure and cell.value == number and number > 1:
            message = f"the cell shows {number * 100:f} %; {number:f} % is read"
            hint = "ask the yard which percentage it means"
            told_of.append(told("ambiguous-amount", cell, message, hint))
        return Priced("priced" if number else "zero", number, told_of)

    def _text(self, cell: Cell, text: str, kind: str) -> Priced:
        said = status_said(text)
        if said is not None and said != "priced":
            found = Priced(said, Decimal(0) if said == "zero" else None)
            if not said_plainly(text):
                message = f"the price says `{whole(text)}`, which is read as {said}"
                found.notices.append(told("bid-words-unclear", cell, message, _ASK_WORDS))
            return found
        if is_dash(text):
            message = f"`{shown(text)}` may mean 0, no bid or nothing; it is read as left empty"
            hint = "ask the yard whether it means 0, `included` or `no bid`"
            return Priced(notices=[told("dash-for-price", cell, message, hint)])
        amount = read_amount(text, self.habit)
        if amount is None or (amount.percent and kind not in SHARES):
            hint = "a price is a number, `included`, `no bid`, or left empty"
            return self._unreadable(cell, f"`{whole(text)}` cannot be read as a price", hint)
        if amount.currencies and self.currency not in amount.currencies:
            return self._foreign(cell, whole(text))
        if kind in SHARES and amount.currencies:
            return self._unreadable(cell, f"`{whole(text)}` is a sum of money, and {_ASKED}", _WRITE)
        if amount.other is not None:
            self.two_ways.append((cell, f"`{whole(text)}` is read as {amount.number}, or means {amount.other}"))
        if kind in SHARES:
            return self._percentage(cell, amount.number, [], amount.percent)
        return self._signed(cell, amount.number, kind, [])

    def _foreign(self, cell: Cell, words: str) -> Priced:
        self.foreign.append((cell, f"`{words}`"))
        return Priced(readable=False)

    def together(self) -> Iterator[Notice]:
        """Tell of the amounts with marks of their own, in one notice for the form each."""
        if self.two_ways:
            message = f"{_amounts(self.two_ways)} typed with marks that can mean two things"
            hint = "ask the yard for all of them at once, written as the form writes numbers"
            yield told_of_all("ambiguous-amount", self.two_ways, message, hint)
        if self.foreign:
            message = f"{_amounts(self.foreign)} not in {self.currency}, the currency of the tender, and not read"
            yield told_of_all("bid-amount", self.foreign, message, "ask the yard for its prices in that currency")

    def _signed(self, cell: Cell, number: Decimal, kind: str, told_of: list[Notice]) -> Priced:
        if number < 0 and kind == "credit":
            message = f"the credit is written as {number}; it is read as {-number} to the owner"
            hint = "ask the yard to confirm that it gives this sum to the owner"
            told_of.append(told("credit-with-minus", cell, message, hint))
            number = -number
        if number < 0 or number >= BEYOND:
            return self._unreadable(cell, f"`{whole(cell.text)}` cannot be a price")
        if 0 < number < CENT:
            message = f"the price holds `{number:f}`, less than the smallest coin"
            told_of.append(told("price-too-small", cell, message, "ask the yard for the price that it means"))
        return Priced("priced" if number else "zero", number, told_of)

    def _unreadable(self, cell: Cell, message: str, *hints: str) -> Priced:
        return Priced(notices=[told("bid-amount", cell, message, *hints)], readable=False)

    def _settle(self, priced: Priced, status: Cell, cell: Cell) -> str:
        """Bring the price and the word in the status column together, and give what else that word says."""
        if status.formula and status.value is None:
            priced.notices.append(_no_result(status, "status"))
            return ""
        said = status_said(status.text)
        if said is None:
            message = f"the status says `{whole(status.text)}`, which is not known; the price alone is read"
            priced.notices.append(told("bid-words-unclear", status, message, _ASK_WORDS))
            return ""
        if said == "priced" and priced.status == "empty" and priced.readable:
            priced.notices.append(told("bid-amount", cell, "the status says priced, and there is no price"))
        elif said in ("included", "no bid", "zero") and priced.status != said:
            if priced.status not in ("empty", "zero") or not priced.readable:
                message = f"the status says {said}, and the price says `{whole(cell.text)}`"
                priced.notices.append(told("bid-amount", cell, message, "ask the yard which of the two is meant"))
            if priced.readable:
                clash = priced.status not in ("empty", "zero")
                priced.status, priced.number = (
                    ("empty", None) if clash else (said, Decimal(0) if said == "zero" else None)
                )
                priced.readable = not clash
        if not status.formula and not status.odd:
            self.take(status)
        if said_plainly(status.text):
            return ""
        message = f"the status says `{whole(status.text)}`, which is read as {said}"
        priced.notices.append(told("bid-words-unclear", status, message, _ASK_WORDS))
        return status.text

    def _extension(self, cell: Cell, priced: Priced, expected: ExpectedLine, *, typed: bool) -> Decimal | None:
        """Read the amount in the row; a word in it may answer a line whose price is empty.

        Where the rate was typed as text, the form's own formula could not count it, and its result is nobody's word.
        """
        own = bool(cell.formula) and self.own(cell)
        if own and (typed or not priced.readable):
            return None
        if isinstance(cell.value, Decimal) and abs(cell.value) < BEYOND:
            if cell.formula:
                return cents(cell.value) if priced.status != "empty" else None
            if not cell.odd:
                self.take(cell)
            return cents(cell.value)
        said = status_said(cell.text) if isinstance(cell.value, str) else None
        if said is not None and said != "priced":
            if priced.status == "empty" and priced.readable:
                priced.status = said
                if said_plainly(cell.text):
                    self.take(cell)
            return None
        amount = read_amount(cell.text, self.habit) if isinstance(cell.value, str) else None
        if amount is not None and (not amount.currencies or self.currency in amount.currencies):
            if amount.other is not None:
                message = f"`{whole(cell.text)}` is read as {amount.number}, or means {amount.other}"
                self.two_ways.append((cell, message))
            self.take(cell)
            return cents(amount.number)
        if not cell.formula or cell.error:
            message = f"`{whole(cell.text)}` cannot be read as the amount of line {expected.number}; it is left out"
            hint = "ask the yard what it means; the amount is its rate times the quantity"
            priced.notices.append(told("amount-unread", cell, message, hint))
        return None


def _shows(number: Decimal, shape: str, kind: str) -> str:
    """Give what a price shows where that is not plainly the price; a percentage may be shown as one."""
    found = shows(number, shape)
    if not found or kind not in SHARES:
        return found
    match = re.fullmatch(r"`-?([\d.]+) ?%`", found)
    return "" if match is not None and Decimal(match[1]) == abs(number * 100) else found


def _amounts(which: list[tuple[Cell, str]]) -> str:
    return "1 amount is" if len(which) == 1 else f"{len(which)} amounts are"


def told_of_all(code: str, which: list[tuple[Cell, str]], message: str, hint: str) -> Notice:
    """Tell of several cells in one notice, which stands at the first of them."""
    cells = "; ".join(f"`{cell.address}` {words}" for cell, words in which)
    return Notice(code, which[0][0].place, f"{message}: {cells}", hints=(hint,))


def _no_result(cell: Cell, what: str) -> Notice:
    message = f"the {what} is the formula `{shown(cell.formula)}`, and no result is stored beside it"
    hint = "open the file in a spreadsheet program and save it, or ask the yard for the figure"
    return told("no-stored-result", cell, message, hint)


def _as_written(cell: Cell) -> str:
    """Give what stood in the cell of a price where it was not a plain number of four decimals at most."""
    if cell.formula:
        return cell.formula
    if isinstance(cell.value, Decimal):
        return "" if tendered(cell.value) == cell.value else cell.text
    return cell.text
