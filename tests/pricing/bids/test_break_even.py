"""Quantities at which a ranking changes: where they lie, how likely they are passed, and equal totals there."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from scipy import stats

from tenderwright.model.bid import Bid
from tenderwright.pricing.bids.break_even import break_evens, deciding_line, total_at
from tests.replacing import replace

from .bidding import LINES, bids, money, priced
from .test_evaluate import FULL, evaluated

STEEL = next(line for line in LINES if line.number == "310.b")


def two(low_lump: str, rate: str) -> dict[str, Bid]:
    """Give two bids that differ in the docking and in the rate of plate alone."""
    other = {**FULL.lines, "110.a": priced(low_lump), "310.b": priced(rate)}
    return {"sure": FULL, "cheap": replace(FULL, yard="Cheap", lines=other)}


def test_difference_of_the_rest_over_difference_of_the_rates() -> None:
    """Constructed: 21 000 against 13 000 for docking, 31 against 46 a kg: 400 + (8 000 - 400 x 15)/15 = 533.3 kg."""
    made = list(evaluated(two("13000", "46")).values())
    (one,) = break_evens(made, LINES)
    assert (one.line.number, one.ahead, one.behind, one.more) == ("310.b", "cheap", "sure", True)
    assert one.quantity == pytest.approx(8000 / 15)
    # By the owner's least and most, 0 and 1 500, the likely 400.
    rising, falling = 1 + 4 * 400 / 1500, 1 + 4 * 1100 / 1500
    assert one.chance == pytest.approx(stats.beta.sf(8000 / 15 / 1500, rising, falling))


def test_at_less_than_tendered_the_chance_is_that_of_less() -> None:
    made = list(evaluated(two("25000", "19")).values())
    (one,) = break_evens(made, LINES)
    assert (one.ahead, one.more) == ("cheap", False)
    assert one.quantity == pytest.approx(4000 / 12)
    assert one.chance == pytest.approx(STEEL.spread.less(4000 / 12))


@pytest.mark.parametrize(("lump", "rate"), [("13000", "34"), ("20999", "31"), ("26000", "33")])
def test_outside_the_possible_range_nothing_is_told(lump: str, rate: str) -> None:
    assert break_evens(list(evaluated(two(lump, rate)).values()), LINES) == ()


def test_a_line_that_is_not_bid_has_the_rate_that_prices_it() -> None:
    bids = two("13000", "46")
    bids["third"] = replace(FULL, yard="Third", lines={n: line for n, line in FULL.lines.items() if n != "310.b"})
    made = evaluated(bids)
    assert made["third"].slope("310.b") == 46
    pairs = {(one.ahead, one.behind) for one in break_evens(list(made.values()), LINES)}
    assert ("cheap", "third") not in pairs


def test_the_line_that_decides_is_the_likeliest_to_unseat_the_lowest() -> None:
    made = list(evaluated(two("13000", "46")).values())
    assert deciding_line(break_evens(made, LINES), made, LINES) is STEEL
    never = list(evaluated(two("13000", "34")).values())
    assert deciding_line((), never, LINES) is STEEL, "where nothing crosses, the line on which they differ most"
    assert deciding_line((), never[:1], LINES) is None
    assert deciding_line((), [], LINES) is None


@given(bids(), bids("Sallow"))
def test_at_that_quantity_both_cost_the_same(one: Bid, other: Bid) -> None:
    made = evaluated({"one": one, "other": other})
    for found in break_evens(list(made.values()), LINES):
        quantity = Decimal(repr(found.quantity))
        ahead, behind = (total_at(made[name], found.line, quantity) for name in (found.ahead, found.behind))
        assert abs(ahead - behind) <= money("0.01")
        assert found.total == pytest.approx(float(ahead), abs=0.01)
        assert found.line.spread.least < found.quantity < found.line.spread.most
        assert 0.0 <= found.chance <= 1.0
        further = quantity + (1 if found.more else -1)
        assert total_at(made[found.ahead], found.line, further) > total_at(made[found.behind], found.line, further)


@given(bids(), bids("Sallow"))
def test_as_tendered_a_bid_costs_what_it_was_evaluated_at(one: Bid, other: Bid) -> None:
    for bid in evaluated({"one": one, "other": other}).values():
        assert all(total_at(bid, line, line.quantity) == bid.total for line in LINES)
