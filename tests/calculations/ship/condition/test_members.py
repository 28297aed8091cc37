from __future__ import annotations

import pytest

from tenderwright.calculations.ship.members import members_found

from .ship import docked, marram, survey, surveyed


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


def test_a_member_renewed_since_is_told_by_its_new_readings_alone() -> None:
    """The floor at Fr 80 was renewed, that at Fr 82 was not, and frames of the same place are other steel."""
    rows = [floor(5.0), floor(5.0).replace("floor 80", "floor 82"), floor(5.0).replace("floor 80", "frame 80")]
    package, _, _ = marram()
    history = (docked(package, "what: floor, tank: forepeak, from: Fr 79, to: Fr 81, how: welded, thickness: 8 mm"),)
    _, _, calculated = surveyed(survey(*rows), history=history)
    assert {one.member for one in calculated.found(members_found)} == {"floor 82", "frame 80"}
    new = floor(8.0, "2027-05-30").replace("7.9", "8.0", 1)
    _, _, calculated = surveyed(survey(*rows, new), history=history)
    (found,) = [one.found for one in calculated.found(members_found) if one.member == "floor 80"]
    assert (found.readings, found.least) == (1, pytest.approx(0.008))


def test_the_floors_of_the_forepeak_are_the_worst_of_the_ship() -> None:
    _, _, calculated = marram()
    assert [one.tank for one in calculated.found(members_found)[:4]] == ["forepeak"] * 4
