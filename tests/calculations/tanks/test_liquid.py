from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.spatial import ConvexHull
from shapely import MultiPoint

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.filling import fill
from tenderwright.calculations.tanks.liquid import capacity, cut_at, cut_levels
from tenderwright.calculations.tanks.polyhedron import box, from_hull, joined, lofted, mirrored
from tests.calculations.hydrostatics.hulls import coaster, wigley

BOX = box((10, 22), (-4, 4), (0.5, 2.5))
WEDGE = lofted(
    [0.0, 5.0],
    [[(0, 0), (3, 1), (3, 3), (0, 3)], [(0, 1), (2, 1.5), (2, 3), (0, 3)]],
)
slopes = st.floats(-0.15, 0.15)


def clipped(corners: np.ndarray, level: float, trim: float, heel: float) -> tuple[np.ndarray, np.ndarray]:
    """Corners of the liquid body and of its surface for a convex tank: every chord between corners is cut."""
    over = corners[:, 2] - level + corners[:, 0] * trim + corners[:, 1] * heel
    cuts = [
        corners[i] + (corners[j] - corners[i]) * over[i] / (over[i] - over[j])
        for i, j in combinations(range(len(corners)), 2)
        if over[i] * over[j] < 0
    ]
    return np.vstack([corners[over <= 0], *cuts]), np.array(cuts)


def test_level_box():
    found = cut_at(BOX, 1.5)
    assert found.volume == pytest.approx(96.0)
    assert found.centroid == pytest.approx((16, 0, 1.0))
    assert found.surface_area == pytest.approx(96)


@pytest.mark.parametrize(("length", "breadth", "expected"), [(12, 16, 4096), (16, 12, 2304)])
def test_free_surface_second_moment(length, breadth, expected):
    """GATE marine question with published solution (collegedunia): tank A 4096 m4, tank B 2304 m4."""
    found = cut_at(box((0, length), (3, 3 + breadth), (0, 2)), 1.0)
    assert found.surface_transverse == pytest.approx(expected)
    assert found.surface_longitudinal == pytest.approx(breadth * length**3 / 12)


@given(st.floats(0.6, 2.4), slopes, slopes)
def test_box_agrees_with_convex_hulls_of_other_libraries(level, trim, heel):
    level += 16 * trim
    body, surface = clipped(BOX.vertices, level, trim, heel)
    found = cut_at(BOX, level, trim, heel)
    hull = ConvexHull(body)
    assert found.volume == pytest.approx(hull.volume, rel=1e-9)
    assert found.surface_area == pytest.approx(MultiPoint(surface[:, :2]).convex_hull.area, rel=1e-9)


@given(st.floats(1.2, 2.9), st.floats(-0.05, 0.05), st.floats(-0.05, 0.05))
def test_liquid_pours_down_only(level, trim, heel):
    found = cut_at(WEDGE, level, trim, heel)
    x, y, z = found.centroid
    assert 0 < found.volume < capacity(WEDGE).volume * (1 + 1e-12)
    assert z + x * trim + y * heel < level


@given(st.floats(0.05, 0.95), slopes, slopes)
def test_surface_is_the_rate_of_volume_and_of_moment(share, trim, heel):
    """Derived: dV/dz is the surface's area, and a small heel shifts the moment by its second moment."""
    volume = share * capacity(BOX).volume
    body = fill([BOX], [volume], trim, heel)[0]
    step = 1e-6
    more, less = cut_at(BOX, body.level + step, trim, heel), cut_at(BOX, body.level - step, trim, heel)
    assert (more.volume - less.volume) / (2 * step) == pytest.approx(body.surface_area, rel=1e-4)
    tilted = fill([BOX], [volume], trim, heel + 1e-5)[0]
    back = fill([BOX], [volume], trim, heel - 1e-5)[0]
    shift = (back.centroid[1] - tilted.centroid[1]) * volume / 2e-5
    assert shift == pytest.approx(body.surface_transverse, rel=1e-3, abs=1e-3)


@given(st.lists(st.floats(0.001, 0.999), min_size=3, max_size=3), slopes, slopes)
def test_filling_several_tanks_gives_each_its_volume(shares, trim, heel):
    bodies = [BOX, WEDGE, mirrored(WEDGE)]
    wanted = [s * capacity(b).volume for s, b in zip(shares, bodies, strict=True)]
    found = fill(bodies, wanted, trim, heel)
    assert [f.volume for f in found] == pytest.approx(wanted, rel=1e-8)
    for body, liquid in zip(bodies, found, strict=True):
        assert cut_at(body, liquid.level, trim, heel).volume == pytest.approx(liquid.volume, rel=1e-9)


def test_empty_and_full_tanks_have_no_free_surface():
    empty, full = fill([BOX, BOX], [0.0, 192.0], 0.02, 0.01)
    assert empty.volume == pytest.approx(0.0, abs=1e-12)
    assert (empty.surface_area, empty.surface_transverse) == (0.0, 0.0)
    assert full.volume == pytest.approx(192)
    assert (full.surface_area, full.surface_transverse) == (0.0, 0.0)


def test_overfilling_is_refused():
    with pytest.raises(OutOfRange, match="cannot hold"):
        fill([BOX], [193.0])


def test_many_levels_agree_with_single_cuts():
    levels = np.linspace(0.4, 2.6, 9)
    many = cut_levels(WEDGE, levels, 0.02, -0.01)
    assert many.volume == pytest.approx([cut_at(WEDGE, z, 0.02, -0.01).volume for z in levels], abs=1e-12)


def test_frustum_volume():
    """Euclid XII: a frustum of square sections, h/3 (A1 + sqrt(A1 A2) + A2)."""
    squares = [[(-a, -a), (a, -a), (a, a), (-a, a)] for a in (3.0, 1.0)]
    assert capacity(lofted([0.0, 6.0], squares)).volume == pytest.approx(2 * (36 + 12 + 4))


def test_sections_may_run_either_way_round():
    section = [(0, 0), (3, 0), (3, 2), (0, 2)]
    for outline in (section, section[::-1]):
        assert capacity(lofted([0, 4], [outline, outline])).volume == pytest.approx(24)


def test_l_shaped_section_is_exact():
    """Derived: a section with a re-entrant corner, cut in its narrow and in its wide part."""
    outline = [(0, 0), (1, 0), (1, 1), (3, 1), (3, 2), (0, 2)]
    tank = lofted([0, 4], [outline, outline])
    assert cut_at(tank, 0.5).volume == pytest.approx(2.0)
    assert cut_at(tank, 1.5).volume == pytest.approx(4 + 6)
    assert cut_at(tank, 1.5).surface_transverse == pytest.approx(4 * 27 / 12)


def test_joined_halves_make_one_free_surface():
    half = box((0, 5), (0, 3), (0, 2))
    whole = joined([half, mirrored(half)])
    assert cut_at(whole, 1.0).surface_transverse == pytest.approx(5 * 6**3 / 12)
    assert capacity(whole).volume == pytest.approx(60)


def test_whole_hull_as_a_tank_holds_what_it_displaces():
    """Derived: V = 4/9 LBT of the Wigley hull; straight lines between cuts lose under 0.2 %."""
    tank = from_hull(wigley(), (0.0, 100.0))
    assert capacity(tank).volume == pytest.approx(4 / 9 * 100 * 10 * 6.25, rel=2e-3)
    assert capacity(tank).centroid == pytest.approx((50, 0, 3.90625), abs=0.025)


def test_hull_tank_in_parallel_body_is_a_box():
    form = coaster()
    tank = from_hull(form, (17.0, 19.0), bottom=3.0, top=4.0, inboard=1.0, outboard=3.0, side="starboard")
    assert capacity(tank).volume == pytest.approx(4.0)
    assert capacity(tank).centroid == pytest.approx((18, -2, 3.5))


def test_bulkheads_divide_a_hull_tank():
    """Derived: the parts make the whole, but for the shell's own straight lines where a bulkhead meets it."""
    form = coaster()
    whole = capacity(from_hull(form, (8, 16), top=2.0)).volume
    port = from_hull(form, (8, 16), top=2.0, inboard=1.0, side="port")
    centre = from_hull(form, (8, 16), top=2.0, outboard=1.0)
    starboard = from_hull(form, (8, 16), top=2.0, inboard=1.0, side="starboard")
    assert sum(capacity(b).volume for b in (port, centre, starboard)) == pytest.approx(whole, rel=5e-4)
    assert capacity(port).volume == pytest.approx(capacity(starboard).volume, rel=1e-12)


def test_hull_tank_follows_the_rising_keel():
    tank = from_hull(coaster(), (0.0, 3.0))
    assert tank.bottom == pytest.approx(0.1)
    assert tank.top == pytest.approx(4.8 + 1.2 * (18 / 22) ** 2)


@pytest.mark.parametrize(
    ("x", "more", "why"),
    [
        ((5, 5), {}, "aft of its fore end"),
        ((5, 8), {"inboard": 3.0, "outboard": 2.0}, "inboard side"),
        ((5, 8), {"bottom": 2.0, "top": 1.0}, "not above its bottom"),
        ((30, 50), {}, "outside the stations"),
        ((38, 40), {"inboard": 4.0, "top": 3.0}, "no part"),
    ],
)
def test_impossible_hull_tanks_are_refused(x, more, why):
    with pytest.raises(OutOfRange, match=why):
        from_hull(coaster(), x, **more)


@pytest.mark.parametrize(
    ("x", "sections"),
    [
        ([0, 1], [[(0, 0), (1, 0), (1, 1)]]),
        ([1, 0], [[(0, 0), (1, 0), (1, 1)]] * 2),
        ([0], [[(0, 0), (1, 0), (1, 1)]]),
    ],
)
def test_impossible_sections_are_refused(x, sections):
    with pytest.raises(OutOfRange):
        lofted(x, sections)


def test_impossible_box_is_refused():
    with pytest.raises(OutOfRange):
        box((0, 1), (1, 1), (0, 1))
