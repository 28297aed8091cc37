from __future__ import annotations

from typing import Any

import pytest

from tenderwright.calculations.thickness.plate_forecast import METHOD as PLATE
from tenderwright.calculations.thickness.shell_forecast import METHOD, call_plates

YEAR = 365.25 * 86400.0
AHEAD: dict[str, Any] = {"docking": "2027-10-06", "interval": 5 * YEAR}


def survey(*measured: tuple[float, float]) -> dict[str, Any]:
    """Give a shell of one strake with plates of 6 m, each gauged in 2007 and in 2025."""
    rows = [
        {
            "survey": number, "date": date, "strake": "A", "side": "port", "at": 6.0 * plate + 3.0,
            "as_built": 0.010, "measured": pair[number - 1],
        }
        for plate, pair in enumerate(measured)
        for number, date in ((1, "2007-10-06"), (2, "2025-10-06"))
    ]  # fmt: skip
    ends = [6.0 * plate for plate in range(len(measured) + 1)]
    zones = [{"strakes": ["A"], "allowable": 0.25}]
    return {"readings": rows, "plates": [{"strake": "A", "ends": ends}], "zones": zones}


def test_plates_are_called_by_what_lies_ahead() -> None:
    """At 0.05 mm a year 0.1 mm goes to the docking, 0.25 mm after it; the limit is 7.5 mm, substantial 8.125 mm."""
    found = [(0.0100, 0.0100), (0.0090, 0.0081), (0.0087, 0.0078), (0.0084, 0.0075)]
    assert METHOD.run(survey=survey(*found), **AHEAD) == {
        "gauged": 4.0,
        "now": 1.0,
        "next": 1.0,
        "watch": 1.0,
        "sound": 1.0,
    }
    shell = call_plates(survey(*found), **AHEAD)
    assert [(call.name, call.call) for call in shell.calls] == [
        ("A4 port", "renew now"),
        ("A3 port", "renew at the next docking"),
        ("A2 port", "watch"),
    ]
    assert shell.at_docking[7] == pytest.approx(0.0075 - 0.0009 / 18 * 2, rel=1e-4)


def test_one_plate_alone_comes_to_what_it_comes_to_among_all() -> None:
    shell = call_plates(survey((0.0084, 0.0075), (0.0087, 0.0078)), **AHEAD)
    rows = survey((0.0084, 0.0075), (0.0087, 0.0078))["readings"][2:]
    found = PLATE.run(readings=rows, allowable=0.25, **AHEAD)
    assert found["at_next"] == float(shell.analysis.ahead.at_next[1])
    assert found["rate"] == float(shell.analysis.rate_used[1]) / YEAR
    assert found["call"] == "renew at the next docking"
    assert found["life"] == pytest.approx(6.0 * YEAR, rel=1e-3)


def test_a_plate_gauged_once_takes_the_rate_since_she_was_built() -> None:
    """2 mm in a hundred years."""
    row = {"survey": 1, "date": "2034-01-01", "as_built": 0.010, "measured": 0.008}
    found = PLATE.run(readings=[row], allowable=0.25, docking="2034-01-01", interval=5 * YEAR, built=1934)
    assert found["rate"] * YEAR == pytest.approx(2e-5, rel=1e-3)
    assert "uncertainty" not in found
    bare = PLATE.run(readings=[row], allowable=0.25, docking="2034-01-01", interval=5 * YEAR)
    assert "rate" not in bare
    assert (bare["call"], "life" in bare) == ("watch", False)


def test_a_survey_taken_in_dock_after_the_day_planned_is_carried_on_from_its_own_day() -> None:
    rows = survey((0.0084, 0.0075))["readings"]
    found = PLATE.run(readings=rows, allowable=0.25, docking="2025-09-01", interval=5 * YEAR)
    assert found["at_docking"] == pytest.approx(0.0075)
