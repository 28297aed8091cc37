from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.limits import (
    PUBLISHED_LIMITS,
    renewal_thickness,
    substantial_thickness,
)


@pytest.mark.parametrize(
    ("as_built", "allowable", "renew", "substantial"),
    [(10.0, 0.20, 8.0, 8.5), (10.0, 0.25, 7.5, 8.125), (12.5, 0.30, 8.75, 9.6875)],
)
def test_limits_of_plate(as_built: float, allowable: float, renew: float, substantial: float) -> None:
    # IMO 2011 ESP Code, 1.2.9 (75 % of the allowable margin); thicknesses in mm, computed.
    assert 1e3 * float(renewal_thickness(as_built / 1e3, allowable)) == pytest.approx(renew)
    assert 1e3 * float(substantial_thickness(as_built / 1e3, allowable)) == pytest.approx(substantial)


def test_every_published_limit_says_whose_it_is() -> None:
    assert all(limit.source.title and 0.1 < limit.allowable < 0.5 for limit in PUBLISHED_LIMITS)
    assert len({limit.zone for limit in PUBLISHED_LIMITS}) == len(PUBLISHED_LIMITS)


@given(st.floats(0.003, 0.05), st.floats(0.01, 0.9))
def test_substantial_comes_before_renewal(as_built: float, allowable: float) -> None:
    assert renewal_thickness(as_built, allowable) < substantial_thickness(as_built, allowable) < as_built


@pytest.mark.parametrize("allowable", [0.0, 1.0, -0.2, 25.0, float("nan")])
def test_refuses_what_is_no_allowance(allowable: float) -> None:
    with pytest.raises(OutOfRange, match="allowable"):
        renewal_thickness(0.010, allowable)
