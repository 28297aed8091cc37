"""The care plan, the page for the wheelhouse and the calendar, of the starter and of the demonstration."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from tenderwright.calculations.ship.coming_out import coming_out_again, coming_out_as_she_is
from tenderwright.comparing.data import package_data
from tenderwright.documents.edition import Edition
from tenderwright.planning.care.once import next_planned, once, put_off
from tenderwright.planning.care.plan import care_tasks
from tenderwright.planning.care.reserve import mean_rise, reserved
from tenderwright.starter.following.sources import goes_along
from tests.documents.composed import Composed, changed, composed, words

PLAN = """begins: 2026-01-05
tasks:
  - { task: bilge, every: 1 week, because: nobody lives aboard }
  - { task: humidity, left_out: no dry spaces }
  - { task: capstan, what: Turn the capstan, every: 26 weeks }
coatings:
  - { zone: underwater, lasts: 6 yr ± 1 yr, source: the maker }
storm: lines doubled from 17 m/s
"""
HEAD = "date,kind,place,value,unit,method,remark\n"


def laid(plan: str = PLAN, readings: str = "", condition: str = "") -> Composed:
    def lay(root: Path) -> None:
        (root / "care").mkdir()
        (root / "care" / "plan.yaml").write_text(plan, "utf-8")
        (root / "care" / "log.csv").write_text(HEAD + readings, "utf-8")
        if condition:
            (root / "vessel" / "condition.yaml").write_text(condition, "utf-8")

    return changed(lay)


@cache
def kept() -> Composed:
    return laid(readings="2026-03-01,diver,whole bottom,,,,\n2026-03-02,other,capstan,,,,\n")


def told(sheet: Edition) -> str:
    return " ".join(words(part) for part in sheet.parts)


def test_without_a_care_plan_there_is_no_paper_of_it() -> None:
    sheets = composed("starter").edition("owner").sheets
    assert not {"care-plan", "wheelhouse"} & sheets.keys()


def test_the_owners_own_tasks_stand_beside_the_usual_ones() -> None:
    tasks = {one.task: one for one in care_tasks(kept().compiled.package, kept().compiled.calculated)}
    assert (tasks["bilge"].often, tasks["bilge"].source) == ("weekly", "nobody lives aboard")
    assert tasks["humidity"].left_out == "no dry spaces"
    assert (tasks["capstan"].last, tasks["capstan"].due) == (date(2026, 3, 2), date(2026, 8, 31))
    assert (tasks["diver"].last, tasks["diver"].due) == (date(2026, 3, 1), date(2027, 3, 1))
    assert (tasks["alarms"].last, tasks["alarms"].due) == (None, date(2026, 1, 5))


def test_the_page_on_the_wall_is_no_secret_and_names_nobody_but_offices() -> None:
    sheet = kept().edition("owner").sheets["wheelhouse"]
    assert not sheet.confidential
    assert sheet.audience == "public"
    text = told(sheet)
    assert "lines doubled from 17 m/s" in text
    assert "Ship manager" in text
    assert "no dry spaces" not in text


def test_the_calendar_has_each_task_once_under_a_name_of_its_own() -> None:
    calendar = kept().edition("owner").sheets["care-plan"].calendar
    assert calendar is not None
    uids = [one.uid for one in calendar.events]
    assert len(uids) == len(set(uids))
    assert "capstan@sandling.care" in uids
    assert "humidity@sandling.care" not in uids


def test_what_is_not_known_is_said_where_its_answer_would_stand() -> None:
    text = told(kept().edition("owner").sheets["care-plan"])
    assert "Not calculated: " in text
    assert "care/ has no readings of kind `potential`" in text


def test_a_leak_moves_the_day_on_which_she_should_come_out() -> None:
    still, growing = (
        laid(readings="".join(f"2026-0{month}-01,leak,bilge,{made},L,,\n" for month, made in enumerate(of, start=1)))
        for of in ((20, 20, 20, 20, 20), (20, 24, 29, 34, 38))
    )
    found = still.compiled.calculated.found(coming_out_as_she_is)
    assert found is None or "water in bilge" not in [one.ground for one in found.grounds]
    moved = growing.found(coming_out_as_she_is)
    assert moved.governs.ground == "water in bilge"
    assert moved.governs.early < "2026-07-01"
    assert [one.code for one in growing.compiled.notices if one.code == "leak-doubled"] == []


def test_marram_comes_out_again_by_what_is_gauged_and_not_by_the_interval_alone() -> None:
    again = composed("marram").found(coming_out_again)
    assert again.planned == "2032-05-05"
    assert {"the owner's interval", "anode P4 used up"} < {one.ground for one in again.grounds}
    assert [one.early for one in again.grounds] == sorted(one.early for one in again.grounds)
    now = composed("marram").found(coming_out_as_she_is)
    assert now.planned == "2027-05-05"
    assert not any(one.ground.startswith("coating") for one in now.grounds), "the coats to come have not begun"


def test_marrams_paper_is_short_and_says_what_waits_and_what_is_set_aside() -> None:
    sheet = composed("marram").edition("owner").sheets["care-plan"]
    text = told(sheet)
    assert sheet.confidential
    for wanted in (
        "What waits, and for what",
        "no riveting gang within the time on blocks",
        "Set aside each year",
        "P80",
    ):
        assert wanted in text
    package = composed("marram").compiled.package
    assert {one.source for one in put_off(package, None)} > {"put off in the docking of 2007", "register of leaks"}
    days = [one.day for one in once(package, composed("marram").compiled.calculated)]
    assert days[-1] == next_planned(package) == date(2032, 5, 5)


def test_what_is_set_aside_comes_to_the_cost() -> None:
    owner = composed("marram").owner.papers
    costs = {0.50: 1_000_000, 0.80: 1_200_000}
    found = reserved(owner, {level: Decimal(cost) for level, cost in costs.items()}, date(2027, 5, 5), date(2032, 5, 5))
    assert not isinstance(found, str)
    low = found.levels[0.50]
    assert low.today == Decimal("450000.00")
    assert [year for year, _ in low.years] == [2028, 2029, 2030, 2031, 2032]
    assert float(low.years[-1][1]) == pytest.approx(float(low.then), abs=0.02)
    assert owner.indices is not None
    assert mean_rise(owner.indices.indices[0]) == pytest.approx((154.1 / 88.1) ** (1 / 20.5) - 1)


def test_no_yard_reads_of_it_and_no_addendum_tells_of_it() -> None:
    yards, plain_yards = kept().edition("yard"), composed("starter").edition("yard")
    assert [words(part) for part in yards.parts] == [words(part) for part in plain_yards.parts]
    assert not [path for path in package_data(kept().compiled.files) if path.startswith("care/")]
    assert goes_along("care/log.csv"), "the next tender keeps what was read"
    assert goes_along("owner/reserve.yaml")


@pytest.mark.parametrize(("done", "found"), [("", True), ("2026-02-15,action,aft,,,,bonded anew\n", False)])
def test_a_change_that_something_done_explains_is_not_looked_into(done: str, found: bool) -> None:
    read = f"2026-01-01,potential,aft,-0.90,V,silver,\n{done}2026-03-01,potential,aft,-1.00,V,silver,\n"
    assert ("find the cause" in told(laid(readings=read).edition("owner").sheets["care-plan"])) is found
