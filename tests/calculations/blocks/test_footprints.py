"""Footprints against openings and earlier dockings, and the search for a shift."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import box
from shapely.ops import unary_union

from tenderwright.calculations.blocks.covered import METHOD as COVERED
from tenderwright.calculations.blocks.covered import covered_running, union_area
from tenderwright.calculations.blocks.footprint import Footprint, distances, sizes, too_near
from tenderwright.calculations.blocks.shift import METHOD as SHIFT
from tenderwright.calculations.blocks.shift import Bottom, least_shift, least_shifts
from tenderwright.calculations.method import OutOfRange


def row(start: float, pitch: float, count: int, length: float = 0.3, y: float = 0.0) -> list[Footprint]:
    return [Footprint(f"b{i}", start + i * pitch, y, length, 1.0) for i in range(count)]


def shape(one: Footprint):
    return box(one.x - one.length / 2, one.y - one.width / 2, one.x + one.length / 2, one.y + one.width / 2)


def polygons(one):
    """The parts with area; edges and corners that only touch are left out."""
    parts = getattr(one, "geoms", [one])
    return unary_union([part for part in parts if part.area > 0])


grid = st.integers(0, 40).map(lambda n: n * 0.25)
some = st.builds(Footprint, st.just("r"), grid, grid, st.integers(1, 8).map(float), st.integers(1, 8).map(float))
groups = st.lists(some, max_size=6)


@given(some, some)
def test_distance_is_that_of_shapely(one, other):
    """General geometry library shapely: distance of two rectangles; ours is below nothing where they overlap."""
    found = distances(sizes([one]), sizes([other]))[0, 0]
    assert max(0.0, found) == pytest.approx(shape(one).distance(shape(other)), abs=1e-9)
    assert (found < -1e-9) == (shape(one).intersection(shape(other)).area > 1e-9)


@given(groups)
def test_area_under_blocks_is_that_of_shapely(blocks):
    assert union_area(blocks) == pytest.approx(unary_union([shape(b) for b in blocks]).area, abs=1e-9)


@given(groups, groups, groups)
def test_strips_are_those_of_shapely(first, second, third):
    one, two, three = (unary_union([shape(b) for b in g]) for g in (first, second, third))
    strips = covered_running([first, second, third])
    early, late = polygons(one.intersection(two)), polygons(two.intersection(three))
    wanted = unary_union([early, late]).area
    assert sum(s.area for s in strips) == pytest.approx(wanted, abs=1e-9)
    thrice = sum(s.area for s in strips if s.dockings == 3)
    assert thrice == pytest.approx(early.intersection(three).area, abs=1e-9)


def test_a_rectangle_of_less_than_nothing_is_refused():
    with pytest.raises(OutOfRange, match="negative"):
        sizes([Footprint("x", 0.0, 0.0, -1.0, 1.0)])


def test_strips_are_joined_and_numbered():
    first, second = [Footprint("a", 10.0, 0.0, 1.0, 2.0)], [Footprint("b", 10.5, 0.0, 1.0, 1.0)]
    (strip,) = covered_running([first, second])
    assert (strip.aft, strip.forward, strip.starboard, strip.port) == (10.0, 10.5, -0.5, 0.5)
    assert (strip.first, strip.last, strip.dockings) == (0, 1, 2)
    assert covered_running([first, [], first]) == []
    assert [s.dockings for s in covered_running([first, first, first])] == [3]
    assert covered_running([[], []]) == []
    with pytest.raises(OutOfRange, match="one docking"):
        covered_running([first], 0)


def test_latest_of_equal_runs_is_named():
    one = [Footprint("a", 10.0, 0.0, 1.0, 2.0)]
    (strip,) = covered_running([one, one, [], one, one])
    assert (strip.first, strip.last) == (3, 4)


def test_method_tells_whether_a_strip_is_covered_now():
    one = [{"x": 10.0, "y": 0.0, "length": 1.0, "width": 2.0}]
    found = COVERED.run(dockings=[one, one, []])
    assert found["strips"][0]["now"] is False
    assert found["area_now"] == 0.0
    assert found["area_running"] == pytest.approx(2.0)


def is_free(blocks: list[Footprint], bottom: Bottom) -> bool:
    near = any(
        too_near(distances(sizes(blocks), sizes(others)), clearance).any()
        for others, clearance in ((bottom.earlier, bottom.margin), (bottom.others, bottom.clearance))
    )
    within = all(
        bottom.aft - 1e-9 <= b.x - b.length / 2 and b.x + b.length / 2 <= bottom.forward + 1e-9 for b in blocks
    )
    return not near and within


@given(st.integers(-20, 20), st.lists(st.floats(2.0, 30.0), max_size=2), st.floats(0.0, 0.2))
def test_shift_of_the_row_is_the_least_that_frees_it(offset, plugs, margin):
    blocks, earlier = row(8.0, 1.2, 6), row(8.0 + offset * 0.05, 1.2, 6)
    others = tuple(Footprint("plug", x, 0.0, 0.04, 0.04) for x in plugs)
    bottom = Bottom(tuple(earlier), others, 2.0, 30.0, margin, 0.1)
    found = least_shift(blocks, bottom, 0.15, 12)
    free = [n for n in range(-12, 13) if is_free([b.moved(n * 0.15) for b in blocks], bottom)]
    assert found.free == bool(free)
    if free:
        assert abs(found.frames) == min(abs(n) for n in free)
        assert is_free([b.moved(found.distance) for b in blocks], bottom)
        assert found.held == 0
    else:
        assert found.held > 0


def test_row_already_free_stays():
    bottom = Bottom(tuple(row(8.6, 1.2, 6)), (), 2.0, 30.0, 0.1)
    assert least_shift(row(8.0, 1.2, 6), bottom, 0.15).frames == 0


def test_fixed_blocks_are_not_run_into():
    bottom = Bottom(tuple(row(8.0, 1.2, 1)), (), 2.0, 30.0)
    free = least_shift(row(8.0, 1.2, 1), bottom, 0.3)
    held = least_shift(row(8.0, 1.2, 1), bottom, 0.3, fixed=[Footprint("side", 8.3, 0.4, 0.2, 0.2)])
    assert (free.frames, held.frames) == (1, -1)


def test_single_blocks_are_freed_where_the_row_cannot_be():
    """Pitches of 1.25 m and 1.20 m beat along the row, so no one shift frees every block."""
    blocks, earlier = row(4.0, 1.25, 24), row(4.0, 1.2, 25)
    bottom = Bottom(tuple(earlier), (), 2.0, 36.0, 0.05)
    whole = least_shift(blocks, bottom, 0.25, 8)
    assert not whole.free
    single = least_shifts(blocks, bottom, 0.25, 4, 0.1)
    moved = [one.block.moved(one.distance) for one in single]
    assert all(one.free for one in single)
    assert is_free(moved, bottom)
    assert all(b.x - a.x - 0.3 >= 0.1 - 1e-9 for a, b in pairwise(moved))
    # No block moves that need not.
    still = [one for one in single if is_free([one.block], bottom)]
    assert sum(one.frames != 0 for one in still) <= 2


def test_single_search_is_the_least_by_trying_everything():
    from itertools import product

    blocks = row(4.0, 0.9, 4)
    earlier = (Footprint("e", 4.0, 0.0, 0.3, 1.0), Footprint("e", 5.9, 0.0, 0.5, 1.0))
    bottom = Bottom(earlier, (), 3.0, 8.0, 0.05)
    found = least_shifts(blocks, bottom, 0.2, 3, 0.3)
    best = min(
        sum(map(abs, ns))
        for ns in product(range(-3, 4), repeat=4)
        if is_free(moved := [b.moved(n * 0.2) for b, n in zip(blocks, ns, strict=True)], bottom)
        and all(b.x - a.x - 0.3 >= 0.3 - 1e-9 for a, b in pairwise(moved))
    )
    assert all(one.free for one in found)
    assert sum(abs(one.frames) for one in found) == best


def test_block_that_cannot_be_freed_stays_and_is_named():
    bottom = Bottom((Footprint("e", 10.0, 0.0, 8.0, 1.0),), (), 2.0, 30.0)
    (held,) = least_shifts(row(10.0, 1.0, 1), bottom, 0.25, 3)
    assert (held.free, held.frames) == (False, 0)


def test_shift_refusals():
    bottom = Bottom((), (), 2.0, 30.0)
    with pytest.raises(OutOfRange, match="no blocks"):
        least_shift([], bottom, 0.5)
    with pytest.raises(OutOfRange, match="frame space"):
        least_shift(row(4.0, 1.0, 2), bottom, 0.0)
    with pytest.raises(OutOfRange, match="apart"):
        least_shifts(row(4.0, 0.3, 30), bottom, 0.25, 1, 2.0)


def test_shift_says_how_far_it_looked():
    found = SHIFT.run(
        blocks=[{"x": 10.0, "y": 0.0, "length": 0.3, "width": 1.0}],
        frame_space=0.5,
        keel_aft=2.0,
        keel_forward=42.0,
        most=8,
    )
    assert (found["searched"], found["searched_to"]) == (8.0, 4.0)
    with pytest.raises(OutOfRange, match="0 to 200"):
        least_shift([Footprint("keel", 10.0, 0.0, 0.3, 1.0)], Bottom((), (), 2.0, 42.0), 0.5, 10**15)
