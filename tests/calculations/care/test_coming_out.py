"""When she should come out: the earliest ground, and what it is held against."""

from __future__ import annotations

import pytest

from tenderwright.calculations.care.coming_out import coming_out
from tenderwright.calculations.method import OutOfRange

GROUNDS = [
    {"ground": "coating", "early": "2035-01-01", "likely": "2037-01-01"},
    {"ground": "plate", "early": "2031-04-02"},
]


def test_the_earliest_governs() -> None:
    found = coming_out(GROUNDS, "2032-05-05")
    assert (found.governs.ground, found.in_time) == ("plate", False)
    assert found.margin == pytest.approx(-1.09, abs=0.01)


def test_the_day_itself_is_in_time() -> None:
    assert coming_out(GROUNDS, "2031-04-02").in_time is True
    assert coming_out(GROUNDS).in_time is None


def test_nothing_is_no_ground_and_a_likely_day_is_no_earlier() -> None:
    with pytest.raises(OutOfRange, match="no ground"):
        coming_out([])
    with pytest.raises(OutOfRange, match="before the early one"):
        coming_out([{"ground": "x", "early": "2031-01-02", "likely": "2031-01-01"}])
