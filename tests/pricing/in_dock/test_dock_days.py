"""Days on blocks: day 1 is that on which she is docked."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from tenderwright.pricing.in_dock.account import account
from tenderwright.pricing.in_dock.dock_days import DockDays, dock_days

from .conftest import Docked
from .sandling import WEEK, compiled, write_docked


def _days(docked: Docked, on: date) -> DockDays:
    made, owner = docked
    assert owner.ledger is not None
    assert made.package.tender is not None
    return dock_days(account(owner.ledger, on), made.package.tender)


@pytest.mark.parametrize(
    ("day", "used", "left"), [(4, 0, 14), (5, 1, 13), (9, 5, 9), (18, 14, 0), (20, 16, -2)], ids=lambda one: str(one)
)
def test_days_used_and_left(docked: Docked, day: int, used: int, left: int) -> None:
    days = _days(docked, date(2028, 4, day))
    assert (days.tendered, days.used, days.left, days.asked) == (14, used, left, 2 if day >= 8 else 0)
    assert days.undocking == date(2028, 4, 19)
    assert days.has_docked is (day >= 5)


def test_days_of_signed_changes_are_added(tmp_path: Path) -> None:
    week = WEEK.replace("    what: rivets\n", "    what: rivets\n    days: 3\n")
    days = _days(compiled(write_docked(tmp_path / "s", week_1=week)), date(2028, 4, 9))
    assert (days.added, days.whole, days.left, days.undocking) == (3, 17, 12, date(2028, 4, 22))


def test_once_she_is_undocked_no_further_day_is_used(tmp_path: Path) -> None:
    week = WEEK.replace("dry: 2028-04-05 }", "dry: 2028-04-05, undocked: 2028-04-09 }")
    docked = compiled(write_docked(tmp_path / "s", week_1=week))
    assert (_days(docked, date(2028, 4, 8)).used, _days(docked, date(2028, 4, 8)).undocked) == (4, None)
    after = _days(docked, date(2028, 5, 1))
    assert (after.used, after.undocked, after.undocking) == (4, date(2028, 4, 9), date(2028, 4, 9))
