from __future__ import annotations

from typing import Any

import pytest

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.plate_forecast import METHOD as PLATE
from tenderwright.calculations.thickness.shell_forecast import METHOD, call_plates

YEAR = 365.25 * 86400.0
FRAMES = [6.0 * plate for plate in range(5)]
AHEAD: dict[str, Any] = {"frames": FRAMES, "docking": "2027-10-06", "interval": 5 * YEAR}


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
        ("A3 port", "renew now, ahead of its limit"),
        ("A2 port", "watch"),
    ]
    assert shell.at_docking[7] == pytest.approx(0.0075 - 0.0009 / 18 * 2, rel=1e-3)


def test_a_place_alone_comes_to_what_it_comes_to_among_all() -> None:
    """Five spaces of one zone at other rates: the decisive reading of a plate, by the printed figures of its zone."""
    pairs = [(0.0100, 0.0094), (0.0100, 0.0091), (0.0090, 0.0078), (0.0100, 0.0096)]
    shell = call_plates(survey(*pairs), **AHEAD)
    found, zone = shell.analysis, shell.analysis.zones[0]
    row = next(call.row for call in shell.calls if call.name == "A3 port")
    place = int(found.governing[row])
    near = {name: getattr(zone.neighbours, name) / YEAR for name in ("rate", "uncertainty", "spread")}
    alone = PLATE.run(
        as_built=0.010,
        least=0.0078,
        allowable=0.25,
        to_docking=(shell.outlook.docking - float(shell.readings.year[found.places.row[place]])) * YEAR,
        interval=5 * YEAR,
        own=float(found.places.own[place]) / YEAR,
        own_uncertainty=float(found.places.own_uncertainty[place]) / YEAR,
        neighbours={**near, "places": zone.neighbours.places},
        shared=zone.shared / YEAR,
    )
    assert alone["rate"] * YEAR == pytest.approx(float(found.places.rate[place]))
    assert alone["uncertainty"] * YEAR == pytest.approx(float(found.places.uncertainty[place]))
    assert alone["at_next"] == pytest.approx(float(found.places.ahead.at_next[place]))
    assert alone["least_at_next"] == pytest.approx(float(found.places.ahead.least_at_next[place]))
    assert alone["call"] == "renew now, ahead of its limit"
    assert 0.0 < alone["drawn"] < 1.0


PLACE: dict[str, Any] = {"as_built": 0.010, "least": 0.0078, "allowable": 0.25, "to_docking": 0.0, "interval": 5 * YEAR}


def test_a_place_without_neighbours_goes_by_itself_and_one_without_a_rate_is_watched() -> None:
    alone = PLATE.run(**PLACE, own=5e-5 / YEAR, own_uncertainty=1e-5 / YEAR)
    assert alone["rate"] * YEAR == pytest.approx(5e-5)
    assert (alone["drawn"], alone["life"]) == (0.0, pytest.approx(6.0 * YEAR))
    bare = PLATE.run(**PLACE)
    assert (bare["call"], "rate" in bare, "life" in bare) == ("watch", False, False)
    with pytest.raises(OutOfRange, match="uncertainty"):
        PLATE.run(**PLACE, own=5e-5 / YEAR)


def test_a_zone_gauged_once_takes_the_rate_since_she_was_built() -> None:
    """2 mm in a hundred years."""
    row = {"survey": 1, "date": "2034-01-01", "strake": "A", "side": "port", "at": 3.0}
    rows = [{**row, "as_built": 0.010, "measured": 0.008}]
    data = {**survey((0.01, 0.01)), "readings": rows}
    ahead = {"frames": FRAMES, "docking": "2034-01-01", "interval": 5 * YEAR}
    places = call_plates(data, **ahead, built=1934).analysis.places
    assert places.rate == pytest.approx([2e-5], rel=1e-3)
    assert places.since_built.all()
    assert [call.call for call in call_plates(data, **ahead).calls] == ["watch"]


def test_a_survey_taken_in_dock_after_the_day_planned_is_carried_on_from_its_own_day() -> None:
    data = survey((0.0084, 0.0075))
    shell = call_plates(data, frames=FRAMES, docking="2025-09-01", interval=5 * YEAR)
    assert shell.at_docking[1] == pytest.approx(0.0075)
