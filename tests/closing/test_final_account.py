"""The final account: sums to the cent by item, kind and cause, and growth against the contract."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from tenderwright.model.account_sums import account_sums
from tenderwright.model.findings import Change, Findings, LinePaid
from tenderwright.model.owner import Bid, BidLine
from tenderwright.notices import Place
from tenderwright.pricing.final_account import FinalAccount, final_account
from tenderwright.reading.source import Source
from tests.replacing import replace

from .conftest import MARRAM, SMALL, Tendered

HERE = Place("findings.yaml")


def _findings(tendered: Tendered) -> Findings:
    found = tendered.check(SMALL).findings
    assert found is not None
    return found


def _account(tendered: Tendered, findings: Findings, bid: Bid | None = None) -> FinalAccount:
    compiled = tendered.compiled
    made = final_account(findings, compiled.package, compiled.record, tendered.owner.estimate, bid)
    assert made is not None
    return made


def test_growth_is_what_was_paid_beyond_the_contract(sandling: Tendered) -> None:
    """420.a was let for 4400 and came to 4224: 176 of 4400 is 4 % less. A line let for nothing has no growth."""
    rows = {row.name: row for row in _account(sandling, _findings(sandling)).lines}
    assert rows["420.a"].growth == Decimal("-0.04")
    assert rows["110.a"].growth == 0
    assert rows["320.a"].growth is None


def test_kinds_and_causes_are_added_up(sandling: Tendered) -> None:
    made = _account(sandling, _findings(sandling))
    assert {row.name: (row.awarded, row.final) for row in made.kinds} == {
        "contingent": (Decimal(0), Decimal(2945)),
        "definite": (Decimal("21900.50"), Decimal("21900.50")),
        "measured": (Decimal(4400), Decimal(4224)),
    }
    assert [(row.cause, row.changes, row.amount) for row in made.causes] == [
        ("condition found", 1, Decimal(2945)),
        ("quantity measured", 1, Decimal(-176)),
    ]


def test_a_bid_counts_by_its_rate_on_the_tendered_quantity(sandling: Tendered) -> None:
    """50 m2 at 87.50 is 4375, whatever extension stands beside it; what is included costs nothing."""
    lines = {
        "420.a": BidLine(rate=Decimal("87.50"), status="priced", extension=Decimal("4357")),
        "110.a": BidLine(status="included"),
        "320.a": BidLine(status="no bid"),
    }
    bid = Bid(yard="a yard", received=date(2027, 12, 9), lines=lines, here=HERE)
    made = _account(sandling, _findings(sandling), bid)
    assert {row.name: row.bid for row in made.lines} == {"110.a": Decimal(0), "320.a": None, "420.a": Decimal(4375)}
    assert {row.name: row.bid for row in made.items} == {"110": Decimal(0), "320": None, "420": Decimal(4375)}
    assert made.whole.bid is None


def test_without_an_estimate_the_column_is_empty(sandling: Tendered) -> None:
    compiled = sandling.compiled
    made = final_account(_findings(sandling), compiled.package, compiled.record, None, None)
    assert made is not None
    assert {row.estimate for row in (*made.lines, *made.items, made.whole)} == {None}


def test_findings_without_prices_have_no_account(sandling: Tendered) -> None:
    compiled = sandling.compiled
    bare = replace(_findings(sandling), prices=(), changes=())
    assert final_account(bare, compiled.package, compiled.record, None, None) is None


def test_the_demonstration_adds_up_every_way(marram: Tendered) -> None:
    findings = marram.check(MARRAM).findings
    assert findings is not None
    assert findings.totals is not None
    made = _account(marram, findings)
    for rows in (made.lines, made.items, made.kinds):
        assert sum(row.awarded for row in rows) == findings.totals.contract
        assert sum(row.changes for row in rows) == findings.totals.changes
        assert sum(row.final for row in rows) == findings.totals.final
    assert sum(row.amount for row in made.causes) == findings.totals.changes
    assert {row.name for row in made.kinds} >= {"definite", "measured", "contingent", "credit", "option"}
    assert made.whole.growth is not None
    assert 0 < made.whole.growth < 1


CENTS = st.integers(-(10**9), 10**9).map(lambda cents: Decimal(cents) / 100)


@given(CENTS, st.lists(CENTS, max_size=4), st.sampled_from([Decimal("0.00"), Decimal("0.01"), Decimal("-0.01")]))
def test_a_cent_is_seen_and_nothing_else(contract: Decimal, amounts: list[Decimal], off: Decimal) -> None:
    """Contract and changes that make the final amount pass whatever they are; one cent beside it does not."""
    day = date(2027, 6, 1)
    log = [
        Change(change=f"C{n}", day=day, line="320.a", cause="weather", what="rain", amount=amount, here=HERE)
        for n, amount in enumerate(amounts)
    ]
    changes = sum(amounts, Decimal(0))
    lines = [LinePaid(line="320.a", contract=contract, changes=changes, final=contract + changes + off, here=HERE)]
    found = account_sums(Source("findings.yaml", ""), "prices", lines, log, None)
    assert [notice.code for notice in found] == (["sum-differs"] if off else [])


def test_a_line_that_stands_twice_is_told() -> None:
    one = LinePaid(line="320.a", contract=Decimal(5), changes=Decimal(0), final=Decimal(5), here=HERE)
    found = account_sums(Source("findings.yaml", ""), "prices", [one, one], [], None)
    assert [notice.code for notice in found] == ["duplicate-name"]


def test_a_change_to_a_line_without_a_price_is_told() -> None:
    one = LinePaid(line="320.a", contract=Decimal(5), changes=Decimal(0), final=Decimal(5), here=HERE)
    change = Change(
        change="C1", day=date(2027, 6, 1), line="999.a", cause="weather", what="rain", amount=Decimal(1), here=HERE
    )
    found = account_sums(Source("findings.yaml", ""), "prices", [one], [change], None)
    assert [notice.message for notice in found] == ["change C1 is to line 999.a, which has no price here"]
