from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.bids.break_even import METHOD, break_even
from tenderwright.calculations.method import OutOfRange

SUMS = st.integers(-10_000_000, 10_000_000).map(float)
RATES = st.integers(0, 100_000).map(lambda cents: cents / 100)


def test_difference_of_lump_sums_over_difference_of_rates() -> None:
    """Constructed: lump sums 6 000 apart and rates 5 apart are equal at 1 200 units; no published table was found."""
    assert break_even(100_000.0, 17.0, 106_000.0, 12.0) == 1200.0
    assert METHOD.run(rest_a=100_000.0, rate_a=17.0, rest_b=106_000.0, rate_b=12.0)["total"] == 120_400.0


def test_where_one_bid_is_dearer_in_both_no_quantity_makes_them_equal() -> None:
    assert break_even(106_000.0, 17.0, 100_000.0, 12.0) < 0.0


@given(SUMS, RATES, SUMS, RATES)
def test_at_that_quantity_both_come_to_the_same(rest_a: float, rate_a: float, rest_b: float, rate_b: float) -> None:
    if rate_a == rate_b:
        return
    quantity = break_even(rest_a, rate_a, rest_b, rate_b)
    size = max(1.0, abs(rest_a), abs(rest_b), abs(quantity) * max(rate_a, rate_b))
    assert abs(rest_a + rate_a * quantity - rest_b - rate_b * quantity) <= 1e-9 * size


@given(SUMS, RATES, SUMS, RATES)
def test_the_order_of_the_two_does_not_matter(rest_a: float, rate_a: float, rest_b: float, rate_b: float) -> None:
    if rate_a != rate_b:
        assert break_even(rest_a, rate_a, rest_b, rate_b) == break_even(rest_b, rate_b, rest_a, rate_a)


@pytest.mark.parametrize("given_", [(1.0, 2.0, 3.0, 2.0), (math.nan, 2.0, 3.0, 4.0), (1e308, 0.0, -1e308, 5e-324)])
def test_what_has_no_answer_is_refused(given_: tuple[float, float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        break_even(*given_)
