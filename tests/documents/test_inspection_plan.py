"""The inspection plan beside the specification: one home for holds, tests and reports, with the register and sheets."""

from __future__ import annotations

from tenderwright.documents.edition import Edition
from tenderwright.documents.parts.openings_register import openings_register
from tenderwright.planning.inspection.points import points_of
from tenderwright.planning.inspection.register import register_of
from tests.documents.composed import Name, composed, part, rows, tables, targets, words
from tests.replacing import replace

MARRAM: Name = "marram"


def plan(package: Name) -> Edition:
    return composed(package).edition("yard").sheets["inspection-plan"]


def test_each_hold_witness_point_and_test_has_a_row_to_sign() -> None:
    listed = [row for table in tables(part(plan(MARRAM), "inspection-points")) if table.ruled for row in rows(table)]
    points = [one for one in points_of(composed(MARRAM).compiled.package) if one.code != "R"]
    signed = [row for row in listed if len(row) > 1]
    assert sorted(row[0] for row in signed) == sorted(one.name for one in points)
    assert {cell for row in signed for cell in row[4:]} == {""}


def test_reports_stand_by_the_day_they_are_due_under_their_own_numbers() -> None:
    (listed,) = tables(part(plan(MARRAM), "inspection-reports"))
    numbers = [row[0] for row in rows(listed)]
    assert sorted(numbers) == sorted(
        one.name for one in points_of(composed(MARRAM).compiled.package) if one.code == "R"
    )


def test_the_specification_sends_the_reader_there_and_repeats_none_of_it() -> None:
    lists = words(part(composed(MARRAM).edition("yard"), "lists"))
    assert "gathered in the inspection plan" in lists
    assert "Who attends" not in lists
    assert "Reports due" not in lists


def test_the_register_has_a_row_for_each_opening_and_room_for_holes_that_are_cut() -> None:
    listed = [row for table in tables(part(plan(MARRAM), "openings-register")) for row in rows(table)]
    numbered = [row for row in listed if row[0]]
    assert len(numbered) == len(register_of(composed(MARRAM).compiled.package))
    assert len(listed) > len(numbered)
    assert any(row[1].startswith("Docking plug, forepeak") and row[2:4] == ["125", "125 T1"] for row in numbered)


def test_before_flooding_counts_what_the_ship_has() -> None:
    sheet = words(part(plan(MARRAM), "before-flooding"))
    assert "Docking plugs: 6 in place" in sheet
    assert "Anodes: 26 on the list" in sheet
    assert "Planking" not in sheet
    assert "over the first block, circulating discharge covered" in sheet.lower()


def test_a_ship_without_openings_is_told_to_list_them() -> None:
    desk = composed("starter").desk()
    without = replace(desk, package=replace(desk.package, openings=()))
    assert "not listed in the data" in words(tuple(openings_register(without, register_of(without.package))))
    assert "not listed in the data" not in words(part(plan("starter"), "openings-register"))


def test_it_links_to_nothing_outside_itself() -> None:
    edition = plan(MARRAM)
    assert set(targets(edition)) <= {part.anchor for part in edition.parts}
