"""Reports: how they stand on a day, the hour for the answer, and their price."""

from __future__ import annotations

from datetime import date, datetime
from decimal import Decimal

import pytest

from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.pricing.in_dock.reports import PricedReport


def _report(ledger: Ledger, name: str) -> PricedReport:
    return next(one for one in ledger.reports if one.name == name)


@pytest.mark.parametrize(
    ("day", "state"), [(5, ""), (6, "waiting"), (7, "accepted"), (30, "accepted")], ids=lambda one: str(one)
)
def test_a_report_waits_from_its_day_until_it_is_decided(ledger: Ledger, day: int, state: str) -> None:
    assert _report(ledger, "CF-01").state(date(2028, 4, day)) == state


def test_the_hour_is_as_written_or_the_answering_time_of_the_award(ledger: Ledger) -> None:
    assert _report(ledger, "CF-01").due == datetime(2028, 4, 7, 12)
    assert _report(ledger, "CF-02").due == datetime(2028, 4, 9, 15, 30)
    assert _report(ledger, "CF-03").due == datetime(2028, 4, 9, 23, 59), "from the end of its day"


def test_an_answer_is_overdue_from_the_day_after_its_own(ledger: Ledger) -> None:
    report = _report(ledger, "CF-02")
    assert [report.overdue(date(2028, 4, day)) for day in (8, 9, 10, 12)] == [0, 0, 1, 3]
    assert _report(ledger, "CF-01").overdue(date(2028, 4, 30)) == 0, "it was answered"


def test_the_rate_of_its_line_goes_before_the_amount_asked(ledger: Ledger) -> None:
    prices = {one.name: one.price for one in ledger.reports}
    assert {name: (price.way, price.amount) for name, price in prices.items() if price is not None} == {
        "CF-01": ("unit rate", Decimal(4800)),
        "CF-02": ("negotiated", Decimal(1900)),
        "CF-03": ("unit rate", Decimal(1080)),
    }
