"""Landing a ship known by her table of hydrostatics alone, against the landing by her form."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.landing.curve import landing_curve
from tenderwright.calculations.landing.exact import Lander, greatest_entry_trim, settle_exactly
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.curves_of import curves_of
from tests.calculations.hydrostatics.hulls import coaster

FORM = coaster()
TABLE = curves_of(FORM, np.arange(1.0, 3.81, 0.2).tolist())
SHIP = Lander(FORM, 480e3, 18.6, 3.0, 1015.0, BlockLine(3.0, 36.0), -0.15, 20e3, 0.3)


@given(st.floats(18.5, 19.6), st.floats(2.9, 3.4))
@settings(max_examples=25)
def test_lands_as_by_her_form(lcg, vcg):
    by_form = settle_exactly(replace(SHIP, lcg=lcg, vcg=vcg))
    by_table = settle_exactly(replace(SHIP, form=TABLE, lcg=lcg, vcg=vcg))
    one, other = by_table.settling, by_form.settling
    assert one.first_block == other.first_block
    assert one.upthrust == pytest.approx(other.upthrust, rel=0.03, abs=100)
    assert one.draft_aft == pytest.approx(other.draft_aft, abs=0.003)
    assert one.stability.gm == pytest.approx(other.stability.gm, abs=0.03)
    for found, exact in ((by_table.instability, by_form.instability), (by_table.bearing, by_form.bearing)):
        assert found is not None
        assert exact is not None
        assert found.margin == pytest.approx(exact.margin, abs=0.05)
        assert not found.at_least


def test_followed_down_to_the_last_draft_of_the_table():
    short = replace(SHIP, form=curves_of(FORM, [2.2, 2.3, 2.5, 2.8, 3.0]), vcg=2.6)
    zero, by_form = settle_exactly(short).instability, settle_exactly(replace(SHIP, vcg=2.6)).instability
    assert zero.at_least
    assert zero.margin < by_form.margin
    curve = landing_curve(short)
    assert curve.upthrust[-1] == pytest.approx(zero.upthrust)
    assert 0 < curve.upthrust[-1] < short.displacement
    assert curve.gm[-1] > 0


def test_a_table_that_ends_before_she_settles_says_what_it_would_take():
    with pytest.raises(OutOfRange, match="it takes rows on to"):
        settle_exactly(replace(SHIP, form=curves_of(FORM, [2.32, 2.5, 2.8])))


def test_the_greatest_entry_trim_is_found_within_the_trims_that_a_table_is_read_at():
    found, exact = (
        greatest_entry_trim(replace(SHIP, form=TABLE, vcg=3.65)),
        greatest_entry_trim(replace(SHIP, vcg=3.65)),
    )
    assert found == pytest.approx(exact, abs=0.02)
    assert greatest_entry_trim(replace(SHIP, form=TABLE)) is None
    assert greatest_entry_trim(SHIP) > 0.8
