from __future__ import annotations

import numpy as np
import pytest

from tenderwright.calculations.calculate import calculate
from tenderwright.calculations.ship.condition_of_shell import shell_forecast
from tests.replacing import replace

from .ship import docked, marram, shot, survey, surveyed


def test_the_state_is_told_by_the_latest_survey_and_the_rate_by_all() -> None:
    """Loss 0.6 mm and 1.5 mm eighteen years apart: 0.05 mm a year, known to 0.14 mm over the years."""
    early = survey(shot("A", 20.5, "port", 11.1, 10.5, "2007-09-15"), name="old")
    late = survey(shot("A", 20.5, "port", 11.1, 9.6, "2025-09-15"))
    _, record, calculated = surveyed(late, early)
    shell = calculated.found(shell_forecast)
    assert shell is not None
    assert record.values["shell.survey.latest"].si == 1
    assert record.values["shell.survey.readings"].si == 2
    assert record.values["shell.survey.greatest-loss"].si == pytest.approx(1.5 / 11.1)
    places = shell.analysis.places
    assert places.own[0] == places.rate[0] == pytest.approx(0.9e-3 / 18.0, rel=1e-3)
    assert places.own_uncertainty[0] == pytest.approx(0.1e-3 * 2**0.5 / 18.0, rel=1e-3)
    assert places.uncertainty[0] == pytest.approx(0.1e-3 * 2 / 18.0, rel=1e-3)  # of the spots, and of the gauges


def test_readings_of_plate_renewed_since_are_left_out() -> None:
    early = survey(shot("E", 35.5, "starboard", 9.5, 5.2, "2007-09-15"), name="old")
    late = survey(shot("E", 35.5, "starboard", 10, 9.9), shot("E", 50.5, "starboard", 9.5, 9.0))
    _, record, _ = surveyed(early, late)
    assert record.values["shell.survey.readings"].si == 2
    _, record, _ = surveyed(early, late, renewed=())
    assert record.values["shell.survey.readings"].si == 3


def test_readings_of_plate_renewed_in_an_earlier_dock_are_left_out() -> None:
    """Of strake D the older reading goes, and of those in dock the one that counts from the plate taken out."""
    rows = [
        shot("D", 45.5, "port", 9.5, 6.8),
        shot("D", 45.5, "port", 9.5, 6.5, "2027-05-12"),
        shot("D", 45.5, "port", 10, 10.0, "2027-05-30"),
        shot("D", 45.5, "starboard", 9.5, 8.8),
        shot("D", 50.5, "port", 9.5, 8.9, "2027-05-12"),
    ]
    package, _, _ = marram()
    new = docked(package, "what: plate, strake: D, from: Fr 44, to: Fr 47, side: port, thickness: 10 mm, how: riveted")
    doubler = docked(package, "what: doubler, strake: D, from: Fr 44, to: Fr 47, side: port, how: welded")
    for history, left in (((), 5), ((new,), 3), ((doubler,), 5)):
        _, record, _ = surveyed(survey(*rows), history=history)
        assert record.values["shell.survey.readings"].si == left


def test_the_first_zone_that_fits_gives_the_limit() -> None:
    package, _, calculated = marram()
    shell, condition = calculated.found(shell_forecast), package.condition
    assert shell is not None
    assert condition is not None
    assert package.frames is not None
    names = [condition.zones[index].zone for index in shell.zone.tolist()]
    for row in range(0, len(names), 37):
        strake, x = shell.strakes[int(shell.readings.strake[row])], float(shell.readings.x[row])
        if strake in "AB" and package.frames.x(33) < x < package.frames.x(44):
            assert names[row] == "boiler-room-bottom"
        if strake in "GH":
            assert names[row] == "topside"
            assert shell.allowable[row] == pytest.approx(0.20)


def test_a_reading_in_no_zone_is_told() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    zones = tuple(zone for zone in package.condition.zones if zone.zone != "topside")
    _, record, calculated = surveyed(*package.surveys, zones=zones)
    assert calculated.found(shell_forecast) is None
    assert any("lies in no zone" in notice.message for notice in record.notices)
    assert "shell.survey.readings" in record.failed
    assert "shell.renewal.mass" in record.failed


def test_plates_are_named_by_strake_number_from_aft_and_side() -> None:
    _, record, calculated = marram()
    shell = calculated.found(shell_forecast)
    assert shell is not None
    named = {call.name: call.call for call in shell.calls}
    assert named["C5 port"] == "renew now"
    assert record.values["shell.plates.now"].si == sum(call == "renew now" for call in named.values())
    counted = sum(record.values[f"shell.plates.{name}"].si for name in ("now", "next", "watch", "sound"))
    assert counted == record.values["shell.plates.gauged"].si
    calls = [call.call for call in shell.calls]
    order = ["renew now", "renew now, ahead of its limit", "watch"]
    assert calls == sorted(calls, key=order.index)


def test_the_findings_that_the_items_name_are_in_the_surveys() -> None:
    """Item 335 names 6.5 mm of 9.5 mm at strake C, port, Fr 43; nothing was gauged under the doubler."""
    package, _, calculated = marram()
    shell = calculated.found(shell_forecast)
    assert shell is not None
    assert package.frames is not None
    readings = shell.readings
    of_c = (readings.strake == 2) & (readings.side == 0)
    near = of_c & (np.abs(readings.x - package.frames.x(43)) < 0.6)
    assert readings.measured[near].min() == pytest.approx(0.0065)
    assert readings.as_built[near].max() == pytest.approx(0.0095)
    under = of_c & (readings.x > package.frames.x(38)) & (readings.x < package.frames.x(42))
    assert not under.any()


def test_a_survey_of_members_alone_tells_of_them_and_lacks_the_shell() -> None:
    member = ",,,forepeak,floor 80,plate,7.9,5.0,2025-10-08,gauge,afloat"
    _, record, _ = surveyed(survey(member))
    assert record.missing["shell.survey.readings"] == "it needs readings of shell plate under surveys/"
    assert "member.forepeak.floor-80.mean-loss" in record.values
    assert record.notices == []
    _, record, _ = surveyed(survey(member, shot("Q", 31, "port", 11.1, 10)))
    assert record.failed["shell.survey.readings"] == "no reading of shell plate can be used"
    assert [notice.code for notice in record.notices] == ["bad-survey"]


def test_where_no_row_can_be_used_every_row_is_told() -> None:
    _, record, _ = surveyed(survey(shot("Q", 31, "port", 11.1, 10), shot("A", 31, "left", 11.1, 10)))
    assert "shell.survey.readings" in record.failed
    assert [notice.place.line for notice in record.notices] == [2, 3]


def test_without_strakes_the_surveys_wait_for_them() -> None:
    package, _, _ = marram()
    record = calculate(replace(package, strakes=())).record
    assert record.missing["shell.survey.readings"] == "it needs vessel/strakes.yaml"
    assert not [notice for notice in record.notices if notice.code == "bad-survey"]


def test_without_readings_or_without_the_condition_the_values_are_missing_and_nothing_is_told() -> None:
    package, _, _ = marram()
    for bare in (replace(package, surveys=()), replace(package, condition=None)):
        calculated = calculate(bare)
        record = calculated.record
        assert calculated.found(shell_forecast) is None
        assert "shell.survey.readings" in record.missing
        assert "shell.renewal.mass" in record.missing
        assert "shell.gauging.shots" in record.missing
        assert record.notices == []
