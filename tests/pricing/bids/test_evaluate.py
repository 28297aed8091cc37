"""The evaluated price is the sum of its parts, by the published formula and to the cent."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.model.bid import NOWHERE, Bid, BidLine, Exclusion
from tenderwright.model.evaluation import Adder, Evaluation, OwnersCosts, SettledRemark, StatedCost
from tenderwright.model.tender import CONTINGENT, DAYS, ESTIMATE, POOL, TOWING, TRAVEL, Tender
from tenderwright.pipeline import compile_package, read
from tenderwright.pricing.bids.arithmetic import correct
from tenderwright.pricing.bids.cases import cases, ranks
from tenderwright.pricing.bids.evaluate import EvaluatedBid, evaluate
from tenderwright.pricing.money import cents, total
from tenderwright.starter.write import write_starter
from tests.replacing import replace

from .bidding import LINES, UNIT, USUAL, a_bid, bids, money, priced


@cache
def tender(day_cost: str | None = "850", *counts: str) -> Tender:
    """Give the starter's tender with a day cost, and all counted where nothing is named."""
    with TemporaryDirectory() as folder:
        write_starter(Path(folder) / "p")
        made = compile_package(read(Path(folder) / "p")).package.tender
    assert made is not None
    cost = Decimal(day_cost) if day_cost is not None else None
    return replace(made, award=replace(made.award, day_cost=cost, counts=counts or (*USUAL, DAYS, TOWING, TRAVEL)))


def evaluated(
    bids: dict[str, Bid], by: Tender | None = None, said: Evaluation | None = None
) -> dict[str, EvaluatedBid]:
    """Evaluate bids for the small tender."""
    by = by or tender()
    counted = by.award.components
    published = cases(LINES, counted)[0]
    made = {name: correct(bid, LINES, UNIT, components=counted) for name, bid in bids.items()}
    return {name: evaluate(name, bid.yard, bid, made, by, said, published) for name, bid in bids.items()}


FULL = a_bid(
    {
        "110.a": priced(21000),
        "110.b": priced(640),
        "210.a": priced(2800),
        "310.a": priced("19.5"),
        "310.b": priced(31),
        "165.a": priced(58),
        "165.b": priced(15),
        "810.a": priced(5200),
        "940.a": priced(140),
    },
    days=37,
)


def parts(one: EvaluatedBid) -> dict[str, Decimal]:
    return {part.name: part.amount for part in one.components}


def test_every_part_by_hand() -> None:
    costs = OwnersCosts(here=NOWHERE, towing=StatedCost(amount=money(3100)), travel=StatedCost(amount=money("412.50")))
    one = evaluated({"corve": FULL}, said=Evaluation(here=NOWHERE, bids={"corve": costs}))["corve"]
    assert parts(one) == {
        "A": 21000,
        "B": 2800,
        "C": 19500,
        "D": 6 * 640 + 400 * 31,
        "E": 300 * 58 + 20000 * money("1.15"),
        "F": 5200,
        "G": -420,
        "H": 9000,
        "lines": 0,
        "exclusions": 0,
        "days": 37 * 850,
        "towing": 3100,
        "travel": money("412.50"),
    }
    assert one.total == total(list(parts(one).values()))


def test_options_that_are_not_counted_are_no_part() -> None:
    one = evaluated({"corve": FULL}, tender("850", CONTINGENT, POOL, DAYS))["corve"]
    assert "F" not in parts(one)
    assert one.total == evaluated({"corve": FULL})["corve"].total - 5200
    assert one.slope("810.a") == 0


def test_without_a_day_cost_days_are_no_part() -> None:
    one = evaluated({"corve": FULL}, tender(None))["corve"]
    assert one.days is None
    assert "days" not in parts(one)


def test_a_part_that_is_counted_and_has_no_figure_is_wanted() -> None:
    none = evaluated({"corve": replace(FULL, days=None)}, tender(None))["corve"]
    assert (none.days, none.place) == (None, ())
    assert [words.partition(":")[0] for words in none.wanted] == [
        "the owner's cost of a day",
        "the days from arrival to redelivery",
        "the owner's cost of towing",
        "the owner's cost of travel",
    ]
    costs = OwnersCosts(
        here=NOWHERE,
        owner_days=StatedCost(amount=money(900)),
        towing=StatedCost(amount=money(0)),
        travel=StatedCost(amount=money(0)),
    )
    said = Evaluation(here=NOWHERE, bids={"corve": costs})
    assert evaluated({"corve": replace(FULL, days=None)}, tender(None), said)["corve"].wanted == ()


def test_what_is_not_counted_is_no_part_whatever_the_owner_writes() -> None:
    costs = OwnersCosts(here=NOWHERE, towing=StatedCost(amount=money(3100)), day_cost=money(900))
    one = evaluated({"corve": FULL}, tender("850", CONTINGENT), Evaluation(here=NOWHERE, bids={"corve": costs}))[
        "corve"
    ]
    assert set(parts(one)) == {"A", "B", "C", "D", "G", "H", "lines", "exclusions"}
    assert one.total == 21000 + 2800 + 19500 + 6 * 640 + 400 * 31 - 420 + 9000
    assert one.wanted == ()


def test_each_remark_waits_until_it_is_settled_or_priced() -> None:
    bid = replace(
        FULL,
        lines={**FULL.lines, "310.a": replace(FULL.lines["310.a"], note="small inserts")},
        exclusions=(
            Exclusion(text="One shift only", kind="assumption"),
            Exclusion(text="Nylon in place of oak", kind="alternative", lines=("210.a",)),
        ),
    )
    by = tender("850", *USUAL)
    assert evaluated({"corve": bid}, by)["corve"].wanted == (
        "the assumption “One shift only” settled, under `remarks` in owner/evaluation.yaml",
        "the alternative at line 210.a “Nylon in place of oak” settled, under `remarks` in owner/evaluation.yaml",
        "the remark at line 310.a “small inserts” settled, under `remarks` in owner/evaluation.yaml",
    )
    said = Evaluation(
        here=NOWHERE,
        adders=(Adder(bid="corve", exclusion="Nylon", amount=money(700), why="letter", here=NOWHERE),),
        remarks=(
            SettledRemark(bid="corve", remark="One  shift", by="Ship manager", why="as tendered", here=NOWHERE),
            SettledRemark(bid="corve", lines=("310.a",), by="Ship manager", why="no effect", here=NOWHERE),
        ),
    )
    one = evaluated({"corve": bid}, by, said)["corve"]
    assert one.wanted == ()
    assert [(remark.by, remark.why) for remark in one.remarks] == [
        ("Ship manager", "as tendered"),
        ("", "letter"),
        ("Ship manager", "no effect"),
    ]
    assert parts(one)["exclusions"] == 700


def test_the_tender_may_price_what_is_left_out_at_the_estimate() -> None:
    short = replace(FULL, lines={**FULL.lines, "310.b": BidLine(status="no bid")})
    by = tender("850", *USUAL)
    at_estimate = replace(by, award=replace(by.award, exclusions=ESTIMATE))
    assert parts(evaluated({"corve": short, "sallow": FULL}, by)["corve"])["lines"] == 400 * 31
    assert parts(evaluated({"corve": short, "sallow": FULL}, at_estimate)["corve"])["lines"] == 400 * 30


@pytest.mark.parametrize(
    ("costs", "amount"),
    [
        (OwnersCosts(here=NOWHERE, day_cost=money(610)), 37 * 610),
        (OwnersCosts(here=NOWHERE, days=40), 40 * 850),
        (OwnersCosts(here=NOWHERE, days=0), 0),
        (OwnersCosts(here=NOWHERE, day_cost=money(0)), 0),
        (OwnersCosts(here=NOWHERE, owner_days=StatedCost(amount=money("9999.99")), days=40), money("9999.99")),
    ],
)
def test_the_owner_may_state_days_their_cost_or_all_together(costs: OwnersCosts, amount: Decimal) -> None:
    one = evaluated({"corve": FULL}, said=Evaluation(here=NOWHERE, bids={"corve": costs}))["corve"]
    assert one.days is not None
    assert one.days.amount == amount


def test_lines_not_answered_are_priced_by_the_other() -> None:
    short = replace(FULL, lines={**FULL.lines, "310.b": BidLine(status="no bid")})
    made = evaluated({"corve": short, "sallow": FULL})
    assert parts(made["corve"])["lines"] == 400 * 31
    assert made["corve"].total == made["sallow"].total
    assert made["corve"].slope("310.b") == made["sallow"].slope("310.b") == 31


def test_base_and_options_by_hand() -> None:
    published, base, options, _, _ = cases(LINES, USUAL)
    one = evaluated({"corve": FULL})["corve"]
    assert one.in_case(published) == one.total
    assert one.in_case(base) == 21000 + 2800 + 19500 - 420 + 9000
    assert one.in_case(options) == one.in_case(base) + 5200


@given(bids(), bids(), st.booleans())
def test_the_whole_is_the_sum_of_its_parts_in_every_case(one: Bid, other: Bid, options: bool) -> None:
    by = tender("850", *(USUAL if options else (CONTINGENT, POOL)), DAYS)
    made = evaluated({"one": one, "other": other}, by)
    published = cases(LINES, by.award.components)[0]
    for bid in made.values():
        assert bid.total == total([part.amount for part in bid.components]) == bid.in_case(published)
        assert all(part.amount == cents(part.amount) for part in bid.components)
        assert bid.added >= 0


@given(bids(), bids(), bids(), st.permutations(["a", "b", "c"]))
def test_the_order_of_the_files_does_not_matter(one: Bid, two: Bid, three: Bid, order: list[str]) -> None:
    returned = dict(zip("abc", (one, two, three), strict=True))
    plain = {name: bid.total for name, bid in evaluated(returned).items()}
    turned = {name: bid.total for name, bid in evaluated({name: returned[name] for name in order}).items()}
    assert plain == turned
    assert ranks(plain) == ranks(turned)


SCALED = tuple(line.number for line in LINES if line.form not in ("fixed", "markup"))


@given(
    st.fixed_dictionaries({number: st.integers(0, 100_000) for number in SCALED}),
    st.integers(2, 9),
)
def test_a_bid_with_all_its_rates_scaled_scales(rates: dict[str, int], by: int) -> None:
    """Constructed: whole rates and quantities, so that nothing is rounded; the allowance and owner's sums stay."""

    def bid(factor: int) -> EvaluatedBid:
        lines = {number: priced(rate * factor) for number, rate in rates.items()} | {"165.b": priced(0)}
        return evaluated({"corve": a_bid(lines, days=37)})["corve"]

    one, many = parts(bid(1)), parts(bid(by))
    for name in "ABCDFG":
        assert many[name] == by * one[name]
    assert many["E"] - 20000 == by * (one["E"] - 20000)
    assert (many["H"], many["days"]) == (one["H"], one["days"])


def test_equal_totals_share_a_rank() -> None:
    assert ranks({"a": money(2), "b": money(1), "c": money(2), "d": money(3)}) == {"a": 2, "b": 1, "c": 2, "d": 4}


def test_the_day_of_a_bid_is_no_part_of_its_price() -> None:
    assert evaluated({"corve": replace(FULL, received=date(2030, 1, 1))})["corve"].total == (
        evaluated({"corve": FULL})["corve"].total
    )
