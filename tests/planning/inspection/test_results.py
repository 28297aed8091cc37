"""What is open by the papers from the dock: a point until it passed, a row until it is closed and signed twice."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from tenderwright.planning.inspection.ordered import inspected_in_dock
from tenderwright.planning.inspection.results import Inspected, PointResult, RowResult
from tests.pricing.in_dock.sandling import WEEK, compiled, write_docked

BOTH = "yard: Foreman, owner: Ship keeper"


def told(root: Path, entries: str, on: date | None = None) -> Inspected:
    made, owner = compiled(write_docked(root, week_1=WEEK + entries))
    assert [notice.message for notice in owner.notices if notice.severity == "error"] == []
    return inspected_in_dock(made.package, owner.papers, owner.ledger, on)


def point(found: Inspected, name: str) -> PointResult:
    return next(one for one in found.points if one.point.name == name)


def row(found: Inspected, name: str) -> RowResult:
    return next(one for one in found.rows if one.row.name == name)


@pytest.mark.parametrize(
    ("entries", "state"),
    [
        ("", "open"),
        (f"day: 2028-04-08, result: passed, {BOTH}", "passed"),
        ("day: 2028-04-08, result: passed, yard: Foreman", "signed once"),
        ("day: 2028-04-08, result: passed, yard: Foreman, owner: FOREMAN", "signed once"),
        ("day: 2028-04-08, result: passed", "not signed"),
        (f"day: 2028-04-08, result: failed, {BOTH}", "failed"),
        (f"day: 2028-04-08, result: not reached, {BOTH}", "not reached"),
        (f"day: 2028-04-08, result: passed in part, where: port, {BOTH}", "passed in part"),
    ],
)
def test_a_hold_is_open_until_it_passed_and_was_signed_by_both_sides(tmp_path: Path, entries: str, state: str) -> None:
    text = f'inspections:\n  - {{ item: "420", point: H1, {entries} }}\n' if entries else ""
    found = point(told(tmp_path / "s", text), "420 H1")
    assert found.state == state
    assert found.open == (state not in ("passed", "not reached"))


def test_what_failed_at_one_place_stays_failed_until_it_passes_there(tmp_path: Path) -> None:
    failed = 'inspections:\n  - { item: "420", point: H1, where: port, day: 2028-04-07, result: failed }\n'
    whole = f'  - {{ item: "420", point: H1, day: 2028-04-08, result: passed, {BOTH} }}\n'
    again = '  - { item: "420", point: H1, where: port, day: 2028-04-08, result: passed }\n'
    assert point(told(tmp_path / "a", failed + whole), "420 H1").state == "failed"
    assert point(told(tmp_path / "b", failed + whole + again), "420 H1").state == "passed"


def test_a_row_is_open_until_it_is_closed_and_signed_by_two(tmp_path: Path) -> None:
    opened = "openings:\n  - { opening: sea-chest, opened: 2028-04-06 }\n"
    closed = f"  - {{ opening: sea-chest, closed: 2028-04-08, {BOTH} }}\n"
    assert row(told(tmp_path / "a", opened), "sea-chest").state == "open"
    found = told(tmp_path / "b", opened + closed)
    assert row(found, "sea-chest").state == "signed"
    assert row(found, "stern-tube").state == "not seen"


def test_as_of_a_day_nothing_later_counts(tmp_path: Path) -> None:
    entries = f"openings:\n  - {{ opening: sea-chest, opened: 2028-04-06, closed: 2028-04-09, {BOTH} }}\n"
    root = tmp_path / "s"
    assert row(told(root, entries, date(2028, 4, 8)), "sea-chest").state == "open"
    assert row(told(tmp_path / "t", entries, date(2028, 4, 9)), "sea-chest").state == "signed"
    assert not told(tmp_path / "u", entries, date(2028, 4, 5)).in_use


def test_holes_are_rows_of_their_own_and_a_tested_row_waits_for_its_test(tmp_path: Path) -> None:
    entries = (
        "openings:\n"
        f'  - {{ shell: "320", hole: "1", opened: 2028-04-07, closed: 2028-04-08, {BOTH} }}\n'
        '  - { shell: "320", hole: "2", opened: 2028-04-07, closed: 2028-04-08, tested: 2028-04-08, result: passed }\n'
        f'  - {{ shell: "320", hole: "2", {BOTH} }}\n'
    )
    found = [one for one in told(tmp_path / "s", entries).rows if one.row.kind == "shell"]
    assert {one.hole: one.state for one in found} == {"1": "closed, not tested", "2": "signed"}


def test_work_that_is_put_off_asks_for_nothing(tmp_path: Path) -> None:
    put_off = 'deferred:\n  - { work: "420", day: 2028-04-08, why: no money, by: Trustees }\n'
    before, after = told(tmp_path / "a", ""), told(tmp_path / "b", put_off)
    assert not before.in_use
    assert {one.point.item.number for one in before.points} - {one.point.item.number for one in after.points} == {"420"}


@pytest.mark.parametrize(
    ("entry", "message"),
    [
        ('inspections:\n  - { item: "420", point: H9, day: 2028-04-08, result: passed }\n', "item 420 has no point H9"),
        ("openings:\n  - { opened: 2028-04-08 }\n", "names one thing, and this names none"),
        ("openings:\n  - { opening: sea-chest, tank: bilge-oil }\n", "and this names opening and tank"),
        ("openings:\n  - { block: Fr 99 }\n", "the docking plan takes out no keel block at Fr 99"),
        ('openings:\n  - { shell: "210" }\n', "item 210 has no row for its shell"),
        ("openings:\n  - { opening: plug-forepeak }\n", "there is no opening"),
        ('openings:\n  - { opening: sea-chest, hole: "2" }\n', "no item is named that cut it"),
    ],
)
def test_a_name_that_stands_for_nothing_is_told(tmp_path: Path, entry: str, message: str) -> None:
    _, owner = compiled(write_docked(tmp_path / "s", week_1=WEEK + entry))
    (notice,) = [one for one in owner.notices if one.severity == "error"]
    assert message in notice.message
