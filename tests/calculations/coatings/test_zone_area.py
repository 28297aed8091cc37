from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.coatings.zone_area import METHOD, zone_area
from tenderwright.calculations.method import OutOfRange


def _entry(area: float) -> dict[str, Any]:
    return {"what": "bilge keels", "area": area}


def test_what_is_added_counts_and_what_is_taken_away_does_not() -> None:
    # Derived: 402 + 23.3 + 19.2 - 0.4.
    assert zone_area(402.0, [_entry(23.3), _entry(19.2)], [_entry(0.4)])["area"] == pytest.approx(444.1)
    assert METHOD.run(surface=11.6)["area"] == 11.6
    assert METHOD.run(surface=402.0, added=[_entry(23.3)], uncertainty=4.0)["uncertainty"] == 4.0


areas = st.lists(st.floats(0.01, 50).map(_entry), max_size=4)


@given(st.floats(210, 2000), areas, areas)
def test_adding_and_taking_away_the_same_changes_nothing(surface: float, added: list[Any], taken: list[Any]) -> None:
    found = zone_area(surface, [*added, *taken], taken)["area"]
    assert found == pytest.approx(zone_area(surface, added)["area"])


def test_refuses_a_zone_of_which_nothing_is_left() -> None:
    with pytest.raises(OutOfRange, match="more is taken away"):
        zone_area(10.0, (), [_entry(10.0)])
    with pytest.raises(OutOfRange, match="surface"):
        zone_area(-1.0)
    with pytest.raises(OutOfRange, match="bilge keels"):
        zone_area(10.0, [_entry(-1.0)])
