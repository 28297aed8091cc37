"""Monotone cubics are those of the reference library."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator

from tenderwright.calculations.hydrostatics.monotone import monotone

FIGURES = st.floats(-10, 10).map(lambda one: round(one, 6))
STEPS = st.lists(st.floats(0.1, 5.0), min_size=2, max_size=9)


@given(STEPS, st.data())
def test_it_is_the_curve_of_scipy_uneven_spacing_included(steps: list[float], data: st.DataObject) -> None:
    x = np.cumsum([0.0, *steps])
    y = np.array(data.draw(st.lists(FIGURES, min_size=x.size, max_size=x.size)))
    places = np.linspace(x[0], x[-1], 57)
    curve, slope = monotone(x, y[:, None]).at(places)
    reference = PchipInterpolator(x, y)
    assert curve[:, 0] == pytest.approx(reference(places), abs=1e-9)
    inner = places[1:-1]
    assert slope[1:-1, 0] == pytest.approx(reference.derivative()(inner), abs=1e-7)


def test_two_values_are_joined_by_a_straight_line() -> None:
    curve, slope = monotone(np.array([1.0, 3.0]), np.array([[2.0], [6.0]])).at([0.0, 2.0, 4.0])
    assert curve[:, 0].tolist() == [2.0, 4.0, 6.0]
    assert slope[1, 0] == 2.0


@given(st.lists(st.floats(0.01, 50), min_size=5, max_size=5))
def test_what_rises_in_the_table_rises_between(steps: list[float]) -> None:
    curve, _ = monotone(np.arange(6.0), np.cumsum([0.0, *steps])[:, None]).at(np.linspace(0, 5, 101))
    assert np.all(np.diff(curve[:, 0]) > -1e-9)
