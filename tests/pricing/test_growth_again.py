"""The growth of earlier dockings laid on today's work."""

from __future__ import annotations

from decimal import Decimal

import pytest

from tenderwright.pipeline import compile_owner, compile_package
from tenderwright.pricing.growth import ALL, Growth
from tenderwright.pricing.growth_again import growth_again
from tenderwright.pricing.price import Estimate
from tenderwright.pricing.sections import BY_CODE
from tenderwright.reading.package import Files
from tests.replacing import replace


@pytest.fixture(scope="module")
def made(starter: Files) -> Estimate:
    found = compile_owner(starter, compile_package(starter)).estimate
    assert found is not None
    return found


def grown(kind: str, share: float | None) -> Growth:
    return Growth(kind, Decimal("100.00"), Decimal("125.00"), share, ())


def test_a_quarter_more_of_one_kind_worked_by_hand(made: Estimate) -> None:
    measured = sum(line.amount for line in made.lines if line.item.kind == "measured")
    again = growth_again(grown("measured", 0.25), made)
    assert again.today == measured > 0
    assert again.more == measured / 4


def test_all_kinds_are_everything_but_the_options(made: Estimate) -> None:
    first, *others = made.lines
    with_option = replace(made, lines=(replace(first, section=BY_CODE["F"]), *others))
    again = growth_again(grown(ALL, 0.5), with_option)
    assert again.today == made.everything - first.amount
    assert again.more == (made.everything - first.amount) / 2


def test_a_credit_that_came_out_dearer_is_less_money_back(made: Estimate) -> None:
    first = made.lines[0]
    credit = replace(first, amount=Decimal("-100.00"), item=replace(first.item, kind="credit"))
    again = growth_again(grown("credit", -0.1), replace(made, lines=(credit,)))
    assert (again.today, again.more) == (Decimal("-100.00"), Decimal("-10.00"))


@pytest.mark.parametrize(("kind", "share"), [("measured", None), ("other", 0.3), ("contingent", 6.1)])
def test_there_is_nothing_to_lay_it_on(made: Estimate, kind: str, share: float | None) -> None:
    assert growth_again(grown(kind, share), made).more is None
