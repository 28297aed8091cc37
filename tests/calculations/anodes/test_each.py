from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.anodes.each import METHOD, each_anode
from tenderwright.calculations.anodes.life import Found, anode_life
from tenderwright.calculations.method import OutOfRange

YEAR = 365.25 * 86400.0


def _row(name: str, left: float, years: float, to_next: float = 5.0) -> dict[str, object]:
    return {"name": name, "mass": 10.0, "left": left, "time": years * YEAR, "to_next": to_next * YEAR}


def test_one_that_wastes_fast_is_renewed_though_their_mean_would_be_kept() -> None:
    """Derived: 80 % in 8 years is 10 % a year, 130 % five years on; 20 % is 2.5 % a year, 32.5 %: the mean 81 %."""
    found = each_anode([_row("p1", 0.20, 8.0), _row("p2", 0.80, 8.0)], 0.85, 780.0)
    assert [one.name for one in found.to_renew] == ["p1"]
    assert found.fastest.name == "p1"
    assert anode_life([Found(8.0, 0.5)], 0.85, 5.0).decision == "keep"


def test_the_current_is_the_charge_of_what_wasted() -> None:
    """Derived: 8 kg of 780 A h/kg in 8 years of 8760 h."""
    found = each_anode([_row("p1", 0.20, 8.0)], 0.85, 780.0)
    assert found.current == pytest.approx(8.0 * 780 / (8 * 8760))


@given(st.lists(st.floats(0.0, 1.0), min_size=1, max_size=8))
def test_each_is_judged_as_it_would_be_alone(left: list[float]) -> None:
    rows = [_row(f"a{number}", share, 6.0) for number, share in enumerate(left)]
    found = each_anode(rows, 0.85, 780.0)
    assert [one.life for one in found.anodes] == [anode_life([Found(6.0, share)], 0.85, 5.0) for share in left]
    assert found.current == pytest.approx(sum(one.current for one in found.anodes))


def test_none_and_the_outputs() -> None:
    with pytest.raises(OutOfRange, match="one anode"):
        each_anode([], 0.85, 780.0)
    outputs = METHOD.run(anodes=[_row("p1", 0.2, 8.0), _row("p2", 1.0, 8.0)], utilisation=0.85, capacity=780.0)
    assert outputs["to_renew"] == 1
    assert outputs["shortest_life"] == pytest.approx(8.5 * YEAR)
    assert [row["decision"] for row in outputs["each"]] == ["renew", "look into it"]
    assert [one.name for one in each_anode([_row("p2", 1.0, 8.0)], 0.85, 780.0).to_look_into] == ["p2"]
