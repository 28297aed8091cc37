from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.climate.dew_point import METHOD, dew_point, saturation_pressure
from tenderwright.calculations.method import OutOfRange


def test_published_dew_points() -> None:
    # MetPy 1.7 documentation: 10 degC and 50 %, 0.0479 degC. PsychroLib: 25 degC and 80 %, 21.3094 degC.
    assert dew_point(10.0, 0.50) == pytest.approx(0.047900916, abs=0.02)
    assert dew_point(25.0, 0.80) == pytest.approx(21.309397163, abs=0.02)


@pytest.mark.parametrize(
    ("temperature", "per_cent", "dew"),
    [
        (5, 85, 2.691), (10, 80, 6.713), (15, 70, 9.579), (20, 50, 9.272), (20, 60, 12.007), (20, 80, 16.447),
        (20, 85, 17.403), (25, 50, 13.864), (25, 80, 21.309), (30, 85, 27.199),
    ],
)  # fmt: skip
def test_table_of_psychrolib(temperature: float, per_cent: float, dew: float) -> None:
    # PsychroLib 2.5.0; the formula is within 0.035 K from 0 to 40 degC where the dew point is above 0.
    assert dew_point(temperature, 0.01 * per_cent) == pytest.approx(dew, abs=0.035)


def test_saturation_pressure_at_twenty_degrees() -> None:
    # FAO-56: 2.338 kPa at 20 degC (from memory).
    assert saturation_pressure(20.0) == pytest.approx(2338.0, rel=0.003)


@given(st.floats(-40, 55), st.floats(0.02, 0.99))
def test_dew_point_is_where_the_vapour_saturates(temperature: float, humidity: float) -> None:
    dew = dew_point(temperature, humidity)
    if dew > -45.0:
        assert saturation_pressure(dew) == pytest.approx(humidity * saturation_pressure(temperature))
    assert dew < temperature
    assert dew_point(temperature, 1.0) == pytest.approx(temperature, abs=1e-9)


@pytest.mark.parametrize(
    ("temperature", "humidity"), [(61.0, 0.5), (-46.0, 0.5), (20.0, 0.0), (20.0, 80.0), (20.0, float("nan"))]
)
def test_refuses_what_is_outside_the_formula(temperature: float, humidity: float) -> None:
    with pytest.raises(OutOfRange):
        dew_point(temperature, humidity)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(temperature=20.0, humidity=0.8)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["least_steel_3_k"] - outputs["dew_point"] == pytest.approx(3.0)
