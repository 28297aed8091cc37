from __future__ import annotations

import networkx as nx
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.scope.payment import missing, pay
from tenderwright.calculations.scope.works import Source

from .cases import sources_for, works


@st.composite
def bills(draw: st.DrawFn, matches: tuple[float, ...] = (0.0,)) -> tuple[tuple[int, ...], list[Source]]:
    made = draw(works())
    return made.costs, draw(sources_for(made, matches))


@given(bills((0.0, 0.5, 1.0, 0.1)))
def test_nobody_pays_more_than_he_may(bill: tuple[tuple[int, ...], list[Source]]) -> None:
    costs, sources = bill
    drawn = pay(costs, sources)
    assert [sum(row) <= own.amount for row, own in zip(drawn, sources, strict=True)] == [True] * len(sources)
    assert all(sum(row[place] for row in drawn) <= cost for place, cost in enumerate(costs))
    for row, own in zip(drawn, sources, strict=True):
        assert all(amount >= 0 and (own.pays(place) or not amount) for place, amount in enumerate(row))
        if not missing(costs, sources):
            assert sum(costs) - sum(row) >= own.match * sum(row) - 1e-6


@given(bills())
def test_as_much_is_paid_as_the_greatest_flow(bill: tuple[tuple[int, ...], list[Source]]) -> None:
    # Reference: networkx, greatest flow.
    costs, sources = bill
    assert sum(map(sum, pay(costs, sources))) == flow(costs, sources, len(sources))


@given(bills())
def test_each_source_is_drawn_on_before_those_after_it(bill: tuple[tuple[int, ...], list[Source]]) -> None:
    # Reference: networkx; the first sources together pay as much as they could without the others.
    costs, sources = bill
    drawn = [sum(row) for row in pay(costs, sources)]
    for first in range(1, len(sources) + 1):
        assert sum(drawn[:first]) == flow(costs, sources, first)


def flow(costs: tuple[int, ...], sources: list[Source], first: int) -> int:
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(["all", "paid"])
    for at, own in enumerate(sources[:first]):
        graph.add_edge("all", f"source {at}", capacity=own.amount)
        for place in range(len(costs)):
            if own.pays(place):
                graph.add_edge(f"source {at}", f"item {place}")
    for place, cost in enumerate(costs):
        graph.add_edge(f"item {place}", "paid", capacity=cost)
    return int(nx.maximum_flow_value(graph, "all", "paid"))


@settings(max_examples=50)
@given(bills((0.0, 0.5, 1.0, 3.0)))
def test_match_as_it_is_stated_and_as_it_is_reckoned(bill: tuple[tuple[int, ...], list[Source]]) -> None:
    # Reference: scipy.optimize.linprog on the match as stated, with a further source that pays what is missing.
    costs, sources = bill
    size, items = len(sources), len(costs)
    objective = np.concatenate([np.zeros(size * items), np.ones(items)])
    bounds = [(0, None if own.pays(place) else 0) for own in sources for place in range(items)] + [(0, None)] * items
    everyone = np.tile(np.eye(items), size + 1)
    rows, limits = [], []
    for at, own in enumerate(sources):
        mine = np.zeros((size + 1, items))
        mine[at] = 1.0
        rows += [mine.ravel(), (mine * own.match - (1.0 - mine[:, :1])).ravel()]
        limits += [own.amount, 0.0]
    found = linprog(objective, np.array(rows), np.array(limits), everyone, np.array(costs, np.float64), bounds)
    assert found.status == 0
    assert missing(costs, sources) == pytest.approx(found.fun, abs=size + 1e-6 * sum(costs))


def test_one_pays_for_another_item_so_that_the_next_can_pay() -> None:
    # Derived: the gift for item 1 only cannot pay for item 0, so that the first source leaves item 1 to it.
    assert pay((600, 500), [Source(800), Source(500, frozenset({1}))]) == ((600, 200), (0, 300))
    assert pay((600, 500), [Source(500, frozenset({1})), Source(800)]) == ((0, 500), (600, 0))
    assert pay((300, 300), [Source(300), Source(300, frozenset({0}))]) == ((0, 300), (300, 0))


def test_one_to_one_match_pays_for_half() -> None:
    # Derived: one of others for one drawn.
    grant = Source(1000, None, 1.0)
    assert pay((1001,), [grant, Source(5000)]) == ((500,), (501,))
    assert missing((1001,), [grant]) == 501
    assert grant.most(10_000) == 1000
    # Two sources that both ask for a match may match each other.
    assert missing((1000,), [grant, grant]) == 0


def test_a_match_of_a_tenth_is_a_tenth() -> None:
    # Derived: 1100/(1 + 0.1) is 1000 exactly, though 0.1 has no end in binary.
    assert Source(5000, None, 0.1).most(1100) == 1000


def test_nothing_to_pay_and_nobody_to_pay() -> None:
    assert pay((), [Source(5)]) == ((),)
    assert pay((5,), []) == ()
    assert missing((5,), []) == 5


def test_what_is_no_source_is_refused() -> None:
    for amount in (-1, 1.5):
        with pytest.raises(OutOfRange, match="cents"):
            Source(amount)  # type: ignore[arg-type]
    for match in (-0.1, float("nan"), float("inf")):
        with pytest.raises(OutOfRange, match="match"):
            Source(1, None, match)
