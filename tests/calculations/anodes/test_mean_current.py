from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.mass import anode_mass, consumption_rate
from tenderwright.calculations.anodes.mean_current import METHOD, mean_current
from tenderwright.calculations.method import OutOfRange

YEAR = 365.25 * 86400.0


@given(st.floats(0.1, 30), st.floats(0.5, 10))
def test_current_given_is_that_of_the_mass_used(current: float, years: float) -> None:
    # MIL-HDBK-1004/10, p. 209 turned round: the mass that a current uses gives that current.
    used = anode_mass(current, years * 8760 * 3600.0, consumption_rate(780.0))
    assert mean_current(0.5, used / 5.0, 10, 780.0, years) == pytest.approx(current)


def test_refuses_what_cannot_be_left() -> None:
    with pytest.raises(OutOfRange, match="wasted"):
        mean_current(1.5, 10.0, 2, 780.0, 3.0)
    with pytest.raises(OutOfRange, match="years"):
        METHOD.run(left=0.5, mass=10.0, capacity=780.0, time=0.0)


def test_method_gives_its_outputs() -> None:
    # Derived: 45 % of 120 kg at 780 A h/kg over 3 years of 8760 h.
    outputs = METHOD.run(left=0.55, mass=120.0, capacity=780.0, time=3 * YEAR)
    assert outputs == {"current": pytest.approx(54.0 * 780 / (3 * 8760))}
