"""The owner's copy of the inspection plan: by day of the programme, with what is released and what is open."""

from __future__ import annotations

from tenderwright.documents.edition import Edition
from tenderwright.planning.inspection.ordered import inspected_in_dock
from tests.documents.composed import composed, part, rows, tables, words


def plan() -> Edition:
    return composed("marram").edition("owner").sheets["inspection-plan"]


def test_it_stands_by_day_and_says_how_each_point_is() -> None:
    (listed,) = [one for one in tables(part(plan(), "inspections-by-day")) if one.columns[0].title == "Point"]
    by_name = {row[0]: row for row in rows(listed) if len(row) > 1}
    assert by_name["110 H2"][-1] == "Passed 5 May; 0.2 deg; yard Dockmaster, owner Ship manager"
    assert by_name["410 H1"][-1].startswith("Failed 15 May; panel 6")
    assert "again 17 May" in by_name["410 H1"][-1]
    assert by_name["770 H1"][-1] == "open"
    days = [row[0] for row in rows(listed) if len(row) == 1]
    assert days[0] == "3 May 2027"
    assert len(days) == len(set(days)), "what failed stands under the day set for it, and each day once"


def test_the_register_says_what_is_out_and_who_signed() -> None:
    (listed,) = tables(part(plan(), "register-now"))
    by_what = {row[1]: row for row in rows(listed)}
    drawn = next(row for what, row in by_what.items() if what.startswith("Docking plug, double bottom 1 starboard"))
    assert drawn[3:6] == ["7 May", "–", "–"]
    assert "6: 6 drawn, 0 back in place" in words(plan())
    gauged = next(row for what, row in by_what.items() if "item 220" in what)
    assert gauged[6:] == ["Hull foreman", "Ship manager", "signed"]


def test_it_counts_what_floating_waits_for() -> None:
    made = composed("marram")
    found = inspected_in_dock(made.compiled.package, made.owner.papers, made.owner.ledger)
    waiting = len(found.keeping_from("docking", "flooding"))
    assert waiting > 0
    assert f"{waiting} holds and rows are open" in words(plan())
    assert "Approvals open until then\n2 conditions" in words(plan())


def test_before_she_is_in_dock_it_says_where_results_are_written() -> None:
    shown = words(composed("starter").edition("owner").sheets["inspection-plan"])
    assert "No result is recorded yet" in shown
    assert "owner/programme.yaml would give them" in shown
