"""A table of an item is printed as a form: what is known of each row once, and blank cells for the yard."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.edition import Table
from tenderwright.pricing.money import total
from tests.fixtures.wider_format import of_item, wider

from .composed import part, rows, tables, words


def _table(anchor: str) -> Table:
    found = tables(part(wider().yard[0], "item-510"))
    return next(table for table in found if table.anchor == anchor)


def test_the_form_is_ruled_and_says_who_fills_which_column() -> None:
    table = _table("table-510-valves")
    assert table.ruled
    assert [column.title for column in table.columns][4:] == [
        "Make of a new one",
        "Time to get one, week",
        "Wear of the spindle, mm",
    ]
    assert rows(table) == [
        ["Sea chest", "Screw-down angle, bronze", "150 mm", "Fr 18", " ", " ", " "],
        ["Fire pump suction", "Gate, cast iron", "80 mm", "Fr 15", " ", " ", " "],
        ["Bilge injection", "Non-return, cast iron", "–", "Fr 16", " ", " ", " "],
    ]
    said = words(part(wider().yard[0], "item-510"))
    assert "The yard fills “Wear of the spindle” in dock, and hands the table over." in said


def test_each_row_is_a_line_with_its_quantity_and_the_rate_of_its_line_or_its_own() -> None:
    estimate = wider().owner.estimate
    assert estimate is not None
    mine = {line.number: (line.quantity.number, line.rate) for line in estimate.lines if line.item.item == 510}
    assert mine["510.a.sea-chest"] == (Decimal(1), Decimal(700))
    assert mine["510.a.suction-fire"] == (Decimal(1), Decimal("410.25"))
    assert mine["510.b.fire"] == (Decimal(2), Decimal(150))


def test_form_schedule_and_sub_total_hold_the_lines_of_the_rows() -> None:
    edition, form = wider().priced, wider().owners[1]
    measured = next(section for section in form.sections if section.code == "C")
    numbers = [line.number for line in measured.lines]
    rows_of_them = ["510.a.sea-chest", "510.a.suction-fire", "510.a.suction-bilge", "510.b.fire", "510.b.2"]
    assert numbers[-6:] == [*rows_of_them, "510.d"]
    schedule = [row for table in tables(part(edition, "schedule")) for row in rows(table)]
    assert [row[0] for row in schedule if row[0] in numbers] == numbers
    amounts = [Decimal(row[-1].replace(" ", "")) for row in schedule if row[0] in numbers]
    assert any(Decimal(row[-1].replace(" ", "")) == total(amounts) for row in schedule if row[0] == "")


def test_the_table_of_the_form_holds_only_what_is_filled_with_the_tender() -> None:
    (table,) = wider().yard[1].tables
    assert [heading for heading, filled, _ in table.columns if filled] == ["Make of a new one", "Time to get one, week"]
    assert [name for name, _ in table.rows] == [
        "510.valves.sea-chest",
        "510.valves.suction-fire",
        "510.valves.suction-bilge",
    ]


def test_a_tender_without_tables_keeps_its_form() -> None:
    changed = wider(
        of_item(", filled: with the tender }", ", filled: in dock }"), of_item("with the tender", "in dock")
    )
    assert changed.yard[1].tables == ()
    assert changed.yard[1].edition_hash != wider().yard[1].edition_hash
