from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.condition.floating import floating_position
from tenderwright.calculations.condition.loading import TankLoad, Weight
from tenderwright.calculations.condition.target_trim import MovableTank, target_trim
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.polyhedron import box
from tenderwright.calculations.tanks.sounding import Tank
from tests.calculations.condition.ships import FORM, TANKS, WEIGHTS, movable
from tests.calculations.hydrostatics.hulls import barge

NOW = floating_position(FORM, WEIGHTS, TANKS, 1025.0).hydrostatics.trim


def test_present_trim_needs_no_pumping():
    plan = target_trim(FORM, WEIGHTS, movable(), NOW, 1025.0)
    assert plan.feasible
    assert plan.moved == pytest.approx(0.0, abs=1.0)


@settings(max_examples=12)
@given(st.floats(-0.5, 0.35))
def test_plan_gives_the_trim_and_keeps_the_limits(change):
    tanks = movable()
    plan = target_trim(FORM, WEIGHTS, tanks, NOW + change, 1025.0, upright=True)
    assert plan.feasible
    assert plan.position.hydrostatics.trim == pytest.approx(NOW + change, abs=1e-6)
    assert plan.position.loading.tcg == pytest.approx(0.0, abs=1e-6)
    for tank, delta in zip(tanks, plan.changes, strict=True):
        assert tank.minimum - 1 <= tank.load.mass + delta <= tank.maximum + 1
    for liquid in ("gas oil", "fresh water"):
        own = [d for t, d in zip(tanks, plan.changes, strict=True) if t.liquid == liquid]
        assert sum(own) == pytest.approx(0.0, abs=1e-2)


def test_transfers_explain_the_changes():
    plan = target_trim(FORM, WEIGHTS, movable(), NOW - 0.3, 1025.0)
    for tank, change in zip(TANKS, plan.changes, strict=True):
        taken = sum(t.mass for t in plan.transfers if t.destination == tank.name)
        given_ = sum(t.mass for t in plan.transfers if t.source == tank.name)
        assert taken - given_ == pytest.approx(change, abs=1e-2)
    assert plan.moved > 0


def test_shift_between_two_tanks_is_what_statics_says():
    """Derived: w d = MCTC times the change of trim, for two boxes on a barge that hold the same liquid."""
    loads = [
        TankLoad(name, Tank(box((x, x + 2), (-2, 2), (1, 3))), 1000.0, 8e3)
        for name, x in (("aft", 4.0), ("fore", 34.0))
    ]
    tanks = [MovableTank(load, "oil", 0.0, 16e3) for load in loads]
    plan = target_trim(barge(), [Weight("barge", 624e3, 20.0, 0.0, 2.5)], tanks, 0.1, 1000.0)
    h = plan.position.hydrostatics
    expected = h.moment_to_change_trim(plan.position.loading.vcg) * 0.1 / 30
    assert plan.feasible
    assert plan.changes[0] == pytest.approx(expected, rel=0.01)
    assert plan.changes[1] == pytest.approx(-plan.changes[0], rel=1e-9)
    assert [(t.source, t.destination) for t in plan.transfers] == [("fore", "aft")]


def test_least_movement_uses_the_longest_lever():
    """Derived: pumping from peak to peak has the longest lever; with one peak shut more must be moved."""
    plan = target_trim(FORM, WEIGHTS, movable(), NOW - 0.1, 1025.0)
    assert plan.changes[2:] == pytest.approx([0.0] * 4, abs=1e-3)
    assert [(t.source, t.destination) for t in plan.transfers] == [("after peak", "fore peak")]
    shut = [replace(t, minimum=t.load.mass, maximum=t.load.mass) if i == 1 else t for i, t in enumerate(movable())]
    other = target_trim(FORM, WEIGHTS, shut, NOW - 0.1, 1025.0)
    assert other.feasible
    assert [(t.source, t.destination) for t in other.transfers] == [("sea", "fore peak")]
    assert other.moved > 1.5 * plan.moved


def test_liquid_that_may_not_meet_the_sea_stays_aboard():
    plan = target_trim(FORM, WEIGHTS, movable(), NOW - 0.1, 1025.0, exchanged=())
    assert sum(plan.changes) == pytest.approx(0.0, abs=1e-2)
    assert all("sea" not in (t.source, t.destination) for t in plan.transfers)


def test_out_of_reach_gives_the_nearest():
    plan = target_trim(FORM, WEIGHTS, movable(), NOW + 3.0, 1025.0)
    near = target_trim(FORM, WEIGHTS, movable(), plan.position.hydrostatics.trim - 0.02, 1025.0)
    assert not plan.feasible
    assert NOW < plan.position.hydrostatics.trim < NOW + 3.0
    assert near.feasible
    beyond = target_trim(FORM, WEIGHTS, movable(), plan.position.hydrostatics.trim + 0.05, 1025.0)
    assert not beyond.feasible


def test_limits_are_kept_even_at_the_present_trim():
    raised = [replace(t, minimum=t.load.mass + 500) if t.load.name == "fore peak" else t for t in movable()]
    plan = target_trim(FORM, WEIGHTS, raised, NOW, 1025.0)
    assert plan.feasible
    assert plan.changes[0] >= 500 - 1e-2


def test_list_is_taken_out():
    loads = list(TANKS)
    loads[2], loads[3] = (
        replace(loads[2], mass=loads[2].mass + 2e3),
        replace(loads[3], mass=loads[3].mass - 2e3),
    )
    plan = target_trim(FORM, WEIGHTS, movable(loads), NOW, 1025.0, upright=True)
    assert plan.feasible
    assert plan.position.heel == pytest.approx(0.0, abs=1e-6)
    assert plan.changes[2] - plan.changes[3] + plan.changes[4] - plan.changes[5] < 0


def test_limits_that_cannot_be_kept_are_refused():
    short = [replace(t, minimum=t.load.mass + 1e3) if t.liquid == "gas oil" else t for t in movable()]
    with pytest.raises(OutOfRange, match="own least and greatest"):
        target_trim(FORM, WEIGHTS, short, NOW, 1025.0)


def test_limits_must_fit_the_tank():
    over = [replace(movable()[0], maximum=1e9)]
    with pytest.raises(OutOfRange, match="fore peak"):
        target_trim(FORM, WEIGHTS, over, 0.3, 1025.0)


def test_no_tanks_is_refused():
    with pytest.raises(OutOfRange, match="no tanks"):
        target_trim(FORM, WEIGHTS, [], 0.3, 1025.0)


def test_emptying_a_tank_to_its_last_drop():
    """The nearest plan empties the fore peak: the solver's rounding must not overdraw it."""
    plan = target_trim(FORM, WEIGHTS, movable(), NOW + 3.0, 1025.0)
    assert plan.changes[0] == pytest.approx(-TANKS[0].mass, abs=1e-6)
    assert plan.changes[0] >= -TANKS[0].mass
