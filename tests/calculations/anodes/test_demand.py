from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.breakdown import Breakdown
from tenderwright.calculations.anodes.current import current_demand
from tenderwright.calculations.anodes.demand import B401, METHOD, WATERS, Densities, Surface, total_demand
from tenderwright.calculations.method import OutOfRange

SQUARE_FOOT = 0.3048**2
YEAR = 365.25 * 86400.0


def test_published_demand_of_a_pier() -> None:
    # MIL-HDBK-1004/10, p. 209: 5600 ft² at 2 mA/ft² and 3500 ft² at 1 mA/ft² make 14.7 A.
    per_foot = 1e-3 / SQUARE_FOOT
    water = Densities("water", 0.0, 2 * per_foot, 0.0, B401)
    mud = Densities("mud", 0.0, per_foot, 0.0, B401)
    surfaces = [Surface(5600 * SQUARE_FOOT, water), Surface(3500 * SQUARE_FOOT, mud)]
    assert total_demand(surfaces).mean == pytest.approx(14.7)


@pytest.mark.parametrize(
    ("water", "milliamps"),
    [
        ("temperate, 7 to 11 degC", (200, 100, 130)),
        ("tropical, above 20 degC", (150, 70, 100)),
        ("southern North Sea", (150, 80, 100)),
        ("North Sea, 55 to 62 N", (180, 90, 120)),
        ("mud", (25, 20, 20)),
    ],
)
def test_published_densities(water: str, milliamps: tuple[float, ...]) -> None:
    # DNV-RP-B401 (from memory) and Lloyd's Register, Offshore Units, Part 8, Ch. 4, Table 4.1.1.
    found = next(one for one in WATERS if one.water == water)
    assert [1e3 * found.initial, 1e3 * found.mean, 1e3 * found.final] == pytest.approx(milliamps)


@given(st.floats(0, 2000), st.floats(0, 0.3), st.floats(0, 1))
def test_agrees_with_the_plain_sum(area: float, density: float, share: float) -> None:
    even = Densities("any", density, density, density, B401)
    found = total_demand([Surface(area, even, Breakdown(share, share, share))])
    assert found.initial == found.mean == found.final == pytest.approx(current_demand([(area, density)], share))


def test_method_gives_its_outputs() -> None:
    coated = {"area": 100.0, "initial": 0.2, "mean": 0.1, "final": 0.13, "a": 0.02, "b": 0.012}
    bare = {"area": 10.0, "initial": 0.2, "mean": 0.1, "final": 0.13}
    outputs = METHOD.run(surfaces=[coated, bare], life=10 * YEAR)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["initial"] == pytest.approx(100 * 0.2 * 0.02 + 2.0)
    assert outputs["mean"] == pytest.approx(100 * 0.1 * 0.08 + 1.0)
    assert outputs["final"] == pytest.approx(100 * 0.13 * 0.14 + 1.3)


def test_refuses_what_is_below_nothing() -> None:
    with pytest.raises(OutOfRange, match="density"):
        Densities("any", -0.1, 0.1, 0.1, B401)
    with pytest.raises(OutOfRange, match="area"):
        Surface(-1.0, WATERS[0])
