from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.renewal.insert import METHOD, insert_steel, mill_overweight


@pytest.mark.parametrize(("inches", "share"), [(1 / 8, 10.75), (1 / 2, 4.5), (1.0, 3.0), (2.0, 3.0), (1 / 16, 10.75)])
def test_published_overweight_of_plate(inches: float, share: float) -> None:
    # Pressure Vessel Design Manual, Table 2-18.
    assert 100 * mill_overweight(inches * 0.0254) == pytest.approx(share)


def test_mass_of_half_inch_plate_of_a_square_yard() -> None:
    # Pressure Vessel Design Manual, Table 2-18: 1/2 in is 20.4 lb/ft²; here at 489.6 lb/ft³, corners square.
    side = 3 * 0.3048
    found = insert_steel(side, side, 0.0127, density=489.6 * 0.45359237 / 0.3048**3, corner=0.0)
    assert found.mass / 0.45359237 == pytest.approx(9 * 20.4)


def test_corners_are_five_thicknesses() -> None:
    # IACS Recommendation 47, Part B (from memory); area and weld by the circle that four corners make.
    found = insert_steel(1.0, 0.5, 0.010)
    assert found.radius == pytest.approx(0.05)
    assert found.area == pytest.approx(1.0 * 0.5 - (0.1**2 - math.pi * 0.05**2))
    assert found.weld == pytest.approx(2 * (0.9 + 0.4) + math.pi * 0.1)


@given(st.floats(0.3, 5), st.floats(0.3, 3), st.floats(0.004, 0.03), st.floats(0, 0.1))
def test_tolerance_and_size_only_add(length: float, breadth: float, thickness: float, tolerance: float) -> None:
    plain = insert_steel(length, breadth, thickness)
    assert insert_steel(length, breadth, thickness, tolerance).mass == pytest.approx(plain.mass * (1 + tolerance))
    assert insert_steel(length + 0.1, breadth, thickness).mass > plain.mass
    assert insert_steel(breadth, length, thickness).area == pytest.approx(plain.area)
    assert 0.7 * length * breadth < plain.area < length * breadth


def test_refuses_an_insert_too_small() -> None:
    with pytest.raises(OutOfRange, match="300 mm"):
        insert_steel(0.25, 1.0, 0.010)
    with pytest.raises(OutOfRange, match="corners"):
        insert_steel(0.3, 1.0, 0.040)
    with pytest.raises(OutOfRange, match="tolerance"):
        insert_steel(1.0, 1.0, 0.010, tolerance=5.0)
    with pytest.raises(OutOfRange, match="thickness"):
        mill_overweight(0.0)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(length=1.68, breadth=1.15, thickness=0.0127)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["tolerance"] == pytest.approx(0.045)
    assert METHOD.run(length=1.68, breadth=1.15, thickness=0.0127, tolerance=0.0)["mass"] < outputs["mass"]
