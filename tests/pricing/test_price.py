"""The estimate adds up: lines, items and sections give the same sum to the cent."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.pipeline import OwnersSide, compile_owner, compile_package, read
from tenderwright.pricing.money import cents
from tenderwright.pricing.price import Estimate
from tenderwright.reading.package import Files
from tests.model.packages import change, put, told

RATES = "owner/rates.yaml"
MARRAM = Path(__file__).parents[2] / "package_src"


def owners(files: Files) -> OwnersSide:
    return compile_owner(files, compile_package(files))


def estimate(files: Files) -> Estimate:
    side = owners(files)
    assert side.notices == ()
    assert side.estimate is not None
    return side.estimate


def reconciles(made: Estimate) -> None:
    lines = sum(line.amount for line in made.lines)
    assert made.everything == lines
    assert sum(made.section_totals.values()) == lines
    assert sum(item.direct for item in made.items) == lines
    assert sum(item.loaded for item in made.items) == lines
    for amount in [
        *(line.amount for line in made.lines),
        *(item.shared for item in made.items),
        made.base,
        made.evaluated,
    ]:
        assert amount == cents(amount)
    for line in made.lines:
        assert abs(line.low) <= abs(line.amount) <= abs(line.high)
        assert (line.amount <= 0) if line.section.code == "G" else (line.amount >= 0)


def test_the_estimate_of_the_starter_worked_by_hand(starter: Files) -> None:
    made = estimate(starter)
    by_number = {line.number: line.amount for line in made.lines}
    assert by_number["320.a"] == Decimal("3800.00")  # 40 rivets at 95
    assert by_number["130.a"] == Decimal("1680.00")  # 40 h at 42
    reconciles(made)


@pytest.mark.parametrize("rule", ["by direct value", "by dock days", "equally"])
def test_shared_services_are_spread_whole_by_every_rule(starter: Files, rule: str) -> None:
    made = estimate(change(starter, RATES, "rule: by direct value", f"rule: {rule}"))
    reconciles(made)
    assert {item.item.item for item in made.items if item.is_shared} == {110, 130}
    assert sum(item.shared for item in made.items) == sum(item.direct for item in made.items if item.is_shared)


def test_dock_days_share_by_days(starter: Files) -> None:
    files = change(starter, RATES, "rule: by direct value }", 'rule: by dock days }\ndock_days: {"320": 3, "420": 1}')
    parts = {item.item.item: item.shared for item in estimate(files).items if not item.is_shared}
    assert parts[210] == parts[140] == 0
    assert abs(parts[320] - 3 * parts[420]) <= Decimal("0.03")
    reconciles(estimate(files))


def test_where_all_items_are_shared_each_carries_its_own(starter: Files) -> None:
    files = change(starter, RATES, 'items: ["110", "130"]', 'items: ["110", "130", "140", "210", "320", "420"]')
    made = estimate(files)
    reconciles(made)
    assert all(item.loaded == item.direct for item in made.items)


def test_a_credit_is_money_back(starter: Files) -> None:
    before = estimate(starter)
    made = estimate(change(starter, "items/210-hull-wash.yaml", "kind: definite", "kind: credit"))
    reconciles(made)
    assert made.section_totals["G"] == Decimal("-2900.00")
    assert made.base == before.base - 2 * Decimal("2900.00")


def test_low_may_be_nothing(starter: Files) -> None:
    made = estimate(change(starter, RATES, "rate: 95, low: 70", "rate: 95, low: 0"))
    (line,) = [line for line in made.lines if line.number == "320.a"]
    assert (line.low, line.amount, line.high) == (Decimal(0), Decimal("3800.00"), Decimal("5600.00"))


def test_a_line_without_a_rate_is_told_and_there_is_no_estimate(starter: Files) -> None:
    side = owners(change(starter, RATES, "  320.a:", "  # 320.a:"))
    assert side.estimate is None
    (notice,) = side.notices
    assert (notice.code, notice.message) == ("unpriced-line", "line 320.a has no rate")
    assert notice.place.path == RATES
    assert notice.hints == ("add `320.a: {rate: …}` under `lines:`",)


def test_lines_without_a_rate_are_told_at_once(starter: Files) -> None:
    side = owners(change(change(starter, RATES, "  320.a:", "  # 320.a:"), RATES, "  210.a:", "  # 210.a:"))
    (notice,) = side.notices
    assert notice.message == "2 lines have no rate: 210.a, 320.a"
    assert notice.hints == ("add `210.a: {rate: …}` under `lines:`, and so each of them",)


def test_a_withdrawn_item_costs_nothing(starter: Files) -> None:
    made = estimate(change(starter, "items/320-rivets-renew.yaml", "phase: dry", "phase: dry\nwithdrawn: true"))
    assert not [line for line in made.lines if line.item.item == 320]
    reconciles(made)


def test_a_shared_item_that_there_is_not_is_told_and_nothing_else(starter: Files) -> None:
    side = owners(change(starter, RATES, '"110", "130"', '"110", "zz"'))
    assert [code for _, code in told(list(side.notices))] == ["dead-reference"]


def test_without_rates_there_is_no_estimate(starter: Files) -> None:
    side = owners(starter.without_owner())
    assert (side.estimate, side.notices) == (None, ())


money = st.integers(0, 10**7).map(lambda n: n / 100)


@settings(max_examples=25)
@given(st.lists(money, min_size=10, max_size=10), st.sampled_from(["by direct value", "by dock days", "equally"]))
def test_any_rates_reconcile(starter: Files, rates: list[float], rule: str) -> None:
    numbers = ["110.a", "110.b", "110.c", "130.a", "130.b", "140.a", "140.b", "210.a", "320.a", "420.a"]
    lines = "".join(f"  {number}: {{rate: {rate:.2f}}}\n" for number, rate in zip(numbers, rates, strict=True))
    shared = f'shared: {{items: ["110", "130"], rule: {rule}}}\ncontingency: {{share: 15 %, why: wash}}\n'
    reconciles(estimate(put(starter, RATES, f"base_month: 2027-09\nlines:\n{lines}{shared}")))


def test_the_estimate_of_the_demonstration_adds_up() -> None:
    files = read(MARRAM)
    if not (MARRAM / "owner" / "rates.yaml").is_file():
        pytest.skip("the owner's papers are kept elsewhere")
    made = estimate(files)
    reconciles(made)
    assert {code for code, amount in made.section_totals.items() if amount} == set("ABCDEFGH")
    assert made.contingency > 0
