"""Figures against their limits, by how well each is known."""

from __future__ import annotations

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.uncertainty.judged import METHOD


@pytest.mark.parametrize(("gm", "result"), [(0.55, "pass"), (0.50, "not known"), (0.45, "not known"), (0.44, "fail")])
def test_a_height_near_the_least_is_not_known_and_one_below_it_fails(gm: float, result: str) -> None:
    """Derived: with 0.03 m of standard uncertainty a height must be 0.06 m above 0.45 m to be known to pass."""
    limit = {"name": "gm", "dimension": "length", "demand": gm, "limit": 0.45, "at_least": True, "uncertainty": 0.03}
    assert METHOD.run(limits=[limit])["result"] == result


def test_without_limits_there_is_nothing_to_judge() -> None:
    with pytest.raises(OutOfRange):
        METHOD.run(limits=[])
