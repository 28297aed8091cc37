"""The blocks of the plan against openings and against the blocks of earlier dockings."""

from __future__ import annotations

import pytest

from tenderwright.calculations.calculate import calculate
from tests.calculations.ship import marram
from tests.replacing import replace


def test_the_bare_area_is_the_sum_of_what_the_blocks_touch() -> None:
    docking = marram.docking()
    keel = sum(one.length * 0.2 for one in docking.keel_blocks)  # her bar keel is 200 mm wide
    sides = sum(2 * one.length * one.width for one in docking.side_blocks)
    assert docking.bare_area == pytest.approx(keel + sides)
    assert marram.ship()[0].values["blocks.bare-area"].si == docking.bare_area


def test_the_plan_is_clear_of_openings_and_of_the_last_docking() -> None:
    docking = marram.docking()
    assert docking.conflicts == ()
    assert [one for one in docking.strips if one.dockings[-1] == "plan"] == []
    margin = 0.05
    last = [one for one in docking.earlier["docking-2007"] if one.kind == "keel"]
    for block in (one for one in docking.footprints if one.kind == "keel"):
        gaps = [max(block.aft - one.forward, one.aft - block.forward) for one in last]
        assert min(gaps) >= margin - 1e-9


def test_what_1988_and_2007_both_covered_is_listed() -> None:
    docking = marram.docking()
    assert docking.strips
    for strip in docking.strips:
        assert strip.dockings == ("docking-1988", "docking-2007")
        middle = 0.5 * (strip.aft + strip.forward)
        for name in strip.dockings:
            assert any(one.aft <= middle <= one.forward for one in docking.earlier[name])


def test_the_blocks_of_earlier_dockings_are_counted_as_recorded() -> None:
    earlier = marram.docking().earlier
    keel = {name: sum(one.kind == "keel" for one in prints) for name, prints in earlier.items()}
    sides = {name: sum(one.kind == "side" for one in prints) for name, prints in earlier.items()}
    # 2007: thirty-three at even pitch, six pairs. 1988: 13.48 m and 20.4 m of keel at 1.2 m, five pairs.
    assert keel == {"docking-1988": 32, "docking-2007": 33}
    assert sides == {"docking-1988": 10, "docking-2007": 12}


def test_a_plain_row_covers_again_what_2007_covered_and_plugs_besides() -> None:
    record, results = calculate(marram.with_plan(keel_blocks=(marram.row("Fr 4", "Fr 72", 2),)))
    docking = results.docking
    again = [one for one in docking.strips if one.dockings[-1] == "plan"]
    assert again
    assert float(record.values["blocks.covered-twice"].si) > 0.5
    assert {one.dockings for one in again} >= {("docking-2007", "plan"), ("docking-1988", "docking-2007", "plan")}
    assert {one.name for one in docking.conflicts} >= {"plug-db-2-port", "plug-db-1-port"}


def test_nothing_may_stand_under_a_plug_however_it_is_cased() -> None:
    _, results = calculate(marram.with_plan(keel_blocks=(marram.row("Fr 8", "Fr 12", 1),)))
    found = [one for one in results.docking.conflicts if one.name == "plug-afterpeak"]
    # Drawn downward: what counts is the plan. The plug is at Fr 9, and the blocks at Fr 8 and Fr 10 are 331 mm off.
    assert [(one.footprint.position, one.gap) for one in found] == [("Fr 9", 0.0)]


def test_an_anode_high_over_a_block_is_not_in_its_way() -> None:
    # p1 is at Fr 3, 880 mm over the top of the keel block there.
    assert any(one.position == "Fr 3" for one in marram.docking().footprints)
    assert marram.docking().conflicts == ()


def test_work_under_a_side_block_is_told() -> None:
    pair = replace(marram.plan().side_blocks[0], at=marram.at("Fr 42"), off_centre=marram.length("2.6 m"))
    _, results = calculate(marram.with_plan(side_blocks=(pair,)))
    assert {(one.item, one.footprint.side) for one in results.docking.works} == {("335", "port")}
    assert marram.docking().works == ()
