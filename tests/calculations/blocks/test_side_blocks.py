"""Side blocks on the hull, under wind and earthquake."""

from __future__ import annotations

from math import atan, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.blocks.overturning import METHOD as OVERTURNING
from tenderwright.calculations.blocks.overturning import (
    SideBlock,
    overturning_moment,
    rigid_limit,
    share_moment,
    sliding_limit,
)
from tenderwright.calculations.blocks.side_block import METHOD, seat, shell_height
from tenderwright.calculations.blocks.wind import basic_pressure, peak_pressure, velocity_pressure, wind_force
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS
from tenderwright.calculations.method import OutOfRange
from tests.calculations.hydrostatics.hulls import barge, coaster, cylinder, prism

PSF, MPH = 47.88026, 0.44704
"""Pound-force per square foot in Pa and mile per hour in m/s (derived from the international foot and pound)."""


def test_triangular_section_has_its_slope():
    """Derived: z = y H/(B/2), so the bevel is atan(1) on a section 8 m wide and 4 m deep."""
    one = seat(prism(), 17.3, 2.5, 0.4, 0.6)
    assert one.height == pytest.approx(2.5, abs=1e-6)
    assert (one.height_inboard, one.height_outboard) == pytest.approx((2.2, 2.8), abs=1e-6)
    assert one.bevel == pytest.approx(atan(1.0), abs=1e-6)
    assert one.bevel_forward == pytest.approx(0.0, abs=1e-6)


def test_flat_bottom_is_flat():
    one = seat(barge(), 12.0, -2.0, 0.4, 0.6)
    assert (one.height, one.bevel) == (0.0, 0.0)


@given(st.floats(0.1, 2.8))
def test_round_section(y):
    """Derived: a circle of 3 m radius; z = r - sqrt(r^2 - y^2)."""
    assert shell_height(cylinder(), 12.0, y) == pytest.approx(3 - sqrt(9 - y * y), abs=2e-3)


@given(st.floats(2.0, 34.0), st.floats(0.2, 2.5))
def test_height_is_on_the_shell(x, y):
    form = coaster()
    try:
        z = shell_height(form, x, y)
    except OutOfRange:
        assert form.half_breadth_at(x, form.deck_at(x)) < y
        return
    # Where a station's keel ends, the offsets step outward, so the shell is reached within the step.
    below, above = form.half_breadth_at(x, [z - 1e-6, z + 1e-6])
    assert above >= y - 1e-5
    assert below <= y + 1e-5 or z == pytest.approx(form.keel_at(x))


def test_shell_rises_outboard_and_towards_the_ends():
    one = seat(coaster(), 28.0, 2.4, 0.4, 0.6)
    assert one.bevel > 0
    assert one.bevel_forward > 0
    assert one.height_inboard < one.height < one.height_outboard


def test_beyond_the_hull_is_refused():
    with pytest.raises(OutOfRange, match="does not reach"):
        shell_height(barge(), 12.0, 4.5)
    with pytest.raises(OutOfRange, match="length and width"):
        seat(barge(), 12.0, 2.0, 0.0, 0.6)


def test_method_measures_from_the_dock_floor():
    from tests.calculations.landing.test_methods import run

    found = run(METHOD)
    low = METHOD.run(**_si(keel=-0.18))
    assert low["height"] == pytest.approx(found["height"] + 0.18)
    assert found["height"] > 1.4


def _si(**more: float) -> dict:
    from tenderwright.calculations.alone import input_schema, to_si

    assert METHOD.example["offsets"] is EXAMPLE_OFFSETS
    return to_si(input_schema(METHOD), dict(METHOD.example)) | more


@pytest.mark.parametrize(
    ("speed", "exposure", "direction", "printed"),
    [(100, 0.90, 0.85, 19.58), (115, 0.85, 0.85, 24.46), (115, 0.98, 0.85, 28.20), (115, 1.16, 0.85, 33.38)],
)
def test_velocity_pressure_of_asce_7(speed, exposure, direction, printed):
    """ASCE 7 velocity pressure in psf (from memory); 0.613 in SI is 0.00256 rounded."""
    found = velocity_pressure(speed * MPH, exposure, 1.0, direction) / PSF
    assert found == pytest.approx(printed, rel=1.2e-3)


def test_basic_velocity_pressure_of_en_1991():
    """EN 1991-1-4: v_b 28 m/s gives q_b 490 Pa (computed)."""
    assert basic_pressure(28.0) == pytest.approx(490.0)


def test_peak_pressure_grows_with_height_and_is_above_the_basic():
    low, high = (peak_pressure(28.0, z, 0.05) for z in (4.0, 20.0))
    assert basic_pressure(28.0) < low < high
    # Derived: z = 10 m, z0 = 0.05 m: v_m = 0.19 ln 200 28 = 28.187, I_v = 1/ln 200 = 0.18874.
    assert peak_pressure(28.0, 10.0, 0.05) == pytest.approx(0.625 * 28.187**2 * (1 + 7 * 0.18874), rel=1e-4)


def test_wind_force():
    assert wind_force(500.0, 280.0, 0.92) == pytest.approx(128800.0)


PAIR = [SideBlock(2.5, 8e7, 6e3), SideBlock(-2.5, 8e7, 6e3)]


def test_share_of_a_moment_while_all_bear():
    """Derived: R = R0 +/- M k b/K_phi, K_phi = sum(k b^2) + k_keel B^2/12."""
    moment = 9.80665 * 10e3
    found = share_moment(600e3, moment, PAIR, 6e8, 0.4)
    stiffness = 2 * 8e7 * 2.5**2 + 6e8 * 0.16 / 12
    change = 10e3 * 8e7 * 2.5 / stiffness
    assert found.side_blocks == pytest.approx((6e3 + change, 6e3 - change))
    assert found.keel == pytest.approx(588e3)
    assert found.lifted == ()


def test_weather_side_is_dropped_and_the_keel_takes_part():
    moment = 9.80665 * 60e3
    found = share_moment(600e3, moment, PAIR, 6e8)
    # Derived: with the weather side gone, the lee block carries M/b by moments about the keel.
    assert found.side_blocks == pytest.approx((24e3, 0.0))
    assert found.keel == pytest.approx(576e3)
    assert found.lifted == (1,)


@given(st.floats(0.0, 1.4e6))
def test_forces_balance(moment):
    blocks = [SideBlock(y, 5e7, 4e3) for y in (2.0, -2.0, 2.6, -2.6)]
    found = share_moment(600e3, moment * 9.80665, blocks, 6e8)
    assert sum(found.side_blocks) + found.keel == pytest.approx(600e3)
    assert sum(r * b.y for r, b in zip(found.side_blocks, blocks, strict=True)) == pytest.approx(moment, abs=1.0)
    assert min(found.side_blocks) >= 0
    mirrored = share_moment(600e3, -moment * 9.80665, blocks, 6e8)
    assert mirrored.side_blocks[0] == pytest.approx(found.side_blocks[1], abs=1e-3)


def test_she_goes_over_beyond_the_outer_blocks():
    limit = rigid_limit(600e3, 9.80665 * 1.6e6, 2.5)
    assert limit.met is False
    with pytest.raises(OutOfRange, match="stand"):
        share_moment(600e3, 9.80665 * 1.6e6, PAIR, 6e8)
    assert rigid_limit(600e3, 9.80665 * 0.7e6, 2.5, 2.0).met is True
    assert rigid_limit(600e3, 9.80665 * 0.76e6, 2.5, 2.0).met is False


@pytest.mark.parametrize("height", [0.0, -0.5])
def test_a_side_block_without_height_is_refused(height):
    block = {"y": 2.5, "modulus": 3e8, "area": 0.2, "height": height}
    with pytest.raises(OutOfRange, match="height"):
        OVERTURNING.run(
            weight=6e5, kg=3.4, blocks=[block], keel_modulus=2e7, keel_length=30.0, coefficient_source="none"
        )


def test_wind_and_earthquake_are_added_only_when_asked():
    wind, quake, governs = overturning_moment(600e3, 3.4, 130e3, 4.2, 0.1)
    assert wind == pytest.approx(546e3)
    assert quake == pytest.approx(0.1 * 600e3 * 9.80665 * 3.4)
    assert governs == max(wind, quake)
    assert overturning_moment(600e3, 3.4, 130e3, 4.2, 0.1, True)[2] == pytest.approx(wind + quake)


def test_sliding():
    assert sliding_limit(600e3, 130e3, 0.3).met is True
    assert sliding_limit(600e3, 130e3, 0.3).use == pytest.approx(130e3 / (0.3 * 600e3 * 9.80665))
    assert sliding_limit(600e3, 130e3, 0.02).met is False


@pytest.mark.parametrize(
    "call",
    [
        lambda: velocity_pressure(-1.0),
        lambda: basic_pressure(20.0, 0.0),
        lambda: peak_pressure(20.0, 1.0, 0.05),
        lambda: wind_force(-1.0, 1.0, 1.0),
        lambda: overturning_moment(0.0, 1.0, 1.0, 1.0, 0.1),
        lambda: share_moment(1e5, 1.0, [], 1e8),
        lambda: share_moment(1e5, 1.0, [SideBlock(2.0, 1e7, 2e5)], 1e8),
        lambda: rigid_limit(1e5, 1.0, 0.0),
        lambda: sliding_limit(1e5, -1.0, 0.3),
    ],
)
def test_refusals(call):
    with pytest.raises(OutOfRange):
        call()
