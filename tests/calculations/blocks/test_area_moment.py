"""Loads of separate blocks under a rigid hull."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.blocks.area_moment import METHOD, Block, area_moment
from tenderwright.calculations.blocks.plane import next_bearing, on_springs
from tenderwright.calculations.blocks.stiffness import block_stiffness
from tenderwright.calculations.cradle.line_load import line_load
from tenderwright.calculations.method import OutOfRange

TEN = [Block(float(x), 0.3, 0.2) for x in range(2, 40, 4)]


def test_ten_equal_blocks():
    """Derived by the area-moment method (R. Heger, Dry Dock Conference, 2008): W 2000 t, LCG 21.5: 159.0909 to 240.9091
    in steps of 9.0909."""
    found = area_moment(2e6, 21.5, TEN)
    assert [r / 1e3 for r in found.reactions] == pytest.approx(159.0909 + 9.0909 * np.arange(10), abs=5e-4)
    assert (found.lifted, found.rounds) == ((), 1)


def test_one_block_left_out():
    """Derived by the same: the block at 10 m removed, x_c 21.1111: 209.9265, 212.5, -, 217.6471 ... 233.0882."""
    found = area_moment(2e6, 21.5, [b for b in TEN if b.x != 10.0])
    loads = [r / 1e3 for r in found.reactions]
    assert loads[:3] == pytest.approx([209.9265, 212.5, 217.6471], abs=5e-5)
    assert loads[-1] == pytest.approx(233.0882, abs=5e-5)
    assert sum(loads) == pytest.approx(2000.0)


def test_uplift_is_dropped_as_in_the_continuous_triangle():
    """Derived: many small blocks carry the rigid triangle of 36 m at 111.11 t/m for W 2000 t, L 40, e 8."""
    many = [Block(0.025 + 0.05 * i, 0.05, 0.2) for i in range(800)]
    found, line = area_moment(2e6, 28.0, many), line_load(2e6, 28.0, 0.0, 40.0)
    assert found.reactions[-1] / 0.05 == pytest.approx(line.peak, rel=2e-3)
    assert len(found.lifted) * 0.05 == pytest.approx(line.lift_off, abs=0.1)
    assert found.rounds > 1


def test_own_inertia_of_two_long_blocks():
    """Derived: with k a^2/12 of each, two long blocks side by side are one block as far as the moment goes."""
    two = [Block(5.0, 10.0, 1.0), Block(15.0, 10.0, 1.0)]
    whole = line_load(1e6, 11.0, 0.0, 20.0)
    with_own, without = area_moment(1e6, 11.0, two, own_inertia=True), area_moment(1e6, 11.0, two)
    assert with_own.reactions[1] == pytest.approx(whole.between(10.0, 20.0))
    assert without.reactions[1] == pytest.approx(1e6 * 0.6)


def test_lines_of_blocks_off_the_centreline():
    four = [Block(x, 1.0, 1.0, y) for x in (0.0, 10.0) for y in (-2.0, 2.0)]
    found = area_moment(4e5, 6.0, four, tcg=0.5)
    # Derived: each is W/4 (1 + 0.2 x')(1 + 0.25 y') to first order in a plane.
    assert found.reactions == pytest.approx([5.5e4, 1.05e5, 9.5e4, 1.45e5])


centres = st.floats(0.05, 0.95)


@given(centres, st.lists(st.tuples(st.floats(0.2, 3.0), st.floats(0.1, 2.0)), min_size=3, max_size=12))
def test_balances_and_never_pulls(share, rows):
    places = np.cumsum([gap for gap, _ in rows])
    blocks = [Block(float(x), 0.1, width) for x, (_, width) in zip(places, rows, strict=True)]
    lcg = float(places[0] + share * (places[-1] - places[0]))
    found = np.array(area_moment(1e6, lcg, blocks).reactions)
    assert found.min() >= 0.0
    assert found.sum() == pytest.approx(1e6)
    assert found @ places == pytest.approx(1e6 * lcg)


@given(st.floats(-1.8, 1.8), st.floats(1.0, 9.0))
def test_balances_in_two_directions(tcg, lcg):
    places = [(x, y) for x in (0.0, 3.0, 7.0, 10.0) for y in (-2.0, 0.0, 2.0)]
    blocks = [Block(x, 0.5, 0.5, y) for x, y in places]
    found = np.array(area_moment(1e6, lcg, blocks, tcg).reactions)
    assert found.min() >= 0.0
    assert found @ np.array(places) == pytest.approx([1e6 * lcg, 1e6 * tcg], abs=1.0)


def test_set_that_comes_round_again_loses_one():
    bears, now = np.array([True, True, True]), np.array([True, False, True])
    seen = {now.tobytes()}
    left = next_bearing(bears, now, np.array([1.0, -2.0, -5.0]), seen)
    assert left.tolist() == [True, True, False]
    assert next_bearing(bears, np.array([True, True, False]), np.zeros(3), seen).tolist() == [True, True, False]


def test_preload_is_kept_where_nothing_moves():
    found = on_springs(10.0, (0.0,), [-1.0, 0.0, 1.0], [1.0, 5.0, 1.0], [2.0, 6.0, 2.0])
    assert found.reaction.tolist() == pytest.approx([2.0, 6.0, 2.0])


def test_layers_are_springs_in_series():
    assert block_stiffness([(0.3, 3e8, 0.1), (0.3, 3e8, 0.1)]) == pytest.approx(0.5 * 1e8)
    assert block_stiffness([(1.0, 1e9, 0.5)]) == pytest.approx(5e8)
    with pytest.raises(OutOfRange):
        block_stiffness([])
    with pytest.raises(OutOfRange):
        block_stiffness([(0.0, 1e9, 1.0)])


@pytest.mark.parametrize(
    ("weight", "lcg", "blocks", "tcg", "words"),
    [
        (0.0, 20.0, TEN, 0.0, "weight"),
        (1e6, 20.0, TEN[:1], 0.0, "two blocks"),
        (1e6, 20.0, [Block(0.0, 0.0, 1.0), Block(5.0, 1.0, 1.0)], 0.0, "length"),
        (1e6, 1.0, TEN, 0.0, "stand"),
        (1e6, 20.0, TEN, 0.5, "one line"),
        (1e6, 20.0, [*TEN, Block(40.0, 1.0, 1.0, 0.0, 5.0)], 0.0, "stiffness"),
    ],
)
def test_refusals(weight, lcg, blocks, tcg, words):
    with pytest.raises(OutOfRange, match=words):
        area_moment(weight, lcg, blocks, tcg)


def test_method_takes_relative_stiffness():
    rows = [{"x": x, "length": 0.3, "width": 0.2, "relative_stiffness": k} for x, k in ((0.0, 1.0), (4.0, 3.0))]
    found = METHOD.run(weight=4e5, lcg=3.0, blocks=rows)
    assert found["loads"] == pytest.approx([1e5, 3e5])
    assert found["at"] == 4.0
