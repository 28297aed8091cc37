"""The funding ladder: each rung is the best that its money can buy, and what is bought once stays bought."""

from __future__ import annotations

from decimal import Decimal
from itertools import combinations

import numpy as np
import pytest

from tenderwright.pipeline import compile_owner, compile_package
from tenderwright.planning.ladder import Ladder, item_costs, ladders
from tenderwright.planning.trials import GENERAL, Trials, trials
from tenderwright.reading.package import Files
from tests.model.packages import change, put

SETTINGS = "simulation: { within: 50 %, across: 20 %, trials: 5000, seed: 7 }\nlines:"
SCOPE = """weights: { risk: 5, preservation: 3, safety: 4 }
steps: 3
items:
  "110": { must: true, risk: 3 }
  "130": { must: true }
  "140": { safety: 5, risk: 4 }
  "210": { risk: 2, preservation: 1 }
  "320": { risk: 5, preservation: 5, safety: 4, needs: ["140", "210"] }
  "420": { risk: 4, preservation: 3, needs: ["210"] }
"""
FUNDING = """sources:
  - { source: hoped, name: Hoped, amount: 90000, status: hoped for }
  - { source: reserve, name: Reserve, amount: 64000, kept_back: 4000, status: in hand }
  - { source: gift, name: Gift, amount: 9000, status: promised, only: ["320"] }
"""


@pytest.fixture(scope="module")
def funded(starter: Files) -> Files:
    files = change(starter, "owner/rates.yaml", "lines:", SETTINGS)
    return put(put(files, "owner/scope.yaml", SCOPE), "owner/funding.yaml", FUNDING)


def climbed(files: Files) -> tuple[dict[str, Ladder], Trials]:
    compiled = compile_package(files)
    side = compile_owner(files, compiled)
    assert [notice for notice in side.notices if notice.severity == "error"] == []
    assert side.estimate is not None
    run = trials(side.papers, side.estimate, side.schedule)
    return ladders(side.papers, compiled.package, run), run


def test_sources_come_in_the_order_of_how_sure_they_are(funded: Files) -> None:
    made = climbed(funded)[0]["P50"]
    assert [rung.source for rung in made.rungs] == ["", "gift", "hoped"]
    assert [rung.money for rung in made.rungs] == [60000, 69000, 159000]


@pytest.mark.parametrize("confidence", ["P50", "P80"])
def test_no_choice_of_the_same_money_is_worth_more(funded: Files, confidence: str) -> None:
    """Every subset of the items that keeps the rules and that the reserve can pay for, by brute force."""
    found, run = climbed(funded)
    made = found[confidence]
    costs = item_costs(run, 0.5 if confidence == "P50" else 0.8)
    worth = {"110": 15, "130": 0, "140": 40, "210": 13, "320": 56, "420": 29}
    needs = {"320": {"140", "210"}, "420": {"210"}}
    best = 0
    for count in range(len(worth) + 1):
        for chosen in map(set, combinations(worth, count)):
            allowed = {"110", "130"} <= chosen and all(needs.get(item, set()) <= chosen for item in chosen)
            cost = sum((costs[item] for item in chosen), costs.get(GENERAL, Decimal(0)))
            if allowed and cost <= 60000:
                best = max(best, sum(worth[item] for item in chosen))
    assert made.rungs[0].value == best
    assert made.rungs[0].proven


def test_what_is_bought_stays_bought_and_is_paid_for_to_the_cent(funded: Files) -> None:
    for made in climbed(funded)[0].values():
        before: set[str] = set()
        for rung in (*made.rungs, *made.steps):
            assert before <= set(rung.items)
            assert sum(rung.drawn.values()) == rung.cost == sum(made.costs.get(i, Decimal(0)) for i in rung.items)
            assert rung.left >= 0
            before = set(rung.items)


def test_a_gift_for_one_item_pays_for_nothing_else(funded: Files) -> None:
    for made in climbed(funded)[0].values():
        for rung in made.rungs:
            if "320" not in rung.items:
                assert "gift" not in rung.drawn


def test_parts_of_the_items_add_up_to_the_whole(funded: Files) -> None:
    run = climbed(funded)[1]
    whole = sum(item_costs(run, 0.8).values())
    all_of_them = np.sort(np.sum(list(run.by_item.values()), axis=0))
    assert abs(float(whole) - float(all_of_them[3999])) < 0.1  # 4,000 of 5,000 are no more


def test_money_that_does_not_pay_for_the_must_do_buys_nothing(funded: Files) -> None:
    poor = put(funded, "owner/funding.yaml", FUNDING.replace("64000", "24000"))
    made = climbed(poor)[0]["P50"]
    first = made.rungs[0]
    assert first.items == ()
    assert first.missing == made.must_cost - 20000
    assert made.rungs[-1].items


def test_further_steps_buy_what_all_the_sources_leave(funded: Files) -> None:
    poor = put(funded, "owner/funding.yaml", FUNDING.replace("90000", "100").replace("64000", "38000"))
    made = climbed(poor)[0]["P80"]
    assert made.steps
    assert all(step.added and step.more > 0 for step in made.steps)
    assert set(made.steps[-1].items) == {"110", "130", "140", "210", "320", "420"}


def test_there_is_no_ladder_without_scope_or_sources(starter: Files) -> None:
    assert climbed(starter)[0] == {}
