from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.life import METHOD, Found, anode_life
from tenderwright.calculations.method import OutOfRange

YEAR = 365.25 * 86400.0


def test_half_wasted_in_three_years() -> None:
    # Derived: 45 % in 3 years is 15 % a year; 2.67 years to 85 %; 75 % two years on: keep.
    life = anode_life([Found(3.0, 0.55)], 0.85, 2.0)
    assert life.rate == pytest.approx(0.15)
    assert life.years_left == pytest.approx(2.667, abs=0.001)
    assert life.at_next == pytest.approx(0.75)
    assert life.decision == "keep"
    assert anode_life([Found(3.0, 0.55)], 0.85, 3.0).decision == "renew"


def test_divers_must_renew_where_the_interval_is_longer_than_an_anode_lasts() -> None:
    life = anode_life([Found(3.0, 0.40)], 0.80, 10.0)
    assert life.whole_life == pytest.approx(4.0)
    assert any("divers" in note and "2 times" in note for note in life.notes)
    assert not anode_life([Found(3.0, 0.40)], 0.80, 3.9).notes
    assert any("once" in note for note in anode_life([Found(3.0, 0.40)], 0.80, 8.0).notes)


def test_nothing_wasted_is_looked_into_and_is_no_endless_life() -> None:
    life = anode_life([Found(3.0, 1.0)], 0.85, 2.0)
    assert (life.years_left, life.whole_life, life.decision) == (None, None, "look into it")
    assert any("passive" in note for note in life.notes)


def test_an_anode_that_is_gone_gives_a_least_rate() -> None:
    life = anode_life([Found(4.0, 0.0)], 0.85, 0.0)
    assert life.years_left == 0.0
    assert any("least" in note for note in life.notes)


@given(st.floats(0.01, 0.2), st.lists(st.floats(0.5, 4.9), min_size=1, max_size=4), st.floats(0, 10))
def test_even_wastage_is_found_again(rate: float, years: list[float], ahead: float) -> None:
    life = anode_life([Found(t, 1.0 - rate * t) for t in years], 0.85, ahead)
    assert life.rate == pytest.approx(rate)
    assert life.at_next == pytest.approx(rate * (max(years) + ahead))
    assert life.decision == ("renew" if life.at_next > 0.85 + 1e-9 else "keep")


def test_refuses_what_is_no_finding() -> None:
    with pytest.raises(OutOfRange, match="some time"):
        Found(0.0, 0.5)
    with pytest.raises(OutOfRange, match="fraction"):
        Found(1.0, 50.0)
    with pytest.raises(OutOfRange, match="one time at least"):
        anode_life([], 0.85, 1.0)
    with pytest.raises(OutOfRange, match="utilisation"):
        anode_life([Found(1.0, 0.5)], 0.0, 1.0)
    with pytest.raises(OutOfRange, match="next docking"):
        anode_life([Found(1.0, 0.5)], 0.85, -1.0)


def test_method_gives_its_outputs() -> None:
    outputs = METHOD.run(found=[{"time": 3 * YEAR, "left": 0.55}], utilisation=0.85, to_next=2 * YEAR)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["left_to_use"] / YEAR == pytest.approx(2.667, abs=0.001)
