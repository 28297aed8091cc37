"""The ship's landing: two methods, two forms, one righting moment."""

from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.landing.entry_limit import CRUSHES, METHOD, SETTLES, TENDER
from tenderwright.calculations.ship.condition import arrival
from tenderwright.calculations.ship.docking_condition import docking as docking_step
from tenderwright.calculations.ship.landing import entry_limit, entry_trim, landing_estimate, landing_stages
from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.ship.trim import trim_plan
from tests.calculations.ship import marram


def test_both_forms_give_one_righting_moment() -> None:
    for landing in (marram.found(landing_step).exact, marram.found(landing_step).held, marram.found(landing_estimate)):
        assert landing is not None
        v = landing.settling.stability
        assert v.displacement * v.gm_km_falls == pytest.approx((v.displacement - v.upthrust) * v.gm_kg_rises)


def test_the_two_methods_agree_while_the_upthrust_is_small() -> None:
    exact, held = marram.found(landing_step).exact, marram.found(landing_step).held
    assert exact is not None
    assert held is not None
    assert exact.settling.upthrust / held.settling.upthrust == pytest.approx(1.0, abs=0.03)
    assert exact.settling.draft_aft == pytest.approx(held.settling.draft_aft, abs=0.002)


def test_she_is_docked_in_the_condition_with_the_tanks_moved_and_what_item_910_lands_gone() -> None:
    position = marram.found(docking_step)
    assert position is not None
    moved = sum(marram.found(trim_plan).changes)
    assert position.loading.mass == pytest.approx(marram.found(arrival).loading.mass - 13_600 + moved)
    assert position.hydrostatics.trim == pytest.approx(0.3, abs=1e-3)


def test_the_curve_runs_from_afloat_through_settling_to_dry() -> None:
    curve, exact = marram.found(landing_step).curve, marram.found(landing_step).exact
    assert curve is not None
    assert exact is not None
    assert curve.upthrust[0] == pytest.approx(0.0, abs=1.0)
    assert curve.upthrust[curve.settled] == pytest.approx(exact.settling.upthrust, rel=1e-6)
    assert curve.upthrust[-1] == pytest.approx(curve.displacement)
    assert np.all(np.diff(curve.upthrust) > 0)


def test_the_stages_fall_in_order() -> None:
    stages = marram.found(landing_stages)
    assert stages[0].name == "first block touched"
    assert [stage.water for stage in stages] == sorted((stage.water for stage in stages), reverse=True)
    assert [stage.upthrust for stage in stages] == sorted(stage.upthrust for stage in stages)


def test_side_blocks_bear_by_the_level_at_which_the_lesser_way_says_so() -> None:
    """The dock sheet prints one level for it, in its table and in the words beside."""
    found, stages = marram.found(landing_step), {stage.name: stage for stage in marram.found(landing_stages)}
    bear, settled = stages["side blocks and shores bear by now"], stages["on all the blocks"]
    assert settled.water - bear.water == pytest.approx(found.bear_within)


def test_the_greatest_entry_trim_leaves_the_metacentric_height_wanted() -> None:
    record = marram.ship().record
    v = marram.found(landing_step).held.settling.stability
    # Form (a) is linear in the upthrust, and so in the trim: GM falls from that afloat by KM/W for each unit of it.
    per_trim = v.upthrust / 0.3 * (v.loss_km_falls / v.upthrust)
    afloat = v.gm_km_falls + v.loss_km_falls
    assert afloat - per_trim * marram.found(entry_trim)["trim"] == pytest.approx(0.45, abs=1e-3)
    assert record.values["docking.entry.conservative"].si == "KM falls"


def test_side_blocks_bear_before_the_metacentric_height_is_the_least_asked_for() -> None:
    """By hand from what is printed: form (a), (P_x - P)/TPI with P_x = (W (GM - x) - FSM)/KM."""
    found = marram.found(landing_step)
    held = found.afloat
    most = (held.displacement * (held.km - held.kg - 0.45) - held.free_surface_moment) / held.km
    by_hand = (most - found.held.settling.upthrust) / held.mass_per_immersion
    assert found.held.bearing is not None
    assert found.held.bearing.margin == pytest.approx(by_hand)
    assert found.bear_within == pytest.approx(0.0571, abs=5e-4)
    assert found.bear_within < found.exact.instability.margin / 5


def test_she_enters_within_the_tender_which_is_less_than_stability_and_the_block_allow() -> None:
    entry = marram.found(entry_limit)
    limits = {one.name: one.limit for one in entry.limits}
    assert entry.governs.name == TENDER
    assert (entry.least_trim, entry.governs.limit) == pytest.approx((0.2, 0.4))
    assert limits[SETTLES] == pytest.approx(marram.found(landing_step).entry_trim)
    assert limits[SETTLES] < marram.found(entry_trim)["trim"]
    # 3.10 MPa on 400 by 400 mm is 50.6 t, and the trim in proportion to the upthrust of 0.3 m.
    upthrust = marram.found(landing_step).held.settling.upthrust
    assert limits[CRUSHES] == pytest.approx(0.3 * 3.1e6 * 0.16 / 9.80665 / upthrust, rel=1e-3)


def test_on_the_keels_own_width_the_block_governs_as_it_did_in_2007() -> None:
    """The first block of 2007 was 300 mm long under a bar keel of 200 mm: 0.62 m is above what it allows."""
    inputs = marram.ship().record.values["docking.entry-limit.trim"].working.inputs
    given = {name: one.si for name, one in inputs.items()} | {"contact_length": 0.3, "keel_width": 0.2, "wanted": 0.62}
    found = METHOD.kernel(**given)
    assert found.governs.name == CRUSHES
    assert found.verdict.met is False
    assert found.governs.limit == pytest.approx(0.465, abs=2e-3)


def test_every_value_of_the_landing_rests_on_lines_of_the_package() -> None:
    record = marram.ship().record
    chain = [value.name for value in record.chain("docking.landing.gm")]
    assert "condition.docking.displacement" in chain
    paths = {
        entry.origin.path
        for name in chain
        for entry in record.values[name].working.inputs.values()
        if not isinstance(entry.origin, str)
    }
    assert {"vessel/docking-plan.yaml", "vessel/offsets.yaml", "vessel/particulars.yaml"} <= paths
