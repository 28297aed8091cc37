"""Three bids of the starter package, compared: every figure worked by hand."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from tenderwright.commands.bids_compare import compared
from tests.fixtures.returned_bids import bids_package, both_sides, compared_bids
from tests.replacing import replace

from .bidding import money

OSTREY, SALTHOLM, WRACKNESS = "ostrey-dock", "saltholm-slip", "wrackness-yard"


def test_the_ranking_by_hand() -> None:
    _, found = compared_bids()
    assert [bid.name for bid in found.bids] == [OSTREY, WRACKNESS, SALTHOLM]
    assert dict(found.ranks) == {OSTREY: 1, WRACKNESS: 2, SALTHOLM: 3}
    # Docking 26 440, wash 1 200, coating 50 x 12.50, contingent 12 920, 19 d at 210, towing 3 100.
    assert found.bids[0].total == money(26440 + 1200 + 625 + 12920 + 19 * 210 + 3100)


def test_as_read_and_as_corrected() -> None:
    _, found = compared_bids()
    ostrey = found.bid(OSTREY).corrected
    assert (ostrey.total_read, ostrey.total, ostrey.total_written) == (money(44810), money(41185), True)
    wrackness = found.bid(WRACKNESS).corrected
    assert not wrackness.total_written
    assert wrackness.total == 23900 + 40 * 45 + 4100 + 3300 + 40 * 88 + 50 * 96 + 2000


def test_lines_that_are_missing_are_priced_by_the_others() -> None:
    _, found = compared_bids()
    added = {one.lines: one.amount({}, frozenset("ABCDEFGH")) for one in found.bid(WRACKNESS).adders}
    assert added == {("110.b", "110.c"): 3 * 640 + 2 * 450}, "of Ostrey Dock; Saltholm Slip asks 3 * 600 + 2 * 500"
    assert {one.kind for one in found.bid(WRACKNESS).adders} == {"line"}


def test_exclusions_are_priced_by_the_owner_or_by_the_others() -> None:
    _, found = compared_bids()
    saltholm = found.bid(SALTHOLM)
    added = {one.what: one.amount({}, frozenset("ABCDEFGH")) for one in saltholm.adders}
    assert added == {
        "Disposal of spent abrasive": 1150,
        "Fire watch at night, by the ship's own people": 40 * 45,
        "Line 140.b, no bid": 5 * 400,
    }
    assert saltholm.unsettled == ()


def test_rates_far_off_and_a_plausible_number_of_rivets_put_the_lowest_behind() -> None:
    _, found = compared_bids()
    ostrey = found.unbalance[OSTREY]
    assert ostrey.materially
    assert [one.line.number for one in ostrey.high] == ["320.a"]
    assert [one.line.number for one in ostrey.low] == ["210.a", "420.a"]
    assert {one.other for one in ostrey.doubts if one.line == "320.a"} == {WRACKNESS}
    assert found.cases[-1].ranks[OSTREY] == 1, "for with all quantities at P80 its low rate for coating makes up for it"
    assert not found.unbalance[SALTHOLM].mathematically


def test_the_break_even_of_rivets_by_hand() -> None:
    _, found = compared_bids()
    first = found.break_evens[0]
    ahead, behind = found.bid(OSTREY).total, found.bid(WRACKNESS).total
    assert (first.line.number, first.ahead, first.behind, first.more) == ("320.a", OSTREY, WRACKNESS, True)
    assert first.quantity == pytest.approx(float(40 + (behind - ahead) / (205 - 88)))
    assert found.deciding is first.line


def test_a_confirmed_rate_is_used() -> None:
    said = (
        "corrections:\n  - { bid: saltholm-slip, line: 420.a, rate: 91, confirmed: 2027-12-14, note: letter }\nadders:"
    )
    _, found = compared_bids(("owner/evaluation.yaml", "adders:", said))
    line = found.bid(SALTHOLM).corrected.lines["420.a"]
    assert (line.rate_read, line.rate, line.amount) == (money("9.1"), money(91), money(4550))
    assert line.correction is not None
    assert line.correction.kind == "confirmed"


def test_under_total_absolute_the_total_as_written_counts() -> None:
    _, found = compared_bids(("package.yaml", "arithmetic: unit price governs", "arithmetic: total absolute"))
    ostrey = found.bid(OSTREY)
    assert [one.what for one in ostrey.corrected.disqualifying] == ["Line 420.a"]
    assert ostrey.corrected.total == 44810
    assert ostrey.total == 44810 + 19 * 210 + 3100
    arithmetic = next(one for one in found.points[OSTREY] if one.name == "arithmetic")
    assert arithmetic.state == "missed"


def test_two_bids_of_one_yard_are_told_apart() -> None:
    _, found = compared_bids(("owner/bids/saltholm-slip.yaml", "yard: Saltholm Slip", "yard: Ostrey Dock"))
    assert {bid.label for bid in found.bids} == {
        "Ostrey Dock (ostrey-dock)",
        "Ostrey Dock (saltholm-slip)",
        "Wrackness Yard",
    }


def test_without_an_estimate_bids_are_compared_with_each_other(tmp_path: Path) -> None:
    compiled, owner = both_sides(bids_package(tmp_path / "p"))
    _, found, _ = compared(compiled, replace(owner, estimate=None))
    assert (found.estimated, found.early_of_estimate, found.estimate_off) == (False, None, ())
    assert found.break_evens == ()
    assert found.deciding is None, "without an estimate no quantity has a range"
    assert [case.ranks for case in found.cases[3:]] == [found.ranks, found.ranks]


def test_a_bid_that_is_not_there_is_no_bid() -> None:
    _, found = compared_bids()
    with pytest.raises(KeyError):
        found.bid("corve")


def test_every_total_is_the_sum_of_its_parts() -> None:
    _, found = compared_bids()
    for bid in found.bids:
        assert sum((one.amount for one in bid.components), Decimal(0)) == bid.total
        assert found.cases[0].totals[bid.name] == bid.total == bid.in_case(found.cases[0].case)
