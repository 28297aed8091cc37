"""How near blocks stand to what is on the hull, in plan and counting heights."""

from __future__ import annotations

from math import hypot
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.blocks.clearance import LOOKED_AT, METHOD, clear_of
from tenderwright.calculations.method import OutOfRange

BLOCKS = [{"name": f"b{i}", "x": 10.0 + 1.2 * i, "y": 0.0, "length": 0.3, "width": 1.0, "top": 0.0} for i in range(3)]
PLUG = {"name": "plug", "x": 10.45, "y": 0.55, "length": 0.038, "width": 0.038, "drawn_down": True}
IN_PLAN = hypot(0.45 - 0.15 - 0.019, 0.55 - 0.5 - 0.019)
"""From the corner of the first block to that of the plug: 0.281 m along and 0.031 m across."""


def test_the_distance_is_from_edge_to_edge() -> None:
    (near,) = clear_of(BLOCKS, [PLUG], 0.3).conflicts
    assert (near.block, near.other) == (0, 0)
    assert near.gap == pytest.approx(IN_PLAN)
    found = clear_of(BLOCKS, [PLUG], 0.25)
    assert (found.conflicts, found.nearest) == ((), (near,))


def test_a_block_under_a_thing_is_at_no_distance() -> None:
    found = METHOD.run(blocks=BLOCKS, others=[{"name": "chest", "x": 11.2, "y": 0.0, "length": 0.4, "width": 0.4}])
    assert found["conflicts"] == [{"block": "b1", "other": "chest", "gap": 0.0}]
    assert (found["count"], found["least"]) == (1.0, 0.0)


@pytest.mark.parametrize(("lowest", "drawn_down", "over"), [(0.5, False, 0.5), (0.5, True, 0.0), (1.5, True, 1.5)])
def test_the_height_over_the_block_counts_but_not_for_what_is_drawn_downward_near_it(
    lowest: float, drawn_down: bool, over: float
) -> None:
    (near,) = clear_of(BLOCKS, [PLUG | {"lowest": lowest, "drawn_down": drawn_down}]).nearest
    assert near.gap == pytest.approx(hypot(IN_PLAN, over))


@pytest.mark.parametrize("unknown", [{"lowest": 0.7}, {"top": 0.7}])
def test_a_height_that_is_unknown_is_none(unknown: dict[str, float]) -> None:
    block = {key: one for key, one in BLOCKS[0].items() if key != "top"}
    (block, thing) = ({**block, **unknown}, PLUG) if "top" in unknown else (block, {**PLUG, **unknown})
    (near,) = clear_of([block], [thing]).nearest
    assert near.gap == pytest.approx(IN_PLAN)


PLACES = st.floats(0.0, 20.0)


@given(st.lists(st.fixed_dictionaries({"x": PLACES, "y": PLACES, "lowest": st.floats(-1.0, 3.0)}), max_size=8))
def test_no_block_is_nearer_to_a_thing_than_the_one_named(things: list[dict[str, Any]]) -> None:
    found = clear_of(BLOCKS, things, 0.3)
    for near in found.nearest:
        alone = [clear_of([block], [things[near.other]], 0.3).nearest for block in BLOCKS]
        assert near.gap == min(one[0].gap for one in alone if one)
    assert {one.other for one in found.conflicts} == {one.other for one in found.nearest if one.gap < 0.3 - 1e-6}
    assert all(one.gap <= LOOKED_AT for one in found.nearest)


def test_without_anything_on_the_hull_nothing_is_near() -> None:
    found = METHOD.run(blocks=BLOCKS, others=[])
    assert found == {"count": 0.0, "conflicts": [], "nearest": [], "least": None}


def test_a_clearance_of_less_than_nothing_is_refused() -> None:
    with pytest.raises(OutOfRange, match="clearance"):
        clear_of(BLOCKS, [PLUG], -0.1)
