"""Reads the price of one line: a number, a word that stands for one, or nothing."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from decimal import Decimal

from tenderwright.model.bid import BidLine
from tenderwright.notices import Notice
from tenderwright.pricing.amount import SHARES
from tenderwright.pricing.bids.amounts import DecimalSign, read_amount
from tenderwright.pricing.bids.expected import ExpectedLine
from tenderwright.pricing.bids.find_lines import FoundLine
from tenderwright.pricing.bids.statuses import Status, is_dash, status_said
from tenderwright.pricing.bids.telling import shown, told
from tenderwright.pricing.money import BEYOND, cents, tendered
from tenderwright.reading.workbook.cells import Cell

_QUOTED = re.compile(r'"[^"]*"|\\.|\[\$[^\]]*\]')
_ASKED, _WRITE = "a percentage is asked", "write 15 % for fifteen per cent"
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

    def line(self, found: FoundLine, expected: ExpectedLine) -> tuple[BidLine, list[Notice]]:
        """Read what a yard wrote for one line."""
        cell, status, amount = found.of("rate"), found.of("status"), found.of("amount")
        at = (cell.row, cell.column)
        priced = self.price(cell, expected.kind)
        if (status.row, status.column) != at:
            self._settle(priced, status, cell)
        extension = None
        if (amount.row, amount.column) != at and not amount.empty:
            extension = self._extension(amount, priced, expected)
        if priced.status == "empty" and extension:
            message = f"line {expected.number} has an amount and no rate; the amount alone is taken"
            priced.notices.append(told("ambiguous-amount", amount, message))
            priced.status = "priced"
        line = BidLine(
            rate=tendered(priced.number) if priced.number is not None else None,
            status=priced.status,
            extension=extension if priced.status == "priced" else None,
            note=found.of("remarks").text,
            as_written=_as_written(cell),
            here=cell.place,
        )
        return line, priced.notices

    def price(self, cell: Cell, kind: str) -> Priced:
        """Read the cell of a price by itself."""
        if cell.formula and cell.value is None and not cell.error:
            return Priced(notices=[_no_result(cell, "price")], readable=False)
        if cell.error:
            return self._unreadable(cell, f"the price shows `{cell.error}`")
        if isinstance(cell.value, Decimal):
            return self._number(cell, cell.value, kind)
        if isinstance(cell.value, str):
            return self._text(cell, cell.text, kind)
        if cell.value is None:
            return Priced()
        return self._unreadable(cell, f"`{shown(cell.text)}` is no price; perhaps a program took it for a date")

    def _number(self, cell: Cell, number: Decimal, kind: str) -> Priced:
        told_of: list[Notice] = []
        match = _CURRENCY_SHOWN.search(cell.number_format)
        mark = next((one for one in match.groups() if one), "") if match else ""
        meant = read_amount(f"{mark} 1") if mark else None
        if meant is not None and meant.currencies and self.currency not in meant.currencies:
            message = f"the number is shown in `{mark}`, and the tender is in {self.currency}"
            told_of.append(told("ambiguous-amount", cell, message))
        if kind in SHARES:
            if mark:
                return self._unreadable(cell, f"the number is shown in `{mark}`, and {_ASKED}", _WRITE)
            shown_as = "%" in _QUOTED.sub("", cell.number_format)
            return self._percentage(cell, number * 100 if shown_as and number <= 1 else number, told_of, shown_as)
        return self._signed(cell, number, kind, told_of)

    def _percentage(self, cell: Cell, number: Decimal, told_of: list[Notice], sure: bool) -> Priced:
        """Read a percentage from 0 to 100; a share such as 0.15 without a sign of per cent can mean two things."""
        if 0 < number < 1 and not sure:
            message = f"`{number:f}` can mean {number:f} % or {number * 100:f} %, and {_ASKED}"
            return self._unreadable(cell, message, _WRITE)
        if not 0 <= number <= 100:
            return self._unreadable(cell, f"`{number:f}` is no percentage from 0 % to 100 %, and {_ASKED}", _WRITE)
        if sure and cell.value == number and number > 1:
            message = f"the cell shows {number * 100:f} %; {number:f} % is read"
            told_of.append(told("ambiguous-amount", cell, message))
        return Priced("priced" if number else "zero", number, told_of)

    def _text(self, cell: Cell, text: str, kind: str) -> Priced:
        said = status_said(text)
        if said is not None and said != "priced":
            return Priced(said, Decimal(0) if said == "zero" else None)
        if is_dash(text):
            message = f"`{shown(text)}` may mean 0, no bid or nothing; it is read as left empty"
            return Priced(notices=[told("ambiguous-amount", cell, message)])
        amount = read_amount(text, self.habit)
        if amount is None or (amount.percent and kind not in SHARES):
            hint = "a price is a number, `included`, `no bid`, or left empty"
            return self._unreadable(cell, f"`{shown(text)}` cannot be read as a price", hint)
        if amount.currencies and self.currency not in amount.currencies:
            return self._unreadable(cell, f"`{shown(text)}` is not in {self.currency}, the currency of the tender")
        if kind in SHARES and amount.currencies:
            return self._unreadable(cell, f"`{shown(text)}` is a sum of money, and {_ASKED}", _WRITE)
        told_of = []
        if amount.other is not None:
            message = f"`{shown(text)}` can mean {amount.number} or {amount.other}; it is read as {amount.number}"
            told_of.append(told("ambiguous-amount", cell, message))
        if kind in SHARES:
            return self._percentage(cell, amount.number, told_of, amount.percent)
        return self._signed(cell, amount.number, kind, told_of)

    def _signed(self, cell: Cell, number: Decimal, kind: str, told_of: list[Notice]) -> Priced:
        if number < 0 and kind == "credit":
            message = f"the credit is written as {number}; it is read as {-number} to the owner"
            told_of.append(told("ambiguous-amount", cell, message))
            number = -number
        if number < 0 or number >= BEYOND:
            return self._unreadable(cell, f"`{number}` cannot be a price")
        return Priced("priced" if number else "zero", number, told_of)

    def _unreadable(self, cell: Cell, message: str, *hints: str) -> Priced:
        return Priced(notices=[told("bid-amount", cell, message, *hints)], readable=False)

    def _settle(self, priced: Priced, status: Cell, cell: Cell) -> None:
        """Bring the price and the word in the status column together; where they differ it is a mistake."""
        if status.formula and status.value is None:
            priced.notices.append(_no_result(status, "status"))
            return
        said = status_said(status.text)
        if said is None:
            message = f"the status says `{shown(status.text)}`, which is not known; the price alone is read"
            priced.notices.append(told("ambiguous-amount", status, message))
        elif said == "priced" and priced.status == "empty" and priced.readable:
            priced.notices.append(told("bid-incomplete", cell, "the status says priced, and there is no price"))
        elif said in ("included", "no bid", "zero") and priced.status != said and priced.readable:
            if priced.status not in ("empty", "zero"):
                message = f"the status says {said}, and the price says `{shown(cell.text)}`"
                priced.notices.append(told("bid-amount", cell, message, "ask the yard which of the two is meant"))
            priced.status, priced.number = said, Decimal(0) if said == "zero" else None

    def _extension(self, cell: Cell, priced: Priced, expected: ExpectedLine) -> Decimal | None:
        """Read the amount in the row; a word in it may answer a line whose price is empty."""
        if isinstance(cell.value, Decimal) and abs(cell.value) < BEYOND:
            typed = not cell.formula or priced.status != "empty"
            return cents(cell.value) if typed else None
        said = status_said(cell.text) if isinstance(cell.value, str) else None
        if said is not None and said != "priced":
            if priced.status == "empty":
                priced.status = said
            return None
        amount = read_amount(cell.text, self.habit) if isinstance(cell.value, str) else None
        if amount is not None and (not amount.currencies or self.currency in amount.currencies):
            if amount.other is not None:
                message = f"`{shown(cell.text)}` can mean {amount.number} or {amount.other}; the first is taken"
                priced.notices.append(told("ambiguous-amount", cell, message))
            return cents(amount.number)
        if not cell.formula or cell.error:
            message = f"`{shown(cell.text)}` cannot be read as the amount of line {expected.number}; it is left out"
            priced.notices.append(told("ambiguous-amount", cell, message))
        return None


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
