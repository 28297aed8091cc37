"""What a bid leaves out is priced at the highest figure of the others, else the estimate, else by nobody."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.model.bid import NOWHERE, Bid, BidLine, Exclusion
from tenderwright.model.evaluation import Adder
from tenderwright.pricing.bids.adders import Others, PricedAdder, priced_adders, unsettled
from tenderwright.pricing.bids.tendered import TenderLine

from .bidding import a_bid, corrected, money, priced, tender_line

EVERY = frozenset("ABCDEFGH")
WASTE = tender_line("160.a", 8, estimate=640)
FIRE = tender_line("135.b", 600)
SCRAP = tender_line("940.a", 3, "credit", "G", 150)


def adders(
    bid: Bid, *others: Bid, lines: tuple[TenderLine, ...] = (WASTE, FIRE), said: tuple[Adder, ...] = ()
) -> tuple[PricedAdder, ...]:
    made = {f"b{place}": corrected(one, *lines) for place, one in enumerate(others)}
    return priced_adders(bid, corrected(bid, *lines), Others(made), said)


def amounts(found: tuple[PricedAdder, ...]) -> list[Decimal]:
    return [one.amount({}, EVERY) for one in found]


def test_a_line_not_bid_takes_the_highest_rate_of_the_others() -> None:
    bid = a_bid({"160.a": BidLine(status="no bid"), "135.b": priced(45)})
    found = adders(bid, a_bid({"160.a": priced(500)}), a_bid({"160.a": priced(700)}))
    (one,) = found
    assert (one.kind, one.what, amounts(found)) == ("line", "Line 160.a, no bid", [money(5600)])
    assert (one.lifts[0].source, one.lifts[0].of) == ("other bid", "b1")


def test_an_included_line_of_another_is_no_price_and_a_zero_is() -> None:
    bid = a_bid({"160.a": BidLine(), "135.b": priced(45)})
    assert amounts(adders(bid, a_bid({"160.a": BidLine(status="included")}))) == [money(5120)]
    assert amounts(adders(bid, a_bid({"160.a": BidLine(rate=Decimal(0), status="zero")}))) == [0]


def test_where_no_other_bid_prices_it_the_estimate_does_and_else_nobody() -> None:
    bid = a_bid({})
    waste, fire = adders(bid, a_bid({}))
    assert (waste.lifts[0].source, waste.amount({}, EVERY)) == ("estimate", money(5120))
    assert (fire.nobody, fire.amount({}, EVERY)) == (("135.b",), money(0))


def test_a_credit_that_is_not_offered_stands_at_nothing() -> None:
    bid = a_bid({"940.a": BidLine(status="no bid")})
    assert adders(bid, a_bid({"940.a": priced(150)}), lines=(SCRAP,)) == ()


def test_an_exclusion_of_a_line_that_asks_no_money_is_priced_without_asking() -> None:
    bid = a_bid(
        {"160.a": BidLine(status="included"), "135.b": priced(45)},
        exclusions=(
            Exclusion(text="Disposal of waste", lines=("160.a",)),
            Exclusion(text="Nights", lines=("135.b",), kind="assumption"),
        ),
    )
    (one,) = adders(bid, a_bid({"160.a": priced(700)}))
    assert (one.kind, one.what, one.amount({}, EVERY)) == ("exclusion", "Disposal of waste", money(5600))


def test_an_exclusion_of_a_line_that_is_priced_is_left_to_the_owner() -> None:
    exclusion = Exclusion(text="Disposal of waste", lines=("160.a",))
    bid = a_bid({"160.a": priced(200), "135.b": priced(45)}, exclusions=(exclusion,))
    assert adders(bid, a_bid({"160.a": priced(700)})) == ()
    made = corrected(bid, WASTE, FIRE)
    assert unsettled(bid, made, ()) == [exclusion]
    said = Adder(bid="corve", why="asked", here=NOWHERE, exclusion="disposal of")
    assert unsettled(bid, made, (said,)) == []
    (one,) = adders(bid, a_bid({"160.a": priced(700)}), said=(said,))
    assert one.amount({}, EVERY) == money(4000), "only what the bid's own 200 lacks of 700, eight times"


def test_what_the_owner_states_goes_before_all_else() -> None:
    bid = a_bid({"160.a": BidLine(status="no bid"), "135.b": priced(45)})
    said = (Adder(bid="corve", why="letter", here=NOWHERE, lines=("160.a",), amount=money(4200)),)
    (one,) = adders(bid, a_bid({"160.a": priced(700)}), said=said)
    assert (one.stated, one.why, one.amount({}, EVERY)) == (money(4200), "letter", money(4200))


def test_the_owner_may_take_the_estimate() -> None:
    bid = a_bid({"160.a": BidLine(status="no bid"), "135.b": priced(45)})
    said = (Adder(bid="corve", why="one bid alone", here=NOWHERE, lines=("160.a",), take="estimate"),)
    assert amounts(adders(bid, a_bid({"160.a": priced(700)}), said=said)) == [money(5120)]


def test_a_dearer_line_of_its_own_is_not_made_cheaper() -> None:
    bid = a_bid({"160.a": priced(900), "135.b": priced(45)})
    said = (Adder(bid="corve", why="why", here=NOWHERE, lines=("160.a",)),)
    assert amounts(adders(bid, a_bid({"160.a": priced(700)}), said=said)) == [0]


def test_an_adder_counts_with_the_sections_of_its_lines_and_with_the_quantity() -> None:
    bid = a_bid({"160.a": BidLine(status="no bid"), "135.b": priced(45)})
    (one,) = adders(bid, a_bid({"160.a": priced(700)}))
    assert one.amount({}, frozenset("AD")) == 0
    assert one.amount({"160.a": Decimal(10)}, EVERY) == money(7000)
    said = (Adder(bid="corve", why="letter", here=NOWHERE, lines=("160.a",), amount=money(4200)),)
    (stated,) = adders(bid, said=said)
    assert stated.amount({}, frozenset("AD")) == 0
    assert stated.amount({"160.a": Decimal(10)}, EVERY) == money(4200)


def test_an_exclusion_of_several_lines_takes_the_figure_of_one_bidder() -> None:
    bid = a_bid({}, exclusions=(Exclusion(text="Waste and fire watch", lines=("160.a", "135.b")),))
    one = a_bid({"160.a": priced(700), "135.b": priced(40)})
    other = a_bid({"160.a": priced(500), "135.b": priced(45)})
    (found,) = adders(bid, one, other)
    assert [lift.of for lift in found.lifts] == ["b1", "b1"]
    assert found.amount({}, EVERY) == money(8 * 500 + 600 * 45), "31 000; the highest of each line would be 32 600"


def test_who_prices_only_a_part_of_the_work_is_not_held_to_price_it() -> None:
    bid = a_bid({}, exclusions=(Exclusion(text="Waste and fire watch", lines=("160.a", "135.b")),))
    part = a_bid({"160.a": priced(9000), "135.b": BidLine(status="included")})
    whole = a_bid({"160.a": priced(500), "135.b": priced(45)})
    assert amounts(adders(bid, part, whole)) == [money(31000)]
    (found,) = adders(bid, part)
    assert (found.nobody, found.amount({}, EVERY)) == (("135.b",), money(8 * 640)), "the estimate prices one line"


def test_where_a_bid_prices_part_of_what_it_leaves_out_only_the_difference_is_added() -> None:
    bid = a_bid({"160.a": priced(900), "135.b": priced(10)})
    said = (Adder(bid="corve", why="why", here=NOWHERE, lines=("160.a", "135.b")),)
    (found,) = adders(bid, a_bid({"160.a": priced(700), "135.b": priced(45)}), said=said)
    assert found.amount({}, EVERY) == money(8 * 700 + 600 * 45 - 8 * 900 - 600 * 10)
    assert found.slope("135.b", EVERY) == 35


def test_lines_of_one_item_that_are_left_open_are_one_work() -> None:
    lines = (WASTE, tender_line("160.b", 10), FIRE)
    one = a_bid({"160.a": priced(700), "160.b": priced(10), "135.b": priced(45)})
    other = a_bid({"160.a": priced(500), "160.b": priced(90), "135.b": priced(40)})
    found = adders(a_bid({"160.b": BidLine(status="no bid")}), one, other, lines=lines)
    assert [each.what for each in found] == ["Lines 160.a, empty; 160.b, no bid", "Line 135.b, empty"]
    assert amounts(found) == [money(8 * 700 + 10 * 10), money(600 * 45)]
