"""A unit price is stated, paid before and escalated, or built from man-hours; every step to it is told."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tenderwright.pipeline import compile_owner, compile_package
from tenderwright.pricing.price import PricedLine
from tenderwright.reading.package import Files
from tests.model.packages import change, put, told

RATES = "owner/rates.yaml"
INDICES = "owner/indices.yaml"
LINE = "  210.a: { rate: 2900 }"
INDEX = """indices:
  - { index: prices, name: Repair prices, carries: 10 yr, months: { "2021-05": 251.9, "2027-09": 287.4 } }
"""
PAID = '  - { work: docking and 11 days, item: "110", amount: 18400, growth: 1200 }'


def with_line(files: Files, line: str, more: str = "") -> Files:
    return change(change(files, RATES, LINE, line), RATES, "base_month: 2027-09", f"base_month: 2027-09\n{more}")


def priced(files: Files, number: str = "210.a") -> PricedLine:
    side = compile_owner(files, compile_package(files))
    assert side.notices == ()
    assert side.estimate is not None
    return next(line for line in side.estimate.lines if line.number == number)


def notices(files: Files) -> list[tuple[str, str]]:
    return told(list(compile_owner(files, compile_package(files)).notices))


def escalating(files: Files) -> Files:
    """Give the package with a lump of EUR 250,000 paid for the wash in 2021, and an index."""
    paid = f'{PAID}\n  - {{ work: the wash, item: "210", quantity: 1 set, amount: 250000 }}'
    return put(change(files, "owner/closing/docking-2021.yaml", PAID, paid), INDICES, INDEX)


def test_a_stated_rate_stands_as_written(starter: Files) -> None:
    line = priced(starter)
    assert line.unit_price.likely == Decimal(2900)
    assert [step.what for step in line.unit_price.steps] == ["stated"]


def test_low_and_high_follow_from_the_class_where_they_are_left_out(starter: Files) -> None:
    """AACE-type classes, widest bounds: class 3 is -20/+30 %, class 5 -50/+100 %; the evidence gives the class."""
    by_letter = priced(with_line(starter, "  210.a: { rate: 2900, evidence: letter }")).unit_price
    assert (by_letter.estimate_class, by_letter.low, by_letter.high) == (3, Decimal(2320), Decimal(3770))
    by_history = priced(with_line(starter, "  210.a: { rate: 2900, evidence: earlier docking }")).unit_price
    assert (by_history.estimate_class, by_history.low, by_history.high) == (5, Decimal(1450), Decimal(5800))


def test_a_price_paid_before_is_escalated_by_its_index(starter: Files) -> None:
    """250,000 x 287.4/251.9 = 285,232.24 (constructed check of P_t = P_0 I_t/I_0)."""
    line = priced(
        with_line(
            escalating(starter), "  210.a: { history: { docking: docking-2021, work: the wash } }", "index: prices"
        )
    )
    assert line.amount == Decimal("285232.24")
    assert [step.gives.quantize(Decimal("0.01")) for step in line.unit_price.steps] == [250000, Decimal("285232.24")]


def test_man_hours_materials_and_factors_make_a_price(starter: Files) -> None:
    hours = "  210.a: { hours: 38 h, labour: shipwright, materials: 340, factors: [{ factor: 1.12, why: keel }] }"
    line = priced(with_line(starter, hours, "labour: { shipwright: { rate: 62 } }"))
    assert line.amount == Decimal("3019.52")  # (38 x 62 + 340) x 1.12
    assert [step.gives for step in line.unit_price.steps] == [2356, 2696, Decimal("3019.52")]


def test_factors_lift_low_and_high_too(starter: Files) -> None:
    line = "  210.a: { rate: 1000, low: 800, high: 1500, factors: [{ factor: 1.5, why: a }, { factor: 2, why: b }] }"
    price = priced(with_line(starter, line)).unit_price
    assert (price.low, price.likely, price.high) == (2400, 3000, 4500)


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("  210.a: { basis: none }", "unpriced-line"),
        ("  210.a: { rate: 10, hours: 2 h, labour: shipwright }", "unpriced-line"),
        ("  210.a: { hours: 2 h, labour: shipright }", "dead-reference"),
        ("  210.a: { hours: 2 h }", "dead-reference"),
        ("  210.a: { history: { docking: docking-2021, work: the wsh } }", "dead-reference"),
        ("  210.a: { history: { docking: docking-1921, work: the wash } }", "dead-reference"),
        ("  210.a: { history: { docking: docking-2021, work: the wash, index: wages } }", "dead-reference"),
        ("  210.a: { rate: 100, low: 120 }", "range-order"),
        ("  210.a: { rate: 100, high: 90 }", "range-order"),
    ],
)
def test_what_gives_no_price_is_told_at_its_line(starter: Files, line: str, code: str) -> None:
    files = with_line(escalating(starter), line, "labour: { shipwright: { rate: 62 } }\nindex: prices")
    (found,) = notices(files)
    number = next(n for n, text in enumerate(files.sources[RATES].text.splitlines(), start=1) if text == line)
    assert found[0].startswith(f"{RATES}:{number}:")
    assert found[1] == code


def test_an_index_without_the_month_gives_no_price(starter: Files) -> None:
    files = change(escalating(starter), INDICES, "2021-05", "2024-05")
    files = with_line(files, "  210.a: { history: { docking: docking-2021, work: the wash } }", "index: prices")
    assert [code for _, code in notices(files)] == ["price-not-comparable"]


def test_a_price_by_another_unit_gives_no_price(starter: Files) -> None:
    files = change(escalating(starter), "owner/closing/docking-2021.yaml", "quantity: 1 set", "quantity: 12 m")
    files = with_line(files, "  210.a: { history: { docking: docking-2021, work: the wash } }", "index: prices")
    assert [code for _, code in notices(files)] == ["price-not-comparable"]


def test_a_figure_of_the_year_before_stands_for_a_month_without_one(starter: Files) -> None:
    files = change(escalating(starter), INDICES, "2021-05", "2020-11")
    files = with_line(files, "  210.a: { history: { docking: docking-2021, work: the wash } }", "index: prices")
    assert priced(files).amount == Decimal("285232.24")


def test_the_quantity_may_come_out_otherwise(starter: Files) -> None:
    files = change(
        starter, RATES, "320.a: { rate: 95,", "320.a: { quantity_low: 0 each, quantity_high: 90 each, rate: 95,"
    )
    line = priced(files, "320.a")
    assert (line.least, line.most) == (0, 90)
    assert (line.low, line.high) == (0, 90 * 140)


def test_a_tendered_quantity_beyond_its_range_widens_it_and_is_told(starter: Files) -> None:
    files = change(starter, RATES, "320.a: { rate: 95,", "320.a: { quantity_high: 1 each, rate: 95,")
    assert [code for _, code in notices(files)] == ["quantity-outside-range"]


def test_a_range_in_another_unit_is_told(starter: Files) -> None:
    files = change(starter, RATES, "320.a: { rate: 95,", "320.a: { quantity_high: 90 kg, rate: 95,")
    assert [code for _, code in notices(files)] == ["wrong-dimension"]
