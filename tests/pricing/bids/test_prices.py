"""What a yard writes for a line, and what is told of it."""

from __future__ import annotations

import datetime
from decimal import Decimal
from typing import Any

import pytest

from tenderwright.pricing.bids.read_bid import BidRead
from tests.reading.workbook import hostile

from .filled import PRICES, Fill, codes, filled, of, only, put, put_cell, read, returned, rows, sound, whole


def told(found: BidRead) -> str:
    notice = only(found)
    return f"{notice.code}: {notice.message.partition(': ')[2]}"


@pytest.mark.parametrize(
    ("price", "status", "rate", "as_status", "as_written"),
    [
        (12.5, "priced", "12.5", "priced", ""),
        (12.5, None, "12.5", "priced", ""),
        (9.95, None, "9.95", "priced", ""),
        (333.33333333, None, "333.3333", "priced", "333.33333333"),
        ("GBP 1 234,50", None, "1234.50", "priced", "GBP 1 234,50"),
        (0, "priced", "0", "zero", ""),
        ("0,00", None, "0", "zero", "0,00"),
        ("nil", None, "0", "zero", "nil"),
        (None, "included", None, "included", ""),
        ("incl.", None, None, "included", "incl."),
        ("incl. in 105.a", "priced", None, "included", "incl. in 105.a"),
        (0, "included", None, "included", ""),
        ("included", "included", None, "included", "included"),
        (None, "no bid", None, "no bid", ""),
        ("n/a", None, None, "no bid", "n/a"),
        (None, "not offered", None, "no bid", ""),
        (None, "Free", "0", "zero", ""),
    ],
)
def test_an_answer(price: object, status: object, rate: str | None, as_status: str, as_written: str) -> None:
    found = returned(put("305.a", price, status, "see letter"))
    assert found.notices == ()
    line = found.bid.lines["305.a"]
    assert (line.rate, line.status) == (None if rate is None else Decimal(rate), as_status)
    assert (line.as_written, line.note, line.extension) == (as_written, "see letter", None)


def test_an_empty_line_is_empty_and_told_of() -> None:
    found = returned(put("305.a"))
    assert found.bid.lines["305.a"].status == "empty"
    assert found.bid.lines["305.a"].rate is None
    assert only(found).code == "bid-incomplete"
    assert "1 of 9 lines are left empty: 305.a" in only(found).message


@pytest.mark.parametrize(
    ("number", "price", "status", "rate", "words"),
    [
        ("405.z", -50, None, "50", "credit-with-minus: the credit is written as -50; it is read as 50 to the owner"),
        ("900.b", 12.5, None, "12.5", "ambiguous-amount: the cell shows 1250.0 %; 12.5 % is read"),
        (
            "305.a",
            50,
            "see letter",
            "50",
            "bid-words-unclear: the status says `see letter`, which is not known; the price alone is read",
        ),
    ],
)
def test_what_can_mean_two_things_is_read_and_told(
    number: str, price: object, status: object, rate: str, words: str
) -> None:
    found = returned(put(number, price, status))
    assert told(found) == words
    assert sound(found)
    assert found.bid.lines[number].rate == Decimal(rate)
    assert found.bid.doubts == (only(found).message,)


def test_amounts_with_other_marks_are_told_in_one_notice_for_the_form() -> None:
    found = returned(put("305.a", "1,234"), put("420.a", "5.678"), put("410.a", "1 200"))
    assert only(found).code == "ambiguous-amount"
    words = only(found).message
    assert words.startswith("2 amounts are typed with marks that can mean two things: `Price form!G")
    assert "`1,234` is read as 1234, or means 1.234; `Price form!G" in words
    assert words.endswith("`5.678` is read as 5678, or means 5.678")
    assert found.bid.lines["305.a"].rate == 1234
    assert found.bid.doubts == (words,)


def test_amounts_in_another_currency_are_told_in_one_notice_and_not_read() -> None:
    found = returned(put("305.a", "USD 5"), put("420.a", "€ 7"))
    assert only(found).message.startswith(
        "2 amounts are not in GBP, the currency of the tender, and not read: `Price f"
    )
    assert {found.bid.lines[number].rate for number in ("305.a", "420.a")} == {None}
    assert (found.bid.lines["305.a"].status, found.bid.lines["305.a"].as_written) == ("empty", "USD 5")


def test_an_ambiguous_amount_is_read_as_the_others_are_written() -> None:
    found = returned(put("305.a", "1.234"), put("420.a", "12.50"))
    assert found.bid.lines["305.a"].rate == Decimal("1.234")
    assert only(found).code == "ambiguous-amount"


def test_a_dash_is_read_as_empty_and_told_of() -> None:
    found = returned(put("305.a", "–"))
    assert codes(found) == ["bid-incomplete", "dash-for-price"]
    assert found.bid.lines["305.a"].status == "empty"


@pytest.mark.parametrize(
    ("number", "price", "status", "words"),
    [
        ("305.a", "on request", None, "`on request` cannot be read as a price"),
        ("305.a", "12 %", None, "`12 %` cannot be read as a price"),
        ("305.a", -5, None, "`-5` cannot be a price"),
        ("305.a", datetime.date(2026, 5, 1), None, "`2026-05-01` is not a price; perhaps a program took it for a date"),
        ("305.a", True, None, "`True` is not a price; perhaps a program took it for a date"),
        ("305.a", 5, "included", "the status says included, and the price says `5`"),
        ("305.a", 5, "no bid", "the status says no bid, and the price says `5`"),
        ("305.a", "no bid", "included", "the status says included, and the price says `no bid`"),
    ],
)
def test_what_cannot_be_read_is_refused(number: str, price: object, status: object, words: str) -> None:
    found = returned(put(number, price, status))
    assert not sound(found)
    message = next(notice.message for notice in found.notices if notice.code == "bid-amount")
    assert message.partition(": ")[2] == words


@pytest.mark.parametrize("price", ["2550 EUR excl. VAT", "on request", -5, "=4*1062.50"])
def test_what_cannot_be_read_is_told_of_once(price: object) -> None:
    found = returned(put("305.a", price))
    assert only(found).severity == "error"
    both = returned(put("305.a", price), put("420.a"))
    assert "1 of 9 lines are left empty: 420.a" in next(n.message for n in both.notices if n.code == "bid-incomplete")


def test_priced_without_a_price_is_told_of() -> None:
    found = returned(put("305.a", None, "priced"))
    assert [n.message.partition(": ")[2] for n in found.notices][-1] == "the status says priced, and there is no price"
    assert found.bid.lines["305.a"].status == "empty"


def test_a_percentage_is_read_as_the_form_means_it() -> None:
    def per_cent(book: object) -> None:
        cell = book[PRICES].cell(rows(book)["900.b"], 7)  # type: ignore[index]
        cell.value, cell.number_format = 0.125, "0.0%"

    assert returned(per_cent).bid.lines["900.b"].rate == Decimal("12.5")
    assert returned(put("900.b", "12,5 %")).bid.lines["900.b"].rate == Decimal("12.5")
    assert returned(put("900.b", 12.5)).bid.lines["900.b"].rate == Decimal("12.5")


def _plain(value: object) -> Fill:
    """Put a value in the cell of the percentage, which has lost its format."""

    def fill(book: Any) -> None:
        cell = book[PRICES].cell(rows(book)["900.b"], 7)
        cell.value, cell.number_format = value, "General"

    return fill


@pytest.mark.parametrize(
    ("fill", "rate"),
    [
        (put("900.b", 0.15), "15"),
        (_plain(15), "15"),
        (_plain("15 %"), "15"),
        (_plain("0.15 %"), "0.15"),
        (_plain(0), "0"),
    ],
)
def test_a_percentage_is_read_as_it_is_shown(fill: Fill, rate: str) -> None:
    found = returned(fill)
    assert found.notices == ()
    assert found.bid.lines["900.b"].rate == Decimal(rate)


@pytest.mark.parametrize(
    ("fill", "words"),
    [
        (_plain(0.15), "`0.15` can mean 0.15 % or 15.00 %"),
        (_plain("0,15"), "`0,15` can mean 0.15 % or 15.00 %"),
        (_plain(4500), "`4500` is not a percentage from 0 % to 100 %"),
        (_plain(-5), "`-5` is not a percentage from 0 % to 100 %"),
        (put("900.b", 4500), "`4500` is not a percentage from 0 % to 100 %"),
        (put("900.b", "GBP 15"), "`GBP 15` is a sum of money"),
    ],
)
def test_what_may_be_money_or_a_share_is_no_percentage(fill: Fill, words: str) -> None:
    found = returned(fill)
    assert told(found) == f"bid-amount: {words}, and a percentage is asked"
    assert not sound(found)


def test_a_number_shown_in_another_currency_is_told_of() -> None:
    def dollars(book: object) -> None:
        book[PRICES].cell(rows(book)["305.a"], 7).number_format = "[$USD] #,##0.00"  # type: ignore[index]

    found = returned(dollars)
    assert told(found) == "bid-amount: `Price form!G16` `100 shown in USD`"
    assert found.bid.lines["305.a"].rate is None


def test_a_formula_without_a_stored_result_is_refused() -> None:
    found = returned(put("305.a", "=4*1062.50"))
    notice = next(n for n in found.notices if n.severity == "error")
    assert notice.code == "no-stored-result"
    row = notice.place.line
    assert notice.message.startswith(f"`Price form!G{row}`: the price is the formula `=4*1062.50`")
    assert (notice.place.path, notice.place.column) == ("bid.xlsx", 7)


def test_a_status_without_a_stored_result_is_refused() -> None:
    assert "no-stored-result" in codes(returned(put("305.a", 5, '=IF(TRUE,"included","")')))


def test_a_formula_with_a_stored_result_is_read_as_a_doubt() -> None:
    data = filled(whole, put("305.a", "=4*1062.5"))
    sheet = "xl/worksheets/sheet2.xml"
    text = hostile.members(data)[sheet].decode()
    old = next(
        piece for piece in ("<f>4*1062.5</f><v></v>", "<f>4*1062.5</f><v/>", "<f>4*1062.5</f><v />") if piece in text
    )
    found = read(hostile.changed(sheet, old, "<f>4*1062.5</f><v>4250</v>", data))
    assert told(found) == (
        "price-by-formula: the price is worked out by a formula: it shows `4250` and holds `=4*1062.5`"
    )
    line = found.bid.lines["305.a"]
    assert (line.rate, line.as_written) == (Decimal(4250), "=4*1062.5")


def test_an_error_in_a_price_is_refused() -> None:
    data = filled(whole, put("305.a", "#REF!"))
    found = read(data)
    assert "the price shows `#REF!`" in "".join(notice.message for notice in found.notices)
    assert not sound(found)


@pytest.mark.parametrize(("amount", "extension"), [(61250, "61250.00"), ("61.250,00", "61250.00"), (7, "7.00")])
def test_the_amount_stands_as_written_right_or_wrong(amount: object, extension: str) -> None:
    found = returned(lambda book: put_cell(PRICES, f"H{rows(book)['305.a']}", amount)(book))
    assert found.bid.lines["305.a"].extension == Decimal(extension)


def test_an_amount_without_a_rate_is_taken_and_told_of() -> None:
    def amount(book: object) -> None:
        put("105.a")(book)
        book[PRICES].cell(rows(book)["105.a"], 8).value = 48000  # type: ignore[index]

    found = returned(amount)
    line = found.bid.lines["105.a"]
    assert (line.rate, line.status, line.extension) == (None, "priced", Decimal(48000))
    assert told(found) == "amount-without-rate: line 105.a has an amount and no rate; the amount alone is taken"


def test_values_pasted_over_formulas_leave_empty_lines_empty() -> None:
    def paste(book: object) -> None:
        put("105.a")(book)
        book[PRICES].cell(rows(book)["105.a"], 8).value = 0  # type: ignore[index]

    assert returned(paste).bid.lines["105.a"].status == "empty"


def test_a_word_in_the_amount_answers_a_line_without_a_price() -> None:
    def include(book: object) -> None:
        put("105.a")(book)
        book[PRICES].cell(rows(book)["105.a"], 8).value = "included"  # type: ignore[index]

    found = returned(include)
    assert found.bid.lines["105.a"].status == "included"
    assert found.notices == ()


def test_an_amount_that_cannot_be_read_is_left_out_and_told_of() -> None:
    found = returned(lambda book: put_cell(PRICES, f"H{rows(book)['305.a']}", "see letter")(book))
    assert found.bid.lines["305.a"].extension is None
    assert only(found).code == "amount-unread"


def test_a_price_merged_with_its_neighbours_is_read_once() -> None:
    def merge(book: object) -> None:
        sheet, row = book[PRICES], rows(book)["305.a"]  # type: ignore[index]
        sheet.cell(row, 6).value = 250
        sheet.merge_cells(start_row=row, end_row=row, start_column=6, end_column=8)

    found = returned(merge)
    line = found.bid.lines["305.a"]
    assert (line.rate, line.status, line.extension) == (Decimal(250), "priced", None)
    assert found.notices == ()


def test_one_price_merged_over_several_lines_is_refused() -> None:
    def merge(book: object) -> None:
        first, last = rows(book)["305.a"], rows(book)["420.a"]
        book[PRICES].merge_cells(start_row=first, end_row=last, start_column=7, end_column=7)  # type: ignore[index]

    found = returned(merge)
    assert {found.bid.lines[number].rate for number in ("305.a", "420.a")} == {None}
    (message,) = of(found, "bid-amount")
    assert message.partition(": ")[2] == "one merged cell, `100`, stands for the prices of lines 305.a, 420.a"
