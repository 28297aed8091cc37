"""Every hold, test and report of the items is a point of the plan, once, and what is held up by a hold is said."""

from __future__ import annotations

from tenderwright.planning.inspection.points import points_of, points_of_item
from tests.documents.composed import composed
from tests.replacing import replace


def test_every_hold_test_and_report_of_the_items_stands_in_it_once() -> None:
    package = composed("marram").compiled.package
    live = [item for item in package.items if not item.withdrawn]
    points = points_of(package)
    assert len(points) == sum(len(item.holds) + len(item.tests) + len(item.reports) for item in live)
    assert len({one.name for one in points}) == len(points)
    assert {one.code for one in points} == {"H", "W", "P", "R"}


def test_a_withdrawn_item_brings_no_point() -> None:
    package = composed("marram").compiled.package
    item = next(one for one in package.items if one.holds and not one.withdrawn)
    without = replace(package, items=tuple(replace(i, withdrawn=i.withdrawn or i is item) for i in package.items))
    left = len(points_of(package)) - len(points_of(without))
    assert left == len(points_of_item(item)) > 0


def test_floating_waits_for_the_holds_of_work_done_dry_and_departure_for_those_after_it() -> None:
    item = next(one for one in composed("marram").compiled.package.items if one.number == "640")
    assert {one.number: one.before for one in points_of_item(item) if one.code in "HW"} == {
        "H1": None,
        "H2": "flooding",
    }
    afloat = replace(item, phase="after undocking")
    assert next(one for one in points_of_item(afloat) if one.code == "H").before == "departure"
    said = replace(item, holds=tuple(replace(hold, release_before="docking") for hold in item.holds))
    assert next(one for one in points_of_item(said) if one.code == "H").before == "docking"
