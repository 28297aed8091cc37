"""The undocking condition is the docking condition with what moved, and is judged by the package's own limits."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.docking_condition import docking as docking_step
from tenderwright.calculations.ship.docking_condition import docking_tank_states
from tenderwright.calculations.ship.undocking import undocking as undocking_step
from tenderwright.calculations.ship.undocking import undocking_tank_states
from tenderwright.quantities.quantity import parse_quantity
from tests.calculations.ship import marram
from tests.outcomes import result_of
from tests.replacing import replace


def test_the_weights_and_tanks_that_moved_make_the_difference() -> None:
    before_docking = -9.6 - 4.0  # item 910, counted in the docking condition already
    moved = sum(one.mass.si for one in marram.plan().moved_while_dry) - before_docking * 1000
    before, after = (
        sum(one.mass for one in marram.found(step).values()) for step in (docking_tank_states, undocking_tank_states)
    )
    found = marram.found(undocking_step).position.loading.mass
    assert found == pytest.approx(marram.found(docking_step).loading.mass + moved + after - before)


def test_she_floats_off_level_and_stable() -> None:
    undocking = marram.found(undocking_step)
    assert undocking is not None
    assert (undocking.level, undocking.stable, undocking.reasons) == (True, True, ())
    assert undocking.least_gm is not None
    assert undocking.least_gm < undocking.position.gm_fluid


def test_a_peak_left_full_is_told_as_trim() -> None:
    tanks = tuple(
        replace(one, liquid="sea water", volume=parse_quantity("15 m3", "volume"))
        if one.tank.name == "afterpeak"
        else one
        for one in marram.plan().tanks_at_undocking
    )
    calculated = marram.calculated(marram.with_plan(tanks_at_undocking=tanks))
    undocking = result_of(calculated, undocking_step)
    assert undocking is not None
    assert not undocking.level
    assert any(reason.startswith("trim") for reason in undocking.reasons)


def test_a_weight_put_high_is_told_as_lost_stability() -> None:
    high = replace(
        marram.plan().moved_while_dry[-1],
        mass=parse_quantity("40 t", "mass"),
        height=marram.length("9 m"),
        at=marram.at("Fr 40"),
        off_centre=None,
    )
    moved = (*marram.plan().moved_while_dry, high)
    calculated = marram.calculated(marram.with_plan(moved_while_dry=moved))
    undocking = result_of(calculated, undocking_step)
    assert undocking is not None
    assert not undocking.stable
    assert any("metacentric height" in reason for reason in undocking.reasons)


def test_what_changed_and_what_should_be_dry_is_to_be_sounded() -> None:
    why = dict(marram.found(undocking_step).to_sound)
    assert why["oil-port"] == "to be dry"
    assert why["db-1-starboard"] == "changed"
    assert why["cofferdam-forward"] == "to be dry"
