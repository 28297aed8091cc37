"""What a yard changed that is not its own to change."""

from __future__ import annotations

import io
from collections.abc import Callable
from typing import Any

import openpyxl
import pytest

from tenderwright.pricing.bids.read_bid import BidRead

from .filled import PRICES, TOTALS, codes, filled, of, only, put_at, read, returned, row_of, rows, sound, whole


def at(number: str, column: int, value: object) -> Callable[[Any], None]:
    def change(book: Any) -> None:
        book[PRICES].cell(rows(book)[number], column).value = value

    return change


def told(found: BidRead) -> str:
    notice = only(found)
    return f"{notice.code}: {notice.message.partition(': ')[2]}"


@pytest.mark.parametrize(
    ("number", "column", "value", "words"),
    [
        ("305.a", 4, 600, "the quantity of line 305.a is `600`; the owner's is 612.5 m2"),
        ("305.a", 4, None, "the quantity of line 305.a is taken out; the owner's is 612.5 m2"),
        ("305.a", 4, "as measured", "the quantity of line 305.a is `as measured`; the owner's is 612.5 m2"),
        ("305.a", 5, "ft2", "the unit of line 305.a is `ft2`; the owner's is `m2`"),
        ("305.a", 5, None, "the unit of line 305.a is ``; the owner's is `m2`"),
        ("110.a", 8, 2000, "the owner's sum of line 110.a is 2500.00; here stands 2000"),
        ("110.a", 8, None, "the owner's sum of line 110.a is taken out"),
        ("110.a", 7, 2600, "the owner's sum of line 110.a is 2500.00; here stands 2600"),
    ],
)
def test_what_is_the_owners_was_changed(number: str, column: int, value: object, words: str) -> None:
    found = returned(at(number, column, value))
    assert told(found) == f"bid-form-changed: {words}"
    assert not sound(found)


@pytest.mark.parametrize(
    ("number", "column", "value"),
    [
        ("305.a", 4, "612,5"),
        ("305.a", 4, "612.500"),
        ("305.a", 5, "m²"),
        ("305.a", 5, " M2 "),
        ("410.a", 2, "renew  rivet, 22 MM"),
        ("110.a", 8, "GBP 2,500.00"),
    ],
)
def test_what_only_looks_otherwise_is_no_change(number: str, column: int, value: object) -> None:
    assert returned(at(number, column, value)).notices == ()


def test_another_wording_is_told_of_with_the_owners() -> None:
    found = returned(at("410.a", 2, "Renew rivet, 22 mm, access by others"))
    assert only(found).code == "bid-form-reworded"
    assert only(found).hints == ("as issued: Renew rivet, 22 mm",)
    assert sound(found)


def test_a_line_that_is_gone_is_missed() -> None:
    def take_out(book: Any) -> None:
        for cell in book[PRICES][rows(book)["305.a"]]:
            cell.value = None

    found = returned(take_out)
    assert only(found).message == "lines of the form are missing: 305.a"
    assert "305.a" not in found.bid.lines
    assert not sound(found)


def test_a_line_that_the_tender_does_not_have_is_refused() -> None:
    found = returned(at("410.a", 1, "411.a"))
    assert [n.message.partition(": ")[2] or n.message for n in found.notices] == [
        "410.a",
        "there is no line 411.a in this tender",
        "what is written here is not read as a price, an answer or a remark: `priced`",
        "what is written here is not read as a price, an answer or a remark: `100`",
    ]
    assert set(codes(found)) == {"bid-form-changed", "bid-unread"}


def test_a_price_that_belongs_to_no_line_is_told_with_its_words() -> None:
    def add(book: Any) -> None:
        sheet, row = book[PRICES], rows(book)["410.a"]
        sheet.insert_rows(row + 1)
        sheet.cell(row + 1, 2).value, sheet.cell(row + 1, 7).value = "Disposal of sludge", 5000

    told_of = " ".join(of(returned(add), "bid-unread"))
    assert "`Disposal of sludge`" in told_of
    assert "`5000`" in told_of


def _again(book: Any, **other: object) -> None:
    sheet, row = book[PRICES], rows(book)["410.a"]
    last = sheet.max_row + 2
    for column in range(1, 13):
        sheet.cell(last, column).value = sheet.cell(row, column).value
    for letter, value in other.items():
        sheet[f"{letter}{last}"].value = value


def test_a_line_that_stands_twice_and_agrees_is_told_of() -> None:
    found = returned(_again)
    assert "stands on several rows" in of(found, "bid-form-reworded")[0]
    assert found.bid.lines["410.a"].rate == 100


def test_of_a_line_that_stands_twice_the_answered_one_is_taken() -> None:
    found = returned(lambda book: _again(book, F=None, G=None))
    assert "stands on several rows" in of(found, "bid-form-reworded")[0]
    assert found.bid.lines["410.a"].rate == 100


def test_a_line_with_two_answers_is_refused() -> None:
    found = returned(lambda book: _again(book, G=7))
    assert of(found, "bid-form-changed")[0].endswith("with different answers, none of which is taken")
    assert found.bid.lines["410.a"].rate is None


def test_the_form_of_another_edition_is_refused() -> None:
    found = returned(put_at("How to fill", "Edition hash", 2, "91c0a7be55d2f310"))
    assert told(found).startswith("bid-edition: the form is that of another edition, `Commit 1a2b3c4`, marked")
    assert found.refused
    assert found.bid.edition == "91c0a7be55d2f310"


def _saved_without_sheet(stored: str | None) -> bytes:
    book = openpyxl.load_workbook(io.BytesIO(filled(whole)))
    del book["How to fill"]
    for one in vars(book)["custom_doc_props"].props:
        if one.name == "Edition hash":
            one.value = stored if stored is not None else "5f0c2d5f0c2d5f0c"
    for name in list(book.defined_names):
        del book.defined_names[name]
    output = io.BytesIO()
    book.save(output)
    return output.getvalue()


def test_without_its_first_sheet_the_properties_tell_the_edition() -> None:
    assert only(read(_saved_without_sheet(None))).message.startswith("33 texts of the form as issued are gone: `How to")
    found = read(_saved_without_sheet("91c0a7be55d2f310"))
    assert only(found).code == "bid-edition"


def test_without_any_hash_the_lines_alone_tell() -> None:
    found = read(_saved_without_sheet(""))
    assert set(codes(found)) == {"bid-form-reworded"}
    assert found.bid.edition == ""


def test_another_currency_in_its_cell_is_told() -> None:
    found = returned(put_at("How to fill", "Currency", 2, "USD"))
    assert told(found) == "bid-unread: what is written here is not read as a price, an answer or a remark: `USD`"


def test_the_form_of_another_tender_is_refused_by_its_name() -> None:
    found = returned(
        put_at("How to fill", "Edition hash", 2, "91c0a7be55d2f310"), put_at("How to fill", "Tender", 2, "HPT-2031-04")
    )
    assert found.refused
    assert "the form is that of another tender, `HPT-2031-04`; this is tender" in only(found).message


@pytest.mark.parametrize("where", ["words", "formula"])
def test_another_cost_of_a_day_is_told(where: str) -> None:
    def change(book: Any) -> None:
        sheet = book[TOTALS]
        row = row_of(sheet, "The owner's cost")
        column = 2 if where == "words" else 5
        assert "450.5" in str(sheet.cell(row, column).value)
        sheet.cell(row, column).value = str(sheet.cell(row, column).value).replace("450.5", "45.5")

    found = returned(change)
    assert only(found).code == "bid-unread"
    assert "45.5" in only(found).message


def test_numbers_that_were_exchanged_are_told_by_the_words_of_their_rows() -> None:
    def exchange(book: Any) -> None:
        sheet, place = book[PRICES], rows(book)
        one, other = sheet.cell(place["305.a"], 1), sheet.cell(place["420.a"], 1)
        one.value, other.value = other.value, one.value

    found = returned(exchange)
    assert set(codes(found)) == {"bid-form-changed", "bid-unread"}
    assert not sound(found)
    assert "the row numbered 420.a has the words of line 305.a" in "".join(found.bid.doubts)
    assert {found.bid.lines[number].rate for number in ("305.a", "420.a")} == {None}
