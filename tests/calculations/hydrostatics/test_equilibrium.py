from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.hydrostatics.equilibrium import float_at, float_at_trim
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import barge, coaster

COASTER = coaster()


@given(st.floats(1.5, 3.8), st.floats(-0.8, 0.8), st.floats(1.0, 4.0))
def test_finds_the_position_it_was_made_from(draft, trim, vcg):
    made = hydrostatics(COASTER, draft, trim)
    lcg = made.lcb + trim / 40 * (made.kb - vcg) * -1
    found = float_at(COASTER, made.displacement, lcg, vcg, 1025.0)
    assert (found.draft, found.trim) == pytest.approx((draft, trim), abs=1e-7)


def test_barge_trims_by_statics():
    """Derived: a box at even keel carries LCG amidships; moving a mass w through d gives tan(th) = w d/(W
    GM_L)."""
    mass, shift = 40 * 8 * 2 * 1000.0, 0.05
    found = float_at(barge(), mass, 20 - shift, 2.5, 1000.0)
    gm = hydrostatics(barge(), 2.0, 0.0, 1000.0).km_longitudinal - 2.5
    assert found.draft == pytest.approx(2.0, rel=1e-9)
    assert found.trim == pytest.approx(40 * shift / gm, rel=1e-3)


def test_denser_water_lifts_her():
    fresh, salt = (float_at(COASTER, 500e3, 19.0, 3.0, rho) for rho in (1000.0, 1025.0))
    assert fresh.draft > salt.draft
    assert fresh.volume == pytest.approx(500.0, rel=1e-10)


@pytest.mark.parametrize(
    ("mass", "lcg", "why"), [(3000e3, 19, "displaces"), (500e3, 39, "position|deck"), (-1, 19, "positive")]
)
def test_impossible_conditions_are_refused(mass, lcg, why):
    with pytest.raises(OutOfRange, match=why):
        float_at(COASTER, mass, lcg, 3.0, 1025.0)


@given(st.floats(1.5, 3.8), st.floats(-0.8, 0.8))
def test_finds_the_draft_for_a_volume_at_a_trim(draft, trim):
    volume = hydrostatics(COASTER, draft, trim).volume
    assert float_at_trim(COASTER, volume, trim, 1025.0).draft == pytest.approx(draft, abs=1e-9)


def test_no_draft_for_more_than_the_hull_holds():
    with pytest.raises(OutOfRange, match="displaces"):
        float_at_trim(COASTER, 5000.0, 0.2, 1025.0)
