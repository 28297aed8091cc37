"""The blocks of the plan against openings and against the blocks of earlier dockings."""

from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.footprints import (
    bare_bottom,
    block_clearances,
    covered_strips,
    earlier_footprints,
    plan_footprints,
)
from tenderwright.calculations.ship.keel_loads import planned_keel_blocks
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.calculations.ship.works import blocks_over_work
from tests.calculations.ship import marram
from tests.outcomes import result_of
from tests.replacing import replace


def test_the_bare_area_is_the_sum_of_what_the_blocks_touch() -> None:
    keel = sum(one.length * 0.2 for one in marram.found(planned_keel_blocks))  # her bar keel is 200 mm wide
    sides = sum(2 * one.length * one.width for one in marram.found(planned_side_blocks))
    assert marram.found(bare_bottom).area == pytest.approx(keel + sides)
    assert marram.ship().record.values["blocks.bare-area"].si == marram.found(bare_bottom).area


def test_the_plan_is_clear_of_openings_and_of_the_last_docking() -> None:
    assert marram.found(block_clearances).conflicts == ()
    assert [one for one in marram.found(covered_strips) if one.dockings[-1] == "plan"] == []
    margin = 0.05
    last = [one for one in marram.found(earlier_footprints)["docking-2007"] if one.kind == "keel"]
    for block in (one for one in marram.found(plan_footprints) if one.kind == "keel"):
        gaps = [max(block.aft - one.forward, one.aft - block.forward) for one in last]
        assert min(gaps) >= margin - 1e-9


def test_what_was_painted_under_blocks_that_moved_is_not_bare() -> None:
    """Were all of 2007 painted under, nothing would have been covered twice."""
    package = marram.package()
    last = max(package.history, key=lambda one: one.docked)
    painted = replace(
        last,
        blocks=replace(
            last.blocks,
            keel=tuple(replace(one, painted=True) for one in last.blocks.keel),
            sides=tuple(replace(one, painted=True) for one in last.blocks.sides),
        ),
    )
    history = tuple(painted if one is last else one for one in package.history)
    calculated = calculate(replace(package, history=history))
    assert calculated.found(covered_strips) == ()
    assert len(calculated.found(earlier_footprints)["docking-2007"]) > 0


def test_what_1988_and_2007_both_covered_is_listed() -> None:
    assert marram.found(covered_strips)
    for strip in marram.found(covered_strips):
        assert strip.dockings == ("docking-1988", "docking-2007")
        middle = 0.5 * (strip.aft + strip.forward)
        for name in strip.dockings:
            assert any(one.aft <= middle <= one.forward for one in marram.found(earlier_footprints)[name])


def test_the_blocks_of_earlier_dockings_are_counted_as_recorded() -> None:
    earlier = marram.found(earlier_footprints)
    keel = {name: sum(one.kind == "keel" for one in prints) for name, prints in earlier.items()}
    sides = {name: sum(one.kind == "side" for one in prints) for name, prints in earlier.items()}
    # 2007: thirty-three at even pitch, six pairs. 1988: 13.48 m and 20.4 m of keel at 1.2 m, five pairs.
    assert keel == {"docking-1988": 32, "docking-2007": 33}
    assert sides == {"docking-1988": 10, "docking-2007": 12}


def test_a_plain_row_covers_again_what_2007_covered_and_plugs_besides() -> None:
    calculated = calculate(marram.with_plan(keel_blocks=(marram.row("Fr 4", "Fr 72", 2),)))
    record = calculated.record
    again = [one for one in result_of(calculated, covered_strips) if one.dockings[-1] == "plan"]
    assert again
    assert float(record.values["blocks.covered-twice"].si) > 0.5
    assert {one.dockings for one in again} >= {("docking-2007", "plan"), ("docking-1988", "docking-2007", "plan")}
    assert {one.name for one in result_of(calculated, block_clearances).conflicts} >= {
        "plug-db-2-port",
        "plug-db-1-port",
    }


def test_nothing_may_stand_under_a_plug_however_it_is_cased() -> None:
    calculated = calculate(marram.with_plan(keel_blocks=(marram.row("Fr 8", "Fr 12", 1),)))
    found = [one for one in result_of(calculated, block_clearances).conflicts if one.name == "plug-afterpeak"]
    # Drawn downward: what counts is the plan. The plug is at Fr 9, and the blocks at Fr 8 and Fr 10 are 331 mm off.
    assert [(one.footprint.position, one.gap) for one in found] == [("Fr 9", 0.0)]


def test_an_anode_high_over_a_block_is_not_in_its_way() -> None:
    # p1 is at Fr 3, 880 mm over the top of the keel block there.
    assert any(one.position == "Fr 3" for one in marram.found(plan_footprints))
    assert marram.found(block_clearances).conflicts == ()


def test_work_under_a_side_block_is_told() -> None:
    pair = replace(marram.plan().side_blocks[0], at=marram.at("Fr 42"), off_centre=marram.length("2.6 m"))
    calculated = calculate(marram.with_plan(side_blocks=(pair,)))
    assert {(one.item, one.footprint.side) for one in result_of(calculated, blocks_over_work)} == {("335", "port")}
    assert marram.found(blocks_over_work) == ()
