"""Shiplift, slipway and floating dock."""

from __future__ import annotations

from math import atan, radians

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from tenderwright.calculations.blocks.weight_curve import Segment, weight_curve
from tenderwright.calculations.cradle.line_load import line_load
from tenderwright.calculations.facility.floating_dock import (
    bending_moment,
    design_length_share,
    floating_dock_limits,
)
from tenderwright.calculations.facility.shiplift import (
    METHOD,
    Platform,
    carried_up_to,
    greatest_average,
    lift,
    lifting_capacity,
    shiplift_limits,
)
from tenderwright.calculations.facility.slipway import (
    FRICTION,
    cradle_declivity,
    haul_force,
    slipway_limits,
    slope_of,
)
from tenderwright.calculations.method import OutOfRange

PLATFORM = Platform(11, 7.0, 280e3, 46e3)


def ramp(weight: float = 600e3, lcg: float = 22.5) -> list[Segment]:
    q = line_load(weight, lcg, 1.0, 42.6)
    return [Segment(q.contact_aft, q.contact_forward, q.load_aft, q.load_forward)]


def test_distributed_load_and_lifting_capacity():
    """Lloyd's Register, Code for Lifting Appliances, July 2022, Ch 5 s.2.1.1 (formula); derived check: pair 440 t, bay
    80 t, spacing 9 m give MDL 40 t/m, and 72 m of platform MLC 2880 t."""
    platform = Platform(8, 9.0, 440e3, 80e3)
    assert platform.length == 72.0
    assert platform.distributed_load == pytest.approx(40e3)
    assert lifting_capacity(40e3, 72.0) == pytest.approx(2880e3)


def test_greatest_average_of_a_trapezoid_is_at_its_heavy_end():
    """Derived: over the last bay of a linear load the average is that at half a bay from the end."""
    load, q = ramp(), line_load(600e3, 22.5, 1.0, 42.6)
    assert greatest_average(load, 7.0) == pytest.approx(q.ordinate(42.6 - 3.5), rel=1e-9)


def test_load_shorter_than_a_bay_is_spread_over_it():
    assert greatest_average([Segment(0.0, 2.0, 50e3, 50e3)], 8.0) == pytest.approx(12.5e3)


@given(st.floats(-20.0, 30.0), st.floats(16.0, 28.0))
def test_pairs_carry_the_ship_and_what_stands_beyond(first, lcg):
    found = lift(PLATFORM, ramp(600e3, lcg), first)
    assert found.reactions.sum() - 11 * 46e3 + found.beyond == pytest.approx(600e3)
    assert found.reactions.max() - 46e3 <= found.greatest_average * 7.0 * (1 + 1e-9)


@given(st.floats(-17.0, -3.5))
def test_best_place_is_no_worse_than_any_other(first):
    best, other = lift(PLATFORM, ramp()), lift(PLATFORM, ramp(), first)
    assert best.beyond == 0.0
    if other.beyond == 0.0:
        # Places are tried at steps of a fortieth of a bay.
        assert best.reactions.max() <= other.reactions.max() + 600e3 / 41.6 * 7.0 / 40


def test_load_too_long_for_the_platform_is_centred_and_fails():
    short = replace(PLATFORM, pairs=4)
    found = lift(short, ramp())
    assert found.beyond > 0
    limits = {limit.name: limit for limit in shiplift_limits(short, found, 600e3)}
    assert limits["load beyond the platform"].met is False
    assert found.first_pair - 3.5 - 1.0 == pytest.approx(42.6 - (found.first_pair + 3 * 7.0 + 3.5))


def test_limits_not_known_without_the_weight_of_a_bay():
    found = lift(replace(PLATFORM, bay_mass=None), ramp())
    states = {limit.name: limit.met for limit in shiplift_limits(replace(PLATFORM, bay_mass=None), found, 600e3)}
    assert states["line load averaged over a hoist bay"] is None
    assert states["load on a hoist pair"] is None
    assert states["load beyond the platform"] is True


def test_carried_up_to_is_the_integral():
    parts = weight_curve(5e5, 0.0, 40.0, 21.0).segments(16)
    assert carried_up_to(parts, [-5.0, 0.0, 40.0, 50.0]) == pytest.approx([0.0, 0.0, 5e5, 5e5])
    fine = np.linspace(0.0, 40.0, 4001)
    assert np.all(np.diff(carried_up_to(parts, fine)) > 0)


def test_shiplift_method_adds_the_cradle():
    given_ = {"pairs": 11, "spacing": 7.0, "pair_capacity": 280e3, "weight": 6e5, "lcg": 22.5, "bay_mass": 46e3}
    keel = {"keel_aft": 1.0, "keel_forward": 42.6}
    bare, loaded = METHOD.run(**given_, **keel), METHOD.run(**given_, **keel, cradle_line=2e3)
    assert loaded["greatest_average"] == pytest.approx(bare["greatest_average"] + 2e3)
    assert sum(loaded["reactions"]) == pytest.approx(sum(bare["reactions"]) + 2e3 * 41.6)
    assert bare["result"] == "pass"
    assert METHOD.run(**given_ | {"weight": 2e6}, **keel)["result"] == "fail"


def test_shiplift_refusals():
    for pairs in (1, 201, 10**15):
        with pytest.raises(OutOfRange, match="2 to 200 hoist pairs"):
            replace(PLATFORM, pairs=pairs)
    with pytest.raises(OutOfRange, match="own weight"):
        replace(PLATFORM, bay_mass=280e3)
    with pytest.raises(OutOfRange, match="loads"):
        lift(PLATFORM, [])
    with pytest.raises(OutOfRange, match="stand"):
        METHOD.run(pairs=4, spacing=7.0, pair_capacity=1e5, weight=1e5, lcg=50.0, keel_aft=0.0, keel_forward=40.0)


def test_rolling_resistance():
    """Crandall, part 4: transfer on the level takes about 20 % of the effort of hauling up an incline of 5 %; hence mu
    0.0125 (derived). Slope 5 % with cosines near 1."""
    level, up = haul_force(1e5, 0.0, 0.0), haul_force(1e5, 0.0, slope_of(5, 100))
    assert pytest.approx(0.2 * (0.05 + FRICTION)) == FRICTION
    assert level / up == pytest.approx(0.2, rel=2e-3)


def test_haul_of_a_small_ship():
    """Derived: 660 t on 1 in 17 with mu 0.0125: 660 g (0.058722 + 0.012478) = 460.8 kN."""
    force = haul_force(600e3, 60e3, slope_of(1, 17))
    assert force == pytest.approx(460.8e3, rel=1e-4)
    (limit,) = slipway_limits(force, 980e3)
    assert limit.met is True
    assert slipway_limits(force, None, 150.0, 118.0)[1].met is False
    assert slipway_limits(force, None)[0].met is None


@given(st.floats(0.0, 0.3), st.floats(0.0, 0.3), st.floats(1e3, 1e7))
def test_haul_grows_with_the_slope_and_with_the_weight(a, b, weight):
    low, high = sorted((a, b))
    assert haul_force(weight, 0.0, low) <= haul_force(weight, 0.0, high) * (1 + 1e-12)
    assert haul_force(weight, weight, low) == pytest.approx(2 * haul_force(weight, 0.0, low))


def test_level_cradle_has_no_declivity():
    slope = slope_of(1, 17)
    assert cradle_declivity(slope) == pytest.approx(atan(1 / 17))
    assert cradle_declivity(slope, slope) == 0.0


def test_slipway_refusals():
    with pytest.raises(OutOfRange, match="slope"):
        haul_force(1e5, 0.0, radians(40))
    with pytest.raises(OutOfRange, match="weight"):
        haul_force(0.0, 0.0, 0.1)
    with pytest.raises(OutOfRange, match="gradient"):
        slope_of(1.0, 0.0)


def test_bending_moment_of_a_floating_dock():
    """Lloyd's Register, Rules for Floating Docks and Dock Gates, July 2022, Pt 2 Ch 1 s.3: with L_s 0.8 L_D the moment
    is W L_D/30 (derived from its weight curve and even buoyancy)."""
    assert bending_moment(3e7, 200.0, 160.0) == pytest.approx(3e7 * 200 / 30)


def test_bending_moment_is_that_of_the_weight_curve():
    """Derived: moment at the middle of even buoyancy less that of the weight forward of it."""
    parts = weight_curve(6e5, -25.0, 50.0).segments(100)
    x = np.linspace(0.0, 25.0, 20001)
    forward = 6e5 - carried_up_to(parts, x)
    weight_moment = float(np.sum(0.5 * (forward[1:] + forward[:-1]) * np.diff(x)))
    assert bending_moment(6e5, 88.0, 50.0) == pytest.approx(6e5 / 2 * 88.0 / 4 - weight_moment, rel=1e-6)


@pytest.mark.parametrize(
    ("capacity", "share"), [(2400e3, 0.8), (40e6, 0.8), (45e6, 0.825), (50e6, 0.85), (60e6, 0.888), (9e7, 0.92)]
)
def test_design_length(capacity, share):
    """Lloyd's Register, Rules for Floating Docks and Dock Gates, July 2022, Pt 2 Ch 1 s.2.1.7."""
    assert design_length_share(capacity) == pytest.approx(share)


def test_limits_of_a_floating_dock():
    """Iranian Classification Society, Rules for Floating Docks, 2014, ch. 4: GM 1.0 m, freeboards 1.0 and 0.3 m."""
    limits = floating_dock_limits(6e5, 88.0, 50.0, 7e6, 0.9, 1.2, 0.3)
    assert [limit.met for limit in limits] == [True, False, True, True]
    assert [limit.met for limit in floating_dock_limits(6e5, 88.0, 50.0)] == [None]
    with pytest.raises(OutOfRange, match="no longer"):
        bending_moment(6e5, 40.0, 50.0)
    with pytest.raises(OutOfRange, match="capacity"):
        design_length_share(0.0)
