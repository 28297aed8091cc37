"""Lines taken together: sums, the class weighted by amount, the share that is assumed."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.pipeline import compile_owner, compile_package
from tenderwright.pricing.bundle import Bundle, bundle_of, without_options
from tenderwright.pricing.price import Estimate, PricedLine
from tenderwright.pricing.sections import BY_CODE
from tenderwright.reading.package import Files
from tests.replacing import replace


@pytest.fixture(scope="module")
def made(starter: Files) -> Estimate:
    found = compile_owner(starter, compile_package(starter)).estimate
    assert found is not None
    return found


def line(made: Estimate, amount: str, number: int = 3, basis: str = "drawing", price: str = "rate") -> PricedLine:
    one = made.lines[0]
    return replace(
        one,
        line=replace(one.line, price=price),
        amount=Decimal(amount),
        quantity=replace(one.quantity, basis=basis),
        unit_price=replace(one.unit_price, estimate_class=number),
    )


@pytest.mark.parametrize(
    ("lines", "wanted"),
    [
        ([("100", 3)], 3),
        ([("100", 3), ("100", 4)], 4),  # 3.5, halves up
        ([("101", 3), ("100", 4)], 3),
        ([("900", 5), ("100", 1)], 5),  # 4.6
        ([("-900", 5), ("100", 1)], 5),  # a credit weighs by its size
        ([("0", 5)], None),
        ([], None),
    ],
)
def test_the_class_is_the_mean_weighted_by_amount(
    made: Estimate, lines: list[tuple[str, int]], wanted: int | None
) -> None:
    assert Bundle(tuple(line(made, amount, number) for amount, number in lines)).estimate_class == wanted


def test_a_fixed_sum_has_no_class_and_moves_none(made: Estimate) -> None:
    fixed = line(made, "100000", 1, price="fixed")
    assert Bundle((fixed,)).estimate_class is None
    assert Bundle((fixed, line(made, "10", 5))).estimate_class == 5


@given(st.lists(st.tuples(st.integers(1, 10_000), st.integers(1, 5)), min_size=1))
def test_the_class_lies_between_those_of_the_lines(lines: list[tuple[int, int]]) -> None:
    found = Bundle(tuple(_bare(Decimal(amount), number) for amount, number in lines)).estimate_class
    assert found is not None
    assert min(number for _, number in lines) <= found <= max(number for _, number in lines)


def _bare(amount: Decimal, number: int) -> PricedLine:
    """Make a line of nothing but what a class is weighed from."""
    from types import SimpleNamespace
    from typing import cast

    price = SimpleNamespace(estimate_class=number)
    return cast(PricedLine, SimpleNamespace(form="rate", amount=amount, unit_price=price))


def test_the_share_assumed_counts_a_credit_by_its_size(made: Estimate) -> None:
    lines = (line(made, "60"), line(made, "30", basis="assumed"), line(made, "-10", basis="assumed"))
    assert Bundle(lines).assumed == Decimal("0.4")
    assert Bundle(()).assumed == 0


def test_items_together_make_the_whole_and_options_are_left_out(made: Estimate) -> None:
    bundles = [bundle_of(made, item.item.number) for item in made.items]
    whole = Bundle(made.lines)
    for end in ("low", "likely", "high"):
        assert sum(getattr(bundle, end) for bundle in bundles) == getattr(whole, end)
    assert whole.likely == made.everything
    option = replace(made.lines[0], section=BY_CODE["F"])
    assert without_options([option, *made.lines[1:]]).lines == made.lines[1:]
