"""The estimate: ranges by item and by line that add up, contingency in sight, growth beside it."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tenderwright.documents.edition import Part, Table, plain
from tenderwright.documents.owner.estimate import owner_estimate
from tenderwright.documents.owner.estimate_classes import bounded
from tenderwright.documents.owner.price_basis import price_basis, quantity_range, steps_run
from tenderwright.planning.foresight import Foresight
from tenderwright.pricing.growth import ALL
from tenderwright.pricing.money import written
from tenderwright.pricing.price import Estimate, PricedLine
from tests.documents.composed import Name, composed, part, rows, tables, words
from tests.replacing import replace

from .seen import foreseen_desk, marram_part, starter_desk

each_package = pytest.mark.parametrize("package", ["starter", "marram"])


def money(text: str) -> Decimal:
    return Decimal("".join(text.split()).replace("−", "-"))


def estimate(package: Name) -> Estimate:
    found = composed(package).owner.estimate
    assert found is not None
    return found


def made(package: Name, anchor: str) -> Part:
    return part(composed(package).edition("owner"), anchor)


def titled(found: Part, title: str) -> Table:
    (table,) = [one for one in tables(found) if one.columns[0].title == title]
    return table


def line(package: Name, number: str) -> PricedLine:
    return next(one for one in estimate(package).lines if one.number == number)


@each_package
def test_items_add_up_to_sections_and_to_the_whole(package: Name) -> None:
    table = titled(made(package, "estimate"), "Item")
    running = [Decimal(0)] * 3
    everything = [Decimal(0)] * 3
    for row in table.rows:
        if row.weight == "group":
            running = [Decimal(0)] * 3
            continue
        amounts = [money(plain(cell)) for cell in row.cells[3:]]
        if row.weight == "normal":
            running = [a + b for a, b in zip(running, amounts, strict=True)]
            everything = [a + b for a, b in zip(everything, amounts, strict=True)]
        elif row.weight == "subtotal":
            assert amounts == running
        else:
            assert amounts == everything
    whole = estimate(package)
    assert everything[1] == whole.everything
    assert everything[0] == sum(one.low for one in whole.lines)


@each_package
def test_every_line_is_told_once_and_its_amounts_add_up(package: Name) -> None:
    table = titled(made(package, "price-basis"), "Line")
    *lines, last = [row for row in rows(table) if len(row) > 1]
    assert sorted(row[0] for row in lines) == sorted(one.number for one in estimate(package).lines)
    for column in (5, 6, 7):
        assert sum(money(row[column]) for row in lines) == money(last[column])
    assert money(last[6]) == estimate(package).everything


def test_a_price_paid_before_is_told_with_index_and_factors() -> None:
    """6 400 paid in 2007 x 154.1/93.4 = 10 559.31, x 1.4 = 14 783.04, x 1.2 = 17 739.65."""
    found = steps_run(line("marram", "120.a"))
    assert found == (
        "paid 2007-10 for 1 set: 6 400.00 → 6 400.00 × 154.1/93.4, Repair of ships and boats, prices paid 2007-10 to "
        "2026-10 → 10 559.31 × 1.4, oak caps on steel plates of 40 mm, built higher and to the owner's plan → "
        "14 783.04 × 1.2, seven pairs of side blocks in place of six, cut to the lines → 17 739.65"
    )


@pytest.mark.parametrize(
    ("number", "told"),
    [
        ("110.a", "stated 46 500.00"),
        ("155.c", "95 h of a rigger at 56 → 5 320.00 + 80 for materials → 5 400.00"),
        ("165.d", "stated 14 %"),
        ("930.a", "the owner's fixed sum → 18 000.00"),
    ],
)
def test_each_way_to_a_price_is_told(number: str, told: str) -> None:
    assert steps_run(line("marram", number)) == told


def test_a_run_of_steps_ends_at_the_rate_of_every_line() -> None:
    for one in estimate("marram").lines:
        if one.form != "markup":
            assert steps_run(one).endswith(f" {written(one.rate)}")


def test_quantities_are_told_from_least_to_most() -> None:
    assert quantity_range(line("marram", "315.a")) == "160 – 260 – 420 no."
    assert quantity_range(line("marram", "110.a")) == "sum"
    assert quantity_range(line("marram", "165.d")) == "on 30 000.00"
    assert quantity_range(line("marram", "345.a")) == "1.5 m"


def test_lines_without_a_low_or_a_high_are_marked_and_counted() -> None:
    rates = composed("marram").owner.papers.rates
    assert rates is not None
    bare = {number for number, rate in rates.lines.items() if rate.low is None or rate.high is None}
    table = titled(marram_part("price-basis"), "Line")
    assert {row[0] for row in rows(table) if len(row) > 1 and row[3].endswith("*")} == bare
    assert f"at {len(bare)} of the {len(estimate('marram').lines)} lines" in words(marram_part("price-basis"))


def test_the_contingency_stands_beside_what_the_trials_ask_for() -> None:
    desk = foreseen_desk()
    assert desk.estimate is not None
    assert desk.foresight is not None
    cost = desk.foresight.outlook.cost
    found = {row[0].partition(":")[0]: money(row[1]) for row in rows(titled(owner_estimate(desk), ""))}
    base, likely = found["Base"], found["Sum of the likely amounts, options left out"]
    assert base + found["Contingent lines and hours pool at their likely amounts"] == likely == cost.point
    assert found["Contingency held by the owner"] == desk.estimate.contingency
    assert found["Sum of likely with the contingency held"] == likely + desk.estimate.contingency
    asked = found["To be set aside beyond the likely sum"]
    assert asked == found["P80 of the trials, enough in four of five"] - likely
    over = desk.estimate.contingency - asked
    told = "The contingency held goes beyond that by" if over >= 0 else "The contingency held falls short of that by"
    assert found[told] == abs(over)


def test_the_level_of_the_contingency_held_is_told() -> None:
    desk = foreseen_desk()
    assert desk.estimate is not None
    assert desk.foresight is not None
    cost = desk.foresight.outlook.cost

    def told(target: Decimal) -> str:
        held = replace(desk.estimate, contingency=target - cost.point) if desk.estimate else None
        return words(owner_estimate(replace(desk, estimate=held)))

    assert "lies below P5 of the trials" in told(cost.at(0.05) - 1)
    assert "lies between P60 and P70 of the trials" in told(cost.at(0.60))
    assert "lies above P95 of the trials" in told(cost.at(0.95) + 1)


def test_growth_stands_by_kind_with_the_same_growth_on_todays_work() -> None:
    desk = composed("marram")
    found = {row[0]: row for row in rows(titled(marram_part("estimate"), "Kind of item"))}
    measured = found["Measured"]
    today = sum(one.amount for one in estimate("marram").lines if one.item.kind == "measured")
    assert money(measured[1]) == Decimal("30466.30")
    assert money(measured[4]) == today
    share = (money(measured[2]) - money(measured[1])) / money(measured[1])
    assert abs(money(measured[5]) - share * today) < Decimal("0.01")
    assert measured[6] == "2007"
    assert found["Other"][4:6] == ["–", "–"]
    assert "All kinds together" in found
    assert desk.edition("owner").confidential


def test_without_foresight_the_estimate_stands_alone() -> None:
    desk = replace(starter_desk(), foresight=None)
    found = owner_estimate(desk)
    assert "P80" not in words(titled(found, ""))
    assert [one for one in tables(found) if one.columns[0].title == "Kind of item"] == []
    assert bounded(desk) == frozenset()
    assert "asterisk" not in words(price_basis(desk))


def test_without_a_contingency_none_is_held() -> None:
    desk = foreseen_desk()
    seen, priced = desk.foresight, desk.estimate
    assert seen is not None
    assert seen.papers.rates is not None
    assert priced is not None
    papers = replace(seen.papers, rates=replace(seen.papers.rates, contingency=None))
    bare = replace(priced, contingency=Decimal("0.00"), contingency_why="")
    without: Foresight = replace(seen, papers=papers)
    text = words(owner_estimate(replace(desk, foresight=without, estimate=bare)))
    assert "Contingency held by the owner: none" in text
    assert any(one.kind == ALL for one in seen.growth)
