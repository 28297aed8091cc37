from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.bids.beyond import beyond
from tenderwright.calculations.cost.three_point import Shape, ThreePoint
from tenderwright.calculations.method import OutOfRange

TRIPLES = st.tuples(*[st.integers(0, 10_000).map(float)] * 3).map(sorted).filter(lambda three: three[0] < three[2])
SHAPES: st.SearchStrategy[Shape] = st.sampled_from(["pert", "triangular"])


def test_a_pert_quantity_by_its_polynomial() -> None:
    """Derived: likely in the middle gives Beta(3, 3), whose distribution is 10 x³ - 15 x⁴ + 6 x⁵."""
    x = 0.25
    below = 10 * x**3 - 15 * x**4 + 6 * x**5
    assert beyond(ThreePoint(0.0, 50.0, 100.0), 25.0) == pytest.approx(1.0 - below, abs=1e-12)
    assert beyond(ThreePoint(0.0, 50.0, 100.0), 50.0) == pytest.approx(0.5, abs=1e-12)


def test_a_triangular_quantity_by_its_areas() -> None:
    """Derived: the tail of a triangle is a smaller triangle."""
    estimate = ThreePoint(0.0, 40.0, 100.0, "triangular")
    assert beyond(estimate, 70.0) == pytest.approx(30.0**2 / (100.0 * 60.0))
    assert beyond(estimate, 20.0) == pytest.approx(1.0 - 20.0**2 / (100.0 * 40.0))


def test_outside_the_range_it_is_certain() -> None:
    estimate = ThreePoint(10.0, 12.0, 20.0)
    assert [beyond(estimate, quantity) for quantity in (9.0, 10.0, 20.0, 21.0)] == [1.0, 1.0, 0.0, 0.0]
    assert beyond(ThreePoint(5.0, 5.0, 5.0), 5.0) == 0.0
    assert beyond(ThreePoint(5.0, 5.0, 5.0), 4.9) == 1.0


@given(TRIPLES, SHAPES, st.floats(0.01, 0.99))
def test_it_is_the_other_side_of_the_quantile(three: list[float], shape: Shape, share: float) -> None:
    estimate = ThreePoint(three[0], three[1], three[2], shape)
    quantity = float(estimate.quantile(np.array(share)))
    # The table of quantiles is right within 1e-5 of the range; where the density is steep that is more in the share.
    assert beyond(estimate, quantity) == pytest.approx(1.0 - share, abs=2e-3)


@given(TRIPLES, SHAPES, st.floats(0.0, 10_000.0), st.floats(0.0, 10_000.0))
def test_a_greater_quantity_is_passed_less_often(three: list[float], shape: Shape, one: float, other: float) -> None:
    estimate = ThreePoint(three[0], three[1], three[2], shape)
    less, more = sorted((one, other))
    assert 0.0 <= beyond(estimate, more) <= beyond(estimate, less) + 1e-12 <= 1.0 + 2e-12


def test_no_number_is_refused() -> None:
    with pytest.raises(OutOfRange):
        beyond(ThreePoint(1.0, 2.0, 3.0), math.nan)
