from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.steel.plate_mass import (
    DENSITIES,
    METHOD,
    POUND_PLATE_STEEL_DENSITY,
    STEEL_DENSITY,
    WROUGHT_IRON_DENSITY,
    plate_mass,
)

INCH = 0.0254
POUND = 0.45359237
SQUARE_FOOT = 0.3048**2
CUBIC_FOOT = 0.3048**3


@pytest.mark.parametrize(
    ("inches", "pounds"),
    [
        (1 / 8, 5.1),
        (3 / 16, 7.66),
        (1 / 4, 10.2),
        (5 / 16, 12.76),
        (3 / 8, 15.3),
        (1 / 2, 20.4),
        (3 / 4, 30.6),
        (1, 40.8),
        (1.25, 51),
        (1.5, 61.2),
        (2, 81.6),
    ],
)
def test_published_weights_of_plate(inches: float, pounds: float) -> None:
    # Pressure Vessel Design Manual, Table 2-18, lb/ft².
    mass = plate_mass(SQUARE_FOOT, inches * INCH, POUND_PLATE_STEEL_DENSITY)
    assert mass / POUND == pytest.approx(pounds, abs=0.011)


def test_the_densities_are_not_one() -> None:
    # Derived: 489.6 and 480 lb/ft³; 7850 kg/m³ is 490.06 lb/ft³ and 40.838 lb/ft² per inch.
    assert pytest.approx(489.6, abs=1e-9) == POUND_PLATE_STEEL_DENSITY * CUBIC_FOOT / POUND
    assert pytest.approx(480.0, abs=1e-9) == WROUGHT_IRON_DENSITY * CUBIC_FOOT / POUND
    assert pytest.approx(490.06, abs=0.005) == STEEL_DENSITY * CUBIC_FOOT / POUND
    assert plate_mass(SQUARE_FOOT, INCH) / POUND == pytest.approx(40.838, abs=0.0005)
    assert len(set(DENSITIES.values())) == 3


def test_metric_rule() -> None:
    # Metric convention: 7.85 kg for each m² and mm.
    assert plate_mass(3.0, 0.010) == pytest.approx(235.5)


@given(st.floats(0, 100), st.floats(0, 0.1), st.floats(0, 0.1))
def test_thicknesses_add(area: float, one: float, other: float) -> None:
    assert plate_mass(area, one + other) == pytest.approx(plate_mass(area, one) + plate_mass(area, other))


@pytest.mark.parametrize(
    ("area", "thickness", "density"),
    [(-1.0, 0.01, 7850.0), (1.0, -0.01, 7850.0), (1.0, 0.01, 0.0), (float("nan"), 0.01, 7850.0)],
)
def test_refuses_what_is_no_plate(area: float, thickness: float, density: float) -> None:
    with pytest.raises(OutOfRange):
        plate_mass(area, thickness, density)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(area=1.0, thickness=0.0254, metal="wrought iron")
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["mass"] * SQUARE_FOOT / POUND == pytest.approx(40.0)
