"""The estimate from main dimensions, against hulls whose form is known."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.hydrostatics.from_dimensions import from_dimensions, outputs_of
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import coaster, wigley


@pytest.mark.parametrize(
    ("form", "beam", "draft", "depth"), [(coaster(), 8.4, 2.6, 4.8), (wigley(intervals=40), 10.0, 6.25, 6.25)]
)
def test_it_comes_as_near_as_it_says(form, beam, draft, depth):
    exact = hydrostatics(form, draft)
    found = outputs_of(from_dimensions(form.length, beam, draft, exact.displacement, depth))
    assert found["kb"] == pytest.approx(exact.kb, rel=0.07)
    assert 0.86 * exact.km_transverse < found["km_transverse"] < exact.km_transverse
    assert found["mass_per_immersion"] == pytest.approx(exact.mass_per_immersion, rel=0.1)
    assert found["bm_longitudinal"] == pytest.approx(exact.bm_longitudinal, rel=0.26)


@given(st.floats(0.36, 0.84), st.floats(20, 120), st.floats(4, 8), st.floats(2.1, 4))
def test_the_table_keeps_its_own_laws(block, length, slenderness, shallowness):
    """dV/dd = A_w, the stated displacement stands at the stated draft, and KB is Posdunine's at every draft."""
    beam, draft = length / slenderness, length / slenderness / shallowness
    displacement = block * length * beam * draft * 1025.0
    found = from_dimensions(length, beam, draft, displacement, 2 * draft)
    hull = found.hull
    assert found.block_coefficient == pytest.approx(block)
    assert float(hull.displacement.min()) < displacement < float(hull.displacement.max()) or block > 0.8
    power = found.waterplane_coefficient / block
    assert hull.kb == pytest.approx(hull.drafts * power / (power + 1))
    assert hull.immersion == pytest.approx(power * hull.displacement / hull.drafts)
    middle = float(hull.drafts[3] + hull.drafts[5]) / 2
    rise = (hydrostatics(hull, middle * 1.01).volume - hydrostatics(hull, middle * 0.99).volume) / (0.02 * middle)
    assert rise == pytest.approx(hydrostatics(hull, middle).waterplane_area, rel=0.01)


def test_the_block_coefficient_must_be_that_of_a_ship():
    with pytest.raises(OutOfRange, match=r"block coefficient of 0\.9"):
        from_dimensions(40.0, 8.0, 2.0, 0.9 * 640 * 1025, 4.0)
    with pytest.raises(OutOfRange, match="must be positive"):
        from_dimensions(40.0, 8.0, 2.0, 0.0, 4.0)
