"""Sub-totals and totals are read as they stood."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from tenderwright.pricing.bids.sums_written import written_sums
from tenderwright.writing.price_form_xlsx import price_form_workbook

from .filled import PRICES, TOTALS, cells, filled, form, row_of, whole


def test_stored_results_of_the_form_are_read() -> None:
    sums = written_sums(cells(price_form_workbook(form())))
    assert sums.sections == {code: Decimal(2500 if code == "A" else 0) for code in "ACDEFG"}
    assert (sums.base, sums.evaluated) == (Decimal(2500), Decimal(2500))


def test_formulas_without_stored_results_give_none() -> None:
    sums = written_sums(cells(filled(whole)))
    assert (sums.sections, sums.base, sums.evaluated) == ({}, None, None)


def test_sums_pasted_as_figures_are_read_even_where_they_are_wrong() -> None:
    def paste(book: Any) -> None:
        book[PRICES].cell(row_of(book[PRICES], "Sub-total C"), 8).value = 69850.005
        book[TOTALS].cell(row_of(book[TOTALS], "Total"), 5).value = 1

    sums = written_sums(cells(filled(whole, paste)))
    assert (sums.sections, sums.evaluated) == ({"C": Decimal("69850.01")}, Decimal(1))


def test_a_sum_beyond_all_money_is_none() -> None:
    def paste(book: Any) -> None:
        book[PRICES].cell(row_of(book[PRICES], "Sub-total C"), 8).value = 10**12
        book[PRICES].cell(row_of(book[PRICES], "Sub-total D"), 8).value = -(10**12)

    assert written_sums(cells(filled(whole, paste))).sections == {}
