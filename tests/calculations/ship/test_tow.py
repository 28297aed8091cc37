"""The tow of the demonstration ship: condition, pull, closures, flooding, and the dead ship in dock."""

from __future__ import annotations

from collections.abc import Callable
from math import asin, pi, radians, sqrt
from typing import Any

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.dead_ship import floatable
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.tow import tow_condition, tow_reserve, towed, towed_home
from tenderwright.calculations.ship.tow_closures import tow_closures
from tenderwright.calculations.ship.tow_flooding import tow_boarding, tow_flooding
from tenderwright.calculations.ship.tow_pull import (
    HOVE_TO,
    tow_battery_carried,
    tow_by_navy,
    tow_by_ufc,
    tow_gear,
    tow_points,
    tow_pull,
    tow_tug,
    tow_weathers,
)
from tenderwright.calculations.steps.outcome import Absent, Lacking, NotAsked
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.model.tow import Tow
from tests.calculations.ship.marram import package, ship
from tests.outcomes import result_of
from tests.replacing import replace


def tow() -> Tow:
    found = package().tow
    assert found is not None
    return found


def after(change: Callable[[Tow], Tow]) -> Calculated:
    return calculate(replace(package(), tow=change(tow())))


def test_what_is_landed_before_docking_is_ashore_and_tow_gear_aboard() -> None:
    """Weights by hand: the docking condition's, with what tow.yaml puts aboard, and the tanks as last sounded."""
    out, dock = result_of(ship(), towed), result_of(ship(), docking)
    put_on = sum(one.mass.si for one in tow().weights)
    arrived = ship().record.values["condition.arrival.displacement"].si
    landed = -13_600.0
    assert out.loading.mass == pytest.approx(arrived + landed + put_on)
    assert out.hydrostatics.trim > dock.hydrostatics.trim


def test_the_passage_home_has_what_the_items_moved() -> None:
    home, undocked = result_of(ship(), towed_home), ship().record.values["condition.undocking.displacement"].si
    assert home.loading.mass == pytest.approx(undocked + sum(one.mass.si for one in tow().weights))


def test_hove_to_is_always_reckoned() -> None:
    found = result_of(ship(), tow_weathers)
    assert {"best", "probable", "worst", HOVE_TO} == set(found)
    assert found[HOVE_TO].stated
    resistance = tow().resistance
    assert resistance is not None
    bare = after(lambda one: replace(one, resistance=replace(resistance, hove_to=None)))
    survival = result_of(bare, tow_weathers)[HOVE_TO]
    assert not survival.stated
    assert (survival.wind.si, survival.speed.si) == (20.0, 0.5)
    assert result_of(bare, tow_pull)["unknown"] == "hove to"
    assert result_of(bare, tow_tug).met is None


def test_without_the_manuals_curve_its_method_gives_no_sum_and_the_other_stands_alone() -> None:
    ufc, navy = result_of(ship(), tow_by_ufc), result_of(ship(), tow_by_navy)
    assert all(one["total"] is not None for one in ufc.values())
    assert all(one["total"] is None and one["wind"] > 0 for one in navy.values())
    pulls = {name: one["pull"] for name, one in ufc.items()}
    found = result_of(ship(), tow_pull)
    assert found["pull"] == pytest.approx(max(pulls.values()))
    assert found["governs"] == "hove to"
    assert found["bollard"] == pytest.approx(pulls[HOVE_TO] / 0.5 / 9.80665)


def test_an_unshipped_propeller_has_no_drag() -> None:
    found = after(lambda one: replace(one, propeller="unshipped"))
    assert all(one["propeller"] == 0 for one in result_of(found, tow_by_ufc).values())
    assert result_of(found, tow_pull)["pull"] < result_of(ship(), tow_pull)["pull"]


def test_points_tug_and_battery_are_judged() -> None:
    gear = result_of(ship(), tow_gear)
    points = result_of(ship(), tow_points)
    assert points.met is True
    assert {one.demand for one in points.limits} == {gear["fittings"]}
    weak = after(lambda one: replace(one, tugs=(replace(one.tugs[0], held="hook"),)))
    assert result_of(weak, tow_points).met is False
    assert result_of(ship(), tow_tug).met is True
    assert result_of(ship(), tow_battery_carried).met is True
    assert isinstance(after(lambda one: replace(one, tugs=())).outcome(tow_tug), NotAsked)


def test_limits_of_the_condition() -> None:
    found = result_of(ship(), tow_condition)
    assert found.met is True
    assert {"metacentric height", "trim by the stern, least", "list", "heel that lets water in"} <= {
        one.name for one in found.limits
    }
    bare = after(lambda one: replace(one, limits=None)).outcome(tow_condition)
    assert isinstance(bare, Lacking)


def test_watertight_openings_do_not_count_for_the_freeboard() -> None:
    """The cabin ports stand lowest, and are closed by deadlights."""
    reserve = result_of(ship(), tow_reserve)
    lowest = min(tow().closures, key=lambda one: one.height.si)
    assert lowest.tight == "watertight"
    assert lowest.what not in [row["name"] for row in reserve["openings"]]
    assert reserve["angle"] > radians(25)


def test_no_opening_and_no_tank_is_left_out_of_the_closure_list() -> None:
    found = result_of(ship(), tow_closures)
    listed = [one.thing for one in found]
    for thing in (*package().openings, *package().tanks, *tow().closures, *tow().compartments):
        assert sum(1 for one in listed if one is thing) == 1
    out = result_of(ship(), towed)
    for one in found:
        if one.under is not None and hasattr(one.thing, "bore"):
            assert one.under == pytest.approx(out.waterline_at(one.thing.at.x) - one.thing.height.si)
    bare = after(lambda one: replace(one, compartments=(), closures=()))
    assert {one.compartment for one in result_of(bare, tow_closures)} == {""}


def test_the_largest_hole_of_each_space() -> None:
    """By hand: the stern tube as a ring of 260 mm round a shaft of 210 mm, under its head."""
    found = result_of(ship(), tow_flooding)
    tube = next(one for one in package().openings if one.opening == "stern-tube")
    head = result_of(ship(), towed).waterline_at(tube.at.x) - tube.height.si
    ring = pi / 4 * (0.26**2 - 0.21**2)
    assert found["afterpeak"]["inflow"] == pytest.approx(0.6 * ring * sqrt(2 * 9.80665 * head))
    assert found["buoy-hold"]["time"] is None
    boarding = result_of(ship(), tow_boarding)
    assert boarding.met is False
    assert "Engine room" in [one.name for one in boarding.passed]


def test_hours_until_she_could_float() -> None:
    found = result_of(ship(), floatable)
    assert found.without_time == ()
    by_hand = sum(one.time or 0.0 for one in found.holes) / 3
    assert found.closing == pytest.approx(by_hand)
    assert found.hours == pytest.approx(by_hand + 4 * 3600)
    assert sum(1 for one in found.holes if one.kind == "docking plug") == 6
    in_dock = tow().in_dock
    assert in_dock is not None
    bare = result_of(after(lambda one: replace(one, in_dock=replace(in_dock, closing=()))), floatable)
    assert bare.closing is None
    assert "sea chest" in bare.without_time


def test_a_package_without_a_tow_is_asked_nothing() -> None:
    found = calculate(replace(package(), tow=None))
    for step in (towed, towed_home, tow_condition, tow_weathers, tow_pull, tow_closures):
        outcome: Any = found.outcome(step)
        assert isinstance(outcome, NotAsked)
    assert not [name for name in found.record.missing if name.startswith("tow.")]
    assert isinstance(found.outcome(floatable), Absent)


def test_the_spread_of_the_bridle_is_that_of_its_towing_points() -> None:
    """Bitts 1.3 m either side of the centreline: 2.6 m, and legs of 4.5 m meet at 2 asin(1.3/4.5)."""
    assert result_of(ship(), tow_gear)["apex"] == pytest.approx(2 * asin(1.3 / 4.5))
    alone = after(lambda one: replace(one, points=one.points[:1]))
    assert result_of(alone, tow_gear)["apex"] is None
