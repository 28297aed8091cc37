from __future__ import annotations

from typing import Any

import pytest

from tenderwright.calculations.anodes.first_spent import first_spent
from tenderwright.calculations.anodes.life import Found, anode_life
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.readings import year_of


def anode(name: str, left: float, **more: str) -> dict[str, Any]:
    return {"name": name, "left": left, "fitted": "2010-01-01", "seen": "2020-01-01", **more}


def test_the_likely_day_is_that_of_the_life_of_an_anode() -> None:
    found = first_spent([anode("p1", 0.6), anode("p2", 0.5)], 0.85)
    life = anode_life([Found(10.0, 0.5)], 0.85, 0.0).whole_life
    assert found.anode == "p2"
    assert life is not None
    assert year_of(found.likely) == pytest.approx(year_of("2010-01-01") + life, abs=0.01)
    assert year_of(found.early) == pytest.approx(year_of("2010-01-01") + 10 * 0.85 / 0.6, abs=0.01)


def test_one_that_was_renewed_counts_from_that_day() -> None:
    assert first_spent([anode("p1", 0.15, anew="2020-02-01")], 0.85, 0.0).early[:7] == "2030-01"


def test_what_does_not_waste_is_named_and_never_spent() -> None:
    found = first_spent([anode("p1", 1.0)], 0.85)
    assert (found.likely, found.never) == ("", ("p1",))
    with pytest.raises(OutOfRange, match="before it was fitted"):
        first_spent([anode("p1", 0.5, seen="2009-01-01")], 0.85)
