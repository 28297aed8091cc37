"""The programme is laid out from the order of the items, their phases, the crews, the week and the weather."""

from __future__ import annotations

from datetime import date
from math import isclose

from tenderwright.pipeline import compile_owner, compile_package
from tenderwright.planning.schedule import Schedule, Scheduled
from tenderwright.reading.package import Files
from tests.model.packages import change, told

PATH = "owner/programme.yaml"


def laid(files: Files) -> Schedule:
    side = compile_owner(files, compile_package(files))
    assert [notice for notice in side.notices if notice.severity == "error"] == []
    assert side.schedule is not None
    return side.schedule


def activity(schedule: Schedule, name: str) -> Scheduled:
    return next(one for one in schedule.activities if one.node.name == name)


def why(schedule: Schedule, before: str, after: str) -> str:
    index = schedule.network.index
    links = [one for one in schedule.network.links if (one.before, one.after) == (index[before], index[after])]
    return links[0].why if links else ""


def test_the_order_of_the_items_holds_without_being_written_again(planned: Files) -> None:
    made = laid(planned)
    assert why(made, "wash", "rivet") == "item 320 comes after item 210"
    assert why(made, "rivet", "coat") == "item 420 comes after item 320"
    assert why(made, "coat", "cure") == "after underwater shell, spot blast and coat"
    assert why(made, "rivet", "cure") == ""
    assert why(made, "undock", "wash") == ""


def test_dry_work_lies_between_docking_and_undocking(planned: Files) -> None:
    made = laid(planned)
    docked, afloat = activity(made, "dock").finish, activity(made, "undock").start
    dry = [one for one in made.activities if one.node.phase == "dry"]
    assert dry
    assert all(docked <= one.start and one.finish <= afloat for one in dry)
    assert made.dock_days == activity(made, "undock").finish - docked


def test_she_is_not_docked_before_the_dock_is_booked(planned: Files) -> None:
    made = laid(planned)
    assert activity(made, "dock").begins == date(2028, 4, 5)
    assert why(made, "dock-slot", "dock") == "the dock is booked from this day"


def test_working_days_are_stretched_by_the_week_and_cures_are_not(planned: Files) -> None:
    made = laid(planned)
    wash, cure = activity(made, "wash"), activity(made, "cure")
    assert isclose(wash.finish - wash.start, 7 / 6)
    assert isclose(cure.finish - cure.start, 2)


def test_one_crew_does_one_thing_at_a_time(planned: Files) -> None:
    alone = change(planned, PATH, "activities:", "crews: [{ crew: gang, count: 1 }]\nactivities:")
    alone = change(alone, PATH, 'item: "140", likely: 2 d', 'item: "140", likely: 2 d, crew: gang')
    alone = change(alone, PATH, 'item: "210", likely: 1 d', 'item: "210", likely: 1 d, crew: gang')
    made = laid(alone)
    clean, wash = activity(made, "clean"), activity(made, "wash")
    assert clean.finish <= wash.start or wash.finish <= clean.start
    first, second = ("clean", "wash") if clean.start < wash.start else ("wash", "clean")
    assert why(made, first, second) == "the gang come from there"


def test_the_critical_path_has_no_float_and_reaches_from_arrival_to_redelivery(planned: Files) -> None:
    made = laid(planned)
    critical = [one for one in made.activities if one.critical]
    assert all(abs(one.total_float) < 1e-6 for one in critical)
    assert {"arrival", "redelivery", "rivet", "coat", "cure", "undock"} <= {one.node.name for one in critical}
    assert activity(made, "redelivery").finish == made.yard_days


def test_what_closes_an_item_holds_back_nothing_that_depends_on_it(planned: Files) -> None:
    striking = '  - { activity: strike, item: "210", likely: 1 d, after: [cure] }\n'
    files = change(planned, PATH, "  - { activity: undock", striking + "  - { activity: undock")
    side = compile_owner(files, compile_package(files))
    assert [code for _, code in told(list(side.notices))] == ["cycle"]
    assert side.schedule is None
    made = laid(change(files, PATH, "after: [cure] }", "after: [cure], afterwards: true }"))
    assert activity(made, "strike").start >= activity(made, "cure").finish


def test_a_decision_takes_the_answering_time_of_its_item(planned: Files) -> None:
    files = change(
        planned,
        "items/320-rivets-renew.yaml",
        "lines:",
        "decision: { who: the owner, within: 36 h, on: how many rivets }\nlines:",
    )
    files = change(
        files, PATH, "  - { activity: coat", '  - { activity: gate, item: "320", kind: decision }\n  - { activity: coat'
    )
    decided = activity(laid(files), "gate")
    assert decided.finish - decided.start == 1.5


def test_an_activity_without_days_is_told(planned: Files) -> None:
    files = change(planned, PATH, 'item: "210", likely: 1 d', 'item: "210"')
    side = compile_owner(files, compile_package(files))
    assert [code for _, code in told(list(side.notices))] == ["missing-key"]


def test_there_is_no_schedule_without_a_programme(starter: Files) -> None:
    assert compile_owner(starter, compile_package(starter)).schedule is None
