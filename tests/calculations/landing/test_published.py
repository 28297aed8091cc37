"""Examples of dry-docking and grounding: as printed in a book, and worked by hand in tonnes and centimetres."""

from __future__ import annotations

from math import radians, sin

import pytest
from msgspec.structs import replace

from tenderwright.calculations.landing.curve import at_level
from tenderwright.calculations.landing.dock_water import drafts_in_dock_water
from tenderwright.calculations.landing.entry_limit import entry_limit
from tenderwright.calculations.landing.entry_trim import greatest_upthrust
from tenderwright.calculations.landing.from_drafts import upthrust_from_drafts
from tenderwright.calculations.landing.held import Afloat, BlockLine
from tenderwright.calculations.landing.settling import settle
from tenderwright.calculations.landing.stability import instability_upthrust, virtual_stability
from tenderwright.calculations.landing.upthrust import critical_upthrust, fall_per_upthrust, partial_upthrust

T, T_PER_CM = 1e3, 1e5


def test_derrett_greatest_trim_for_a_required_gm():
    """Derrett, Ship Stability for Masters and Mates, drydocking:
    W 3000, KM 6, KG 5.5, l 48, MCTC 40, GM 0.3: (a) 100 t and 120 cm, (b) 105.26 t and 126.3 cm."""
    falls = greatest_upthrust(3000 * T, 6.0, 5.5, 0.3, "KM falls")
    rises = greatest_upthrust(3000 * T, 6.0, 5.5, 0.3, "KG rises")
    assert falls / T == pytest.approx(100.0)
    assert rises / T == pytest.approx(105.26, abs=0.005)
    assert falls * 48 / (40 * T_PER_CM) == pytest.approx(1.20)
    assert rises * 48 / (40 * T_PER_CM) == pytest.approx(1.263, abs=5e-4)


def test_derrett_greatest_trim_is_the_limit_of_entry_by_stability_and_settles_at_the_required_gm():
    """The same: at 120 cm she comes to lie on all the blocks with the 0.3 m required, so that side blocks bear then;
    with half of it she has 50 t of upthrust left to go, at TPC 20 a fall of 2.5 cm (derived)."""
    afloat = Afloat(3000 * T, 100.0, 4.0, 2.8, 48.0, 20 * T_PER_CM, 40 * T_PER_CM, 6.0, 5.5)
    bearing = settle(afloat, BlockLine(0.0, 100.0), 0.3).bearing
    assert bearing is not None
    assert (bearing.upthrust / T, bearing.margin) == pytest.approx((100.0, 0.0))
    half = settle(replace(afloat, draft_forward=3.4), BlockLine(0.0, 100.0), 0.3).bearing
    assert half is not None
    assert half.margin == pytest.approx(0.025)
    found = entry_limit(1.0, 0.5, "tender", 48.0, 40 * T_PER_CM, 0.4, 1.0, 0.2, stability_held=1.20)
    assert found.governs.limit == pytest.approx(1.20)


def test_derrett_example_1():
    """Derrett, Ship Stability for Masters and Mates, Drydocking, Example 1 (from memory): W 6000, trim 0.3 m, KM 7.5,
    KG 6.0, MCTC 90, LCF 45 m from aft: P 60 t; GM (a) 1.425 m, (b) 1.439 m."""
    upthrust = critical_upthrust(90 * T_PER_CM, 0.3, 45.0)
    assert upthrust / T == pytest.approx(60.0)
    found = virtual_stability(6000 * T, upthrust, 7.5, 6.0)
    assert found.gm_km_falls == pytest.approx(1.425)
    assert found.gm_kg_rises == pytest.approx(1.439, abs=5e-4)
    assert found.righting_moment / T == pytest.approx(8550.0)
    assert found.governing == "KM falls"


def test_partial_stage_and_settled():
    """Derived, by hand: W 6220, L 144, l 70, KM 6.9, KG 6.2, MCTC 150, TPC 17, drafts 4.10 and 6.20, 7.0 m over the
    blocks. Lowered 1.5 m: P = 70/(1/17 + 70²/(150 x 144)) = 245.03 t, loss P KM/W 0.272, GM 0.428. Lowered 1.0 m more
    she lies on all of them, with (5.179 - 4.5) x 100 x 17 = 1154.6 t and a loss of 1.281."""
    upthrust = partial_upthrust(6.20 - 5.5, 17 * T_PER_CM, 150 * T_PER_CM, 70.0, 144.0)
    assert upthrust / T == pytest.approx(70 / (1 / 17 + 70**2 / (150 * 144)))
    assert upthrust / T == pytest.approx(245.03, abs=0.005)
    found = virtual_stability(6220 * T, upthrust, 6.9, 6.2)
    assert found.loss_km_falls == pytest.approx(0.272, abs=5e-4)
    assert found.gm_km_falls == pytest.approx(0.428, abs=5e-4)
    mean = 6.20 - 2.10 * 70 / 144
    assert mean == pytest.approx(5.179, abs=5e-4)
    ship = Afloat(6220 * T, 144.0, 6.20, 4.10, 70.0, 17 * T_PER_CM, 150 * T_PER_CM, 6.9, 6.2)
    on_first = at_level(ship, BlockLine(0.0, 144.0), 5.5)
    assert on_first.upthrust[-1] == pytest.approx(upthrust)
    assert on_first.gm_km_falls[-1] == pytest.approx(found.gm_km_falls)
    settled = float(at_level(ship, BlockLine(0.0, 144.0), 4.5).upthrust[-1])
    assert settled / T == pytest.approx(1154.58, abs=0.01)
    assert virtual_stability(6220 * T, settled, 6.9, 6.2).loss_km_falls == pytest.approx(1.2808, abs=1e-4)


def test_dock_water_and_upthrust():
    """Derived, by hand: W 19200, L 235, KM 10.2, KG 9.4, TPC 32, MCTC 254 in sea water, LCF 5 m aft and LCB 3 m forward
    of amidships, drafts 9.42 and 10.88 in 1.005, docked in 1.020: rise 19200 x 1.025/32 x (1/1.005 - 1/1.020) = 9 cm,
    BB1 = 8 x (1.020/1.005 - 1) = 0.119, MCTC 254 x 1.020/1.025 = 252.76, trim of 1.55, P = 252.76 x 155/112.5 =
    348.25 t, loss P KM/W 0.185, GM 0.615."""
    found = drafts_in_dock_water(
        19200 * T, 235.0, 10.88, 9.42, 112.5, 120.5, 32 * T_PER_CM, 254 * T_PER_CM, 1005.0, 1020.0
    )
    assert found["sinkage"] == pytest.approx(-0.09, abs=1e-4)
    assert found["shift_of_buoyancy"] == pytest.approx(0.119, abs=5e-4)
    assert found["moment_to_change_trim"] / T_PER_CM == pytest.approx(252.76, abs=0.005)
    assert found["draft_forward"] == pytest.approx(9.283, abs=5e-4)
    assert found["draft_aft"] == pytest.approx(10.833, abs=5e-4)
    upthrust = critical_upthrust(found["moment_to_change_trim"], 1.55, 112.5)
    assert upthrust / T == pytest.approx(348.25, abs=0.005)
    stability = virtual_stability(19200 * T, upthrust, 10.2, 9.4)
    assert stability.loss_km_falls == pytest.approx(0.185, abs=5e-4)
    assert stability.gm_km_falls == pytest.approx(0.615, abs=5e-4)


def test_one_metre_below_first_touch():
    """Derived, by hand: W 9013, L 145, KG 8.0, TPC 21.89, MCTC 162.7, LCF 72.013, FSM 900, KM 9.151, drafts 3.4 and
    5.8: d_m = 5.8 - 2.4 x 72.013/145 = 4.608, P = 100/(1/21.89 + 72.013²/(162.7 x 145)) = 376.64 t, loss P KM/W 0.382,
    free surface FSM/(W - P) = 0.104."""
    afloat = Afloat(9013e3, 145.0, 5.8, 3.4, 72.013, 21.89 * T_PER_CM, 162.7 * T_PER_CM, 9.151, 8.0, 900 * T)
    assert afloat.true_mean_draft == pytest.approx(4.608, abs=5e-4)
    upthrust = partial_upthrust(1.0, 21.89 * T_PER_CM, 162.7 * T_PER_CM, 72.013, 145.0)
    assert upthrust / T == pytest.approx(100 / (1 / 21.89 + 72.013**2 / (162.7 * 145)))
    assert upthrust / T == pytest.approx(376.64, abs=0.005)
    without = virtual_stability(9013 * T, upthrust, 9.151, 8.0)
    slack = virtual_stability(9013 * T, upthrust, 9.151, 8.0, 900 * T)
    assert without.loss_km_falls == pytest.approx(0.382, abs=5e-4)
    assert without.gm_kg_rises - slack.gm_kg_rises == pytest.approx(0.104, abs=5e-4)


def test_one_righting_moment():
    """Derived, by hand: W 8487, L 140, drafts 3.0 and 5.8, KG 8.6, FSM 800, LCF 72.1, MCTC 161, KM 9.57: P = 161 x
    280/72.1 = 625.24 t, loss P KM/W 0.705; righting moment at 1 degree ((W - P) KM - W KG - FSM) sin 1° = 25.29 t m."""
    upthrust = critical_upthrust(161 * T_PER_CM, 2.8, 72.1)
    assert upthrust / T == pytest.approx(625.24, abs=0.005)
    found = virtual_stability(8487 * T, upthrust, 9.57, 8.6, 800 * T)
    assert found.loss_km_falls == pytest.approx(0.705, abs=5e-4)
    by_hand = (8487 - 161 * 280 / 72.1) * 9.57 - 8487 * 8.6 - 800
    assert found.righting_moment / T == pytest.approx(by_hand)
    assert found.righting_moment * sin(radians(1)) / T == pytest.approx(25.29, abs=0.005)


def test_greatest_trim_and_trim_at_instability():
    """Derived, by hand: W 4740, L 120, KM 6.0, KG 5.5, LCF amidships, MCTC 79, GM 0.3: P = 4740 x 0.2/6 = 158 t at a
    trim of 158 x 60/79 = 120 cm; unstable at 4740 x 0.5/6 = 395 t and 300 cm."""
    upthrust = greatest_upthrust(4740 * T, 6.0, 5.5, 0.3, "KM falls")
    assert upthrust / T == pytest.approx(158.0)
    assert upthrust * 60 / (79 * T_PER_CM) == pytest.approx(1.2)
    zero = instability_upthrust(4740 * T, 6.0, 5.5)
    assert zero / T == pytest.approx(395.0)
    assert zero * 60 / (79 * T_PER_CM) == pytest.approx(3.0)


def test_from_touch_to_instability():
    """Derived, by hand: L 84, W 3000, TPC 12, KM 4.5, KG 4.05, MCTC 80, LCF 2 m aft of amidships, drafts 4.0 and 4.5:
    P = 80 x 50/40 = 100 t, GM 0.30; settled at 4.5 - 0.5 x 40/84 - 100/1200 = 4.1786 fore and aft; unstable at
    3000 x 0.45/4.5 = 300 t, at a draft of 4.0119."""
    afloat = Afloat(3000 * T, 84.0, 4.5, 4.0, 40.0, 12 * T_PER_CM, 80 * T_PER_CM, 4.5, 4.05)
    landing = settle(afloat, BlockLine(0.0, 84.0))
    one, zero = landing.settling, landing.instability
    assert one.upthrust / T == pytest.approx(100.0)
    assert one.stability.gm == pytest.approx(0.30)
    assert one.stability.governing == "KM falls"
    assert (one.draft_aft, one.draft_forward) == pytest.approx((4.1786, 4.1786), abs=5e-5)
    # The water's fall from first touch takes the draft aft to the same figure (derived).
    assert one.fall == pytest.approx(0.3214, abs=5e-5)
    assert 4.5 - one.fall == pytest.approx(one.draft_aft)
    assert zero.upthrust / T == pytest.approx(300.0)
    assert zero.true_mean_draft == pytest.approx(4.012, abs=5e-4)
    assert zero.margin == pytest.approx(4.1786 - 4.0119, abs=1e-4)


def test_grounding_from_drafts():
    """Derived, by hand: W 16130, TPC 23.4, MCTC 192, L 142, KM 8.24, drafts 6.70 and 8.86 before, 5.90 and 9.30 after:
    P = 18 x 23.4 = 421.2 t, 192 x 124/421.2 = 56.52 m from the LCF, loss P KM/W 0.215, rise to float P/23.4 + 124 x
    56.52/142 = 67.36 cm."""
    found = upthrust_from_drafts(142.0, 71.0, 23.4 * T_PER_CM, 192 * T_PER_CM, 8.86, 6.70, 9.30, 5.90)
    assert found["upthrust"] / T == pytest.approx(421.2)
    assert found["distance_from_lcf"] == pytest.approx(56.52, abs=0.01)
    assert found["position"] == pytest.approx(71.0 + 56.53, abs=0.01)
    assert found["rise_to_float"] == pytest.approx(0.6735, abs=2e-4)
    assert found["upthrust"] * 8.24 / (16130 * T) == pytest.approx(0.215, abs=5e-4)


def test_grounding_at_a_known_place():
    """Derived, by hand: TPC 18, MCTC 130, L 140, 55 m from the LCF, draft there changed by 80 cm: P = 80/(1/18 +
    55²/(130 x 140)) = 360.74 t, and a change of trim of P x 55/130 = 152.6 cm."""
    rate = fall_per_upthrust(18 * T_PER_CM, 130 * T_PER_CM, 55.0, 140.0)
    assert 0.80 / rate / T == pytest.approx(360.74, abs=0.005)
    assert 0.80 / rate * 55.0 / (130 * T_PER_CM) == pytest.approx(1.526, abs=5e-4)
