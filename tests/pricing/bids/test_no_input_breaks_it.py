"""Whatever a workbook holds, the reading ends in notices or a bid that can be written, never in a crash."""

from __future__ import annotations

import io
from datetime import date
from functools import cache
from typing import Any

import openpyxl
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE, MergedCell
from openpyxl.worksheet.cell_range import CellRange

from tenderwright.commands.bids_read import check_text
from tenderwright.documents.bid_entry import bid_entry
from tenderwright.pricing.bids.read_bid import read_bid
from tenderwright.reading.workbook.cells import read_cells
from tenderwright.reading.workbook.guard import look_through
from tenderwright.reading.workbook.refusal import Refusal
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tenderwright.writing.yaml_file import yaml_text

from .filled import EXPECTED, RECEIVED, cells, filled, form, read, sound, whole

WORDS = st.sampled_from(
    [
        *("Line", "Rate or price", "Amount", "Status", "Unit", "420.a", "305 A", "included", "no bid", "-", "1,234"),
        *("Total", "Sub-total C", "Addendum", "Addendum 1", "yes", "Edition hash", "Currency", "Asked", "Dock", "Yard"),
        *("=1+1", "#REF!", "What is excluded, assumed or offered instead", "at GBP 5 a day"),
        "Days in dock, by the yard's own plan",
    ]
)
VALUES = st.one_of(
    WORDS,
    st.text(max_size=20).map(lambda text: ILLEGAL_CHARACTERS_RE.sub("", text)),
    st.integers(-(10**14), 10**14),
    st.floats(allow_nan=False, allow_infinity=False),
    st.booleans(),
    st.dates(date(1950, 1, 1), date(2100, 1, 1)),
    st.none(),
)
PUT = st.lists(st.tuples(st.integers(0, 5), st.integers(1, 45), st.integers(1, 14), VALUES), max_size=60)
MERGES = st.lists(st.tuples(st.integers(1, 45), st.integers(1, 14), st.integers(0, 3), st.integers(0, 3)), max_size=4)


@cache
def _whole() -> bytes:
    return filled(whole)


def _scrambled(put: list[tuple[int, int, int, Any]], merges: list[tuple[int, int, int, int]]) -> bytes:
    book = openpyxl.load_workbook(io.BytesIO(_whole()))
    for sheet, row, column, value in put:
        cell = book.worksheets[sheet].cell(row, column)
        if not isinstance(cell, MergedCell):
            cell.value = value
    for row, column, down, right in merges:
        prices = book.worksheets[1]
        area = CellRange(min_row=row, min_col=column, max_row=row + down, max_col=column + right)
        if all(area.isdisjoint(there) for there in prices.merged_cells.ranges):
            prices.merge_cells(area.coord)
    output = io.BytesIO()
    book.save(output)
    return output.getvalue()


@given(PUT, MERGES)
@settings(max_examples=40)
def test_no_cells_break_the_reading(
    put: list[tuple[int, int, int, Any]], merges: list[tuple[int, int, int, int]]
) -> None:
    found = read_bid(cells(_scrambled(put, merges)), EXPECTED, "Corve", RECEIVED)
    check_text("owner/bids/corve.yaml", yaml_text(bid_entry(found.bid)), found.bid)
    for notice in found.notices:
        assert notice.place.path == "bid.xlsx"


@given(st.lists(st.tuples(st.floats(0, 1, exclude_max=True), st.binary(min_size=1, max_size=6)), max_size=5))
@settings(max_examples=60)
def test_no_bytes_break_the_reading(changes: list[tuple[float, bytes]]) -> None:
    data = _whole()
    for where, piece in changes:
        at = int(where * len(data))
        data = data[:at] + piece + data[at + len(piece) :]
    try:
        guarded = look_through("bid.xlsx", data)
    except Refusal:
        return
    book, notices = read_cells(guarded)
    assert (book is None) == bool(notices)


def test_an_untouched_form_is_read_as_left_empty() -> None:
    found = read(price_form_workbook(form()))
    assert {line.status for line in found.bid.lines.values()} == {"empty"}
    assert sound(found)
