"""With one block out the others carry her whole weight at her centre of gravity, and no case is left out."""

from __future__ import annotations

import pytest

from tenderwright.calculations.blocks.area_moment import Block, area_moment
from tenderwright.calculations.blocks.keel_line import METHOD as ELASTIC
from tenderwright.calculations.blocks.one_out import METHOD, out_in_turn
from tenderwright.calculations.method import OutOfRange

G = 9.80665
LINE = [{"x": float(x), "length": 0.4, "width": 0.4, "stiffness": 2e8} for x in range(2, 42, 4)]
WEIGHT, LCG = 600e3, 20.0


def test_evenly_loaded_an_equal_share_of_the_missing_block_goes_to_the_others() -> None:
    # Three blocks alike with her over the middle one: W/3 each; without the middle W/2 on either end (derived).
    three = [{"x": x, "length": 0.4, "width": 0.4} for x in (0.0, 5.0, 10.0)]
    (found,) = out_in_turn(WEIGHT, 5.0, three, [2]).cases
    assert found.load == pytest.approx(WEIGHT / 2)
    assert found.pressure == pytest.approx(WEIGHT / 2 * G / 0.16)


def test_each_case_is_that_of_the_blocks_that_stay() -> None:
    found = out_in_turn(WEIGHT, LCG, LINE)
    assert [one.out for one in found.cases] == list(range(1, len(LINE) + 1))
    for one in found.cases:
        rest = [Block(b["x"], b["length"], b["width"]) for i, b in enumerate(LINE, 1) if i != one.out]
        loads = area_moment(WEIGHT, LCG, rest).reactions
        assert sum(loads) == pytest.approx(WEIGHT)
        assert one.load == max(loads)
        assert one.hardest != one.out
    assert found.worst.pressure == max(one.pressure for one in found.cases)


def test_a_girder_that_bends_makes_the_neighbours_bear_more() -> None:
    girder = {
        "elasticity": 2e11,
        "bays": [{"aft": 0.0, "forward": 40.0, "second_moment": 0.02}],
        "weight": WEIGHT,
        "weight_aft": 0.0,
        "weight_forward": 40.0,
        "lcg": LCG,
    }
    (bent,) = out_in_turn(WEIGHT, LCG, LINE, [5], girder).cases
    (stiff,) = out_in_turn(WEIGHT, LCG, LINE, [5]).cases
    springs = [{"x": b["x"], "stiffness": b["stiffness"]} for i, b in enumerate(LINE, 1) if i != 5]
    assert bent.load == max(ELASTIC.kernel(blocks=springs, **girder).loads)
    assert bent.load > stiff.load
    assert bent.hardest in (4, 6)


def test_the_worst_is_held_against_the_allowable() -> None:
    worst = out_in_turn(WEIGHT, LCG, LINE).worst.pressure
    said = {"weight": WEIGHT, "lcg": LCG, "blocks": LINE, "allowable_source": "assumed"}
    assert METHOD.run(**said, allowable=worst)["met"] is True
    assert METHOD.run(**said, allowable=0.99 * worst)["met"] is False
    assert METHOD.run(weight=WEIGHT, lcg=LCG, blocks=LINE)["met"] is None


def test_too_few_blocks_or_a_block_that_is_not_there() -> None:
    with pytest.raises(OutOfRange, match="three blocks"):
        out_in_turn(WEIGHT, LCG, LINE[:2])
    with pytest.raises(OutOfRange, match="among them"):
        out_in_turn(WEIGHT, LCG, LINE, [11])
    bare = [{key: one[key] for key in ("x", "length", "width")} for one in LINE]
    with pytest.raises(OutOfRange, match="needs its stiffness"):
        out_in_turn(WEIGHT, LCG, bare, girder={})
    with pytest.raises(OutOfRange, match="source"):
        out_in_turn(WEIGHT, LCG, LINE, allowable=3e6)
