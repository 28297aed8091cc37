from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.demand import Demand
from tenderwright.calculations.anodes.lasting import greatest_life
from tenderwright.calculations.anodes.number import HANDBOOK_YEAR, METHOD, AnodeType, anodes_needed
from tenderwright.calculations.method import OutOfRange

POUND = 0.45359237
DEMAND = {"initial_demand": 6.5, "mean_demand": 4.2, "final_demand": 7.8, "life": 5 * HANDBOOK_YEAR}


def test_published_mass_of_a_pier() -> None:
    # MIL-HDBK-1004/10, p. 209: 14.7 A for 10 years at 7.6 lb per A and year (2541 A h/kg) is 1117.2 lb.
    anode = AnodeType(10.0, 1.0, 1.0, 1.0, "aluminium", 8760 / (7.6 * POUND))
    found = anodes_needed(Demand(0.0, 14.7, 0.0), anode, 10 * HANDBOOK_YEAR)
    assert found.mass / POUND == pytest.approx(1117.2)


def test_published_number_by_current_rounds_up() -> None:
    # MIL-HDBK-1004/10: 62.16 A of anodes of 4.75 A, printed 13; 13 give 61.75 A, so 14.
    found = anodes_needed(Demand(62.16, 0.0, 10.0), AnodeType(10.0, 4.75, 4.75, 0.85), HANDBOOK_YEAR)
    assert (found.by_initial, found.number, found.governs) == (14, 14, "current when new")


@pytest.mark.parametrize(
    ("demand", "number", "governs"),
    [
        (Demand(1.0, 4.0, 1.0), 5, "mass"),
        (Demand(4.1, 1.0, 1.0), 9, "current when new"),
        (Demand(1.0, 1.0, 4.1), 11, "current when spent"),
    ],
)
def test_whichever_governs(demand: Demand, number: int, governs: str) -> None:
    # Derived: 780 A h/kg, u 0.85; 4 A for a year take 4 x 8760/663 = 52.9 kg.
    found = anodes_needed(demand, AnodeType(11.0, 0.5, 0.4, 0.85), HANDBOOK_YEAR)
    assert (found.number, found.governs) == (number, governs)


demands = st.builds(Demand, st.floats(0, 50), st.floats(0.01, 50), st.floats(0, 50))


@given(demands, st.floats(0.1, 20))
def test_the_number_is_enough_in_all_three(demand: Demand, years: float) -> None:
    anode = AnodeType(10.0, 0.5, 0.4, 0.85)
    life = years * HANDBOOK_YEAR
    found = anodes_needed(demand, anode, life)
    assert found.number * anode.initial >= demand.initial - 1e-6
    assert found.number * anode.final >= demand.final - 1e-6
    assert greatest_life(demand, anode, found.number) >= life * (1 - 1e-6)
    assert anodes_needed(demand, anode, 2 * life).number >= found.number


def test_refuses_a_capacity_that_cannot_be() -> None:
    # Faraday's law: zinc 820 A h/kg. A figure per pound taken for one per kilogram errs the other way.
    with pytest.raises(OutOfRange, match="Faraday"):
        anodes_needed(Demand(1, 1, 1), AnodeType(10.0, 0.5, 0.4, 0.85, "zinc", 2000.0), HANDBOOK_YEAR)
    with pytest.raises(OutOfRange, match="magnesium"):
        METHOD.run(**DEMAND, mass=10.0, initial_current=0.4, final_current=0.3, utilisation=0.85, alloy="magnesium")


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(**DEMAND, mass=10.0, initial_current=0.4, final_current=0.3, utilisation=0.85)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["number"] == max(outputs["by_mass"], outputs["by_initial"], outputs["by_final"])


def test_a_capacity_of_ones_own_takes_the_place_of_the_alloys() -> None:
    sized = {"mass": 10.0, "initial_current": 0.4, "final_current": 0.3, "utilisation": 0.85}
    usual = METHOD.run(**DEMAND, **sized)["mass"]
    assert METHOD.run(**DEMAND, **sized, capacity=390.0)["mass"] == pytest.approx(2 * usual)
