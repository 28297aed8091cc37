"""Clipping, ruling and spreading keep to plane geometry."""

from __future__ import annotations

import math
from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from tenderwright.documents.drawings.plane import above, below, crosses, holds, roomiest, rulings, spread, uncrossed

L_SHAPE = [(0.0, 0.0), (10.0, 0.0), (10.0, 4.0), (4.0, 4.0), (4.0, 9.0), (0.0, 9.0)]
HALF_METRES = st.integers(2, 60).map(lambda n: n / 2)


@given(st.floats(-2, 11), st.floats(-0.3, 0.3))
def test_what_lies_below_a_line_is_what_shapely_cuts_there(height: float, slope: float) -> None:
    half_plane = Polygon([(-50, height + 50 * slope), (50, height - 50 * slope), (50, -99), (-50, -99)])
    wanted = Polygon(L_SHAPE).intersection(half_plane).area
    cut = below(L_SHAPE, height, slope)
    assert (Polygon(cut).area if len(cut) > 2 else 0.0) == pytest.approx(wanted, abs=1e-6)


@given(st.floats(-2, 11))
def test_above_and_below_share_the_whole(height: float) -> None:
    parts = [Polygon(part).area for part in (above(L_SHAPE, height), below(L_SHAPE, height)) if len(part) > 2]
    assert sum(parts) == pytest.approx(Polygon(L_SHAPE).area)


@given(st.floats(0, 180), st.floats(0.5, 2.5), st.floats(0, 1))
def test_rulings_stay_inside_and_fill_it_evenly(angle: float, spacing: float, phase: float) -> None:
    shape = Polygon(L_SHAPE)
    ruled = rulings([L_SHAPE], angle, spacing, phase)
    assert all(shape.buffer(1e-6).covers(LineString(one)) for one in ruled)
    length = sum(math.dist(a, b) for a, b in ruled)
    assert abs(length * spacing - shape.area) <= spacing * shape.length


def test_a_hole_is_left_unruled() -> None:
    hole = [(1.0, 1.0), (3.0, 1.0), (3.0, 3.0), (1.0, 3.0)]
    ruled = rulings([L_SHAPE, hole], 0, 0.5)
    assert not any(LineString(one).crosses(Polygon(hole).buffer(-0.1)) for one in ruled)


def test_a_text_box_finds_room_away_from_what_covers_the_outline() -> None:
    cover = [(-1.0, -1.0), (7.0, -1.0), (7.0, 10.0), (-1.0, 10.0)]
    place = roomiest(L_SHAPE, [cover], 1.0, 1.0)
    assert place is not None
    assert place[0] > 7.5
    assert holds(L_SHAPE, place)


def test_there_is_no_room_for_a_box_larger_than_the_outline() -> None:
    assert roomiest(L_SHAPE, [], 11, 1) is None


@given(st.lists(st.tuples(st.floats(0, 100), HALF_METRES.map(lambda w: w / 6)), max_size=15))
def test_spread_labels_never_overlap_and_keep_their_order(labels: list[tuple[float, float]]) -> None:
    wanted, widths = [x for x, _ in labels], [w for _, w in labels]
    places = spread(wanted, widths, 0, 100, 0.5)
    boxes = sorted((x - w / 2, x + w / 2, want) for x, w, want in zip(places, widths, wanted, strict=True))
    for (_, right, first), (left, _, second) in pairwise(boxes):
        assert left - right >= 0.5 - 1e-9
        assert first <= second
    assert all(left >= -1e-9 for left, _, _ in boxes)
    assert all(right <= 100 + 1e-9 for _, right, _ in boxes)


def test_labels_with_room_stand_where_they_were_wanted() -> None:
    assert spread([10, 30, 70], [4, 4, 4], 0, 100) == [10, 30, 70]


@given(st.lists(st.tuples(st.floats(0, 200), st.floats(20, 60)), min_size=1, max_size=9, unique=True))
def test_leaders_do_not_cross(feet: list[tuple[float, float]]) -> None:
    places = uncrossed(feet, [6.0] * len(feet), 0.0, (0.0, 200.0))
    lines = [((place, 0.0), foot) for place, foot in zip(places, feet, strict=True)]
    assert not [1 for a, b in combinations(lines, 2) if crosses(a, b)]
