"""Days that the work is short of: counted and priced by hand."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.planning.in_dock.short import account_on, days_short
from tenderwright.pricing.in_dock.account import RunningAccount
from tenderwright.pricing.in_dock.dock_days import DockDays
from tests.pricing.in_dock.conftest import Docked
from tests.pricing.in_dock.sandling import AWARD, BID, PROGRAMME, WEEK, compiled, write_docked

DOCKED = date(2028, 4, 5)


def _on(docked: Docked, day: int) -> RunningAccount:
    made, owner = docked
    assert [notice.message for notice in owner.notices if notice.severity == "error"] == []
    assert owner.ledger is not None
    return account_on(owner.ledger, date(2028, 4, day), made.package, owner.schedule)


@pytest.mark.parametrize(
    ("tendered", "added", "used", "needed", "short"),
    [
        (14, 0, 5, 9.0, 0),
        (14, 0, 5, 9.2, 1),
        (14, 2, 7, 9.0, 0),
        (14, 0, 7, 9.0, 2),
        (14, 0, 16, None, 2),  # without a programme, the days that she has stood there too long
        (14, 0, 5, None, 0),
    ],
)
def test_days_short_by_hand(tendered: int, added: int, used: int, needed: float | None, short: int) -> None:
    days = DockDays(tendered, added, 0, used, DOCKED, has_docked=True)
    assert days_short(days, needed) == short


@pytest.mark.parametrize(("day", "short"), [(4, 0), (9, 0), (11, 2), (13, 4)])
def test_each_day_short_is_in_the_forecast(docked: Docked, day: int, short: int) -> None:
    """The work left needs 9 days from the ninth, and nobody tells of more: each day after it is short, at 700."""
    made = _on(docked, day)
    if not short:
        assert made.short is None
        return
    assert made.short is not None
    assert made.short.lines == {"110.b": (Decimal(short), Decimal(700 * short))}
    assert made.forecast == Decimal(47651) + 700 * short


def test_lines_that_go_by_the_day_go_on_with_her(tmp_path: Path) -> None:
    """On the eleventh two days are brought and two short, at 700, with a crane at 90: 2 x 790 and 2 x 790."""
    root = write_docked(
        tmp_path / "s",
        programme=PROGRAMME + "day_lines:\n  - { line: 110.d, days: yard days }\n",
        ostrey=BID.replace("  130.a:", "  110.d: { rate: 90 }\n  130.a:"),
        award=AWARD.replace("36760", "38020"),
    )
    item = root / "items" / "110-ship-dock-and-undock.yaml"
    line = "  - { line: d, text: Crane on the dock, price: day, quantity: 14 d, basis: owner's }\n"
    item.write_text(item.read_text("utf-8") + line, "utf-8")
    rates = root / "owner" / "rates.yaml"
    rates.write_text(rates.read_text("utf-8").replace("  160.a:", "  110.d: { rate: 80 }\n  160.a:"), "utf-8")
    made = _on(compiled(root), 11)
    assert made.further is not None
    assert made.short is not None
    assert made.further.lines == {"110.b": (Decimal(2), Decimal(1400)), "110.d": (Decimal(2), Decimal(180))}
    assert made.short.lines == made.further.lines
    assert made.by_item["110"] == Decimal(22000 + 1260 + 500 + 2 * 1580)


def test_days_ordered_beyond_those_brought_are_not_short_again(tmp_path: Path) -> None:
    """Three days are ordered by the line, two of them brought by a report: of the two short, one is left to pay."""
    week = WEEK.replace("line: 110.c, quantity: 1 each", "line: 110.b, quantity: 3 d")
    made = _on(compiled(write_docked(tmp_path / "s", week_1=week)), 11)
    assert made.further is None
    assert made.short is not None
    assert (made.short.days, made.short.amount) == (Decimal(1), Decimal(700))


def test_what_is_measured_is_paid_already(tmp_path: Path) -> None:
    week = WEEK.replace("  - { line: 420.a, quantity: 47.5 m2 }", "  - { line: 110.b, quantity: 4 d }")
    made = _on(compiled(write_docked(tmp_path / "s", week_1=week)), 11)
    assert (made.further, made.short) == (None, None)


def test_once_she_is_afloat_only_the_days_used_too_many_are_short(tmp_path: Path) -> None:
    week = WEEK.replace("dry: 2028-04-05 }", "dry: 2028-04-05, undocked: 2028-04-20 }").replace(
        "until: 2028-04-09", "until: 2028-04-20"
    )
    made = _on(compiled(write_docked(tmp_path / "s", week_1=week)), 20)
    assert made.short is not None
    assert made.short.days == 1
