"""What a yard fills into the tables of the form comes back by row and heading, and goes into the file of its bid."""

from __future__ import annotations

from typing import Any

import pytest

from tenderwright.commands.bids_read import expected_form
from tenderwright.documents.bid_entry import bid_entry
from tenderwright.pricing.bids.read_bid import BidRead, read_bid
from tests.fixtures.wider_format import wider

from .filled import RECEIVED, Fill, cells, filled

FORM = wider().yard[1]
FIRE, CHEST = "510.valves.suction-fire", "510.valves.sea-chest"
MAKE, TIME = "Make of a new one", "Time to get one, week"


def _put(name: str, heading: str, value: object) -> Fill:
    def fill(book: Any) -> None:
        sheet = book["Tables"]
        row = next(row for row in range(1, sheet.max_row + 1) if sheet.cell(row, 1).value == name)
        head = next(above for above in range(row, 0, -1) if sheet.cell(above, 1).value == "Row of the table")
        column = next(n for n in range(1, 16) if sheet.cell(head, n).value == heading)
        sheet.cell(row, column).value = value

    return fill


def _read(*fills: Fill) -> BidRead:
    return read_bid(cells(filled(*fills, on=FORM)), expected_form(FORM, ()), "Ostrey", RECEIVED)


def _told(found: BidRead) -> list[str]:
    return [one.message for one in found.notices if "table" in one.message or "number of week" in one.message]


def test_cells_come_back_by_row_and_heading() -> None:
    found = _read(_put(FIRE, MAKE, "Corve Foundry"), _put(FIRE, TIME, 6), _put(CHEST, TIME, 2.5))
    assert found.bid.tables == {CHEST: {TIME: "2.5"}, FIRE: {MAKE: "Corve Foundry", TIME: "6"}}
    assert _told(found) == ["3 cells of table 510.valves are left empty"]
    assert bid_entry(found.bid)["tables"] == found.bid.tables


def test_words_where_a_figure_is_asked_are_kept_and_told() -> None:
    found = _read(_put(FIRE, TIME, "six or so"))
    assert found.bid.tables[FIRE][TIME] == "six or so"
    assert any(one.endswith(f"`six or so` is not a number of week: {TIME}") for one in _told(found))


def test_rows_that_moved_and_headings_that_were_reworded_are_found() -> None:
    def moved(book: Any) -> None:
        _put(FIRE, TIME, 6)(book)
        sheet = book["Tables"]
        sheet.insert_rows(1, 3)
        head = next(row for row in range(1, 20) if sheet.cell(row, 1).value == "Row of the table")
        sheet.cell(head, 7).value = "Delivery"

    assert _read(moved).bid.tables == {FIRE: {TIME: "6"}}


@pytest.mark.parametrize("name", [FIRE, CHEST])
def test_a_row_that_is_taken_out_is_told(name: str) -> None:
    def taken_out(book: Any) -> None:
        sheet = book["Tables"]
        row = next(row for row in range(1, sheet.max_row + 1) if sheet.cell(row, 1).value == name)
        sheet.delete_rows(row)

    assert f"row {name} of the tables is missing" in _told(_read(taken_out))


def test_the_sheet_is_taken_for_no_lines() -> None:
    numbers = [one.number for section in FORM.sections for one in section.lines]
    assert list(_read().bid.lines) == numbers
