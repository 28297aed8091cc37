"""Lines far from the others are found, and whether a plausible quantity makes a bid that leads the dearer one."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.model.bid import Bid, BidLine
from tenderwright.pricing.bids.cases import cases
from tenderwright.pricing.bids.evaluate import EvaluatedBid
from tenderwright.pricing.bids.unbalance import Unbalance, early_share, medians, own_estimate_off, unbalance
from tests.replacing import replace

from .bidding import LINES, USUAL, money, priced
from .test_evaluate import FULL, evaluated


def screened(bids: dict[str, Bid], early: str | None = None) -> dict[str, Unbalance]:
    made = evaluated(bids)
    usual = medians({name: one.corrected for name, one in made.items()}, LINES)
    of_estimate = Decimal(early) if early else None
    every = list(made.values())
    found = cases(LINES, USUAL)
    return {name: unbalance(one, every, usual, of_estimate, found) for name, one in made.items()}


def with_rates(**rates: str) -> Bid:
    """Give the full bid with other rates, by line as `l310_b`."""
    lines = {name.removeprefix("l").replace("_", "."): priced(rate) for name, rate in rates.items()}
    return replace(FULL, yard="Other", lines={**FULL.lines, **lines})


def test_a_line_is_marked_where_median_and_estimate_agree() -> None:
    found = screened({"a": FULL, "b": FULL, "c": with_rates(l310_b="62.1", l210_a="1350", l165_a="120")})["c"]
    assert [one.line.number for one in found.high] == ["310.b"]
    assert [one.line.number for one in found.low] == ["210.a"]
    assert found.ratios["310.b"].to_median == money("62.1") / 31
    assert found.ratios["310.b"].to_estimate == money("62.1") / 30
    assert found.ratios["165.a"].mark == "", "twice the estimate and no more"
    assert found.mathematically


def test_far_off_to_one_side_alone_is_not_unbalanced() -> None:
    found = screened({"a": FULL, "b": FULL, "c": with_rates(l310_b="90")})["c"]
    assert found.high
    assert not found.mathematically


def test_what_is_included_or_not_bid_has_no_ratio() -> None:
    lines = {**FULL.lines, "310.b": BidLine(status="included"), "210.a": BidLine(status="no bid")}
    found = screened({"a": FULL, "b": FULL, "c": replace(FULL, lines=lines)})["c"]
    assert not {"310.b", "210.a", "930.a"} & set(found.ratios)


def test_one_bid_alone_is_held_against_the_estimate() -> None:
    found = screened({"a": with_rates(l310_b="90")})["a"]
    assert found.ratios["310.b"].to_median is None
    assert [one.line.number for one in found.high] == ["310.b"]


def test_early_work_carries_its_share() -> None:
    loaded = with_rates(l110_a="60000", l310_a="5")
    plain = screened({"a": FULL, "b": FULL, "c": loaded})
    assert (plain["a"].front_loaded, plain["c"].front_loaded) == (False, True)
    assert plain["c"].early == money(60000) / (60000 + 2800 + 5000 - 420 + 9000)
    assert plain["c"].mathematically
    two = screened({"a": FULL, "c": loaded}, early="0.4")
    assert (two["a"].early_usual, two["c"].front_loaded) == (money("0.4"), True)
    assert screened({"c": loaded})["c"].early_usual is None
    assert early_share(money(5), money(0)) is None


def test_unbalanced_and_the_quantity_may_well_come_is_material() -> None:
    """Constructed: low for docking and high for plate: lower as tendered, dearer at the P80 of plate."""
    found = screened({"sure": FULL, "cheap": with_rates(l110_a="8000", l310_b="62")})["cheap"]
    assert found.mathematically is False
    cheap = with_rates(l110_a="8000", l210_a="1000", l310_b="65")
    found = screened({"sure": FULL, "other": FULL, "cheap": cheap})["cheap"]
    assert found.mathematically
    assert found.materially
    assert {one.other for one in found.doubts} == {"sure", "other"}
    assert {(one.case, one.line) for one in found.doubts} >= {("", "310.b"), ("p80", "")}


def test_unbalanced_and_no_quantity_matters_is_not_material() -> None:
    cheap = with_rates(l110_a="2000", l210_a="1000", l310_a="12", l310_b="65")
    found = screened({"sure": FULL, "other": FULL, "cheap": cheap})["cheap"]
    assert found.mathematically
    assert (found.doubts, found.materially) == ((), False)


def test_who_does_not_lead_cannot_be_overtaken() -> None:
    dear = with_rates(l110_a="40000", l210_a="1000", l310_b="65")
    assert screened({"sure": FULL, "other": FULL, "dear": dear})["dear"].doubts == ()


def test_where_all_bids_lie_far_off_the_estimate_is_in_doubt() -> None:
    made: dict[str, EvaluatedBid] = evaluated({"a": with_rates(l310_a="45"), "b": with_rates(l310_a="47")})
    usual = medians({name: one.corrected for name, one in made.items()}, LINES)
    (one,) = own_estimate_off(LINES, usual)
    assert (one.line.number, one.rate, one.mark) == ("310.a", money(46), "high")


def test_a_median_needs_two_prices() -> None:
    made = evaluated({"a": FULL, "b": replace(FULL, lines={"110.a": priced(23000)})})
    assert medians({name: one.corrected for name, one in made.items()}, LINES) == {"110.a": 22000}
