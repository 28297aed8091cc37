"""Her weight where she cannot be floated: blocks, line load, cradle and lift rest on it, and drafts do not."""

from __future__ import annotations

import pytest

from tenderwright.calculations.ship.cradle import cradles, docking_line_load
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.keel_loads import keel_bearing, rigid_keel_loads
from tenderwright.calculations.ship.landing import landing
from tenderwright.calculations.ship.weight import docked_weight, weight_alone
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.runner import Calculated
from tests.calculations.ship import marram
from tests.outcomes import result_of
from tests.replacing import replace


def not_floated() -> Calculated:
    """Calculate Marram with no form of hull and no tanks, and her weight so far aft that no estimate floats her."""
    package = marram.package()
    lightship = package.lightship
    assert lightship is not None
    light = replace(lightship.lightship, at=marram.length("19.0 m"))
    return marram.calculated(replace(package, offsets=None, tanks=(), lightship=replace(lightship, lightship=light)))


def test_where_she_floats_her_weight_is_that_of_the_docking_condition() -> None:
    assert isinstance(marram.ship().outcome(weight_alone), NotAsked)
    assert marram.found(docked_weight).loading == marram.found(docking).loading


def test_where_she_cannot_be_floated_her_weights_are_summed() -> None:
    ship = not_floated()
    assert isinstance(ship.outcome(docking), Absent)
    found = result_of(ship, weight_alone)
    assert 600e3 < found.mass < marram.found(docking).loading.mass
    assert result_of(ship, docked_weight).condition == "condition.weight"


def test_blocks_line_load_cradle_and_lift_need_no_more() -> None:
    ship = not_floated()
    weight = result_of(ship, docked_weight).loading.mass
    assert sum(result_of(ship, rigid_keel_loads).reactions) == pytest.approx(weight)
    assert result_of(ship, docking_line_load).peak > 0
    assert result_of(ship, keel_bearing).elastic_line_load is None
    assert result_of(ship, cradles)["sallow-haven-shiplift"].train.cars
    assert isinstance(ship.outcome(landing), Absent)


def test_a_facility_is_judged_by_all_but_the_water_over_its_blocks() -> None:
    fit = result_of(not_floated(), facility_fits)["kettle-sound-floating-dock"]
    assert {one.name for one in fit.unknown} == {"water over the blocks"}
    lift = next(one for one in fit.limits if one.name == "lift")
    assert lift.met is True
