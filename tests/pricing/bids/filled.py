"""Price forms as yards fill them in: made by the writer of the form, filled with openpyxl, read back."""

from __future__ import annotations

import io
from collections.abc import Callable
from datetime import date
from decimal import Decimal
from typing import Any

import openpyxl

from tenderwright.commands.bids_read import expected_form
from tenderwright.documents.form import asked_of_the_dock
from tenderwright.documents.price_form import PriceForm
from tenderwright.notices import Notice
from tenderwright.pricing.bids.read_bid import BidRead, read_bid
from tenderwright.reading.workbook.cells import Workbook, read_cells
from tenderwright.reading.workbook.guard import look_through
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tests.replacing import replace
from tests.writing.sample import sample_form

PRICES, TOTALS, REMARKS, SIGNED = "Price form", "Evaluated total", "Remarks", "Acknowledgements"
YARD = "Dock and yard"
DOCK: dict[str, object] = {
    "Name of the dock": "Head berth",
    "Kind of dock": "graving dock",
    "Clear length": 96,
    "Clear breadth": "14.6 m",
    "Depth of water over the keel blocks": 4.3,
    "Greatest line load along the keel": "45",
    "Depth of water over the sill": 5.1,
}
"""What a yard states of a graving dock where it leaves out nothing that is needed."""
RECEIVED = date(2026, 3, 10)
Fill = Callable[[Any], None]


def form() -> PriceForm:
    """Give the sample form, with an owner's cost of days, and asking for the figures of the dock."""
    dock = asked_of_the_dock()
    return replace(sample_form(), day_cost=Decimal("450.50"), edition_hash="5f0c2d5f0c2d5f0c", dock=dock)


EXPECTED = expected_form(form(), (1, 2))
PERCENTAGE = "900.b"
"""The line whose price is a percentage."""
PRICED = tuple(line.number for line in EXPECTED.lines if line.kind != "fixed")


def rows(book: Any) -> dict[str, int]:
    """Give the row of each line on the form as issued."""
    sheet = book[PRICES]
    return {str(sheet.cell(row, 1).value): row for row in range(5, sheet.max_row + 1) if sheet.cell(row, 3).value}


def row_of(sheet: Any, words: str) -> int:
    """Find the row that begins with some words in its first or second column."""
    return next(
        row for row in range(1, sheet.max_row + 1) for n in (1, 2) if str(sheet.cell(row, n).value).startswith(words)
    )


def put(number: str, price: object = None, status: object = None, remark: object = None) -> Fill:
    """Fill in one line."""

    def fill(book: Any) -> None:
        sheet, row = book[PRICES], rows(book)[number]
        sheet.cell(row, 6).value, sheet.cell(row, 7).value = status, price
        if remark is not None:
            remarked(book, number, "remark", remark)

    return fill


def remarked(book: Any, number: object, kind: object, words: object) -> None:
    """Write into the first free row of the sheet of remarks."""
    sheet = book[REMARKS]
    row = next(row for row in range(5, sheet.max_row + 1) if sheet.cell(row, 4).value is None)
    sheet.cell(row, 2).value, sheet.cell(row, 3).value, sheet.cell(row, 4).value = number, kind, words
    if isinstance(words, str):
        sheet.cell(row, 4).data_type = "s"


def put_at(title: str, words: str, column: int, value: object) -> Fill:
    """Fill in a cell of the row that begins with some words."""

    def fill(book: Any) -> None:
        book[title].cell(row_of(book[title], words), column).value = value

    return fill


def put_cell(title: str, address: str, value: object) -> Fill:
    """Fill in a cell by its address."""

    def fill(book: Any) -> None:
        book[title][address].value = value

    return fill


def whole(book: Any) -> None:
    """Fill in all that is asked, plainly."""
    for number in PRICED:
        put(number, 1 if number == PERCENTAGE else 100, "priced")(book)
    for words in (
        "Addendum 1",
        "Addendum 2",
        "The ship was visited",
        "The terms of the tender",
        "The dates of the tender",
    ):
        put_at(SIGNED, words, 2, "yes")(book)
    put_at(SIGNED, "The offer stands", 2, 60)(book)
    put_at(SIGNED, "Days in dock", 2, 28)(book)
    put_at(SIGNED, "Yard", 4, "Corve Harbour Dock")(book)
    put_at(TOTALS, "Days from arrival", 5, 37)(book)
    for label, figure in DOCK.items():
        put_at(YARD, label, 4, figure)(book)


def filled(*fills: Fill, on: PriceForm | None = None) -> bytes:
    """Fill a form with openpyxl, which stores no results beside formulas."""
    book = openpyxl.load_workbook(io.BytesIO(price_form_workbook(on or form())))
    for fill in fills:
        fill(book)
    output = io.BytesIO()
    book.save(output)
    return output.getvalue()


def cells(data: bytes) -> Workbook:
    """Read the cells of a workbook that must be harmless."""
    book, notices = read_cells(look_through("bid.xlsx", data))
    assert notices == []
    assert book is not None
    return book


def read(data: bytes, yard: str = "Corve", received: date = RECEIVED) -> BidRead:
    """Read a returned form against the sample form."""
    return read_bid(cells(data), EXPECTED, yard, received)


def returned(*fills: Fill) -> BidRead:
    """Read a form that is filled in whole, with changes."""
    return read(filled(whole, *fills))


def codes(found: BidRead) -> list[str]:
    """List the codes of what was told."""
    return [notice.code for notice in found.notices]


def sound(found: BidRead) -> bool:
    """Tell whether nothing that was told is an error."""
    return not any(notice.severity == "error" for notice in found.notices)


def of(found: BidRead, code: str) -> list[str]:
    """Give what was told under one code."""
    return [notice.message for notice in found.notices if notice.code == code]


def only(found: BidRead) -> Notice:
    """Give the only notice."""
    (notice,) = found.notices
    return notice
