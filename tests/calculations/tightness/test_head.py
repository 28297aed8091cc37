from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tightness.head import (
    METHOD,
    SEA_WATER,
    head_to_pressure,
    pressure_to_head,
    u_tube_height,
)


@pytest.mark.parametrize(
    ("bar", "fresh", "sea"), [(0.15, 1.53, 1.49), (0.14, 1.43, None), (0.20, 2.04, None), (0.07, 0.71, None)]
)
def test_heads_of_the_usual_pressures(bar: float, fresh: float, sea: float | None) -> None:
    # Derived, p = rho g h.
    assert u_tube_height(1e5 * bar) == pytest.approx(fresh, abs=0.005)
    if sea is not None:
        assert pressure_to_head(1e5 * bar, SEA_WATER) == pytest.approx(sea, abs=0.005)


def test_pressure_under_two_point_four_metres_of_sea_water() -> None:
    # Derived: 24.1 kPa.
    assert head_to_pressure(2.4, SEA_WATER) == pytest.approx(24.1e3, abs=50.0)


@given(st.floats(0, 50), st.floats(900, 1100))
def test_there_and_back(head: float, density: float) -> None:
    assert pressure_to_head(head_to_pressure(head, density), density) == pytest.approx(head)


def test_method_takes_one_or_the_other() -> None:
    outputs = METHOD.run(head=1.0)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["load"] == pytest.approx(1000.0)
    assert METHOD.run(pressure=outputs["pressure"])["head"] == pytest.approx(1.0)
    for wrong in ({}, {"head": 1.0, "pressure": 1e4}):
        with pytest.raises(OutOfRange, match="and not both"):
            METHOD.run(**wrong)
    with pytest.raises(OutOfRange, match="density"):
        head_to_pressure(1.0, 0.0)
    with pytest.raises(OutOfRange, match="head"):
        head_to_pressure(-1.0)
