from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.mass import METHOD, anode_mass, anode_number, consumption_rate
from tenderwright.calculations.method import OutOfRange

POUND = 0.45359237
YEAR = 8760 * 3600.0


def test_published_mass_for_a_pier() -> None:
    # MIL-HDBK-1004/10, p. 209: 10 years, 7.6 lb per A and year, 14.7 A: 1117.2 lb.
    mass = anode_mass(14.7, 10 * YEAR, 7.6 * POUND / YEAR)
    assert mass / POUND == pytest.approx(1117.2, abs=1e-9)


def test_consumption_and_capacity_are_the_same_figure() -> None:
    # Derived: 7.6 lb of aluminium per A and year is 2541 A h/kg.
    assert consumption_rate(2541.0) * YEAR / POUND == pytest.approx(7.6, abs=0.001)


@pytest.mark.parametrize(("years", "kilograms"), [(3, 673), (15, 3365)])
def test_mass_of_zinc_for_a_thousand_square_metres(years: float, kilograms: float) -> None:
    # Butler, Guide to Ship Repair Estimates, 2000: 20 mA/m², 781 A h/kg, 8760 h (the masses are derived).
    assert anode_mass(20.0, years * YEAR, consumption_rate(781.0)) == pytest.approx(kilograms, abs=0.5)


def test_numbers_round_up() -> None:
    # MIL-HDBK-1004/10: 726/17 = 42.7, so 43; 62.16/4.75 = 13.08, printed 13, but 13 give only 61.75 A.
    assert anode_number(726.0, 17.0) == 43
    assert anode_number(62.16, 4.75) == 14
    assert anode_number(13 * 4.75, 4.75) == 13
    assert anode_number(0.0, 11.5) == 0


@given(st.floats(0, 1e4), st.floats(0.1, 50))
def test_number_is_enough_and_one_less_is_not(total: float, each: float) -> None:
    number = anode_number(total, each)
    assert number * each >= total - 1e-7
    assert number == 0 or (number - 1) * each < total


@given(st.floats(0, 100), st.floats(0, 1e9), st.floats(0.1, 1.0))
def test_using_less_of_each_anode_needs_more(current: float, life: float, utilisation: float) -> None:
    whole = anode_mass(current, life, consumption_rate(780.0))
    part = anode_mass(current, life, consumption_rate(780.0, utilisation))
    assert part == pytest.approx(whole / utilisation)


@pytest.mark.parametrize(("capacity", "utilisation"), [(0.0, 1.0), (780.0, 0.0), (780.0, 1.1), (float("nan"), 1.0)])
def test_refuses_what_is_no_alloy(capacity: float, utilisation: float) -> None:
    with pytest.raises(OutOfRange):
        consumption_rate(capacity, utilisation)


@pytest.mark.parametrize(("current", "life"), [(-1.0, 1.0), (1.0, -1.0)])
def test_refuses_what_is_below_nothing(current: float, life: float) -> None:
    with pytest.raises(OutOfRange, match="less than nothing"):
        anode_mass(current, life, 1e-6)


@pytest.mark.parametrize(("total", "each"), [(-1.0, 1.0), (1.0, 0.0)])
def test_refuses_no_anode(total: float, each: float) -> None:
    with pytest.raises(OutOfRange, match="number of anodes"):
        anode_number(total, each)


def test_method_gives_its_outputs() -> None:
    surfaces = [{"area": 1000.0, "current_density": 0.02}]
    outputs = METHOD.run(surfaces=surfaces, life=3 * YEAR, capacity=781.0, each=11.5)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["current"] == pytest.approx(20.0)
    assert outputs["number"] == 59.0
    assert METHOD.run(surfaces=surfaces, life=YEAR, capacity=781.0)["number"] is None
