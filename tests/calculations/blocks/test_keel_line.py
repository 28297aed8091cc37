"""A ship on her keel blocks: weight curve, elastic loads, pressure and heights."""

from __future__ import annotations

from math import atan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.blocks.area_moment import Block, area_moment
from tenderwright.calculations.blocks.heights import build_heights
from tenderwright.calculations.blocks.keel_line import Bay, KeelBlock, stand_on_blocks
from tenderwright.calculations.blocks.pressure import METHOD as PRESSURE
from tenderwright.calculations.blocks.pressure import contact_pressure, judge_pressure
from tenderwright.calculations.blocks.weight_curve import Segment, weight_curve
from tenderwright.calculations.method import OutOfRange

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
