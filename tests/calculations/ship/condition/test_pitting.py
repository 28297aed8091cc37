from __future__ import annotations

import pytest

from .ship import marram, shot, survey, surveyed


def pit(frame: float, left: float, side: str = "port") -> str:
    return f"B,{frame},{side},,,pit,11.1,{left},2025-10-08,pit gauge,afloat"


def test_depth_is_taken_from_the_plate_between_the_pits() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    rows = (shot("B", 34.5, "port", 11.1, 10.0), pit(34.2, 8.0), pit(35.1, 9.0))
    _, record, results = surveyed(survey(*rows), pitted=(stretch,))
    (found,) = results.condition.pits
    assert found.pits == 2
    assert [found.thickness, found.deepest] == pytest.approx([0.010, 0.002])
    assert found.judged.treatment == "fill with epoxy"
    assert record.values["shell.pits.b-port-fr33.remaining"].si == pytest.approx(0.008)


def test_a_pit_of_a_third_of_the_plate_is_welded_and_pits_count_in_no_mean() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    rows = (shot("B", 34.5, "port", 11.1, 10.0), pit(34.2, 6.5))
    _, record, results = surveyed(survey(*rows), pitted=(stretch,))
    assert results.condition.pits[0].judged.treatment == "weld"
    assert record.values["shell.survey.greatest-loss"].si == pytest.approx(1.1 / 11.1)


def test_a_stretch_on_both_sides_is_judged_side_by_side() -> None:
    _, _, results = marram()
    sides = [(one.strake, one.side) for one in results.condition.pits if one.share == pytest.approx(0.04)]
    assert sides == [("B", "port"), ("B", "starboard")]
