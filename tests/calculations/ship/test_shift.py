"""The least move of keel blocks on frames frees what the last docking covered."""

from __future__ import annotations

from tenderwright.calculations.ship.footprints import covered_strips, earlier_footprints
from tenderwright.calculations.ship.keel_loads import planned_keel_blocks
from tenderwright.calculations.ship.shift import plan_shift
from tests.calculations.ship import marram
from tests.outcomes import result_of


def test_the_plan_needs_no_move() -> None:
    shift = marram.found(plan_shift)
    assert shift is not None
    assert (shift.blocks, shift.held) == ((), ())


def test_a_plain_row_is_freed_by_moves_and_stays_free_once_moved() -> None:
    rows = (marram.row("Fr 32", "Fr 48", 2),)
    calculated = marram.calculated(marram.with_plan(keel_blocks=rows))
    shift = result_of(calculated, plan_shift)
    assert shift is not None
    assert shift.blocks
    assert shift.held == ()
    moves = dict(zip(shift.blocks, shift.frames, strict=True))
    blocks = result_of(calculated, planned_keel_blocks)
    frames = [32 + 2 * index + moves.get(index + 1, 0) for index in range(len(blocks))]
    moved = tuple(marram.row(f"Fr {frame}", f"Fr {frame}", 1) for frame in frames)
    again = marram.calculated(marram.with_plan(keel_blocks=moved))
    assert [one for one in result_of(again, covered_strips) if one.dockings[-1] == "plan"] == []
    assert result_of(again, plan_shift).blocks == ()


def test_no_smaller_move_of_one_block_would_do() -> None:
    calculated = marram.calculated(marram.with_plan(keel_blocks=(marram.row("Fr 32", "Fr 48", 2),)))
    shift = result_of(calculated, plan_shift)
    assert shift is not None
    last = [one for one in result_of(calculated, earlier_footprints)["docking-2007"] if one.kind == "keel"]
    for number, frames in zip(shift.blocks, shift.frames, strict=True):
        block = result_of(calculated, planned_keel_blocks)[number - 1]
        for fewer in range(abs(frames)):
            for sign in (1, -1):
                x = block.x + sign * fewer * 0.6  # frames 30 to 78 at 600 mm
                gaps = [max(x - 0.15 - one.forward, one.aft - x - 0.15) for one in last]
                assert min(gaps) < 0.05
