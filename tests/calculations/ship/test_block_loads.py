"""Loads of the ship's keel blocks and side blocks stand in equilibrium."""

from __future__ import annotations

from math import atan

import pytest

from tenderwright.calculations.ship.block_places import KeelBlockResult
from tenderwright.calculations.ship.docking_condition import docking as docking_step
from tenderwright.calculations.ship.keel_loads import elastic_keel_loads, one_block_out, planned_keel_blocks
from tenderwright.calculations.ship.side_loads import (
    earlier_side_slopes,
    planned_side_blocks,
    side_block_slopes,
    side_block_standing,
    side_block_verdict,
)
from tenderwright.calculations.steps.outcome import Lacking
from tenderwright.model.docking_plan import CitedMass
from tenderwright.quantities.quantity import parse_quantity
from tests.calculations.ship import marram
from tests.outcomes import result_of
from tests.replacing import replace

G = 9.80665


def _column(name: str) -> list[tuple[KeelBlockResult, float]]:
    found = [(one, getattr(one, name)) for one in marram.found(planned_keel_blocks)]
    assert all(load is not None for _, load in found)
    return found


@pytest.mark.parametrize("name", ["rigid", "elastic"])
def test_the_keel_blocks_carry_her_weight_at_her_centre_of_gravity(name: str) -> None:
    position = marram.found(docking_step)
    assert position is not None
    loads = _column(name)
    assert sum(load for _, load in loads) == pytest.approx(position.loading.mass, rel=1e-6)
    moment = sum(one.x * load for one, load in loads)
    assert moment / position.loading.mass == pytest.approx(position.loading.lcg, abs=1e-8)


def test_the_pressure_is_the_greater_load_on_cap_and_plate() -> None:
    for one in marram.found(planned_keel_blocks):
        assert one.load == max(one.rigid or 0.0, one.elastic or 0.0)
        assert one.pressure == pytest.approx((one.load or 0.0) * G / (one.length * 0.4))


def test_no_block_passes_the_allowable_and_without_the_plates_some_would() -> None:
    limit = 3.10e6
    assert max(one.pressure or 0.0 for one in marram.found(planned_keel_blocks)) < limit
    bare = tuple(replace(one, bearing_width=None) for one in marram.plan().keel_blocks)
    calculated = marram.calculated(marram.with_plan(keel_blocks=bare))
    assert max(one.pressure or 0.0 for one in result_of(calculated, planned_keel_blocks)) > limit


def test_a_long_keel_line_says_that_a_rigid_hull_is_not_justified() -> None:
    assert marram.found(elastic_keel_loads).slenderness > 3.14


def test_without_a_girder_there_are_rigid_loads_only() -> None:
    calculated = marram.calculated(marram.with_plan(girder=None))
    assert all(one.elastic is None and one.rigid is not None for one in result_of(calculated, planned_keel_blocks))
    assert isinstance(calculated.outcome(elastic_keel_loads), Lacking)


def test_wind_and_earthquake_are_set_side_by_side_and_not_added() -> None:
    side, position = marram.found(side_block_standing), marram.found(docking_step)
    assert side is not None
    assert position is not None
    # F = rho V^2/2 A C; a_h W g, with the figures of the plan.
    assert side.wind is not None
    assert side.earthquake is not None
    assert side.wind.force == pytest.approx(0.5 * 1.25 * 25**2 * 330 * 0.92)
    assert side.wind.moment == pytest.approx(0.5 * 1.25 * 25**2 * 330 * 0.92 * (3.6 + 0.18))
    assert side.earthquake.force == pytest.approx(0.10 * position.loading.mass * G)
    sliding = next(limit for limit in side.limits if "sliding" in limit.name)
    assert sliding.demand == pytest.approx(side.earthquake.force)
    assert sliding.use == pytest.approx(0.10 / 0.30)


def test_the_blocks_taken_out_are_those_that_the_plan_names_or_else_all() -> None:
    named, blocks = marram.found(one_block_out), marram.found(planned_keel_blocks)
    places = [blocks[one.out - 1].position for one in named.cases]
    assert places == ["Fr 12", "Fr 21", "Fr 28", "Fr 43", "Fr 57", "Fr 68"]
    every = result_of(marram.calculated(marram.with_plan(taken_out=())), one_block_out)
    assert len(every.cases) == len(blocks)
    assert every.worst.pressure > named.worst.pressure


def test_a_block_taken_out_where_none_stands_is_told_at_its_place() -> None:
    calculated = marram.calculated(marram.with_plan(taken_out=(marram.at("Fr 9"),)))
    record = calculated.record
    assert calculated.found(one_block_out) is None
    assert [one.message for one in record.notices] == ["`taken_out` names Fr 9, and no keel block stands there"]


def test_the_pair_that_slipped_in_2007_stood_on_twice_the_slope_that_friction_holds() -> None:
    earlier = {(one.docking, one.position): one.slope for one in marram.found(earlier_side_slopes)}
    held = marram.found(side_block_slopes).limit.limit
    assert held == pytest.approx(atan(0.30))
    assert earlier["docking-2007", "Fr 22"] > 2 * held
    assert max(earlier, key=lambda key: earlier[key]) == ("docking-2007", "Fr 22")
    assert max(marram.found(side_block_slopes).slopes) < held


def test_the_lee_side_is_judged_by_crushing_and_by_shell_and_frame() -> None:
    side, pairs = marram.found(side_block_standing), marram.found(planned_side_blocks)
    assert side.crushing is not None
    worst = max(max(one.wind or 0.0, one.earthquake or 0.0) for one in pairs)
    assert side.hull.demand == worst
    assert side.crushing.demand == pytest.approx(worst * G / (0.4 * 0.6))
    assert side.crushing.met is True
    found = marram.found(side_block_verdict)
    assert found.met is None
    assert found.governs.name == "shell and frame at the lee side block"
    for most, met in (("30 t", True), ("20 t", False)):
        said = CitedMass(value=parse_quantity(most, "mass"), source="naval architect", here=marram.plan().here)
        calculated = marram.calculated(marram.with_plan(hull_at_side_blocks=said))
        assert result_of(calculated, side_block_verdict).met is met
