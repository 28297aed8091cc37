"""Laws of the hand method, and what it refuses."""

from __future__ import annotations

from math import atan, nan, radians

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.landing import upthrust as upthrust_module
from tenderwright.calculations.landing.curve import METHOD as LEVEL
from tenderwright.calculations.landing.curve import at_level, held_curve
from tenderwright.calculations.landing.dock_water import drafts_in_dock_water
from tenderwright.calculations.landing.entry_trim import METHOD as ENTRY
from tenderwright.calculations.landing.entry_trim import greatest_upthrust
from tenderwright.calculations.landing.from_drafts import upthrust_from_drafts
from tenderwright.calculations.landing.held import Afloat, BlockLine
from tenderwright.calculations.landing.settling import METHOD as SETTLING
from tenderwright.calculations.landing.settling import settle
from tenderwright.calculations.landing.stability import instability_upthrust, virtual_stability
from tenderwright.calculations.landing.upthrust import critical_upthrust, fall_per_upthrust, partial_upthrust
from tenderwright.calculations.method import OutOfRange

SHIP = Afloat(3000e3, 84.0, 4.5, 4.0, 40.0, 12e5, 80e5, 4.5, 4.05)
BLOCKS = BlockLine(2.0, 78.0)

masses = st.floats(1e5, 1e8)
heights = st.floats(0.5, 12.0)
shares = st.floats(0.0, 0.95)


@given(masses, shares, heights, heights, st.floats(0.0, 1e6))
def test_both_forms_are_one_righting_moment(weight, share, km, kg, slack):
    found = virtual_stability(weight, share * weight, km, kg, slack)
    left = weight - found.upthrust
    assert weight * found.gm_km_falls == pytest.approx(left * found.gm_kg_rises, rel=1e-9, abs=1e-6 * weight)
    assert found.righting_moment == pytest.approx(left * km - weight * kg - slack, rel=1e-9, abs=1e-6 * weight)
    assert found.gm == min(found.gm_km_falls, found.gm_kg_rises)
    assert found.governing == ("KG rises" if found.gm_kg_rises < found.gm_km_falls else "KM falls")
    assert found.righting_moment <= 0 or found.governing == "KM falls"


@given(masses, heights, st.floats(0.05, 0.95), st.floats(0.0, 0.02))
def test_both_forms_lose_stability_at_one_upthrust(weight, km, part, slack_part):
    kg, slack = part * km, slack_part * part * km * weight
    assume(km * weight > 1.001 * (kg * weight + slack))
    zero = instability_upthrust(weight, km, kg, slack)
    found = virtual_stability(weight, zero, km, kg, slack)
    assert found.gm_km_falls == pytest.approx(0.0, abs=1e-9 * km)
    assert found.gm_kg_rises == pytest.approx(0.0, abs=1e-6 * km)
    form_a = greatest_upthrust(weight, km, kg, 0.0, "KM falls", slack)
    form_b = greatest_upthrust(weight, km, kg, 0.0, "KG rises", slack)
    assert form_a == pytest.approx(form_b, rel=1e-9)
    assert zero == pytest.approx(form_a, rel=1e-9)


@given(masses, heights, st.floats(0.05, 0.8), st.floats(0.0, 0.99), st.floats(0.0, 0.02))
def test_upthrust_for_a_gm_gives_that_gm(weight, km, part, required, slack_part):
    kg, slack = part * km, slack_part * km * weight
    least = required * (km - kg - slack / weight)
    by_form = {form: greatest_upthrust(weight, km, kg, least, form, slack) for form in ("KM falls", "KG rises")}
    found = virtual_stability(weight, by_form["KM falls"], km, kg, slack)
    assert found.gm_km_falls == pytest.approx(least, abs=1e-9 * km)
    found = virtual_stability(weight, by_form["KG rises"], km, kg, slack)
    assert found.gm_kg_rises == pytest.approx(least, abs=1e-9 * km)
    assert by_form["KM falls"] <= by_form["KG rises"] * (1 + 1e-12)


@given(st.floats(0.0, 1.2), st.floats(-0.005, 0.005))
def test_settled_on_the_slope_of_the_blocks(trim, slope):
    ship = replace(SHIP, draft_aft=4.0 + trim)
    blocks = replace(BLOCKS, declivity=atan(slope))
    one = settle(ship, blocks).settling
    assert one.draft_aft - one.draft_forward == pytest.approx(84.0 * slope, abs=1e-9)
    # The water over the first block has fallen by `fall`, and the draft at the LCF by P/TPI.
    there = one.draft_aft - 84.0 * slope * one.first_block / 84.0
    assert there == pytest.approx(one.water_at_touch - one.fall, abs=1e-9)
    assert one.true_mean_draft == pytest.approx(ship.true_mean_draft - one.upthrust / 12e5)


def test_declivity_beyond_the_trim_lands_her_forward():
    one = settle(SHIP, replace(BLOCKS, declivity=atan(0.01))).settling
    assert one.first_block == 78.0
    assert one.upthrust == pytest.approx(80e5 * (0.84 - 0.5) / 38.0)


def test_trim_of_the_blocks_lands_her_everywhere_at_once():
    one = settle(SHIP, replace(BLOCKS, declivity=atan(0.5 / 84.0))).settling
    assert one.upthrust == pytest.approx(0.0, abs=1e-6)
    assert one.stability.gm == pytest.approx(SHIP.gm)


def test_stability_lost_before_settling_has_a_margin_below_nothing():
    ship = replace(SHIP, draft_aft=6.0, draft_forward=3.0)
    landing = settle(ship, BLOCKS)
    zero = landing.instability
    assert zero.upthrust < landing.settling.upthrust
    assert zero.margin < 0
    assert landing.settling.stability.gm < 0
    assert landing.settling.stability.governing == "KG rises"
    # At instability she still trims: part of the trim is on her.
    assert 0 < zero.draft_aft - zero.draft_forward < 3.0


def test_held_curve_passes_through_settling_and_instability():
    landing = settle(SHIP, BLOCKS)
    one, zero = landing.settling, landing.instability
    curve = held_curve(SHIP, BLOCKS, [0.0, one.fall, zero.fall])
    assert curve.settled == 1
    assert curve.upthrust.tolist() == pytest.approx([0.0, one.upthrust, zero.upthrust])
    assert curve.gm.tolist() == pytest.approx([SHIP.gm, one.stability.gm, 0.0], abs=1e-9)
    assert curve.draft_aft[1:].tolist() == pytest.approx([one.draft_aft, zero.draft_aft])
    assert curve.draft_forward[1:].tolist() == pytest.approx([one.draft_forward, zero.draft_forward])


@given(st.floats(0.01, 2.0))
def test_one_level_is_a_point_of_the_curve(fall):
    landing = settle(SHIP, BLOCKS)
    water = landing.settling.water_at_touch - fall
    found, curve = at_level(SHIP, BLOCKS, water), held_curve(SHIP, BLOCKS, [0.0, fall])
    for name in ("upthrust", "draft_aft", "draft_forward", "gm", "righting_moment"):
        assert getattr(found, name)[-1] == pytest.approx(getattr(curve, name)[-1])
    ship = {name: getattr(SHIP, name) for name in SHIP.__struct_fields__}
    outputs = LEVEL.run(**ship, block_aft=2.0, block_forward=78.0, water=water)
    assert outputs["fall"] == pytest.approx(fall)
    assert outputs["on_all_blocks"] is (outputs["fall"] >= landing.settling.fall)
    assert outputs["hand_method_in_range"] is (outputs["upthrust_share"] <= 0.05)
    assert outputs["upthrust_share"] * SHIP.displacement == pytest.approx(outputs["upthrust"])


@pytest.mark.parametrize(("draft_aft", "in_range"), [(4.5, True), (9.0, False)])
def test_settling_says_where_the_hand_method_is_out_of_its_range(draft_aft, in_range):
    ship = {name: getattr(SHIP, name) for name in SHIP.__struct_fields__} | {"draft_aft": draft_aft}
    outputs = SETTLING.run(**ship, block_aft=2.0, block_forward=78.0)
    assert outputs["upthrust_share"] == pytest.approx(outputs["upthrust"] / SHIP.displacement)
    assert outputs["hand_method_in_range"] is in_range


def test_held_curve_ends_with_all_her_weight_on_the_blocks():
    curve = held_curve(SHIP, BLOCKS)
    assert curve.upthrust[-1] == pytest.approx(3000e3)
    assert np.all(np.diff(curve.upthrust) > 0)
    assert np.all(np.diff(curve.gm_km_falls) < 0)
    assert np.isnan(curve.gm_kg_rises[-1])
    assert np.isfinite(curve.gm[-1])


def test_lever_at_another_place():
    """Derived: draft a metres from the LCF changes by P/TPI + P l a/(MCT L)."""
    rate = fall_per_upthrust(12e5, 80e5, 40.0, 84.0, at=-44.0)
    assert rate == pytest.approx(1 / 12e5 - 40 * 44 / (80e5 * 84))


def test_method_of_upthrust_refuses_a_fall_beyond_settling():
    given_ = {"trim": 0.5, "length": 84.0, "lever": 40.0, "moment_to_change_trim": 80e5, "mass_per_immersion": 12e5}
    found = upthrust_module.METHOD.run(**given_, fall=0.3214)
    assert found["partial_upthrust"] == pytest.approx(100e3, rel=1e-3)
    with pytest.raises(OutOfRange, match="all the blocks"):
        upthrust_module.METHOD.run(**given_, fall=0.33)
    with pytest.raises(OutOfRange, match="declivity"):
        upthrust_module.METHOD.run(**given_, declivity=radians(20))


def test_entry_trim_on_a_declivity_adds_the_trim_of_the_blocks():
    given_ = {"displacement": 3e6, "km": 6.0, "kg": 5.5, "least_gm": 0.3, "lever": 48.0, "moment_to_change_trim": 40e5}
    level = ENTRY.run(**given_)
    sloped = ENTRY.run(**given_, length=100.0, declivity=atan(0.004))
    assert level["conservative"] == "KM falls"
    assert level["trim"] == pytest.approx(1.2)
    assert sloped["trim"] == pytest.approx(1.6)
    with pytest.raises(OutOfRange, match="length"):
        ENTRY.run(**given_, declivity=0.01)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: replace(SHIP, km=nan), "finite"),
        (lambda: replace(SHIP, mass_per_immersion=0.0), "TPC"),
        (lambda: replace(SHIP, kg=-1.0), "KG"),
        (lambda: BlockLine(5.0, 5.0), "forward"),
        (lambda: BlockLine(0.0, 5.0, radians(15)), "declivity"),
        (lambda: settle(replace(SHIP, lcf=1.0), BLOCKS), "flotation"),
        (lambda: settle(replace(SHIP, kg=4.6), BLOCKS), "not stable"),
        (lambda: settle(replace(SHIP, draft_aft=60.0), BLOCKS), "displacement"),
        (lambda: critical_upthrust(80e5, 0.5, 0.0), "positive"),
        (lambda: fall_per_upthrust(0.0, 80e5, 40.0, 84.0), "TPC"),
        (lambda: partial_upthrust(-0.1, 12e5, 80e5, 40.0, 84.0), "fall"),
        (lambda: virtual_stability(1e6, 1e6, 5.0, 4.0), "upthrust"),
        (lambda: virtual_stability(1e6, 0.0, 5.0, -4.0), "KG"),
        (lambda: virtual_stability(0.0, 0.0, 5.0, 4.0), "displacement"),
        (lambda: instability_upthrust(1e6, 0.0, 4.0), "KM"),
        (lambda: greatest_upthrust(1e6, 5.0, 4.9, 0.3, "KM falls"), "below"),
        (lambda: greatest_upthrust(1e6, 5.0, 4.0, 6.0, "KM falls"), "required"),
        (lambda: at_level(SHIP, BLOCKS, 4.6), "afloat"),
        (lambda: at_level(SHIP, BLOCKS, 0.5), "all her weight"),
        (lambda: drafts_in_dock_water(1e6, 50.0, 3.0, 3.0, 25.0, 25.0, 1e5, 1e6, 1025.0, 1.0), "ships float"),
        (lambda: drafts_in_dock_water(1e6, 50.0, 3.0, 3.0, 25.0, 25.0, 1e5, 1e6, 1100.0, 1e3), "ships float"),
        (lambda: drafts_in_dock_water(1e6, 50.0, 3.0, 3.0, 25.0, 25.0, 1e5, 1e6, 0.0, 1000.0), "densit"),
        (lambda: upthrust_from_drafts(50.0, 25.0, 1e5, 1e6, 3.0, 3.0, 3.1, 3.0), "no upthrust"),
        (lambda: upthrust_from_drafts(0.0, 25.0, 1e5, 1e6, 3.0, 3.0, 2.9, 3.0), "length"),
    ],
)
def test_refuses_what_is_outside_its_range(call, words):
    with pytest.raises(OutOfRange, match=words):
        call()


def test_even_rise_is_an_upthrust_at_the_centre_of_flotation():
    found = upthrust_from_drafts(50.0, 24.0, 1e5, 1e6, 3.0, 2.8, 2.9, 2.7)
    assert found["distance_from_lcf"] == pytest.approx(0.0, abs=1e-9)
    assert found["rise_to_float"] == pytest.approx(0.1)
