"""A ship on her keel blocks: weight curve, elastic loads, pressure and heights."""

from __future__ import annotations

from math import atan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.blocks.area_moment import Block, area_moment
from tenderwright.calculations.blocks.heights import build_heights
from tenderwright.calculations.blocks.keel_line import METHOD as ELASTIC
from tenderwright.calculations.blocks.keel_line import Bay, KeelBlock, stand_on_blocks
from tenderwright.calculations.blocks.pressure import METHOD as PRESSURE
from tenderwright.calculations.blocks.pressure import contact_pressure, judge_pressure
from tenderwright.calculations.blocks.weight_curve import Segment, weight_curve
from tenderwright.calculations.blocks.winkler import characteristic, force_at_middle
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schema import GRAVITY

PLACES = [float(x) for x in np.arange(2.0, 43.0, 1.25)]
BLOCKS = [KeelBlock(x, 3e7) for x in PLACES]
BAYS = [Bay(-3.0, 12.0, 4e10), Bay(12.0, 40.0, 7e10), Bay(40.0, 49.0, 3e10)]


def test_rectangle_plus_parabola():
    """Lloyd's Register, Rules for Floating Docks and Dock Gates, July 2022, Pt 2 Ch 1 s.3.3.1: a rectangle and a
    parabola of half its area, so the ends carry 0.6667 W/L and the middle 1.1667 W/L (derived)."""
    curve = weight_curve(900e3, 0.0, 30.0)
    assert curve.ordinate(0.0) == pytest.approx(0.6667 * 30e3, rel=1e-4)
    assert curve.ordinate(15.0) == pytest.approx(1.1667 * 30e3, rel=1e-4)
    assert curve.ordinate(-0.1) == curve.ordinate(30.1) == 0.0


@given(st.floats(-20.0, 20.0), st.floats(5.0, 100.0), st.floats(-0.11, 0.11), st.integers(1, 30))
def test_stretches_have_the_weight_and_the_centre(aft, length, share, count):
    lcg = aft + length * (0.5 + share)
    parts = weight_curve(5e5, aft, length, lcg).segments(count)
    assert sum(p.total for p in parts) == pytest.approx(5e5)
    assert sum(p.moment for p in parts) / 5e5 == pytest.approx(lcg, abs=1e-9 * length + 1e-9)
    assert min(min(p.load_aft, p.load_forward) for p in parts) >= 0


def test_lean_is_refused_where_an_end_would_float():
    with pytest.raises(OutOfRange, match="ninth"):
        weight_curve(5e5, 0.0, 45.0, 28.0)
    with pytest.raises(OutOfRange, match="weight"):
        weight_curve(0.0, 0.0, 45.0)


def test_supports_that_pull_give_hetenyi():
    """Hetényi, Beams on Elastic Foundation, 1946, ch. IV: a force at the middle of a free beam on a foundation that
    pushes and pulls lifts its ends where lambda l is more than pi; on blocks that only push they come clear."""
    length, count, ei, modulus = 40.0, 400, 2e9, 5e6
    lam = characteristic(modulus, ei)
    springs = np.full(count + 1, modulus * length / count)
    springs[[0, -1]] /= 2
    places = np.linspace(0.0, length, count + 1)
    blocks = [KeelBlock(float(x), float(k)) for x, k in zip(places, springs, strict=True)]
    load = [(length / 2, 5e6 / GRAVITY)]
    found = stand_on_blocks(blocks, [Bay(0.0, length, ei)], [], load, can_pull=True)
    exact = force_at_middle(5e6, modulus, lam, length)
    assert exact.end < 0
    assert found.line.deflection[[0, count // 2, -1]] == pytest.approx([exact.end, exact.middle, exact.end], rel=2e-3)
    assert found.line.moment[count // 2] == pytest.approx(exact.moment_middle, rel=2e-3)
    assert found.loads[0] < 0
    assert found.lifted == []
    clear = stand_on_blocks(blocks, [Bay(0.0, length, ei)], [], load)
    assert clear.loads.min() == 0
    assert clear.lifted[0] == 0.0


@pytest.mark.parametrize("changed", [{"elasticity": 0.0}, {"height": 0.0}, {"height": -0.6}, {"modulus": 0.0}])
def test_girder_and_blocks_without_stiffness_are_refused(changed):
    block = {"height": 0.6, "area": 0.06, "modulus": 3e8} | changed
    with pytest.raises(OutOfRange, match="more than nothing"):
        ELASTIC.run(
            blocks=[{"x": x, **{k: block[k] for k in ("height", "area", "modulus")}} for x in (2.0, 20.0, 42.0)],
            elasticity=changed.get("elasticity", 2e11),
            bays=[{"aft": -2.0, "forward": 48.0, "second_moment": 0.3}],
            weight=6e5,
            weight_aft=-2.0,
            weight_forward=48.0,
        )


def test_ship_stands_with_her_weight_and_centre():
    curve = weight_curve(600e3, -2.5, 50.0, 22.0)
    found = stand_on_blocks(BLOCKS, BAYS, curve.segments(), [(14.0, 12e3)])
    assert found.loads.sum() == pytest.approx(612e3, rel=1e-8)
    assert found.loads @ found.places == pytest.approx(600e3 * 22.0 + 12e3 * 14.0, rel=1e-8)
    assert found.lifted == []
    assert found.kind in ("medium", "long")
    assert not found.rigid_justified
    assert found.line_loads[3] == pytest.approx(found.loads[3] / 1.25)


def test_stern_overhang_loads_the_last_block_more_than_the_rigid_hull_says():
    """Derived: a heavy overhang peaks at the end of the line, which the rigid method cannot show."""
    even = [Segment(2.0, 42.0, 12e3, 12e3)]
    flexible = [Bay(-3.0, 49.0, 5e9)]
    found = stand_on_blocks(BLOCKS, flexible, even, [(-1.0, 40e3)])
    lcg = (480e3 * 22.0 - 40e3) / 520e3
    rigid = area_moment(520e3, lcg, [Block(x, 0.3, 0.2) for x in PLACES])
    assert found.loads[0] > 1.3 * max(rigid.reactions)


def test_short_line_is_rigid():
    stiff = [Bay(0.0, 6.0, 5e10)]
    found = stand_on_blocks(
        [KeelBlock(1.0, 1e7), KeelBlock(3.0, 1e7), KeelBlock(5.0, 1e7)], stiff, [Segment(0, 6, 1e4, 1e4)]
    )
    assert found.rigid_justified
    rigid = area_moment(6e4, 3.0, [Block(x, 1, 1) for x in (1.0, 3.0, 5.0)])
    assert found.loads == pytest.approx(np.array(rigid.reactions), rel=1e-3)


@pytest.mark.parametrize(
    ("bays", "weights", "words"),
    [
        ([Bay(0.0, 10.0, 1e9), Bay(11.0, 49.0, 1e9)], [], "end to end"),
        ([Bay(5.0, 49.0, 1e9)], [], "on the girder"),
        (BAYS, [Segment(3.0, 3.0, 1.0, 1.0)], "stretch"),
        (BAYS, [Segment(3.0, 60.0, 1.0, 1.0)], "on the girder"),
        ([], [], "end to end"),
    ],
)
def test_refuses_what_does_not_lie_on_the_girder(bays, weights, words):
    with pytest.raises(OutOfRange, match=words):
        stand_on_blocks(BLOCKS, bays, weights)


def test_pressure_takes_the_lesser_width():
    """Derived: 18 t over 0.3 m of a bar keel 0.2 m wide is 2.94 MPa; on the cap of 1 m it would be 0.59."""
    assert contact_pressure(18e3, 0.3, 1.0, 0.2) == pytest.approx(18e3 * 9.80665 / 0.06)
    assert contact_pressure(18e3, 0.3, 1.0, 5.0) == pytest.approx(18e3 * 9.80665 / 0.3)


def test_pressure_against_white_oak():
    """S. J. Record, The Mechanical Properties of Wood, 1914: white oak, green, working 450 psi or 3.10 MPa."""
    assert judge_pressure("cap", 2.94e6, 3.10e6).met is True
    assert judge_pressure("cap", 3.2e6, 3.10e6).met is False
    assert judge_pressure("cap", 3.2e6, None).met is None


def test_allowable_needs_its_source():
    given_ = {"load": 18e3, "contact_length": 0.3, "block_width": 1.0, "keel_width": 0.2}
    assert PRESSURE.run(**given_)["met"] is None
    with pytest.raises(OutOfRange, match="source"):
        PRESSURE.run(**given_, allowable=3e6)
    with pytest.raises(OutOfRange, match="more than nothing"):
        judge_pressure("cap", 1.0, 0.0)
    with pytest.raises(OutOfRange, match="contact"):
        contact_pressure(1.0, 0.0, 1.0, 1.0)


def test_heights_follow_declivity_floor_and_keel():
    keel = [(0.0, -0.18), (38.0, -0.18), (44.0, 0.20)]
    found = build_heights([4.0, 20.0, 41.0], 4.0, 1.4, keel, atan(0.005), atan(0.002))
    assert found == pytest.approx([1.4, 1.4 + 16 * 0.003, 1.4 + 37 * 0.003 + 0.19])


def test_raked_keel_on_its_own_line_is_level():
    """Derived: on blocks along a raked straight keel nothing is added for the rake."""
    keel = [(0.0, -0.4), (40.0, 0.0)]
    assert build_heights([0.0, 10.0, 40.0], 0.0, 1.2, keel, rake=0.01) == pytest.approx([1.2, 1.2, 1.2])
    assert build_heights([0.0, 10.0, 40.0], 0.0, 1.2, keel) == pytest.approx([1.2, 1.3, 1.6])
    assert build_heights([0.0, 10.0], 0.0, 1.2, rake=0.01) == pytest.approx([1.2, 1.2])


def test_impossible_heights_are_refused():
    with pytest.raises(OutOfRange, match="below the dock floor"):
        build_heights([0.0, 40.0], 40.0, 0.2, declivity=atan(0.01))
    with pytest.raises(OutOfRange, match="different places"):
        build_heights([0.0], 0.0, 1.0, [(1.0, 0.0), (1.0, 0.5)])
