from __future__ import annotations

import pytest

from tenderwright.calculations.anodes.demand import Demand
from tenderwright.calculations.anodes.lasting import METHOD, greatest_life
from tenderwright.calculations.anodes.number import AnodeType
from tenderwright.calculations.method import OutOfRange


def test_method_gives_its_outputs() -> None:
    # Derived: 26 of 10 kg at 780 A h/kg, 85 % used, at 4.2 A: 260 x 780 x 0.85/4.2 hours.
    found = METHOD.run(mean_demand=4.2, number=26, mass=10.0, utilisation=0.85)
    assert found == {"lasts": pytest.approx(260 * 780 * 0.85 / 4.2 * 3600)}
    half = METHOD.run(mean_demand=4.2, number=26, mass=10.0, utilisation=0.85, capacity=390.0)
    assert half["lasts"] == pytest.approx(found["lasts"] / 2)


def test_refuses_what_has_no_life() -> None:
    with pytest.raises(OutOfRange, match="nothing asks"):
        greatest_life(Demand(1, 0, 1), AnodeType(10.0, 0.5, 0.4, 0.85), 3)
    with pytest.raises(OutOfRange, match="number"):
        greatest_life(Demand(1, 1, 1), AnodeType(10.0, 0.5, 0.4, 0.85), -1)
