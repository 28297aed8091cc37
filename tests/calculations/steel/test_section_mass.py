from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.section_mass import (
    METHOD,
    angle_area,
    flanged_area,
    flat_bar_area,
    round_bar_area,
    section_mass,
)


def test_angle_leaves_its_corner_out_once() -> None:
    # Derived: (150 + 175 - 10) by 10 mm is 3150 mm², 24.7 kg/m.
    assert 1e6 * angle_area(0.150, 0.175, 0.010) == pytest.approx(3150)
    assert section_mass(angle_area(0.150, 0.175, 0.010), 1.0) == pytest.approx(24.7275)


def test_flat_and_round_bar() -> None:
    # Derived: 100 by 10 mm is 7.85 kg/m; 20 mm round is pi/4 * 400 mm².
    assert section_mass(flat_bar_area(0.1, 0.01), 1.0) == pytest.approx(7.85)
    assert 1e6 * round_bar_area(0.020) == pytest.approx(100 * math.pi)


def test_tee_and_channel() -> None:
    # Derived: tee 100 deep, flange 80 by 10, web 8 mm: 800 + 90 * 8; channel: 2 * 800 + 80 * 8 mm².
    assert 1e6 * flanged_area(0.1, 0.08, 0.008, 0.01, flanges=1) == pytest.approx(1520)
    assert 1e6 * flanged_area(0.1, 0.08, 0.008, 0.01, flanges=2) == pytest.approx(2240)


@given(st.floats(0.02, 0.3), st.floats(0.02, 0.3), st.floats(0.001, 0.019))
def test_angle_is_two_flat_bars_less_the_corner(leg: float, other: float, thickness: float) -> None:
    bars = flat_bar_area(leg, thickness) + flat_bar_area(other, thickness)
    assert angle_area(leg, other, thickness) == pytest.approx(bars - thickness**2)
    assert angle_area(other, leg, thickness) == pytest.approx(angle_area(leg, other, thickness))


def test_refuses_sections_that_cannot_be() -> None:
    with pytest.raises(OutOfRange, match="thicker"):
        angle_area(0.05, 0.1, 0.05)
    with pytest.raises(OutOfRange, match="deep"):
        flanged_area(0.02, 0.08, 0.008, 0.01, flanges=2)
    with pytest.raises(OutOfRange, match="one or two"):
        flanged_area(0.1, 0.08, 0.008, 0.01, flanges=3)
    with pytest.raises(OutOfRange, match="width"):
        flat_bar_area(0.0, 0.01)
    with pytest.raises(OutOfRange, match="length"):
        section_mass(0.001, -1.0)
    with pytest.raises(OutOfRange, match="diameter"):
        round_bar_area(float("nan"))


def test_method_takes_the_dimensions_of_the_shape_and_no_others() -> None:
    outputs = METHOD.run(shape="angle", length=2.0, leg=0.150, other_leg=0.175, thickness=0.010)
    assert outputs["mass_per_length"] == pytest.approx(24.7275)
    assert outputs["mass"] == pytest.approx(2 * 24.7275)
    tee = METHOD.run(shape="tee", length=1.0, depth=0.1, flange=0.08, web=0.008, flange_thickness=0.01)
    assert 1e6 * tee["area"] == pytest.approx(1520)
    with pytest.raises(OutOfRange, match="shape angle give leg, other_leg, thickness"):
        METHOD.run(shape="angle", length=2.0, leg=0.150, thickness=0.010)
    with pytest.raises(OutOfRange, match="no other dimension"):
        METHOD.run(shape="round bar", length=2.0, diameter=0.02, web=0.01)
