"""What a yard says beside its prices."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import pytest

from tenderwright.model.bid import BidAnswer, Exclusion

from .filled import (
    EXPECTED,
    REMARKS,
    SIGNED,
    TOTALS,
    YARD,
    codes,
    filled,
    only,
    put_at,
    read,
    remarked,
    returned,
    row_of,
    whole,
)

VALID = EXPECTED.closing + timedelta(days=60)


def test_what_is_answered_is_read() -> None:
    bid = returned().bid
    assert (bid.site_visit, bid.dates_accepted, bid.earliest_docking) == (True, True, None)
    assert (bid.valid_until, bid.days, bid.dock_days, bid.addenda) == (VALID, 37, 28, (1, 2))
    assert (bid.currency, bid.edition, bid.file, len(bid.sha256)) == ("GBP", "5f0c2d5f0c2d5f0c", "bid.xlsx", 64)


def test_the_yard_is_as_given_or_as_signed() -> None:
    assert read(filled(whole)).bid.yard == "Corve"
    assert read(filled(whole), yard="").bid.yard == "Corve Harbour Dock"
    assert read(filled(), yard="").bid.yard == ""


@pytest.mark.parametrize(
    ("words", "value", "field", "read_as"),
    [
        ("The ship was visited", "No", "site_visit", False),
        ("The dates of the tender", False, "dates_accepted", False),
        ("Earliest date in dock", date(2026, 5, 11), "earliest_docking", date(2026, 5, 11)),
        ("Earliest date in dock", "2026-05-11", "earliest_docking", date(2026, 5, 11)),
        ("Earliest date in dock", "n/a", "earliest_docking", None),
        ("Days in dock", "30 days", "dock_days", 30),
        ("The offer stands", "60 days", "valid_until", VALID),
    ],
)
def test_answers_are_read_as_people_write_them(words: str, value: object, field: str, read_as: object) -> None:
    found = returned(put_at(SIGNED, words, 2, value))
    assert found.notices == ()
    assert getattr(found.bid, field) == read_as


@pytest.mark.parametrize(
    ("words", "value", "field", "told"),
    [
        ("The ship was visited", "perhaps", "site_visit", "`perhaps` is neither yes nor no"),
        ("Earliest date in dock", "11/5/2026", "earliest_docking", "`11/5/2026` is not read as a date"),
        ("Days in dock", "about a month", "dock_days", "`about a month` is not a number of whole days"),
        ("Days in dock", 27.5, "dock_days", "`27.5` is not a number of whole days"),
        ("Days in dock", 5000, "dock_days", "`5000` is not a number of whole days"),
    ],
)
def test_an_answer_that_cannot_be_read_is_told_of(words: str, value: object, field: str, told: str) -> None:
    found = returned(put_at(SIGNED, words, 2, value))
    assert only(found).code == "bid-unread"
    assert told in only(found).message
    assert getattr(found.bid, field) is None


def test_whether_the_terms_are_accepted_is_asked_and_told() -> None:
    assert returned().bid.terms_accepted is True
    assert returned(put_at(SIGNED, "The terms", 2, "no")).bid.terms_accepted is False
    found = returned(put_at(SIGNED, "The terms", 2, None))
    assert found.bid.terms_accepted is None
    assert "it is not said whether the terms of the tender are accepted" in only(found).message


def test_days_that_count_and_are_not_given_are_told_of() -> None:
    found = returned(put_at(TOTALS, "Days from arrival", 5, None))
    assert only(found).code == "bid-incomplete"
    assert found.bid.days is None


@pytest.mark.parametrize("answer", [None, "no"])
def test_an_addendum_that_is_not_acknowledged_is_told_of(answer: object) -> None:
    found = returned(put_at(SIGNED, "Addendum 2", 2, answer))
    assert found.bid.addenda == (1,)
    assert only(found).message == "addendum 2 is not acknowledged"


@pytest.mark.parametrize("name", ["Addendum 3", "3", "No. 3 of 2026-03-01", "Addendum no. 3"])
def test_an_addendum_that_the_yard_adds_is_read(name: str) -> None:
    def add(book: Any) -> None:
        sheet = book[SIGNED]
        row = row_of(sheet, "Addendum 2") + 1
        sheet.cell(row, 1).value, sheet.cell(row, 2).value = name, "yes"

    assert returned(add).bid.addenda == (1, 2, 3)


def test_exclusions_are_read_with_their_lines_and_effect() -> None:
    def exclude(book: Any) -> None:
        sheet = book[REMARKS]
        sheet["B5"], sheet["C5"], sheet["D5"], sheet["E5"] = "420 a", "assumption", "Tanks are handed over dry", 1200
        sheet["B6"], sheet["C6"], sheet["D6"] = "900", "alternative", "Shift work; see 305.a"
        sheet["D7"], sheet["B9"] = "Disposal of abrasive", "410.a"

    found = returned(exclude)
    assert found.notices == ()
    assert found.bid.exclusions == (
        Exclusion(text="Tanks are handed over dry", lines=("420.a",), kind="assumption", effect="1200"),
        Exclusion(text="Shift work; see 305.a", lines=("900.a", "900.b", "305.a"), kind="alternative"),
        Exclusion(text="Disposal of abrasive"),
        Exclusion(text="(no words; line 410.a, effect -)", lines=("410.a",)),
    )
    assert found.bid.exclusions[0].here.line == 5


def test_a_remark_stands_beside_its_lines() -> None:
    def remark(book: Any) -> None:
        remarked(book, "305.a, 420.a", "remark", "Three coats, not two")
        remarked(book, "305.a", "remark", "Sea water for washing, as in 410.a")
        book[REMARKS]["E6"] = 1200

    found = returned(remark)
    assert found.notices == ()
    assert found.bid.exclusions == ()
    notes = {number: line.note for number, line in found.bid.lines.items() if line.note}
    both = "Three coats, not two; Sea water for washing, as in 410.a (effect on the price: 1200)"
    assert notes == {"305.a": both, "420.a": "Three coats, not two"}


@pytest.mark.parametrize(
    ("line", "words"),
    [(None, "a remark that names no line: No Sundays"), ("110.a", "a remark of line 110.a, which nobody prices: No")],
)
def test_a_remark_that_belongs_to_no_price_becomes_a_doubt_that_quotes_it(line: object, words: str) -> None:
    found = returned(lambda book: remarked(book, line, "remark", "No Sundays"))
    assert only(found).code == "bid-remark"
    assert words in only(found).message
    assert found.bid.doubts == (only(found).message,)


def test_answers_to_the_owners_questions_are_read_and_open_ones_left_out() -> None:
    found = returned(put_at(YARD, "Docking hours", 4, "Floating dock No. 2, 96 m"))
    assert found.bid.answers[:-1] == (BidAnswer(ask="Docking hours", answer="Floating dock No. 2, 96 m"),)


def test_questions_are_found_on_a_sheet_without_headings() -> None:
    def spoil(book: Any) -> None:
        sheet = book[YARD]
        head = row_of(sheet, "Asked")
        for column in (1, 2, 3, 4):
            sheet.cell(head, column).value = None
        sheet.cell(row_of(sheet, "Capacity"), 4).value = 650
        sheet.insert_cols(1)
        sheet.title = "Werft"

    assert returned(spoil).bid.answers[:-1] == (BidAnswer(ask="Capacity", answer="650"),)


def test_a_bid_after_the_closing_day_is_told_of() -> None:
    found = read(filled(whole), received=date(2026, 3, 17))
    assert codes(found) == ["bid-late"]
    assert read(filled(whole), received=date(2026, 3, 16)).notices == ()
