from __future__ import annotations

import pytest

from tenderwright.calculations.ship.pitting import pit_stretches, pits_judged

from .ship import marram, shot, survey, surveyed


def pit(frame: float, left: float, side: str = "port") -> str:
    return f"B,{frame},{side},,,pit,11.1,{left},2025-10-08,pit gauge,afloat"


def test_depth_is_taken_from_the_plate_between_the_pits() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    rows = (shot("B", 34.5, "port", 11.1, 10.0), pit(34.2, 8.0), pit(35.1, 9.0))
    _, record, calculated = surveyed(survey(*rows), pitted=(stretch,))
    (found,) = calculated.found(pit_stretches).values()
    (judged,) = calculated.found(pits_judged).values()
    assert found.pits == 2
    assert [found.thickness, found.depths[0]] == pytest.approx([0.010, 0.002])
    assert judged["treatment"] == "fill with epoxy"
    assert record.values["shell.pits.b-port-fr33.remaining"].si == pytest.approx(0.008)


def test_a_pit_of_a_third_of_the_plate_is_welded_and_pits_count_in_no_mean() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    rows = (shot("B", 34.5, "port", 11.1, 10.0), pit(34.2, 6.5))
    _, record, calculated = surveyed(survey(*rows), pitted=(stretch,))
    assert [one["treatment"] for one in calculated.found(pits_judged).values()] == ["weld"]
    assert record.values["shell.survey.greatest-loss"].si == pytest.approx(1.1 / 11.1)


def test_a_stretch_on_both_sides_is_judged_side_by_side() -> None:
    _, _, calculated = marram()
    found = calculated.found(pit_stretches).values()
    sides = [(one.pitted.strake.name, one.side) for one in found if one.pitted.share.si == pytest.approx(0.04)]
    assert sides == [("B", "port"), ("B", "starboard")]


def test_a_stretch_of_which_no_pit_was_gauged_is_told_as_missing() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    _, record, _ = surveyed(survey(shot("B", 34.5, "port", 11.1, 10.0)), pitted=(stretch,))
    assert "it needs pits gauged on strake B, port" in record.missing["shell.pits.b-port-fr33.remaining"]
    assert record.notices == []


def test_two_stretches_that_begin_at_one_place_are_both_judged() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    _, record, _ = surveyed(survey(shot("B", 34.5, "port", 11.1, 10.0), pit(34.2, 8.0)), pitted=(stretch, stretch))
    assert {"shell.pits.b-port-fr33.remaining", "shell.pits.b-port-fr33-2.remaining"} <= set(record.values)
