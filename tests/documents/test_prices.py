"""Prices in the owner edition add up to the cent, wherever they stand: items, schedule, totals, price form."""

from __future__ import annotations

from collections import defaultdict
from decimal import Decimal

import pytest

from tenderwright.documents.edition import Heading, Table
from tenderwright.pricing.price import Estimate
from tenderwright.pricing.sections import SECTIONS
from tenderwright.writing.price_form_sums import line_amount, total

from .composed import Name, composed, part, rows, tables

each_package = pytest.mark.parametrize("package", ["starter", "marram"])


def _money(text: str) -> Decimal:
    """Read an amount as it is printed."""
    return Decimal("".join(text.split()).replace("−", "-").replace("\u202f", ""))


def _estimate(package: Name) -> Estimate:
    estimate = composed(package).owner.estimate
    assert estimate is not None
    return estimate


def _item_lines(package: Name) -> dict[str, Decimal]:
    """Give the amounts printed at the lines of items."""
    found: dict[str, Decimal] = {}
    for item in composed(package).edition("priced").parts:
        if item.kind == "item":
            for table in tables(item):
                if table.columns[0].title == "Line":
                    found |= {row[0]: _money(row[-1]) for row in rows(table) if row[0]}
    return found


def _schedule(package: Name) -> dict[str, Table]:
    """Give the tables of the schedule by section."""
    schedule = part(composed(package).edition("priced"), "schedule")
    found: dict[str, Table] = {}
    code = ""
    for block in schedule.blocks:
        if isinstance(block, Heading):
            code = block.text[0]
        elif isinstance(block, Table) and block.columns[0].title == "Line":
            found[code] = block
    return found


@each_package
def test_items_and_schedule_give_every_line_the_same_amount(package: Name) -> None:
    items = _item_lines(package)
    schedule = {row[0]: _money(row[-1]) for table in _schedule(package).values() for row in rows(table) if row[0]}
    estimate = {line.number: line.amount for line in _estimate(package).lines}
    assert len(estimate) >= 10
    assert items == schedule == estimate


def test_the_schedule_of_the_yard_shows_the_owners_fixed_sums_and_no_rate() -> None:
    schedule = part(composed("marram").edition("yard"), "schedule")
    printed = {row[0]: row[1:] for table in tables(schedule) for row in rows(table)}
    assert "EUR 18\u202f000.00" in printed["930.a"][0].replace(" 000", "\u202f000")
    assert not any("fixed sum" in text for number, (text, *_) in printed.items() if number != "930.a")


@each_package
def test_quantity_times_rate_is_the_amount(package: Name) -> None:
    for line in _estimate(package).lines:
        if line.line.price in ("fixed", "markup"):
            continue
        sign = -1 if line.section.code == "G" else 1
        assert abs(line.amount - sign * line.quantity.number * line.rate) <= Decimal("0.005"), line.number
        assert line.low * sign <= line.amount * sign <= line.high * sign, line.number


@each_package
def test_the_total_of_an_item_is_the_sum_of_its_lines(package: Name) -> None:
    counted = 0
    for item in composed(package).edition("priced").parts:
        for table in tables(item) if item.kind == "item" else ():
            if table.columns[0].title == "Line":
                *lines, last = rows(table)
                assert last[1] == "Together"
                assert _money(last[-1]) == sum(_money(row[-1]) for row in lines)
                counted += 1
    assert counted >= 6


@each_package
def test_the_totals_of_sections_are_the_sums_of_their_lines(package: Name) -> None:
    estimate = _estimate(package)
    for code, table in _schedule(package).items():
        *lines, last = rows(table)
        assert last[1] == "Together"
        assert _money(last[-1]) == sum(_money(row[-1]) for row in lines) == estimate.section_totals[code]
    assert sum(estimate.section_totals.values()) == estimate.everything


@each_package
def test_the_totals_printed_are_those_of_the_sections(package: Name) -> None:
    estimate, sections = _estimate(package), _estimate(package).section_totals
    printed = [_money(row[1]) for row in rows(tables(part(composed(package).edition("priced"), "schedule"))[-1])]
    assert printed[0] == sum(sections[section.code] for section in SECTIONS if section.in_base)
    assert printed[1] == estimate.evaluated
    assert printed[2] == estimate.contingency
    assert printed[3] == printed[0] + printed[2]


@each_package
def test_prices_by_item_agree_with_and_without_shared_services(package: Name) -> None:
    table = tables(part(composed(package).edition("owner"), "prices"))[0]
    priced = [(row, cells) for row, cells in zip(table.rows, rows(table), strict=True) if row.weight != "group"]
    sums: dict[str, list[Decimal]] = defaultdict(lambda: [Decimal(0)] * 2)
    for row, cells in priced:
        loaded = Decimal(0) if cells[3] == "–" else _money(cells[3])
        for weight in ("subtotal", "total") if row.weight == "normal" else ():
            sums[weight] = [sums[weight][0] + _money(cells[1]), sums[weight][1] + loaded]
        if row.weight == "subtotal":
            assert [_money(cells[1]), _money(cells[3])] == sums.pop("subtotal")
    everything = _estimate(package).everything
    last = priced[-1][1]
    assert last[0] == "All items"
    assert sums["total"] == [_money(last[1]), _money(last[3])] == [everything, everything]


@each_package
@pytest.mark.parametrize("code", [section.code for section in SECTIONS])
def test_the_price_form_gives_the_amounts_of_the_estimate(package: Name, code: str) -> None:
    form = composed(package).owners[1]
    sections = [section for section in form.sections if section.code == code]
    amounts = {line.number: line.amount for line in _estimate(package).lines if line.section.code == code}
    if not amounts:
        assert sections == [], "a section stands in the form only where it has lines"
        return
    (section,) = sections
    assert {line.number: line_amount(line, line.rate) for line in section.lines} == amounts
    assert total(section.lines) == _estimate(package).section_totals[code]
