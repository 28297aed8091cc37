from __future__ import annotations

from math import atan, cos, radians

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.polyhedron import box, from_hull
from tenderwright.calculations.tanks.sounding import (
    SoundingPipe,
    Tank,
    at_sounding,
    at_ullage,
    contents,
    slanted_pipe,
    sounding_for,
    sounding_table,
)
from tenderwright.calculations.tanks.sounding_volume import METHOD, sounding_volume
from tenderwright.calculations.tanks.trim_correction import trim_correction
from tenderwright.calculations.tanks.wedge import wedge_volume
from tests.calculations.hydrostatics.hulls import coaster

PIPE = SoundingPipe((10.5, 0.0, 0.0), (10.5, 0.0, 2.5))
TANK = Tank(box((10, 22), (-4, 4), (0, 2)), 1.0, PIPE)
HULL_TANK = Tank(
    from_hull(coaster(), (8, 14), top=2.0, side="port"),
    0.97,
    slanted_pipe((9, 0.6, 0.3), 4.0, radians(10), radians(90)),
)


def test_trim_correction():
    """Derived: tank 12 x 8 m, pipe 0.5 m from the after bulkhead, slope 0.02, sounding 1.00: 0.89 m, 85.44
    m3."""
    found = trim_correction(1.0, 12, 8, 2, -5.5, 1.2, 60)
    assert found["corrected_sounding"] == pytest.approx(0.89)
    assert found["volume"] == pytest.approx(85.44)
    assert at_sounding(TANK, 1.0, 0.02).volume == pytest.approx(85.44)


def test_wedge():
    """Derived, by hand: sounding 0.10, depth 0.11, wet length 5.5 m, 2.420 m3."""
    found = wedge_volume(0.1, 12, 8, 2, 0.5, 1.2, 60)
    assert found == pytest.approx({"depth_at_bulkhead": 0.11, "wet_length": 5.5, "volume": 2.420})
    assert at_sounding(TANK, 0.1, 0.02).volume == pytest.approx(2.420)


@given(st.floats(0.4, 1.6), st.floats(-1, 1), st.floats(-0.02, 0.02))
def test_trim_correction_is_exact_inside_its_range(sounding, trim, heel):
    found = trim_correction(sounding, 12, 8, 2, -5.5, trim, 60, 0.0, heel)
    assert at_sounding(TANK, sounding, trim / 60, np.tan(heel)).volume == pytest.approx(found["volume"], rel=1e-9)


def test_trim_correction_of_a_slanted_pipe():
    pipe = slanted_pipe((16.0, 0.0, 0.0), 3.0, radians(20), radians(90))
    found = trim_correction(1.0, 12, 8, 2, 0.0, 0.6, 60, pipe.point(1.0)[1], 0.01, radians(20))
    cut = at_sounding(Tank(TANK.body, 1.0, pipe), 1.0, 0.01, np.tan(0.01))
    assert found["volume"] == pytest.approx(cut.volume, rel=1e-9)


def test_trim_correction_refuses_a_wedge_and_a_touched_top():
    for sounding in (0.1, 2.0):
        with pytest.raises(OutOfRange, match="whole bottom"):
            trim_correction(sounding, 12, 8, 2, -5.5, 1.2, 60)


@pytest.mark.parametrize(
    "change", [{"sounding": 0.4}, {"trim": -1.0}, {"trim": 0.0}, {"tank_height": 0.1}, {"sounding": -1.0}]
)
def test_wedge_refuses_what_is_no_wedge(change):
    good = {
        "sounding": 0.1,
        "tank_length": 12,
        "tank_breadth": 8,
        "tank_height": 2,
        "pipe_to_after_bulkhead": 0.5,
    }
    with pytest.raises(OutOfRange):
        wedge_volume(**{**good, "trim": 1.2, "length": 60, **change})


def test_wedge_refuses_a_pipe_outside_the_tank():
    with pytest.raises(OutOfRange, match="not in the tank"):
        wedge_volume(0.1, 12, 8, 2, 13, 1.2, 60)


def test_ullage_and_sounding_agree():
    assert at_ullage(TANK, 1.5, 0.01).volume == pytest.approx(at_sounding(TANK, 1.0, 0.01).volume)


def test_slanted_pipe_reads_along_itself():
    """Derived: the vertical depth is the tape times the cosine of the slant."""
    tank = Tank(TANK.body, 1.0, slanted_pipe((16, 0, 0), 2.0, radians(30)))
    assert at_sounding(tank, 1.2).volume == pytest.approx(96 * 1.2 * cos(radians(30)))


@given(st.floats(0.15, 0.95), st.floats(-0.02, 0.02), st.floats(-0.02, 0.02))
def test_sounding_and_volume_are_inverse(share, trim, heel):
    volume = share * TANK.capacity
    assert at_sounding(TANK, sounding_for(TANK, volume, trim, heel), trim, heel).volume == pytest.approx(
        volume, rel=1e-7
    )


@given(st.floats(0.1, 0.9))
def test_permeability_reduces_volume_and_keeps_the_surface(share):
    volume = share * HULL_TANK.capacity
    body = HULL_TANK.contents(volume)
    bare = Tank(HULL_TANK.body).contents(volume / 0.97)
    assert body.volume == pytest.approx(volume)
    assert body.surface_transverse == pytest.approx(bare.surface_transverse)
    assert body.centroid == pytest.approx(bare.centroid)


def test_sounding_table_rises_and_agrees_with_single_soundings():
    soundings, slopes = np.linspace(0, 1.5, 7), [-0.01, 0.0, 0.02]
    table = sounding_table(HULL_TANK, soundings, slopes)
    assert np.all(np.diff(table, axis=0) > 0)
    for i, s in enumerate(soundings):
        for j, slope in enumerate(slopes):
            assert table[i, j] == pytest.approx(at_sounding(HULL_TANK, s, slope).volume)


def test_several_tanks_at_once():
    found = contents([TANK, HULL_TANK], [50.0, 5.0], 0.01)
    assert [b.volume for b in found] == pytest.approx([50.0, 5.0])
    assert contents([], []) == []


def test_empty_tank_sounds_nothing():
    assert sounding_for(TANK, 0.0, 0.02) == 0.0


def test_volume_that_does_not_reach_the_pipe_is_refused():
    forward = Tank(TANK.body, 1.0, SoundingPipe((21.5, 0, 0), (21.5, 0, 2)))
    with pytest.raises(OutOfRange, match="does not show"):
        sounding_for(forward, 2.0, 0.02)


@pytest.mark.parametrize("sounding", [-0.1, 2.6])
def test_reading_off_the_pipe_is_refused(sounding):
    with pytest.raises(OutOfRange, match="pipe"):
        at_sounding(TANK, sounding)
    with pytest.raises(OutOfRange, match="pipe"):
        sounding_table(TANK, [sounding])


def test_tank_without_pipe_cannot_be_sounded():
    with pytest.raises(OutOfRange, match="no sounding pipe"):
        at_sounding(Tank(TANK.body), 1.0)


@pytest.mark.parametrize("permeability", [0.0, 1.2])
def test_permeability_is_a_part(permeability):
    with pytest.raises(OutOfRange):
        Tank(TANK.body, permeability)


def test_pipe_must_rise():
    with pytest.raises(OutOfRange):
        SoundingPipe((0, 0, 1), (0, 0, 1))
    with pytest.raises(OutOfRange):
        slanted_pipe((0, 0, 0), 2.0, radians(90))


SHAPE = {"box": {"x_aft": 10.0, "x_forward": 22.0, "y_starboard": -4.0, "y_port": 4.0, "bottom": 0.0, "top": 2.0}}
FOOT = {"x": 10.5, "y": 0.0, "z": 0.0}


def test_sounding_volume_of_a_box():
    found = METHOD.run(
        tank=SHAPE, pipe_foot=FOOT, density=1000.0, sounding=1.0, trim=1.2, length_between_perpendiculars=60.0
    )
    assert found["mass"] == pytest.approx(85440)
    assert found["free_surface_moment"] == pytest.approx(12 * 8**3 / 12 * 1000)


def test_sounding_volume_by_sections_and_ullage_with_heel():
    corners = [{"y": y, "z": z} for y, z in [(-4.0, 0.0), (4.0, 0.0), (4.0, 2.0), (-4.0, 2.0)]]
    shape = {"sections": [{"x": 10.0, "corners": corners}, {"x": 22.0, "corners": corners}]}
    foot = {"x": 16.0, "y": -3.0, "z": 0.0}
    found = METHOD.run(tank=shape, pipe_foot=foot, density=1000.0, ullage=1.0, heel=atan(0.05))
    assert found["volume"] == pytest.approx(96 * (1.0 - 0.15))
    assert found["y"] < 0


@pytest.mark.parametrize(
    "more",
    [
        {},
        {"sounding": 1.0, "ullage": 1.0},
        {"sounding": 1.0, "trim": 1.0},
        {"sounding": 1.0, "permeability": 2.0},
    ],
)
def test_sounding_volume_refuses(more):
    with pytest.raises(OutOfRange):
        sounding_volume(SHAPE, FOOT, 1000.0, **more)


def test_nothing_on_the_rod_leaves_open_what_lies_below_the_foot_of_the_pipe():
    """Derived: 12 m long, 8 m wide, the pipe 0.5 m from its after end; by the head at 0.02 the plane through the foot
    leaves a wedge 11.5 m long forward of it, 8 * 0.02 * 11.5^2 / 2."""
    inputs = {"tank": SHAPE, "pipe_foot": FOOT, "density": 1000.0, "length_between_perpendiculars": 60.0}
    found = METHOD.run(**inputs, sounding=0.0, trim=-1.2)
    assert (found["least"], found["greatest"]) == pytest.approx((0.0, 8 * 0.02 * 11.5**2 / 2))
    assert found["volume"] == found["greatest"]
    level = METHOD.run(**inputs, sounding=0.0)
    assert (level["least"], level["greatest"]) == pytest.approx((0.0, 0.0))


def test_a_pipe_full_to_its_head_leaves_open_what_lies_above_it():
    """Derived: the same by the stern, liquid at the head of the pipe: the forward wedge may be empty or full."""
    inputs = {"tank": SHAPE, "pipe_foot": FOOT, "density": 1000.0, "length_between_perpendiculars": 60.0}
    found = METHOD.run(**inputs, sounding=2.0, trim=1.2)
    assert found["greatest"] == pytest.approx(12 * 8 * 2.0)
    assert found["least"] == pytest.approx(12 * 8 * 2.0 - 8 * 0.02 * 11.5**2 / 2)
    assert "least" not in METHOD.run(**inputs, sounding=1.0, trim=1.2)
