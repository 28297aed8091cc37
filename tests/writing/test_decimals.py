from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tenderwright.documents.edition import Column, Row, Table
from tenderwright.writing.decimals import decimal_pads, table_pads

from .sample import cells


def test_short_fractions_are_padded_and_words_are_not() -> None:
    assert decimal_pads(("12.5", "1,240", "0.375", "included", "—", "GBP -3.25", "12.5 m2")) == (
        "00",
        ".000",
        "",
        "",
        "",
        "0",
        "",
    )


def test_whole_numbers_need_no_point() -> None:
    assert decimal_pads(("1", "22")) == ("", "")


def test_group_rows_and_other_columns_are_left_alone() -> None:
    table = Table(
        (Column("a"), Column("b", "decimal")),
        (Row(cells("group"), "group"), Row(cells("1.25", "1.5")), Row(cells("1", "1.25"))),
    )
    assert table_pads(table) == ((), ("", "0"), ("", ""))


@given(st.lists(st.decimals(allow_nan=False, allow_infinity=False, places=None), min_size=1))
def test_every_number_ends_up_with_the_same_number_of_decimals(numbers: list[object]) -> None:
    texts = [format(number, "f") for number in numbers]
    padded = [text + pad for text, pad in zip(texts, decimal_pads(texts), strict=True)]
    assert len({len(text.partition(".")[2]) for text in padded}) == 1
