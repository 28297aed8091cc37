from __future__ import annotations

from typing import Any

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.shell_survey import METHOD

PLATES = [{"strake": "A", "ends": [0.0, 6.0, 12.0]}, {"strake": "B", "ends": [0.0, 12.0]}]
ZONES = [{"strakes": ["A"], "from": 5.0, "to": 12.0, "allowable": 0.2}, {"strakes": ["A", "B"], "allowable": 0.25}]


def reading(strake: str, at: float, measured: float, survey: int = 1) -> dict[str, Any]:
    date = ("2007-09-15", "2025-10-06")[survey - 1]
    return {
        "survey": survey, "date": date, "strake": strake, "side": "port", "at": at,
        "as_built": 0.010, "measured": measured,
    }  # fmt: skip


def test_the_limit_is_that_of_the_first_zone_that_fits() -> None:
    """2.2 mm of 10 mm is beyond 20 % at 7 m, and within 25 % at 2 m, where it is above three quarters of it."""
    found = METHOD.run(readings=[reading("A", 7.0, 0.0078), reading("A", 2.0, 0.0078)], plates=PLATES, zones=ZONES)
    assert (found["beyond"], found["substantial"]) == (1.0, 1.0)
    assert found["greatest_loss"] == pytest.approx(0.22)


def test_the_latest_survey_of_each_plate_tells_its_state() -> None:
    """Plate B was gauged in 2007 alone, so that it counts; the after plate of A was gauged again."""
    rows = [reading("A", 2.0, 0.006), reading("B", 2.0, 0.0101), reading("A", 3.0, 0.009, 2)]
    found = METHOD.run(readings=rows, plates=PLATES, zones=ZONES)
    assert (found["readings"], found["latest"], found["above_nominal"]) == (3.0, 2.0, 1.0)
    assert found["greatest_loss"] == pytest.approx(0.1)


def test_a_reading_in_no_zone_is_refused() -> None:
    with pytest.raises(OutOfRange, match=r"strake B, 2\.00 m forward lies in no zone"):
        METHOD.run(readings=[reading("B", 2.0, 0.009)], plates=PLATES, zones=ZONES[:1])
