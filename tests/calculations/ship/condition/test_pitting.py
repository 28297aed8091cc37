from __future__ import annotations

import pytest

from tenderwright.calculations.ship.pitting import pit_stretches, pit_work, pits_judged
from tenderwright.calculations.ship.renewals import shell_renewal

from .ship import marram, shot, survey, surveyed


def pit(frame: float, left: float, side: str = "port") -> str:
    return f"B,{frame},{side},,,pit,11.1,{left},2025-10-08,pit gauge,afloat"


def test_depth_is_taken_from_the_plate_between_the_pits() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    rows = (shot("B", 34.5, "port", 11.1, 10.0), pit(34.2, 8.0), pit(35.1, 9.0))
    _, record, calculated = surveyed(survey(*rows), pitted=(stretch,))
    (judged,) = calculated.found(pits_judged).values()
    assert [pit.left for pit in judged.pits] == pytest.approx([0.008, 0.009])
    assert [pit.depth for pit in judged.pits] == pytest.approx([0.002, 0.001])
    assert judged.thickness == pytest.approx(0.010)
    assert judged.treatment == "fill with epoxy"
    assert record.values["shell.pits.b-port-fr33.remaining"].si == pytest.approx(0.008)


def test_a_pit_of_a_third_of_the_plate_is_welded_and_pits_count_in_no_mean() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    rows = (shot("B", 34.5, "port", 11.1, 10.0), pit(34.2, 6.5))
    _, record, calculated = surveyed(survey(*rows), pitted=(stretch,))
    assert [one.treatment for one in calculated.found(pits_judged).values()] == ["weld"]
    assert record.values["shell.survey.greatest-loss"].si == pytest.approx(1.1 / 11.1)


def test_a_pit_too_thin_to_weld_is_in_the_plate_to_renew() -> None:
    """Every pit that a page calls for an insert lies in an insert, and so in the mass that the item takes."""
    package, record, calculated = marram()
    assert package.frames is not None
    inserts = calculated.found(shell_renewal).inserts
    stretches, judged = calculated.found(pit_stretches), calculated.found(pits_judged)
    deep = [
        (stretches[name], pit) for name, one in judged.items() for pit in one.pits if pit.treatment == "local insert"
    ]
    assert len(deep) > 10
    for stretch, pit in deep:
        assert any(
            one.side == stretch.side and stretch.pitted.strake.name in one.strakes and one.aft <= pit.at <= one.forward
            for one in inserts
        )
    assert record.values["shell.bad.pits"].si >= 1.0


def test_one_deep_pit_in_sound_plate_makes_an_insert_and_nothing_to_weld() -> None:
    package, _, _ = marram()
    assert package.condition is not None
    stretch = next(one for one in package.condition.pitted if one.share.si == pytest.approx(0.12))
    rows = (shot("B", 34.5, "port", 11.1, 10.0), pit(34.2, 5.9), pit(35.1, 8.5))
    _, record, calculated = surveyed(survey(*rows), pitted=(stretch,))
    (one,) = (insert for insert in calculated.found(shell_renewal).inserts if not insert.apart)
    assert (one.strakes, one.side, one.why) == (("B",), "port", ("a pit calls for a local insert",))
    work = calculated.found(pit_work)
    assert (work["inserted"], work["weld"], work["fill"]) == (1.0, 0.0, 1.0)
    assert record.values["shell.bad.next"].si == 0.0


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
