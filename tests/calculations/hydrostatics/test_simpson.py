from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import simpson

from tenderwright.calculations.hydrostatics.simpson import LARGEST_RATIO, simpson_area, weights
from tenderwright.calculations.method import OutOfRange

gaps = st.lists(st.floats(0.75, 1.5), min_size=2, max_size=14)


def positions(steps: list[float]) -> np.ndarray:
    return np.concatenate([[0.0], np.cumsum(steps)])


def test_even_spacing_gives_simpsons_first_rule():
    """Tupper, Introduction to Naval Architecture, p. 26: h/3 (1, 4, 2, ..., 4, 1)."""
    assert weights(np.arange(7) * 1.5) == pytest.approx(0.5 * np.array([1, 4, 2, 4, 2, 4, 1]), abs=1e-14)


def test_half_spacing_at_the_ends_gives_half_multipliers():
    """Tupper, p. 26: half spacing at an end gives 1/2, 2, 1 1/2 before the fours."""
    found = weights([0, 0.5, 1, 2, 3, 3.5, 4])
    assert 3 * found == pytest.approx([0.5, 2, 1.5, 4, 1.5, 2, 0.5], abs=1e-12)


def test_last_odd_interval_follows_the_five_eight_minus_one_rule():
    """Tupper, p. 26: area of one bay is h/12 (5, 8, -1)."""
    found = 12 * (weights([0, 1, 2, 3]) - np.append(weights([0, 1, 2]), 0.0))
    assert found == pytest.approx([0, -1, 8, 5], abs=1e-12)


@given(gaps)
def test_uneven_spacing_agrees_with_scipy(steps):
    x = positions(steps)
    y = np.cos(x) + 2
    assert weights(x) @ y == pytest.approx(simpson(y, x=x), rel=1e-11)


@given(st.lists(st.floats(0.01, 10), min_size=1, max_size=12))
def test_straight_lines_are_exact_and_weights_never_negative_at_the_ends(steps):
    x = positions(steps)
    w = weights(x)
    assert w.sum() == pytest.approx(x[-1], rel=1e-9)
    assert w @ x == pytest.approx(x[-1] ** 2 / 2, rel=1e-9)
    assert w[0] >= -1e-9 * x[-1]


def test_intervals_beyond_the_ratio_are_taken_apart():
    assert weights([0, 1, 1 + LARGEST_RATIO * 1.5]) == pytest.approx([0.5, 2.0, 1.5])


def test_derrett_waterplane():
    """Derrett, Ship Stability for Masters and Mates, p. 74: area 1207 m2, TPC 12.37."""
    half = [0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1]
    found = simpson_area([2 * y for y in half], [20.0 * i for i in range(7)])
    assert found["area"] == pytest.approx(1207, abs=0.5)
    assert found["area"] * 1.025 / 100 == pytest.approx(12.37, abs=0.005)


def test_reeds_section_areas():
    """Reed's Naval Architecture for Marine Engineers, 4th ed., ex. 3.11: 9790.8 t, LCB 2.07 m forward."""
    areas = [2.0, 40, 79, 100, 103, 104, 104, 103, 97, 58, 0]
    found = simpson_area(areas, [12.0 * i for i in range(11)])
    assert found["area"] * 1.025 == pytest.approx(9790.8, abs=0.05)
    assert found["centroid"] - 60 == pytest.approx(2.07, abs=0.005)


def test_waterplane_areas_to_volume():
    """A Reed's-type exercise (studyx.ai): seven waterplanes 1.5 m apart hold 17445 m3."""
    planes = [865.0, 1735, 1965, 2040, 2100, 2145, 2215]
    assert simpson_area(planes, [1.5 * i for i in range(7)])["area"] == pytest.approx(17445)


def test_half_areas_to_volume():
    """An exercise printed at transtutors 286740: 11748 m3 from half section areas 10 m apart."""
    half = [0, 19.4, 45.7, 73.6, 94.4, 104.1, 97.1, 76.4, 48.5, 23.5, 2.8]
    found = simpson_area([2 * a for a in half], [10.0 * i for i in range(11)])
    assert found["area"] == pytest.approx(11748, abs=0.5)


@pytest.mark.parametrize("x", [[0.0], [0.0, 0.0], [1.0, 0.0]])
def test_positions_must_rise(x):
    with pytest.raises(OutOfRange):
        weights(x)


def test_lengths_must_match():
    with pytest.raises(OutOfRange, match="2 ordinates but 3"):
        simpson_area([1, 2], [0, 1, 2])


def test_no_area_is_refused():
    with pytest.raises(OutOfRange, match="no area"):
        simpson_area([0, 0, 0], [0, 1, 2])
