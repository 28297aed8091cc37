from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schedule.interval import KEPT, METHOD, Intervals, intervals

YEAR = 365.25 * 86400.0


def test_a_ship_that_went_twenty_years_is_not_likely_to_come_after_five() -> None:
    """Derived: 1988-04-18 to 2007-09-10 is 19.4 years, and to 2027-04-21 19.6."""
    found = intervals(["2007-09-10", "1988-04-18"], "2027-04-21", 5 * YEAR)
    assert found.between == (pytest.approx(19.4, abs=0.01), pytest.approx(19.61, abs=0.01))
    assert (found.shortest, found.longest) == (found.between[0], found.between[1])
    assert not found.kept_before
    assert intervals(["1988-04-18"], "2007-09-10", 15 * YEAR).kept_before


@given(st.lists(st.floats(1.0, 40.0), min_size=1), st.floats(0.5, 40.0))
def test_it_is_held_against_the_shortest(between: list[float], planned: float) -> None:
    assert Intervals(tuple(between), planned).kept_before == (planned >= KEPT * min(between))


def test_without_a_docking_before_nothing_can_be_said() -> None:
    with pytest.raises(OutOfRange, match="one docking"):
        intervals([], "2027-04-21", 5 * YEAR)
    with pytest.raises(OutOfRange, match="more than nothing"):
        intervals(["2007-09-10"], "2027-04-21", 0.0)
    outputs = METHOD.run(dockings=["2007-09-10"], planned="2027-09-10", interval=5 * YEAR)
    assert outputs["share"] == pytest.approx(0.25, rel=1e-3)
