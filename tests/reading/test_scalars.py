"""Plain scalars by the YAML 1.2 core schema (YAML 1.2.2, section 10.3.2)."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.reading.scalars import read_scalar


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("12:30", "12:30"),  # base 60 in YAML 1.1
        ("no", "no"),  # false in YAML 1.1
        ("on", "on"),
        ("yes", "yes"),
        ("010", "010"),  # octal in YAML 1.1
        ("-007", "-007"),
        ("00", "00"),
        ("1e3", 1000.0),  # text in YAML 1.1
        ("2026-02-30", "2026-02-30"),  # a ValueError in YAML 1.1
        ("2027-04-12", "2027-04-12"),
        ("1_000", "1_000"),
        ("0x1F", "0x1F"),
        ("0o17", "0o17"),
        (".inf", ".inf"),
        ("-.INF", "-.INF"),
        (".nan", ".nan"),
        ("0", 0),
        ("-5", -5),
        ("+5", 5),
        (".5", 0.5),
        ("5.", 5.0),
        ("1.10", 1.1),
        ("1e400", "1e400"),
        ("true", True),
        ("TRUE", True),
        ("tRUE", "tRUE"),
        ("False", False),
        ("null", None),
        ("~", None),
        ("", None),
        ("Fr 31 + 200 mm", "Fr 31 + 200 mm"),
    ],
)
def test_plain_scalars(text: str, read: object) -> None:
    found = read_scalar(text, plain=True)
    assert found == read
    assert type(found) is type(read)


@given(st.text())
def test_what_is_quoted_stays_text(text: str) -> None:
    assert read_scalar(text, plain=False) == text


@given(st.text())
def test_any_text_is_read_and_numbers_are_finite(text: str) -> None:
    found = read_scalar(text, plain=True)
    assert found is None or isinstance(found, (str, int, float))
    assert not isinstance(found, float) or math.isfinite(found)


@given(st.integers(min_value=-(10**17), max_value=10**17))
def test_whole_numbers_are_whole(number: int) -> None:
    assert read_scalar(str(number), plain=True) == number


@given(st.floats(allow_nan=False, allow_infinity=False, min_value=-1e200, max_value=1e200))
def test_numbers_read_back(number: float) -> None:
    assert read_scalar(repr(number), plain=True) == number
