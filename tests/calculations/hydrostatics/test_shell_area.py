from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.hydrostatics.band_area import band_area
from tenderwright.calculations.hydrostatics.hull_form import hull_form
from tenderwright.calculations.hydrostatics.sections import NODE_WEIGHTS, NODES
from tenderwright.calculations.hydrostatics.shell_area import shell_area
from tenderwright.calculations.hydrostatics.wetted_surface import wetted_surface
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import barge, coaster, cylinder, prism, wigley

COASTER = coaster()


def test_wigley_surface():
    """Exact quadrature of the Wigley hull (derived), 1487.906 m2; ITTC cooperative tests give 0.1487 L^2
    (from memory)."""
    assert wetted_surface(wigley(intervals=20), 6.25) == pytest.approx(1487.906, rel=1e-5)
    assert wetted_surface(wigley(intervals=40), 6.25) == pytest.approx(1487.90631, rel=1e-6)


def test_wigley_girths_without_slope():
    """Derived: Simpson on exact girths at 21 stations gives 0.148363678 L^2, 0.29 % low."""
    form = wigley()
    girth = form.curves.half_girth(np.full(21, 6.25))
    assert 2 * form.weights @ girth / 1e4 == pytest.approx(0.148363678, abs=1e-9)


def test_box_surface():
    """Derived: a box with its ends, LB + 2LT + 2BT."""
    assert wetted_surface(barge(), 2.3) == pytest.approx(40 * 8 + 2 * 40 * 2.3 + 2 * 8 * 2.3, rel=1e-13)


def test_prism_surface():
    """Derived: two sloping sides and two triangular ends."""
    assert wetted_surface(prism(), 3.0) == pytest.approx(2 * 40 * np.hypot(3, 3) + 2 * 9, rel=1e-12)


def test_cylinder_surface():
    """Derived: half a cylinder, pi r L, and its two half ends; 32 waterlines in the half give 0.5 %."""
    assert wetted_surface(cylinder(), 3.0) == pytest.approx(np.pi * 3 * 30 + np.pi * 9, rel=5e-3)


def test_ship_shaped_hull_agrees_with_a_fine_mesh():
    """Derived: triangles between 400 cuts of the same lines, and the flat of bottom, within 1 %."""
    x, top = np.linspace(-1, 40, 411), 2.5
    z = np.array([np.linspace(min(COASTER.keel_at(v), top), top, 50) for v in x])
    y = np.array([COASTER.half_breadth_at(v, row) for v, row in zip(x, z, strict=True)])
    p = np.stack([np.broadcast_to(x[:, None], z.shape), y, z], axis=-1)
    a, b, c, d = p[:-1, :-1], p[1:, :-1], p[1:, 1:], p[:-1, 1:]
    doubled = sum(np.linalg.norm(np.cross(v - a, w - a), axis=-1).sum() for v, w in ((b, c), (c, d)))
    mesh = doubled + 2 * np.trapezoid(y[:, 0], x)
    assert wetted_surface(COASTER, top) == pytest.approx(mesh, rel=0.01)


def test_sloping_sides_count_by_the_secant():
    """Derived: a wedge of plan, half-breadth 3 x/10, has plane sides of sqrt(1 + 0.3^2) per metre of
    length."""
    x = np.linspace(0, 10, 5)
    form = hull_form(length=10, stations=x, waterlines=[0, 1, 2], half_breadths=np.tile(0.3 * x, (3, 1)).T)
    assert shell_area(form, 0.5, 1.5) == pytest.approx(2 * 10 * np.hypot(1, 0.3), rel=1e-12)


@given(st.floats(0.5, 4.0), st.floats(0, 1), st.floats(0, 1), st.floats(-0.4, 0.4))
def test_bands_add_up(lower, first, second, trim):
    middle = lower + first * (4.4 - lower)
    upper = middle + second * (4.4 - middle)
    parts = band_area(COASTER, lower, middle, trim) + band_area(COASTER, middle, upper, trim)
    assert parts == pytest.approx(band_area(COASTER, lower, upper, trim), rel=1e-9, abs=1e-9)


def test_bottom_band_and_topside_make_the_whole_hull():
    parts = band_area(COASTER, None, 2.5) + band_area(COASTER, 2.5, None)
    assert parts == pytest.approx(band_area(COASTER), rel=1e-12)


def test_topside_of_the_barge():
    assert band_area(barge(), 2.0, None) == pytest.approx((2 * 40 + 2 * 8) * 3.0, rel=1e-13)


def test_lower_must_be_below_upper():
    with pytest.raises(OutOfRange, match="above the upper"):
        band_area(COASTER, 3.0, 2.0)


def test_wetted_surface_stops_at_the_deck_edge():
    with pytest.raises(OutOfRange, match="deck edge"):
        wetted_surface(barge(), 5.5)


def test_the_points_along_a_curve_are_those_of_gauss():
    nodes, weights = np.polynomial.legendre.leggauss(4)
    assert (0.5 * (nodes + 1.0)).tolist() == NODES.tolist()
    assert (0.5 * weights).tolist() == NODE_WEIGHTS.tolist()
