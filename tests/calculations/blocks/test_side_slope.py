"""Friction holds a side block under a shell no steeper than its angle; one that slipped stood on twice that."""

from __future__ import annotations

from math import atan, cos, pi, radians, sin, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.blocks.side_slope import METHOD, side_slopes, steepest_slope
from tenderwright.calculations.method import OutOfRange
from tests.calculations.landing.test_methods import run


@given(st.floats(0.0, 1.2), st.floats(-1.2, 1.2))
def test_the_slope_is_that_of_the_plane_whichever_way_it_faces(slope: float, bearing: float) -> None:
    """Derived: a plane of slope b that faces a bearing rises by tan b cos and tan b sin along the axes."""
    across, along = (atan(tan(slope) * f(bearing)) for f in (cos, sin))
    assert steepest_slope(across, along) == pytest.approx(slope, abs=1e-9)


@given(st.floats(0.05, 1.0), st.floats(0.0, 1.4))
def test_a_block_stays_while_friction_along_the_slope_is_no_less_than_the_pull_down_it(mu: float, slope: float) -> None:
    """Derived: sin b <= mu cos b."""
    found = side_slopes([{"bevel": slope}], mu, "assumed").limit
    pull, hold = sin(slope), mu * cos(slope)
    if abs(pull - hold) > 1e-6:
        assert found.met is (pull < hold)


def test_the_steepest_of_several_is_named_and_without_friction_it_is_not_known() -> None:
    found = side_slopes([{"bevel": 0.1}, {"bevel": 0.2, "bevel_forward": -0.1}, {"bevel": 0.15}])
    assert found.steepest == 1
    assert found.limit.met is None
    assert run(METHOD)["met"] is True
    for wrong in (([], 0.3, "assumed"), ([{"bevel": 0.1}], 0.3, ""), ([{"bevel": 0.1}], -0.1, "assumed")):
        with pytest.raises(OutOfRange):
            side_slopes(*wrong)


def test_the_method_gives_each_slope_beside_the_angle_of_friction() -> None:
    found = run(METHOD)
    assert found["slopes"][0] == pytest.approx(atan((tan(radians(10)) ** 2 + tan(radians(1)) ** 2) ** 0.5))
    assert found["friction_angle"] == pytest.approx(atan(0.3))
    assert found["greatest"] < pi / 2
