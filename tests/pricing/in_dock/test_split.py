"""Changes signed in parts, and quantities outside the range within which rates hold: by hand, and at the edges."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.pricing.in_dock.account import account
from tenderwright.pricing.in_dock.outside_range import outside_range
from tenderwright.pricing.in_dock.split import splits

from .sandling import AWARD, ledger_of

HOLDS = "rates_hold: { from: 85 %, to: 115 % }\n"
LAST = date(2028, 4, 30)


def _change(name: str, day: int, rivets: int, by: str = "Ship keeper", item: str = "320") -> str:
    signed = f"by: {by}, signed: 2028-04-{day:02}"
    what = f'line: 320.a, item: "{item}", quantity: {rivets} each, cause: weather, what: rivets'
    return f"  - {{ change: {name}, day: 2028-04-{day:02}, {what}, {signed} }}\n"


@pytest.mark.parametrize(
    ("changes", "found"),
    [
        ([_change("CO-1", 7, 10), _change("CO-2", 9, 10)], []),  # 2000 together is the limit
        ([_change("CO-1", 7, 10), _change("CO-2", 9, 11)], [("CO-1", "CO-2")]),
        ([_change("CO-1", 7, 10), _change("CO-2", 21, 11)], [("CO-1", "CO-2")]),
        ([_change("CO-1", 7, 10), _change("CO-2", 22, 11)], []),  # more than fourteen days apart
        ([_change("CO-1", 7, 10), _change("CO-2", 9, 11, "Trustees")], []),  # who has no limit saw the second
        ([_change("CO-1", 7, 10), _change("CO-2", 9, 11, item="420")], []),  # other work at the same rate
    ],
)
def test_changes_that_pass_a_limit_together(tmp_path: Path, changes: list[str], found: list[tuple[str, ...]]) -> None:
    ledger = ledger_of(tmp_path / "s", week_1=f"until: 2028-04-30\nchanges:\n{''.join(changes)}")
    assert [tuple(change.name for change in one.changes) for one in splits(ledger, LAST)] == found


def test_what_they_come_to_together(tmp_path: Path) -> None:
    """21 rivets at 100."""
    week = f"until: 2028-04-30\nchanges:\n{_change('CO-1', 7, 10)}{_change('CO-2', 9, 11)}"
    (one,) = splits(ledger_of(tmp_path / "s", week_1=week), LAST)
    assert (one.who, one.up_to, one.amount) == ("Ship keeper", Decimal(2000), Decimal(2100))
    assert splits(ledger_of(tmp_path / "t", week_1=week), date(2028, 4, 8)) == ()


@pytest.mark.parametrize(
    ("quantity", "done", "outside"),
    [
        ("57.5 m2", 50, False),  # 115 % of 50 m2
        ("57.6 m2", 50, True),
        ("42.5 m2", 100, False),  # 85 %
        ("42.4 m2", 100, True),
        ("42.4 m2", 99, False),  # the work goes on
    ],
)
def test_a_quantity_outside_the_range(tmp_path: Path, quantity: str, done: int, outside: bool) -> None:
    week = f"until: 2028-04-30\nmeasured:\n  - {{ line: 420.a, quantity: {quantity} }}\n"
    week += f'progress:\n  - {{ item: "420", done: {done} % }}\n'
    ledger = ledger_of(tmp_path / "s", award=AWARD + HOLDS, week_1=week)
    assert [one.line.number for one in outside_range(account(ledger, LAST))] == (["420.a"] if outside else [])


def test_once_she_is_afloat_less_is_final(tmp_path: Path) -> None:
    week = "until: 2028-04-30\ndays: { docked: 2028-04-05, undocked: 2028-04-18 }\nmeasured:\n"
    week += "  - { line: 420.a, quantity: 20 m2 }\n"
    made = account(ledger_of(tmp_path / "s", award=AWARD + HOLDS, week_1=week), LAST)
    (one,) = outside_range(made)
    assert one.share == Decimal("0.4")
    made = account(ledger_of(tmp_path / "t", week_1=week), LAST)
    assert outside_range(made) == (), "the award names no range"
