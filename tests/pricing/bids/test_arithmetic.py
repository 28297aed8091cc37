"""The arithmetic of a bid is corrected by the declared rule, and by nothing else."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given

from tenderwright.model.bid import NOWHERE, Bid, BidLine
from tenderwright.model.evaluation import ConfirmedRate
from tenderwright.pricing.bids.arithmetic import correct, is_slip, status_of
from tenderwright.pricing.bids.corrected import CorrectedBid
from tenderwright.pricing.money import total
from tenderwright.pricing.sections import SECTIONS
from tests.replacing import replace

from .bidding import ABSOLUTE, LINES, UNIT, a_bid, bids, corrected, money, priced, tender_line

AREA = tender_line("420.a", 40)
LENGTH = tender_line("430.a", 1000)


def test_the_rate_governs_over_a_wrong_amount() -> None:
    """Constructed: 40 at 12.50 with 550.00 beside it is 500.00."""
    made = corrected(a_bid({"420.a": priced("12.50", "550.00")}), AREA)
    assert made.lines["420.a"].amount == Decimal("500.00")
    assert made.total == Decimal("500.00")
    (one,) = made.corrections
    assert (one.kind, one.line, one.before, one.after) == (
        "rate governs",
        "420.a",
        Decimal("550.00"),
        Decimal("500.00"),
    )
    assert one.asks


def test_a_slip_of_the_decimal_point_is_told_and_not_mended() -> None:
    """Constructed: 1,000 at 0.85 with 8,500 beside it; 8.50 may be meant, and 8,500 stands until it is confirmed."""
    bid = a_bid({"430.a": priced("0.85", "8500")})
    made = corrected(bid, LENGTH, l430_a=(money(8000),))
    (one,) = made.corrections
    assert (one.kind, one.before, one.after, one.used) == ("decimal slip", money(8500), money("850.00"), False)
    assert "8.5" in one.note
    assert one.asks
    line = made.lines["430.a"]
    assert (line.rate_read, line.amount_read, line.rate, line.amount) == (
        money("0.85"),
        money(8500),
        money("8.5"),
        money(8500),
    )


def test_where_the_rate_is_the_usual_one_the_amount_is_no_slip() -> None:
    made = corrected(a_bid({"430.a": priced("0.85", "8500")}), LENGTH, l430_a=(money(900),))
    assert [one.kind for one in made.corrections] == ["rate governs"]
    assert made.total == money("850.00")


def test_with_nothing_to_tell_by_a_person_is_asked() -> None:
    assert corrected(a_bid({"430.a": priced("0.85", "8500")}), LENGTH).corrections[0].kind == "decimal slip"


@pytest.mark.parametrize(
    ("rate", "amount", "slip"),
    [
        ("0.85", "8500", True),
        ("0.85", "8580", True),
        ("0.85", "8600", False),
        ("850", "850", True),
        ("85000", "8500", False),
        ("0.85", "85", True),
        ("0", "8500", False),
        ("8.5", "8600", False),
    ],
)
def test_a_slip_is_within_a_hundredth_of_a_power_of_ten(rate: str, amount: str, slip: bool) -> None:
    assert is_slip(LENGTH, money(rate), money(amount), ()) is slip


def test_a_lump_sum_slips_too_and_a_mark_up_never() -> None:
    assert is_slip(tender_line("110.a", 1, "lump", "A"), money(8500), money(85000), ())
    assert not is_slip(tender_line("165.d", 30000, "markup", "E"), money(10), money(300000), ())


def test_the_lines_govern_over_the_sub_total_and_the_total() -> None:
    """Constructed: lines of 500 and 850 with a total of 1,450 are 1,350."""
    bid = a_bid(
        {"420.a": priced("12.50", 500), "430.a": priced("0.85", 850)},
        section_totals={"C": money(1450)},
        base_total=money(1450),
        total=money(1450),
    )
    made = corrected(bid, AREA, LENGTH)
    assert made.sections["C"] == made.base == made.total == 1350
    assert made.base_read == made.total_read == 1450
    assert made.total_written
    assert [(one.what, one.own, one.after) for one in made.corrections] == [
        ("Sub-total of section C", True, money(1350)),
        ("Base price", False, money(1350)),
        ("Total", False, money(1350)),
    ]


def test_sub_totals_govern_over_the_total() -> None:
    bid = a_bid({"420.a": priced("12.50", 500)}, section_totals={"C": money(500)}, total=money(550))
    (one,) = corrected(bid, AREA).corrections
    assert (one.what, one.own, one.before, one.after) == ("Total", True, money(550), money(500))


def test_a_total_that_adds_up_what_was_wrong_only_follows() -> None:
    bid = a_bid({"420.a": priced("12.50", 550)}, section_totals={"C": money(550)}, total=money(550))
    assert [(one.kind, one.own) for one in corrected(bid, AREA).corrections] == [
        ("rate governs", True),
        ("sub-total", False),
        ("total", False),
    ]


def test_a_cent_of_rounding_is_no_mistake() -> None:
    bid = a_bid({"420.a": priced("12.5001", "500.01")}, section_totals={"C": money("500.01")}, total=money("500.01"))
    assert corrected(bid, AREA).corrections == ()


def test_four_ways_of_asking_no_money_stay_four() -> None:
    lines = [tender_line(f"420.{letter}", 40) for letter in "abcde"]
    bid = a_bid(
        {
            "420.a": BidLine(rate=Decimal(0), status="zero"),
            "420.b": BidLine(status="included"),
            "420.c": BidLine(status="no bid"),
            "420.d": BidLine(status="empty"),
        }
    )
    made = corrected(bid, *lines)
    assert [made.lines[line.number].status for line in lines] == ["zero", "included", "no bid", "empty", "empty"]
    assert [made.lines[line.number].answered for line in lines] == [True, True, False, False, False]
    assert [made.lines[line.number].rate for line in lines] == [0, 0, None, None, None]
    assert made.total == 0
    assert made.corrections == ()


@pytest.mark.parametrize(
    ("read", "status"),
    [
        (BidLine(), "empty"),
        (BidLine(rate=Decimal(3)), "priced"),
        (BidLine(rate=Decimal(0)), "zero"),
        (BidLine(extension=Decimal(40)), "priced"),
        (BidLine(rate=Decimal(3), status="included"), "included"),
    ],
)
def test_papers_written_by_hand_may_leave_the_word_out(read: BidLine, status: str) -> None:
    assert status_of(read) == status


def test_an_amount_without_a_rate_stands_and_is_asked_about() -> None:
    made = corrected(a_bid({"420.a": BidLine(status="priced", extension=money(520))}), AREA)
    assert (made.lines["420.a"].rate, made.total) == (money(13), money(520))
    assert [(one.kind, one.asks) for one in made.corrections] == [("amount alone", True)]


def test_a_credit_is_taken_off_however_its_amount_is_signed() -> None:
    scrap = tender_line("940.a", 3, "credit", "G")
    for amount in (450, -450):
        made = corrected(a_bid({"940.a": priced(150, amount)}), scrap)
        assert (made.total, made.corrections) == (money(-450), ())
        assert made.lines["940.a"].at(Decimal(5)) == -750


def test_a_mark_up_that_is_included_leaves_the_allowance() -> None:
    pool = tender_line("165.d", 30000, "markup", "E")
    made = corrected(a_bid({"165.d": BidLine(status="included")}), pool)
    assert made.total == 30000
    (one,) = made.corrections
    assert (one.kind, one.asks) == ("allowance", False)


def test_what_the_bidder_confirmed_is_used_and_shown() -> None:
    confirmed = ConfirmedRate(
        bid="corve", line="430.a", rate=money("8.50"), confirmed=date(2027, 2, 19), here=NOWHERE, note="letter"
    )
    bid = a_bid({"430.a": priced("0.85", "8500")})
    made = correct(bid, [LENGTH], UNIT, {"430.a": confirmed})
    (one,) = made.corrections
    assert (one.kind, one.before, one.after, one.asks) == ("confirmed", money(8500), money(8500), False)
    assert one.note == "confirmed 2027-02-19: letter"
    assert (made.lines["430.a"].rate_read, made.lines["430.a"].rate) == (money("0.85"), money("8.50"))


def test_under_total_absolute_nothing_is_corrected_and_a_wrong_sum_disqualifies() -> None:
    bid = a_bid(
        {"420.a": priced("12.50", 550), "430.a": priced("0.85", 850)},
        section_totals={"C": money(1450)},
        total=money(1450),
    )
    confirmed = ConfirmedRate(bid="corve", line="420.a", rate=money(1), confirmed=date(2027, 2, 19), here=NOWHERE)
    made = correct(bid, [AREA, LENGTH], ABSOLUTE, {"420.a": confirmed})
    assert made.corrections == ()
    assert [one.what for one in made.disqualifying] == ["Line 420.a", "Sub-total of section C"]
    assert made.lines["420.a"].amount == 550
    assert (made.beyond_lines, made.total) == (money(50), money(1450))


def test_a_right_bid_is_left_alone_under_both_rules() -> None:
    bid = a_bid(
        {"420.a": priced("12.50", 500)}, section_totals={"C": money(500)}, base_total=money(500), total=money(500)
    )
    for rule in (UNIT, ABSOLUTE):
        made = corrected(bid, AREA, rule=rule)
        assert (made.corrections, made.disqualifying, made.total) == ((), (), money(500))


def test_the_owners_own_sum_is_the_same_whatever_a_bid_says() -> None:
    made = corrected(a_bid({"930.a": priced(1, 1)}), tender_line("930.a", 1, "fixed", "H", fixed="9000"))
    assert (made.total, made.lines["930.a"].status) == (money(9000), "fixed")


def written_again(bid: Bid, made: CorrectedBid) -> Bid:
    """Write a corrected bid as if the bidder had returned it so: his own rates, and the amounts that count."""
    lines = {
        number: replace(line, extension=made.lines[number].amount) if made.lines[number].answered else line
        for number, line in bid.lines.items()
    }
    sums = {code: made.sections[code] for code in bid.section_totals}
    return replace(bid, lines=lines, section_totals=sums, base_total=made.base, total=made.total)


@given(bids())
def test_to_correct_what_is_corrected_changes_nothing(bid: Bid) -> None:
    made = correct(bid, LINES, UNIT)
    again = correct(written_again(bid, made), LINES, UNIT)
    assert {number: one.amount for number, one in again.lines.items()} == {n: o.amount for n, o in made.lines.items()}
    assert (again.sections, again.base, again.total) == (made.sections, made.base, made.total)
    # What only the bidder can settle stays to be settled.
    assert {one.kind for one in again.corrections} <= {"decimal slip", "amount alone"}


@given(bids())
def test_sums_are_those_of_the_lines(bid: Bid) -> None:
    for rule in (UNIT, ABSOLUTE):
        made = correct(bid, LINES, rule)
        lines = total([one.amount for one in made.lines.values()])
        assert total(list(made.sections.values())) == lines
        assert made.base == total([made.sections[section.code] for section in SECTIONS if section.in_base])
        assert made.total == lines + made.beyond_lines
        if rule == ABSOLUTE and bid.total is not None:
            assert made.total == bid.total


@given(bids())
def test_what_is_not_used_does_not_move_the_total(bid: Bid) -> None:
    made = correct(bid, LINES, UNIT)
    read = total([one.amount_read for one in made.lines.values()])
    used = [one for one in made.corrections if one.line and one.used]
    assert made.total - read == total([one.difference for one in used]) + _cents_of_rounding(made)


def _cents_of_rounding(made: CorrectedBid) -> Decimal:
    return total([one.amount - one.amount_read for one in made.lines.values() if one.correction is None])
