"""Money set aside, against a sinking fund worked by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.cost.set_aside import set_aside
from tenderwright.calculations.method import OutOfRange


def test_a_sinking_fund() -> None:
    # s(5 years at 4 %) = (1.04^5 - 1)/0.04 = 5.416323, in any table of interest; 100000/5.416323 = 18462.71.
    assert set_aside(100000, 5, 0.0, 0.04).yearly == pytest.approx(18462.71, abs=0.01)


def test_prices_rise_and_savings_count() -> None:
    found = set_aside(800000, 5, 0.03, saved=100000)
    assert found.cost_then == pytest.approx(927419.26, abs=0.01)  # 800000 x 1.159274
    assert found.yearly == pytest.approx(827419.26 / 5, abs=0.01)
    assert set_aside(1000, 5, 0.0, saved=2000).yearly == 0.0


@given(st.floats(1, 1e7), st.floats(1, 30), st.floats(0, 0.1), st.floats(0.001, 0.1))
def test_what_is_set_aside_comes_to_the_cost(cost: float, years: float, rise: float, interest: float) -> None:
    found = set_aside(cost, years, rise, interest)
    saved = 0.0
    for _ in range(found.payments):
        saved = saved * (1 + interest) + found.yearly
    assert saved == pytest.approx(found.cost_then, rel=1e-9)


def test_what_is_due_already_is_no_plan() -> None:
    with pytest.raises(OutOfRange, match="later than today"):
        set_aside(1000, 0, 0.03)
