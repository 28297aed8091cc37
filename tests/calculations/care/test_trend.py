"""Trends of readings: exact lines, doubling, and what is too few."""

from __future__ import annotations

from datetime import date, timedelta
from math import log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.care.trend import trend
from tenderwright.calculations.method import OutOfRange

FIRST = date(2026, 1, 1)


def days(*after: float) -> list[str]:
    return [(FIRST + timedelta(days=one)).isoformat() for one in after]


def test_what_doubles_in_a_year_has_the_logarithm_of_two_as_slope() -> None:
    found = trend(days(0, 365.25, 730.5, 1461), [10, 20, 40, 160], 320, growth=True)
    assert found.slope == pytest.approx(log(2), rel=2e-3)
    assert found.reaches == pytest.approx(1.0, rel=2e-2)


@given(st.floats(-5, 5), st.floats(0.1, 3))
def test_an_exact_line_is_found_and_reaches_its_limit(start: float, slope: float) -> None:
    on = days(0, 100, 200, 487)
    years = [(date.fromisoformat(day) - FIRST).days / 365.25 for day in on]
    found = trend(on, [start + slope * year for year in years], start + slope * 3)
    assert found.slope == pytest.approx(slope, rel=1e-6)
    assert found.reaches == pytest.approx(3 - years[-1], rel=1e-5)


def test_the_early_day_comes_before_the_likely_one_and_a_passed_limit_is_now() -> None:
    found = trend(days(0, 30, 60, 90, 120), [10, 13, 11, 15, 14], 30)
    assert found.early is not None
    assert found.reaches is not None
    assert found.early < found.reaches
    assert trend(days(0, 30, 60, 90), [10, 20, 30, 40], 25).reaches == 0.0


def test_what_falls_never_reaches_a_limit_above() -> None:
    assert trend(days(0, 30, 60, 90), [40, 30, 20, 10], 50).reaches is None


@pytest.mark.parametrize(("count", "words"), [(3, "4 readings"), (0, "4 readings")])
def test_a_few_readings_are_no_trend(count: int, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        trend(days(*range(count)), [1.0] * count, 5)
