"""What may be lost where the yard fails: worked cases, and laws of the worst moment."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cost.exposure import moments, worst

AMOUNTS = st.lists(
    st.fixed_dictionaries({"day": st.integers(0, 40).map(float), "amount": st.integers(0, 10**6).map(float)}),
    min_size=1,
    max_size=6,
)
ADVANCE = [{"day": 0.0, "amount": 200_000.0}]
LEAVING = 60_000.0 + 15_000.0


def test_an_advance_of_a_fifth_without_work_or_security() -> None:
    """Price 1,000,000, 60,000 to refloat and tow, 15,000 of dock: worked by hand."""
    most = worst(moments(ADVANCE, leaving=LEAVING))
    assert (most.exposure, most.day) == (275_000.0, 0.0)


def test_the_same_against_a_refund_guarantee() -> None:
    secured = [{"from": 0.0, "until": 50.0, "amount": 200_000.0}]
    found = moments(ADVANCE, secured=secured, leaving=LEAVING)
    assert found[0].exposure == 75_000.0
    assert (worst(found).exposure, worst(found).day) == (275_000.0, 51.0)


def test_nothing_is_counted_for_taking_her_away_before_she_comes_or_after_she_left() -> None:
    found = moments(ADVANCE, leaving=LEAVING, arrival=10.0, redelivery=30.0)
    assert [(one.day, one.exposure) for one in found] == [(0.0, 2e5), (10.0, 275_000.0), (30.0, 2e5)]


@given(AMOUNTS, AMOUNTS, st.integers(0, 10**5))
def test_work_aboard_lowers_what_may_be_lost_and_a_payment_never_does(
    paid: list[dict[str, float]], aboard: list[dict[str, float]], leaving: int
) -> None:
    most = worst(moments(paid, aboard, leaving=float(leaving))).exposure
    assert most <= worst(moments(paid, leaving=float(leaving))).exposure
    assert most <= worst(moments([*paid, *ADVANCE], aboard, leaving=float(leaving))).exposure


@given(AMOUNTS, AMOUNTS)
def test_at_the_end_it_is_what_was_paid_less_what_is_aboard(
    paid: list[dict[str, float]], aboard: list[dict[str, float]]
) -> None:
    last = moments(paid, aboard)[-1]
    assert last.exposure == sum(one["amount"] for one in paid) - sum(one["amount"] for one in aboard)
