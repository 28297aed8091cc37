from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.current import current_demand
from tenderwright.calculations.method import OutOfRange

SQUARE_FOOT = 0.3048**2


def test_published_demand_of_a_pier() -> None:
    # MIL-HDBK-1004/10, p. 209: 5600 ft² at 2 mA/ft² and 3500 ft² at 1 mA/ft²: 11.2 + 3.5 = 14.7 A.
    per_foot = 1e-3 / SQUARE_FOOT
    surfaces = [(5600 * SQUARE_FOOT, 2 * per_foot), (3500 * SQUARE_FOOT, per_foot)]
    assert current_demand(surfaces) == pytest.approx(14.7, abs=1e-9)
    assert [current_demand([one]) for one in surfaces] == pytest.approx([11.2, 3.5])


@given(st.lists(st.tuples(st.floats(0, 5000), st.floats(0, 0.2)), max_size=6), st.floats(0, 1))
def test_order_does_not_matter_and_paint_only_helps(surfaces: list[tuple[float, float]], fc: float) -> None:
    bare = current_demand(surfaces)
    assert current_demand(surfaces[::-1]) == pytest.approx(bare)
    assert current_demand(surfaces, fc) == pytest.approx(fc * bare)


@pytest.mark.parametrize("surface", [(-1.0, 0.02), (1.0, -0.02), (float("nan"), 0.02)])
def test_refuses_what_is_below_nothing(surface: tuple[float, float]) -> None:
    with pytest.raises(OutOfRange, match="less than nothing"):
        current_demand([surface])


@pytest.mark.parametrize("breakdown", [-0.1, 1.1, 10.0])
def test_refuses_a_breakdown_that_is_no_fraction(breakdown: float) -> None:
    with pytest.raises(OutOfRange, match="breakdown"):
        current_demand([(1.0, 0.02)], breakdown)
