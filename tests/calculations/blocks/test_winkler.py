"""Closed forms of the beam on an elastic foundation."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.blocks.overhang import overhang_peak
from tenderwright.calculations.blocks.winkler import (
    METHOD,
    characteristic,
    end_of_half_endless,
    force_at_middle,
    forces_at_ends,
    infinite_beam,
    keel_class,
)
from tenderwright.calculations.method import OutOfRange

EI, K, L, P = 2.0e9, 5.0e6, 40.0, 5.0e6


def test_check_set_to_nine_figures():
    """Derived, by 400 finite elements: EI 2.0e9, k 5.0e6, l 40, P 5.0e6 at both ends."""
    lam = characteristic(K, EI)
    assert lam == pytest.approx(0.15811388, abs=5e-9)
    assert lam * L == pytest.approx(6.3245553, abs=5e-8)
    found = forces_at_ends(P, K, lam, L)
    assert found.end == pytest.approx(0.3173150120, abs=5e-11)
    assert found.middle == pytest.approx(-0.0268096923, abs=5e-11)
    assert found.moment_middle == pytest.approx(5.52653764e4, abs=5e-5)


@pytest.mark.parametrize("turn", [1, 3, 5])
def test_published_zeros_of_the_middle_deflection(turn):
    """Hetényi, Beams on Elastic Foundation, 1946, ch. IV art. 19a: y_mid = 0 at lam l = pi, 3pi, 5pi."""
    found = forces_at_ends(P, K, 1.0, turn * pi)
    assert found.middle == pytest.approx(0.0, abs=1e-13 * found.end)


@pytest.mark.parametrize("turn", [2, 4, 6])
def test_published_zeros_of_the_middle_moment(turn):
    """Hetényi, 1946, ch. IV art. 19a: M_mid = 0 at lam l = 2pi, 4pi, 6pi."""
    assert forces_at_ends(P, K, 1.0, turn * pi).moment_middle == pytest.approx(0.0, abs=1e-9 * P)


def test_zeros_of_the_endless_beam():
    """Hetényi, 1946 (from memory): first y = 0 at lam x = 3pi/4, first M = 0 at pi/4."""
    assert infinite_beam(P, K, 1.0, 3 * pi / 4)[0] == pytest.approx(0.0, abs=1e-15 * P / K)
    assert infinite_beam(P, K, 1.0, pi / 4)[1] == pytest.approx(0.0, abs=1e-9)
    deflection, moment = infinite_beam(P, K, 0.5, [0.0, -3.0, 3.0])
    assert deflection[0] == pytest.approx(P * 0.5 / (2 * K))
    assert moment[0] == pytest.approx(P / 2)
    assert deflection[1] == deflection[2]


def test_limits_of_long_beams():
    """Derived: a long beam loaded at its ends is two half-endless ones; at its middle, an endless one."""
    lam = 0.3
    assert forces_at_ends(P, K, lam, 300.0).end == pytest.approx(end_of_half_endless(P, K, lam))
    assert force_at_middle(P, K, lam, 300.0).middle == pytest.approx(P * lam / (2 * K))


def test_limits_of_short_beams():
    """Derived: a short free beam is rigid, y = load/(k l)."""
    lam, length = 0.002, 10.0
    assert forces_at_ends(P, K, lam, length).end == pytest.approx(2 * P / (K * length), rel=1e-5)
    assert force_at_middle(P, K, lam, length).middle == pytest.approx(P / (K * length), rel=1e-5)


@given(st.floats(0.01, 2.0), st.floats(1.0, 100.0))
def test_reciprocity(lam, length):
    """Derived (Betti): sinkage of the middle by P at both ends is twice that of an end by P at the middle."""
    one, other = forces_at_ends(P, K, lam, length), force_at_middle(P, K, lam, length)
    assert one.middle == pytest.approx(2 * other.end, rel=1e-12)


@pytest.mark.parametrize(("slenderness", "kind"), [(0.5, "short"), (0.79, "medium"), (3.14, "medium"), (3.15, "long")])
def test_classes(slenderness, kind):
    """Hetényi (limits from memory): pi/4 and pi."""
    assert keel_class(slenderness) == kind


def test_overhang_peak_is_four_times_the_interior_one():
    """Derived from Hetényi's forms: 2 P lam at the free end against P lam/2 far from it."""
    found = overhang_peak(40e3, 15e6, 2e10)
    assert found["peak"] == pytest.approx(4 * found["interior_peak"])
    # P and M in kg and kg m, so the peak is k y_end/g.
    assert found["peak"] == pytest.approx(15e6 * end_of_half_endless(40e3, 15e6, found["characteristic"]))
    assert overhang_peak(40e3, 15e6, 2e10, 40e3)["peak"] > found["peak"]


@pytest.mark.parametrize(
    "call",
    [
        lambda: characteristic(0.0, 1.0),
        lambda: keel_class(0.0),
        lambda: forces_at_ends(P, K, 1.0, 301.0),
        lambda: force_at_middle(P, K, 1.0, 0.0),
        lambda: overhang_peak(-1.0, K, EI),
    ],
)
def test_refusals(call):
    with pytest.raises(OutOfRange):
        call()


def test_method_is_in_mass():
    found = METHOD.run(modulus=K, elasticity=2e11, second_moment=0.01, length=L, load=P / 9.80665)
    assert found["end_loads_end"] == pytest.approx(0.3173150120, abs=1e-9)
    assert found["class"] == "long"
    assert found["rigid_justified"] is False
