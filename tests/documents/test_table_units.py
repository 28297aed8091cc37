"""Every column of figures in a table for spreadsheets says its unit: in its name, or in a column beside it."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tenderwright.documents.bid_report import evaluated_table, lines_table
from tenderwright.documents.edition import DataTable
from tenderwright.documents.owner.tables import owner_tables
from tests.documents.parts_owner.seen import foreseen_desk
from tests.fixtures.returned_bids import compared_bids

_IN_THE_NAME = ("_day", "days_", "_EUR", "_points", "share_of_", "times_", "class", "rung")


def _tables() -> dict[str, DataTable]:
    _, found = compared_bids()
    return {"lines": lines_table(found), "evaluated": evaluated_table(found), **owner_tables(foreseen_desk())}


@pytest.mark.parametrize("name", ["lines", "evaluated", "estimate", "cost-risk", "programme"])
def test_figures_say_their_unit(name: str) -> None:
    table = _tables()[name]
    figures = [head for at, head in enumerate(table.header) if any(isinstance(row[at], Decimal) for row in table.rows)]
    assert figures
    for head in figures:
        if any(part in head for part in _IN_THE_NAME):
            continue
        beside = ("rates_in",) if "rate" in head else ("unit",) if "quantity" in head else ("amounts_in", "currency")
        (unit,) = [table.header.index(one) for one in table.header if one in beside]
        at = table.header.index(head)
        assert all(row[unit] for row in table.rows if row[at] is not None), head
