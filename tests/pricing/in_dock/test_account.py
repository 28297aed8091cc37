"""The running account by hand, day by day."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.pricing.in_dock.account import RunningAccount, account
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.pricing.money import total

from .sandling import AWARD, WEEK, ledger_of


def _money(*amounts: int) -> tuple[Decimal, ...]:
    return tuple(map(Decimal, amounts))


def _on(ledger: Ledger, day: int) -> RunningAccount:
    return account(ledger, date(2028, 4, day))


def test_the_last_day_by_hand(ledger: Ledger) -> None:
    """36760 + 48 x 100 + (20 x 55 + 300 x 1.12) + (47.5 x 90 - 4500) = 42771; 500 + 1900 + 1080 + 2 x 700 wait."""
    made = _on(ledger, 9)
    assert (made.contract, made.changes, made.remeasured, made.left_out) == _money(36760, 6236, -225, 0)
    assert made.ordered == Decimal("42771.00")
    assert (made.to_be_signed, made.to_be_answered) == _money(500, 2980)
    assert made.unpriced == 0
    assert made.further is not None
    assert (made.further.days, made.further.amount) == _money(2, 1400)
    assert made.further.lines == {"110.b": (Decimal(2), Decimal(1400))}
    assert made.short is None
    assert made.forecast == Decimal("47651.00")
    assert made.contingency_left == Decimal("1109.00"), "12000 - (47651 - 36760)"
    assert [(row.cause, row.changes, row.amount) for row in made.causes] == [
        ("condition found", 1, Decimal(4800)),
        ("owner's change", 1, Decimal(1436)),
    ]


@pytest.mark.parametrize(
    ("day", "ordered", "waiting", "forecast"),
    [(5, 36760, [], 36760), (6, 36760, ["CF-01"], 41560), (7, 41560, [], 41560)],
)
def test_an_earlier_day_knows_only_what_had_come_by_then(
    ledger: Ledger, day: int, ordered: int, waiting: list[str], forecast: int
) -> None:
    made = _on(ledger, day)
    assert (made.ordered, made.forecast) == _money(ordered, forecast)
    assert [one.name for one in made.waiting] == waiting


def test_the_forecast_is_shared_out_by_item(ledger: Ledger) -> None:
    """Hours of the pool stand with the item of their line, since no report names another."""
    made = _on(ledger, 9)
    assert {item: amount for item, amount in made.by_item.items() if amount} == {
        "110": Decimal(22000 + 500 + 1400),
        "130": Decimal(3260),
        "140": Decimal(4000),
        "160": Decimal(1436),
        "210": Decimal(3000),
        "320": Decimal(4800 + 1900),
        "420": Decimal(4500 - 225 + 1080),
    }
    assert total(list(made.by_item.values())) == made.forecast


def test_a_measure_stands_for_the_changes_by_the_rate_before_it(tmp_path: Path) -> None:
    """48 rivets are ordered and 52 measured: 4 more at 100; 3 ordered after it come on top."""
    week = WEEK.replace(
        "  - { line: 420.a, quantity: 47.5 m2 }", "  - { line: 320.a, quantity: 52 each, day: 2028-04-08 }"
    ).replace(
        "  - { change: CO-03, day: 2028-04-09, line: 110.c, quantity: 1 each,",
        "  - { change: CO-03, day: 2028-04-09, line: 320.a, quantity: 3 each, by: Trustees, signed: 2028-04-09,",
    )
    made = _on(ledger_of(tmp_path / "s", week_1=week), 9)
    row = next(row for row in made.lines if row.line.number == "320.a")
    assert (row.changes, row.remeasured, row.final) == _money(5100, 400, 5500)


def test_left_out_work_is_taken_off_with_what_is_paid_for_it_added_once(tmp_path: Path) -> None:
    """Item 130 is 1760 + 1500; 250 is paid for hoses bought already."""
    out = 'deleted:\n  - { work: "130", day: 2028-04-06, why: no hot work, by: Trustees, paid: 250 }\n'
    ledger = ledger_of(tmp_path / "s", week_1=WEEK + out)
    assert _on(ledger, 5).left_out == 0
    assert _on(ledger, 6).left_out == Decimal(-3010)
    assert set(ledger.out(date(2028, 4, 6))) == {"130.a", "130.b"}


def test_a_report_that_is_rejected_or_answered_by_a_change_no_longer_waits(tmp_path: Path) -> None:
    rejected = WEEK.replace("    amount: 1900\n", "    amount: 1900\n    decision: rejected\n    decided: 2028-04-09\n")
    made = _on(ledger_of(tmp_path / "s", week_1=rejected), 9)
    assert [one.name for one in made.waiting] == ["CF-03"]
    assert made.further is None


def test_an_accepted_report_without_its_change_still_counts(tmp_path: Path) -> None:
    accepted = WEEK.replace("    amount: 1900\n", "    amount: 1900\n    decision: accepted\n    decided: 2028-04-09\n")
    made = _on(ledger_of(tmp_path / "s", week_1=accepted), 9)
    assert [one.name for one in made.waiting] == ["CF-02", "CF-03"]
    assert made.forecast == Decimal("47651.00")


def test_days_that_are_ordered_are_not_counted_twice(tmp_path: Path) -> None:
    """Two days are asked, and two are ordered by the line for further days: nothing more comes."""
    week = WEEK.replace("line: 110.c, quantity: 1 each", "line: 110.b, quantity: 2 d")
    made = _on(ledger_of(tmp_path / "s", week_1=week), 9)
    assert made.further is None
    assert made.forecast == Decimal("47651.00") - 500, "2 d are 1400 either way"


def test_a_report_without_a_price_is_counted_and_adds_nothing(tmp_path: Path) -> None:
    made = _on(ledger_of(tmp_path / "s", week_1=WEEK.replace("    amount: 1900\n", "")), 9)
    assert made.unpriced == 1
    assert made.to_be_answered == Decimal(1080)


def test_further_days_without_a_rate_are_told_and_add_nothing(tmp_path: Path) -> None:
    made = _on(ledger_of(tmp_path / "s", award=AWARD.replace("days_line: 110.b\n", "")), 9)
    assert made.further is not None
    assert (made.further.days, made.further.amount, made.further.lines) == (Decimal(2), Decimal(0), {})
