from __future__ import annotations

from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.calculations.scope.best_scope import best_scope
from tenderwright.calculations.scope.frontier import Step, next_step
from tenderwright.calculations.scope.further import shortfall
from tenderwright.calculations.scope.works import Source, Works

from .cases import KNAPSACK, Choice, best, choices, plain, sources_for, unpaid, works


def with_all(made: Works, held: tuple[int, ...]) -> list[Choice]:
    return [chosen for chosen in choices(made) if all(chosen[place] for place in held)]


def ladder(made: Works, sources: list[Source], rungs: int) -> list[Step]:
    """Give the best scope for the sources, with what they lack for what must be done, and up to so many steps above."""
    lacking = shortfall(made, sources)
    scope = best_scope(made, [*sources, Source(lacking.money)])
    assert scope is not None
    steps = [Step(lacking.money, lacking.money, scope.items, scope, lacking.proven and scope.proven)]
    while len(steps) <= rungs and (step := next_step(made, sources, steps[-1].scope, steps[-1].further)):
        steps.append(step)
    return steps


@settings(max_examples=60)
@given(st.data())
def test_each_step_is_the_least_that_adds_worth_and_the_best_for_it(data: st.DataObject) -> None:
    made = data.draw(works(6))
    sources = data.draw(sources_for(made))
    steps = ladder(made, sources, 3)
    first = steps[0]
    assert first.further == first.more == min(unpaid(made, sources, chosen) for chosen in choices(made))
    for below, step in pairwise(steps):
        higher = [c for c in with_all(made, below.scope.items) if made.value(c) > below.scope.value]
        assert step.further == min(unpaid(made, sources, chosen) for chosen in higher)
        assert step.more == step.further - below.further > 0
        assert set(step.added) == set(step.scope.items) - set(below.scope.items)
    for step, keep in zip(steps, [(), *(step.scope.items for step in steps)], strict=False):
        assert (step.scope.value, step.scope.cost) == best(made, [*sources, Source(step.further)], keep)
        assert step.proven
        assert step.scope.by_source[-1] <= step.further
    if len(steps) <= 3:
        top = steps[-1].scope
        assert max(made.value(chosen) for chosen in with_all(made, top.items)) == top.value


def test_rungs_of_a_published_example() -> None:
    # Winston and Venkataramanan, Stockco, from nothing: by hand the least that buys anything is 3 (item 4, worth 8);
    # with it kept, 4 more buy item 3, then 5 item 1, then 7 item 2.
    steps = ladder(KNAPSACK, [], 9)
    assert [step.further for step in steps] == [0, 300, 700, 1200, 1900]
    assert [step.added for step in steps] == [(), (3,), (2,), (0,), (1,)]
    assert [step.scope.value for step in steps] == [0, 8, 20, 36, 58]
    assert len(ladder(KNAPSACK, [], 2)) == 3


def test_a_gift_for_one_item_is_used_before_further_money() -> None:
    made = plain((1000, 1000), (5, 5))
    sources = [Source(600, frozenset({1}))]
    scope = best_scope(made, sources)
    assert scope is not None
    step = next_step(made, sources, scope)
    assert step is not None
    assert (step.further, step.added, step.scope.by_source) == (400, (1,), (600, 400))
    last = next_step(made, sources, step.scope, step.further)
    assert last is not None
    assert (last.further, last.more, last.added) == (1400, 1000, (0,))
    assert next_step(made, sources, last.scope, last.further) is None


def test_where_the_must_do_items_are_short_the_first_rung_closes_the_gap() -> None:
    made = Works((1000, 300), (2, 5), (True, False))
    steps = ladder(made, [Source(800)], 5)
    assert [(step.further, step.more, step.added) for step in steps] == [(200, 200, (0,)), (500, 300, (1,))]
