"""The balance of the hours pool, and the change that overdraws it."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

from tenderwright.pricing.in_dock.account import account
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.pricing.in_dock.pool import overdrawn, pool_balances

from .sandling import WEEK, ledger_of


def test_what_is_ordered_and_asked_is_set_against_what_was_tendered(tmp_path: Path) -> None:
    week = WEEK.replace("    amount: 1900\n", "    line: 160.a\n    hours: 9 h\n    materials: 80\n").replace(
        "line: 110.c, quantity: 1 each", "line: 160.a, hours: 33 h"
    )
    found = pool_balances(account(ledger_of(tmp_path / "s", week_1=week), date(2028, 4, 9)))
    assert {one.line.number: [str(n) for n in (one.tendered, one.ordered, one.asked, one.left)] for one in found} == {
        "160.a": ["60", "20", "42", "40"],
        "160.b": ["2000", "300.00", "80.00", "1700.00"],
    }


def test_nothing_is_overdrawn_by_as_many_hours_as_there_are(tmp_path: Path) -> None:
    week = WEEK.replace("hours: 20 h", "hours: 60 h").replace("by: Ship keeper", "by: Trustees")
    assert list(overdrawn(ledger_of(tmp_path / "s", week_1=week))) == []


def test_the_change_that_overdraws_is_the_first_in_order_of_days(tmp_path: Path) -> None:
    week = WEEK.replace("line: 110.c, quantity: 1 each", "line: 160.a, hours: 40.5 h")
    ((change, line, drawn),) = overdrawn(ledger_of(tmp_path / "s", week_1=week))
    assert (change.name, line.number, drawn) == ("CO-03", "160.a", Decimal("60.5"))


def test_a_contract_without_a_pool_has_no_balance(ledger: Ledger) -> None:
    made = account(ledger, date(2028, 4, 5))
    assert {one.ordered for one in pool_balances(made)} == {Decimal(0)}
