"""The owner's figures as CSV agree with what is printed."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.edition import DataTable
from tenderwright.documents.owner.tables import owner_tables
from tenderwright.writing.csv_table import csv_table
from tests.documents.composed import composed
from tests.replacing import replace

from .seen import foreseen_desk, starter_desk
from .test_estimate import estimate


def columns(table: DataTable, *names: str) -> list[tuple[object, ...]]:
    places = [table.header.index(name) for name in names]
    return [tuple(row[place] for place in places) for row in table.rows]


def test_every_table_is_as_wide_as_its_header_and_can_be_written() -> None:
    for table in composed("marram").edition("owner").tables.values():
        assert len(set(table.header)) == len(table.header)
        assert csv_table(table.header, table.rows).startswith(table.header[0].encode())


def test_the_lines_of_the_estimate_add_up_and_rate_times_quantity_is_the_amount() -> None:
    table = composed("marram").edition("owner").tables["estimate"]
    likely = columns(table, "likely")
    assert sum(Decimal(str(one)) for (one,) in likely) == estimate("marram").everything
    by_line = {row[0]: row[1:] for row in columns(table, "line", "quantity", "rate", "likely", "class")}
    assert by_line["315.a"] == (Decimal("260"), Decimal("98"), Decimal("25480.00"), 3)
    assert by_line["930.a"][3] is None


def test_the_levels_hold_the_sum_of_likely_at_its_share() -> None:
    desk = foreseen_desk()
    assert desk.foresight is not None
    cost, time = desk.foresight.outlook.cost, desk.foresight.outlook.time
    assert time is not None
    rows = {row[0]: row[1:] for row in owner_tables(desk)["cost-risk"].rows}
    assert rows["sum of likely"][:2] == (Decimal(f"{cost.point_at:.5f}"), cost.point)
    assert rows["P80"][:2] == (Decimal("0.80"), cost.at(0.80))
    assert rows["P80"][2] == Decimal(f"{time.dock[0.8]:.2f}")
    assert rows["mean"][1] == cost.mean


def test_the_activities_of_the_programme_are_all_there() -> None:
    desk = foreseen_desk()
    assert desk.foresight is not None
    assert desk.foresight.schedule is not None
    table = owner_tables(desk)["programme"]
    rows = {row[0]: row[1:] for row in columns(table, "activity", "low_days", "high_days", "critical", "waits_for")}
    assert set(rows) == {one.node.name for one in desk.foresight.schedule.activities}
    assert rows["rivet"][:2] == (Decimal("1.000"), Decimal("6.000"))
    assert {row[2] for row in rows.values()} == {"yes", "no"}


def test_what_there_are_no_figures_for_is_left_out() -> None:
    assert set(owner_tables(foreseen_desk())) == {"estimate", "cost-risk", "programme"}
    assert set(owner_tables(starter_desk())) == {"estimate", "cost-risk"}
    assert set(owner_tables(replace(starter_desk(), foresight=None))) == {"estimate"}
    assert dict(composed("marram").edition("yard").tables) == {}
