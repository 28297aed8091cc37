"""Prices in dock: rates first, then the pool, then by agreement, each to the cent."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tenderwright.model.build import Name
from tenderwright.model.in_dock import ChangeOrder
from tenderwright.notices import Notice, Place
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.pricing.in_dock.ordered import Price, by_lump, by_pool, by_quantity, in_units_of
from tenderwright.quantities.quantity import parse_quantity

HERE = Place("owner/in-dock/week-1.yaml", 7)


def _quantity(ledger: Ledger, line: str, text: str) -> Price | Notice:
    own = ledger.contract.lines[line]
    return by_quantity(parse_quantity(text, "any"), own, ledger.contract, "change CO-1", HERE)


@pytest.mark.parametrize(
    ("line", "text", "amount"),
    [
        ("320.a", "31 each", "3100.00"),
        ("420.a", "12.345 m2", "1111.05"),
        ("420.a", "-2.5 m2", "-225.00"),
        ("420.a", "100 ft2", "836.13"),  # 100 ft2 is 9.290304 m2 exactly
        ("110.b", "2 d", "1400.00"),
        ("110.b", "48 h", "1400.00"),
        ("130.a", "90 min", "66.00"),
    ],
)
def test_a_quantity_is_paid_at_the_rate_of_its_line(ledger: Ledger, line: str, text: str, amount: str) -> None:
    price = _quantity(ledger, line, text)
    assert isinstance(price, Price)
    assert (price.way, price.amount) == ("unit rate", Decimal(amount))


def test_a_quantity_in_the_unit_of_the_line_stays_as_written(ledger: Ledger) -> None:
    number = in_units_of(ledger.contract.lines["420.a"], parse_quantity("0.1 m2", "any"))
    assert str(number) == "0.1"


def test_a_quantity_of_a_line_of_the_pool_counts_as_hours(ledger: Ledger) -> None:
    price = _quantity(ledger, "160.a", "3 h")
    assert price == Price("hours pool", Decimal("165.00"), hours=Decimal(3))


@pytest.mark.parametrize(
    ("line", "text", "code"),
    [("320.a", "4 kg", "wrong-dimension"), ("110.a", "1 each", "in-dock-price"), ("160.b", "1 each", "in-dock-price")],
)
def test_what_the_line_does_not_measure_is_told(ledger: Ledger, line: str, text: str, code: str) -> None:
    notice = _quantity(ledger, line, text)
    assert isinstance(notice, Notice)
    assert notice.code == code


def _order(line: str, hours: str = "", materials: str = "") -> ChangeOrder:
    return ChangeOrder(
        change=Name("CO-1", HERE),
        day=None,  # type: ignore[arg-type]
        line=Name(line, HERE),
        cause="other",
        what="",
        here=HERE,
        hours=parse_quantity(hours, "time") if hours else None,
        materials=Decimal(materials) if materials else None,
    )


@pytest.mark.parametrize(
    ("line", "hours", "materials", "amount", "drawn"),
    [
        ("160.a", "20 h", "", "1100.00", "20"),
        ("160.a", "20 h", "300", "1436.00", "20"),  # 20 x 55 + 300 x 1.12
        ("160.a", "1 d", "", "1320.00", "24"),
        ("160.b", "", "33.33", "37.33", "0"),  # 37.3296
    ],
)
def test_the_pool_is_paid_by_the_hour_with_a_mark_up_on_materials(
    ledger: Ledger, line: str, hours: str, materials: str, amount: str, drawn: str
) -> None:
    order = _order(line, hours, materials)
    price = by_pool(order, order.line, ledger.contract, "change CO-1")
    assert isinstance(price, Price)
    assert (price.way, price.amount, price.hours) == ("hours pool", Decimal(amount), Decimal(drawn))


def test_hours_of_no_line_of_the_pool_are_told(ledger: Ledger) -> None:
    order = _order("320.a", "20 h")
    notice = by_pool(order, order.line, ledger.contract, "change CO-1")
    assert isinstance(notice, Notice)
    assert notice.message == "change CO-1 is priced by hours, and line 320.a is none of the hours pool"
    assert notice.hints == ("name the line of its trade: 160.a",)


def test_a_lump_sum_that_is_in_the_contract_is_not_ordered_again(ledger: Ledger) -> None:
    notice = by_lump(ledger.contract.lines["210.a"], "change CO-1", HERE)
    assert isinstance(notice, Notice)
    assert "holds already" in notice.message
