from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from tenderwright.model.day import Day
from tenderwright.model.item import Item, OwnerFurnished
from tenderwright.model.item_points import Report
from tenderwright.model.package import Package
from tenderwright.notices import Place
from tenderwright.planning.due import deliveries_due, reports_due
from tenderwright.quantities.quantity import parse_quantity
from tenderwright.starter.write import write_starter
from tests.model.packages import load, read
from tests.replacing import replace

HERE = Place("items/x.yaml")


@pytest.fixture
def package(tmp_path: Path) -> Package:
    write_starter(tmp_path)
    return load(read(tmp_path))[0]


def with_reports(package: Package, *due: str) -> Package:
    reports = tuple(Report(report=f"Report {text}", due=Day.read(text), here=HERE) for text in due)
    return replace(package, items=(replace(package.items[0], reports=reports),))


def test_reports_stand_in_the_order_of_the_calendar(package: Package) -> None:
    made = with_reports(package, "undocking - 1 d", "2028-04-10", "docking + 3 d", "arrival")
    assert [(due.day.text, due.date) for due in reports_due(made)] == [
        ("arrival", date(2028, 4, 3)),
        ("docking + 3 d", date(2028, 4, 8)),
        ("2028-04-10", date(2028, 4, 10)),
        ("undocking - 1 d", date(2028, 4, 18)),
    ]


def test_what_has_no_date_yet_stands_last(package: Package) -> None:
    assert package.tender is not None
    tender = replace(package.tender, dates=replace(package.tender.dates, award=None))
    due = reports_due(replace(with_reports(package, "award + 1 d", "docking"), tender=tender))
    assert [(one.day.text, one.date is None) for one in due] == [("docking", False), ("award + 1 d", True)]


def test_without_a_programme_nothing_is_dated(package: Package) -> None:
    due = reports_due(replace(with_reports(package, "docking", "2028-04-10"), tender=None))
    assert [one.date for one in due] == [date(2028, 4, 10), None]


def test_a_withdrawn_item_has_nothing_due(package: Package) -> None:
    made = with_reports(package, "docking")
    assert reports_due(replace(made, items=(replace(made.items[0], withdrawn=True),))) == []


def test_deliveries_say_how_much_and_where(package: Package) -> None:
    def furnished(what: str, day: str | None, where: str) -> OwnerFurnished:
        return OwnerFurnished(
            what=what,
            quantity=parse_quantity("60 L", "any"),
            here=HERE,
            delivered=Day.read(day) if day else None,
            where=where,
        )

    entries = (
        furnished("Paint", "arrival", "yard store"),
        furnished("Anodes", "award + 14 d", ""),
        furnished("Wood", None, ""),
    )
    item: Item = replace(package.items[0], owner_furnished=entries)
    due = deliveries_due(replace(package, items=(item,)))
    assert [(one.what, one.date, one.more) for one in due] == [
        ("Anodes", date(2028, 2, 14), "60 L"),
        ("Paint", date(2028, 4, 3), "60 L; yard store"),
    ]
