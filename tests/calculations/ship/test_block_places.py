"""Keel blocks stand on the frames that the plan names, and side blocks on the hull."""

from __future__ import annotations

from math import radians, tan

import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.block_places import keel_blocks, placed_keel_blocks, side_blocks
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.steps.outcome import Failed
from tenderwright.model.docking_plan import CitedAngle
from tenderwright.quantities.quantity import parse_quantity
from tests.calculations.ship import marram
from tests.outcomes import result_of
from tests.replacing import replace


def test_a_row_stands_on_every_so_many_frames() -> None:
    calculated = calculate(marram.with_plan(keel_blocks=(marram.row("Fr 8", "Fr 14", 2),)))
    blocks = result_of(calculated, keel_blocks)
    assert [one.position for one in blocks] == ["Fr 8", "Fr 10", "Fr 12", "Fr 14"]
    # Frames 0 to 10 at 500 mm, 10 to 30 at 560 mm.
    assert [one.x for one in blocks] == pytest.approx([4.0, 5.0, 6.12, 7.24])


def test_a_row_may_be_given_from_forward() -> None:
    calculated = calculate(marram.with_plan(keel_blocks=(marram.row("Fr 14", "Fr 8", 3),)))
    assert [one.position for one in result_of(calculated, keel_blocks)] == ["Fr 8", "Fr 11", "Fr 14"]


def test_a_row_keeps_its_offset_from_the_frames() -> None:
    one = replace(marram.row("Fr 40", "Fr 44", 2), at=marram.at("Fr 40 + 100 mm"))
    calculated = calculate(marram.with_plan(keel_blocks=(one,)))
    assert [block.x for block in result_of(calculated, keel_blocks)] == pytest.approx([22.3, 23.5, 24.7])


def test_two_blocks_at_one_place_are_told_and_nothing_rests_on_them() -> None:
    rows = (marram.row("Fr 8", "Fr 14", 2), marram.row("Fr 14", "Fr 20", 2))
    calculated = calculate(marram.with_plan(keel_blocks=rows))
    record = calculated.record
    assert [notice.code for notice in record.notices] == ["out-of-range"]
    assert isinstance(calculated.outcome(placed_keel_blocks), Failed)
    assert "blocks.bare-area" not in record.values


def test_a_block_line_that_falls_aft_is_built_lower_aft() -> None:
    angle = CitedAngle(value=parse_quantity("0.2 deg", "angle"), source="for the test", here=marram.plan().here)
    calculated = calculate(marram.with_plan(declivity=angle))
    first, *_, last = result_of(calculated, keel_blocks)
    assert first.height is not None
    assert last.height is not None
    assert last.height - first.height == pytest.approx((last.x - first.x) * tan(radians(0.2)))


def test_stiffness_is_that_of_the_layers_in_series() -> None:
    (one, *_) = marram.found(keel_blocks)
    area = 0.4 * 0.4
    softness = 0.86 / (25e9 * area) + 0.6 / (900e6 * area) + 0.04 / (206e9 * area)
    assert one.stiffness == pytest.approx(1 / softness)


def test_side_blocks_meet_the_hull_at_its_half_breadth() -> None:
    form = marram.found(hull).form
    assert form is not None
    for pair in marram.found(side_blocks):
        assert float(form.half_breadth_at(pair.x, pair.shell)) == pytest.approx(pair.off_centre, abs=2e-3)
        assert pair.shell_inner < pair.shell < pair.shell_outer
        assert pair.height == pytest.approx(1.5 + 0.18 + pair.shell)


def test_a_side_block_beyond_the_hull_is_told_at_its_pair() -> None:
    pair = marram.plan().side_blocks[0]
    calculated = calculate(marram.with_plan(side_blocks=(replace(pair, off_centre=marram.length("4.9 m")),)))
    record = calculated.record
    assert [(notice.code, notice.place) for notice in record.notices] == [("out-of-range", pair.here)]
    assert result_of(calculated, side_blocks) == ()
