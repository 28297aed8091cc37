"""Amounts of money as people type them."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.pricing.bids.amounts import decimal_sign, read_amount


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("EUR 1 234,50", "1234.50"),
        ("1.234,50", "1234.50"),
        ("1,234.50", "1234.50"),
        ("€ 950,-", "950"),
        ("950.--", "950"),
        ("1'234.50", "1234.50"),
        ("1’234.50 CHF", "1234.50"),
        ("1\u00a0234,50", "1234.50"),
        ("1\u202f234.5 €", "1234.5"),
        ("£1,234,567.80", "1234567.80"),
        ("1.234.567", "1234567"),
        ("12,5", "12.5"),
        ("0,500", "0.500"),
        ("1234,567", "1234.567"),
        ("1 234,567", "1234.567"),
        ("1,234.567", "1234.567"),
        ("1.234,-", "1234"),
        ("-5.00", "-5.00"),
        ("EUR −5.00", "-5.00"),
        ("(500)", "-500"),
        ("１２", "12"),
        ("7", "7"),
    ],
)
def test_an_amount_that_can_mean_one_thing(text: str, number: str) -> None:
    found = read_amount(text)
    assert found is not None
    assert (found.number, found.other) == (Decimal(number), None)


@pytest.mark.parametrize(
    ("text", "habit", "number", "other"),
    [
        ("1,234", "", "1234", "1.234"),
        ("1.234", "", "1234", "1.234"),
        ("1,234", ",", "1.234", "1234"),
        ("1,234", ".", "1234", "1.234"),
        ("1.234", ".", "1.234", "1234"),
        ("EUR 12.345", ",", "12345", "12.345"),
        ("-1,234", "", "-1234", "-1.234"),
    ],
)
def test_an_amount_that_can_mean_two_things_is_read_by_habit_and_gives_both(
    text: str, habit: str, number: str, other: str
) -> None:
    found = read_amount(text, habit)  # type: ignore[arg-type]
    assert found is not None
    assert (found.number, found.other) == (Decimal(number), Decimal(other))


@pytest.mark.parametrize(
    "text",
    [
        *(
            "",
            "-",
            "abc",
            "about 900",
            "1 23",
            "12 34 567",
            "1,23,456.7.8",
            "950-",
            "1e5",
            "max 5",
            "950¹",
            "1½",
            "12..5",
        ),
        *("12,50,-", "(5", "5)", "EUR 5 USD", "1,234.50,10", "9" * 13, "9" * 100, "1.2345,6", "420.a", "5 m2"),
    ],
)
def test_what_is_no_amount(text: str) -> None:
    assert read_amount(text) is None


@pytest.mark.parametrize(
    ("text", "currency"),
    [
        ("USD 5", "USD"),
        ("5 kr.", "NOK"),
        ("kr 5", "DKK"),
        ("$5", "USD"),
        ("5 Euro", "EUR"),
        ("Fr. 5", "CHF"),
        ("5", None),
    ],
)
def test_the_currency_is_told(text: str, currency: str | None) -> None:
    found = read_amount(text)
    assert found is not None
    assert currency in found.currencies if currency else found.currencies == ()


def test_a_percentage_is_told() -> None:
    found = read_amount("12,5 %")
    assert found is not None
    assert (found.number, found.percent) == (Decimal("12.5"), True)


@pytest.mark.parametrize(
    ("texts", "sign"),
    [
        (("1,50", "2", "priced"), ","),
        (("1.50", "2"), "."),
        (("1.50", "2,5"), ""),
        (("1.234.567",), ","),
        (("1,234,567",), "."),
        (("1,234", "5"), ""),
        ((), ""),
    ],
)
def test_the_decimal_sign_of_a_workbook(texts: tuple[str, ...], sign: str) -> None:
    assert decimal_sign(texts) == sign


PARTED = {
    "plain": ("", "."),
    "comma": ("", ","),
    "english": (",", "."),
    "german": (".", ","),
    "french": ("\u202f", ","),
    "swiss": ("’", "."),
    "blank": (" ", "."),
    "nbsp": ("\u00a0", ","),
}
"""How thousands are parted, and the decimal sign."""
AROUND = ("{}", "EUR {}", "{} EUR", "€{}", "{} €", " {} ", "eur {}")


@given(
    st.decimals(0, 10**9, places=2),
    st.sampled_from(sorted(PARTED)),
    st.sampled_from(AROUND),
)
def test_what_is_written_with_two_decimals_is_read_as_it_was(number: Decimal, how: str, around: str) -> None:
    thousands, sign = PARTED[how]
    text = f"{number:,.2f}".replace(",", "T").replace(".", sign).replace("T", thousands)
    found = read_amount(around.format(text))
    assert found is not None
    assert (found.number, found.other) == (number, None)


@given(st.text(max_size=80))
def test_no_text_breaks_the_reading(text: str) -> None:
    found = read_amount(text)
    assert found is None or abs(found.number) < Decimal("1e12")
