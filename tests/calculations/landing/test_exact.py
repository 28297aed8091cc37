"""Landing with the hydrostatics read again, against boxes by hand and against the hand method."""

from __future__ import annotations

from math import atan

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.hydrostatics.hull_form import hull_form
from tenderwright.calculations.landing.curve import held_curve, landing_curve
from tenderwright.calculations.landing.exact import (
    Lander,
    greatest_entry_trim,
    held_particulars,
    last_draft,
    settle_exactly,
)
from tenderwright.calculations.landing.held import BlockLine
from tenderwright.calculations.landing.landing import METHOD
from tenderwright.calculations.landing.root import root_between
from tenderwright.calculations.landing.settling import settle
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import barge, coaster

BARGE = Lander(barge(), 640e3, 19.5, 2.0, 1000.0, BlockLine(2.0, 38.0))
COASTER = Lander(coaster(), 480e3, 18.2, 3.0, 1015.0, BlockLine(3.0, 36.0), -0.15, 20e3)


@given(st.floats(1e-4, 1e-2))
@settings(max_examples=25)
def test_tends_to_the_hand_method_on_a_wall_sided_box(offset):
    """Derived: the two upthrusts differ by a part that goes to nothing with the trim."""
    ship = replace(BARGE, lcg=20.0 - offset)
    exact, held = settle_exactly(ship).settling, settle(held_particulars(ship), ship.blocks).settling
    assert exact.upthrust == pytest.approx(held.upthrust, rel=0.5 * offset + 1e-6)
    assert exact.fall == pytest.approx(held.fall, rel=0.5 * offset + 1e-6)
    assert exact.draft_aft == pytest.approx(held.draft_aft, abs=1e-2 * offset + 1e-7)
    assert exact.first_block == held.first_block == 2.0


def test_box_settled_level_by_hand():
    """Derived: level on the blocks the weight and the upthrust balance about the middle: W e = P (20 - 2)."""
    one = settle_exactly(BARGE).settling
    assert one.upthrust == pytest.approx(640e3 * 0.5 / 18.0, rel=1e-7)
    draft = (640e3 - one.upthrust) / (1000.0 * 320.0)
    assert (one.draft_aft, one.draft_forward) == pytest.approx((draft, draft), abs=1e-7)
    km = draft / 2 + 64 / (12 * draft)
    assert one.stability.righting_moment == pytest.approx((640e3 - one.upthrust) * km - 640e3 * 2.0, rel=1e-7)


def test_box_loses_stability_where_its_moment_is_nothing():
    """Derived: rho (V KB + I_T) = W KG, with V KB = 320 d^2/2 and I_T = 40 * 8^3/12, here for KG 3.5 m."""
    ship = replace(BARGE, vcg=3.5)
    zero = settle_exactly(ship).instability
    draft = np.sqrt((640e3 * 3.5 / 1000.0 - 40 * 512 / 12) / 160.0)
    assert zero.draft_aft == pytest.approx(draft, abs=1e-7)
    assert zero.upthrust == pytest.approx(640e3 - 320e3 * draft, rel=1e-7)
    assert zero.margin > 0


def test_box_comes_down_to_the_least_metacentric_height_where_its_moment_is_that():
    """Derived: rho (V KB + I_T) - W KG = W x, for KG 3.5 m and x 0.1 m; RM/W is the lesser form."""
    ship = replace(BARGE, vcg=3.5, least_gm=0.1)
    landing = settle_exactly(ship)
    draft = np.sqrt((640e3 * 3.6 / 1000.0 - 40 * 512 / 12) / 160.0)
    assert landing.bearing is not None
    assert landing.bearing.draft_aft == pytest.approx(draft, abs=1e-7)
    assert 0 < landing.bearing.margin < landing.instability.margin


@pytest.mark.parametrize("ship", [replace(BARGE, vcg=3.5, least_gm=0.1), replace(COASTER, least_gm=0.9)])
@pytest.mark.parametrize("declivity", [0.0, 0.01])
def test_entering_at_the_greatest_trim_she_settles_at_the_least_metacentric_height(ship, declivity):
    ship = replace(ship, blocks=replace(ship.blocks, declivity=declivity))
    greatest = greatest_entry_trim(ship)
    by = 1.0 if ship.blocks.first_touched(ship.under(0.0, 0.0).trim, ship.form.length) == ship.blocks.aft else -1.0
    lcg = root_between(
        lambda x: by * replace(ship, lcg=x).under(0.0, 0.0).trim - greatest, ship.lcg - 1.5, ship.lcg + 1.5, 1e-9
    )
    landing = settle_exactly(replace(ship, lcg=lcg))
    assert landing.settling.stability.gm == pytest.approx(ship.least_gm, abs=1e-6)
    assert landing.bearing.margin == pytest.approx(0.0, abs=1e-5)


def test_without_the_height_afloat_side_blocks_would_bear_at_the_first_touch():
    ship = replace(BARGE, vcg=3.5, least_gm=1.5)
    landing = settle_exactly(ship)
    assert landing.bearing is not None
    assert landing.bearing.upthrust == 0.0
    assert landing.bearing.margin == pytest.approx(-landing.settling.fall)
    assert greatest_entry_trim(ship) is None


def test_low_broad_box_keeps_its_stability():
    """Derived: a box with rho I_T > W KG is stable on a film of water, and loses her stability with the last of it."""
    zero = settle_exactly(BARGE).instability
    assert zero.upthrust == 640e3
    assert (zero.draft_aft, zero.draft_forward) == pytest.approx((0.0, 0.0))
    assert zero.margin == pytest.approx(settle_exactly(BARGE).settling.draft_aft)


def test_ship_loses_stability_where_the_curve_does():
    landing, curve = settle_exactly(COASTER), landing_curve(COASTER, 11, 400)
    zero = landing.instability
    k = int(np.flatnonzero(curve.righting_moment <= 0)[0])
    assert curve.fall[k - 1] <= zero.fall <= curve.fall[k]
    assert curve.upthrust[k - 1] <= zero.upthrust <= curve.upthrust[k]
    assert curve.fall[curve.settled] == pytest.approx(landing.settling.fall, abs=1e-6)
    assert curve.gm[curve.settled] == pytest.approx(landing.settling.stability.gm, abs=1e-6)


def test_curve_runs_from_afloat_to_dry():
    curve = landing_curve(COASTER)
    free = COASTER.under(0.0, 0.0)
    gm = free.km_transverse - 3.0 - 20e3 / 480e3
    assert curve.fall[0] == 0.0
    assert curve.upthrust[0] == pytest.approx(0.0, abs=1.0)
    assert curve.gm[0] == pytest.approx(gm, abs=1e-6)
    assert curve.upthrust[-1] == pytest.approx(480e3)
    # Dry: the weight topples about the underside of the bar keel.
    assert curve.righting_moment[-1] == pytest.approx(-480e3 * 3.15 - 20e3)
    assert np.all(np.diff(curve.upthrust) > 0)
    assert np.all(np.diff(curve.fall) > 0)
    assert np.allclose(
        480e3 * curve.gm_km_falls[:-1], (480e3 - curve.upthrust[:-1]) * curve.gm_kg_rises[:-1], atol=1e-3
    )


def test_equilibrium_under_the_upthrust():
    h = COASTER.under(20e3, 3.0)
    s = h.trim / 40.0
    assert h.displacement + 20e3 == pytest.approx(480e3, rel=1e-9)
    weight = 480e3 * (18.2 - s * 3.0)
    held = h.displacement * (h.lcb - s * h.kb) + 20e3 * (3.0 - s * -0.15)
    assert weight == pytest.approx(held, rel=1e-8)


@given(st.floats(-0.01, 0.01))
@settings(max_examples=15)
def test_settles_on_the_slope_of_the_blocks_from_either_end(slope):
    ship = replace(COASTER, blocks=BlockLine(3.0, 36.0, atan(slope)))
    one = settle_exactly(ship).settling
    assert one.draft_aft - one.draft_forward == pytest.approx(40 * slope, abs=1e-6)
    free = ship.under(0.0, 0.0)
    assert one.first_block == (3.0 if free.trim >= 40 * slope else 36.0)
    assert one.upthrust >= 0


def test_bar_keel_is_the_same_as_measuring_from_its_underside():
    """Derived: moving the baseline down to the keel changes nothing but the drafts."""
    x = np.linspace(0.0, 40.0, 9)
    z = np.array([0.0, 0.25, 1.0, 2.0, 3.0, 4.0, 5.0])
    breadth = np.full((9, 7), 4.0)
    breadth[:, 0] = 0.0
    lifted = hull_form(length=40.0, stations=x, waterlines=z[1:], half_breadths=breadth[:, 1:], keel_heights=0.25)
    low = Lander(lifted, 600e3, 19.5, 2.25, 1000.0, BlockLine(2.0, 38.0))
    bar = Lander(barge(depth=4.75), 600e3, 19.5, 2.0, 1000.0, BlockLine(2.0, 38.0), -0.25)
    one, other = settle_exactly(low).settling, settle_exactly(bar).settling
    assert one.upthrust == pytest.approx(other.upthrust, rel=1e-6)
    assert one.draft_aft == pytest.approx(other.draft_aft, abs=1e-6)
    assert one.stability.gm_km_falls == pytest.approx(other.stability.gm_km_falls, abs=1e-6)
    assert one.stability.loss_kg_rises == pytest.approx(other.stability.loss_kg_rises, abs=1e-6)


def test_stability_lost_before_settling():
    ship = replace(BARGE, lcg=17.0, vcg=3.45)
    landing = settle_exactly(ship)
    zero = landing.instability
    assert landing.settling.stability.righting_moment < 0
    assert 0 < zero.upthrust < landing.settling.upthrust
    assert zero.margin < 0
    assert ship.stability(ship.under(zero.upthrust, 2.0)).gm == pytest.approx(0.0, abs=1e-6)


def test_hand_method_is_off_where_the_upthrust_is_large():
    """Derived: on a shaped hull with much trim the particulars are not constant, and both figures are given."""
    ship = replace(COASTER, lcg=16.6)
    exact, held = settle_exactly(ship).settling, settle(held_particulars(ship), ship.blocks).settling
    assert exact.upthrust > 0.05 * 480e3
    assert abs(exact.upthrust / held.upthrust - 1) > 0.02
    assert exact.stability.gm != pytest.approx(held.stability.gm, abs=0.005)


def test_curves_agree_where_little_has_changed():
    exact = landing_curve(COASTER)
    held = held_curve(held_particulars(COASTER), COASTER.blocks, exact.fall[:5])
    assert held.upthrust == pytest.approx(exact.upthrust[:5], rel=0.05, abs=100.0)
    assert held.water == pytest.approx(exact.water[:5], abs=1e-9)


def test_last_draft_is_at_the_lowest_keel():
    assert last_draft(BARGE) == 0.0
    sloped = replace(BARGE, blocks=BlockLine(2.0, 38.0, atan(0.01)))
    assert last_draft(sloped) == pytest.approx(-0.2)


def test_refusals():
    with pytest.raises(OutOfRange, match="not stable"):
        settle_exactly(replace(BARGE, vcg=4.5))
    with pytest.raises(OutOfRange, match="upthrust"):
        BARGE.under(700e3, 2.0)
    with pytest.raises(OutOfRange, match=r"trim|floating"):
        settle_exactly(replace(BARGE, lcg=15.0, blocks=BlockLine(17.0, 38.0)))


def test_root():
    assert root_between(lambda x: x**3 - 2, 0.0, 2.0, 1e-13) == pytest.approx(2 ** (1 / 3))
    assert root_between(lambda x: x, 0.0, 1.0, 1e-9) == 0.0
    assert root_between(lambda x: x - 1, 0.0, 1.0, 1e-9) == 1.0
    with pytest.raises(OutOfRange, match="sign"):
        root_between(lambda x: x + 1, 0.0, 1.0, 1e-9)
    with pytest.raises(OutOfRange, match="settle"):
        root_between(lambda x: -1.0 if x < 0.123456 else 1.0, 0.0, 1.0, 0.0)


def test_method_gives_both():
    from tests.calculations.landing.test_methods import run

    found = run(METHOD)
    assert found["upthrust"] != found["upthrust_held"]
    assert found["upthrust"] == pytest.approx(found["upthrust_held"], rel=0.2)
    assert len(found["curve_water"]) == len(found["curve_gm"]) == len(found["curve_upthrust"])
