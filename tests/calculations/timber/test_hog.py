from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.timber.hog import hog
from tenderwright.calculations.timber.hog_by_drafts import hog_by_drafts

heights = st.floats(-0.5, 0.5)


def test_hog_is_the_height_midway_over_the_mean_of_the_ends() -> None:
    keel = [{"x": 0.6, "z": 0.0}, {"x": 5.6, "z": 0.038}, {"x": 10.6, "z": 0.004}]
    found = hog(keel)
    assert found["hog"] == pytest.approx(0.038 - 0.002)
    assert (found["greatest"], found["at"]) == (pytest.approx(0.036), 5.6)
    assert found["share"] == pytest.approx(0.0036)


@given(st.lists(heights, min_size=3, max_size=9), heights, st.floats(-0.05, 0.05))
def test_hog_is_the_same_of_a_keel_that_is_raised_and_trimmed(z: list[float], up: float, slope: float) -> None:
    level = [{"x": float(x), "z": one} for x, one in enumerate(z)]
    trimmed = [{"x": one["x"], "z": one["z"] + up + slope * one["x"]} for one in level]
    assert hog(trimmed)["hog"] == pytest.approx(hog(level)["hog"], abs=1e-9)
    assert hog(trimmed)["off"] == pytest.approx(hog(level)["off"], abs=1e-9)


def test_drafts_tell_it_as_the_keel_line_does() -> None:
    """A keel raised 30 mm midway draws 30 mm less there."""
    assert hog_by_drafts(1.2, 1.37, 1.6) == {"hog": pytest.approx(0.03)}


def test_two_points_are_no_line() -> None:
    with pytest.raises(OutOfRange):
        hog([{"x": 0.0, "z": 0.0}, {"x": 0.0, "z": 0.1}, {"x": 5.0, "z": 0.0}])
