from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.timber.proportion import bounds_of_share


@pytest.mark.parametrize(
    ("drawn", "bad", "lower", "upper"),
    [
        # Exact 95 % limits as tabled for the binomial (Geigy Scientific Tables; from memory).
        (10, 0, 0.0, 0.3085),
        (10, 1, 0.0025, 0.4450),
        (20, 5, 0.0866, 0.4910),
        (8, 8, 0.6306, 1.0),
    ],
)
def test_tabled_limits_come_out(drawn: int, bad: int, lower: float, upper: float) -> None:
    assert bounds_of_share(drawn, bad, 0.95) == pytest.approx((lower, upper), abs=5e-5)


@given(st.integers(1, 200), st.data(), st.floats(0.5, 0.999))
def test_the_bounds_are_quantiles_of_the_beta_distribution(drawn: int, data: st.DataObject, confidence: float) -> None:
    bad = data.draw(st.integers(0, drawn))
    lower, upper = bounds_of_share(drawn, bad, confidence)
    tail = 0.5 * (1 - confidence)
    assert lower == pytest.approx(beta.ppf(tail, bad, drawn - bad + 1) if bad else 0.0, abs=1e-9)
    assert upper == pytest.approx(beta.ppf(1 - tail, bad + 1, drawn - bad) if bad < drawn else 1.0, abs=1e-9)
    assert lower <= bad / drawn <= upper


@given(st.integers(1, 100), st.data())
def test_good_and_bad_are_mirrored(drawn: int, data: st.DataObject) -> None:
    bad = data.draw(st.integers(0, drawn))
    lower, upper = bounds_of_share(drawn, bad, 0.9)
    assert bounds_of_share(drawn, drawn - bad, 0.9) == pytest.approx((1 - upper, 1 - lower), abs=1e-9)


@pytest.mark.parametrize(("drawn", "bad", "confidence"), [(0, 0, 0.95), (8, 9, 0.95), (8, 1, 0.4), (1001, 1, 0.95)])
def test_beyond_its_range_nothing_is_given(drawn: int, bad: int, confidence: float) -> None:
    with pytest.raises(OutOfRange):
        bounds_of_share(drawn, bad, confidence)
