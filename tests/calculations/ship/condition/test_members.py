from __future__ import annotations

import pytest

from tenderwright.calculations.ship.members import members_found

from .ship import marram, survey, surveyed


def floor(measured: float, day: str = "2025-10-08") -> str:
    return f",,,forepeak,floor 80,plate,7.9,{measured},{day},gauge,afloat"


def test_a_member_is_told_by_its_latest_survey() -> None:
    plate = "A,31,port,,,plate,11.1,10.2,2025-10-06,g,afloat"
    early, late = survey(floor(6.8, "2007-10-08"), name="old"), survey(plate, floor(5.0), floor(6.5))
    _, record, calculated = surveyed(early, late)
    (of,) = calculated.found(members_found)
    one = of.found
    assert (of.tank, of.member, one.readings, one.state) == ("forepeak", "floor 80", 2, "renew")
    assert [one.least, one.greatest_loss] == pytest.approx([0.005, 2.9 / 7.9])
    assert one.rate == pytest.approx((6.8 - 5.75) * 1e-3 / 18, rel=1e-3)
    assert record.values["member.forepeak.floor-80.renewal-thickness"].si == pytest.approx(0.75 * 7.9e-3)


def test_the_floors_of_the_forepeak_are_the_worst_of_the_ship() -> None:
    _, _, calculated = marram()
    assert [one.tank for one in calculated.found(members_found)[:4]] == ["forepeak"] * 4
