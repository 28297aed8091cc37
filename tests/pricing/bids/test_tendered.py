"""The lines that bids are compared on are those of the estimate and of the price form."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

import pytest

from tenderwright.documents.form import price_form
from tenderwright.pricing.bids.tendered import tender_lines
from tests.documents.composed import composed

from .bidding import money, tender_line


@pytest.mark.parametrize("name", ["starter", "marram"])
def test_at_the_owners_rates_the_lines_come_to_the_estimate(name: Literal["starter", "marram"]) -> None:
    made = composed(name)
    estimate = made.owner.estimate
    assert estimate is not None
    lines = tender_lines(made.compiled.package, made.compiled.calculated, estimate)
    amounts = {
        line.number: line.amount(line.fixed if line.fixed is not None else line.estimate or Decimal(0))
        for line in lines
    }
    assert amounts == {line.number: line.amount for line in estimate.lines}


@pytest.mark.parametrize("name", ["starter", "marram"])
def test_they_stand_in_the_order_of_the_price_form(name: Literal["starter", "marram"]) -> None:
    made = composed(name)
    lines = tender_lines(made.compiled.package, made.compiled.calculated, None)
    form = price_form(made.desk(), "")
    wanted = [(one.number, section.code, one.kind, one.quantity) for section in form.sections for one in section.lines]
    assert [(one.number, one.section.code, one.form, one.quantity) for one in lines] == wanted
    assert {one.spread.source for one in lines} <= {"none", "survey"}, "without an estimate there is no owner's range"


@pytest.mark.parametrize(
    ("form", "rate", "slope"),
    [
        ("rate", "12.5", "12.5"),
        ("day", "640", "640"),
        ("credit", "150", "-150"),
        ("markup", "15", "1.15"),
        ("lump", "9", "0"),
    ],
)
def test_one_more_unit_adds_its_rate(form: str, rate: str, slope: str) -> None:
    line = tender_line("420.a", 40, form, "G" if form == "credit" else "C")
    assert line.slope(money(rate)) == money(slope)
    if form != "lump":
        more = tender_line("420.a", 41, form, "C")
        assert more.amount(money(rate)) - line.amount(money(rate)) == money(slope)
