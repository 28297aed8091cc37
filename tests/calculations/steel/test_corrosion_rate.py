from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.corrosion_rate import corrosion_rate

INCH = 0.0254
YEAR = 31_557_600.0


def test_published_rate() -> None:
    # NAVFAC P-1010: 0.704 in to 0.500 in over 4 years is 0.051 in a year, 51 mil.
    assert corrosion_rate(0.704 * INCH, 0.500 * INCH, 4 * YEAR) * YEAR / INCH == pytest.approx(0.051, abs=1e-12)


def test_thicker_later_reading_is_below_nothing() -> None:
    assert corrosion_rate(0.0100, 0.0101, YEAR) < 0.0


@given(st.floats(0, 0.05), st.floats(0, 0.05), st.floats(1e6, 1e9))
def test_rate_by_time_gives_the_loss(earlier: float, later: float, time: float) -> None:
    assert corrosion_rate(earlier, later, time) * time == pytest.approx(earlier - later, abs=1e-12)


@pytest.mark.parametrize(
    ("earlier", "later", "time"),
    [(0.01, 0.009, 0.0), (0.01, 0.009, -1.0), (-0.01, 0.009, 1.0), (0.01, float("nan"), 1.0)],
)
def test_refuses_what_is_no_pair_of_readings(earlier: float, later: float, time: float) -> None:
    with pytest.raises(OutOfRange):
        corrosion_rate(earlier, later, time)
