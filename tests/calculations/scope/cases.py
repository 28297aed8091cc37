"""Small works for the tests, and the best scopes found by trying every choice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import combinations, product

from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.scope.works import Source, Works

Choice = tuple[bool, ...]

KNAPSACK = Works((500, 700, 400, 300), (16, 22, 12, 8), (False,) * 4)
"""Winston and Venkataramanan, Introduction to Mathematical Programming, the Stockco example; thousands as hundreds."""


def plain(costs: Sequence[int], values: Sequence[int]) -> Works:
    return Works(tuple(costs), tuple(values), (False,) * len(costs))


@st.composite
def works(draw: st.DrawFn, most: int = 7) -> Works:
    count = draw(st.integers(1, most))
    money = st.one_of(st.integers(0, 9).map(lambda n: n * 100_000), st.integers(0, 2_000_000_00), st.integers(0, 12))
    places = st.integers(0, count - 1)
    made = Works(
        tuple(draw(st.lists(money, min_size=count, max_size=count))),
        tuple(draw(st.lists(st.integers(0, 9), min_size=count, max_size=count))),
        tuple(draw(st.lists(st.sampled_from([False, False, False, True]), min_size=count, max_size=count))),
        tuple(draw(st.lists(st.tuples(places, places), max_size=4))),
        tuple(draw(st.lists(st.tuples(places, places), max_size=2))),
        tuple(draw(st.lists(st.tuples(st.integers(0, 2), st.frozensets(places, max_size=5)), max_size=2))),
    )
    try:
        made.bound_to()
    except OutOfRange:
        return Works(made.costs, made.values, (False,) * count, made.needs, made.excludes, made.at_most)
    return made


@st.composite
def budgets(draw: st.DrawFn, made: Works) -> int:
    """Draw an amount, often just what some of the items cost, or a cent more or less."""
    some = sum(cost for cost in made.costs if draw(st.booleans()))
    return max(0, some + draw(st.sampled_from([0, 0, 1, -1, 50_000, -50_000])))


@st.composite
def sources_for(draw: st.DrawFn, made: Works, matches: Sequence[float] = (0.0,), most: int = 3) -> list[Source]:
    places = st.frozensets(st.integers(0, len(made.costs) - 1))
    return [
        Source(draw(budgets(made)), draw(st.one_of(st.none(), places)), draw(st.sampled_from(matches)))
        for _ in range(draw(st.integers(1, most)))
    ]


def choices(made: Works) -> Iterator[Choice]:
    """Yield every choice that keeps the rules."""
    for chosen in product((False, True), repeat=len(made.costs)):
        held = all(taken or not must for taken, must in zip(chosen, made.must, strict=True))
        needs = all(chosen[needed] or not chosen[needing] for needing, needed in made.needs)
        few = all(sum(chosen[place] for place in group) <= most for most, group in made.at_most)
        if held and needs and few and not any(chosen[one] and chosen[other] for one, other in made.excludes):
            yield chosen


def unpaid(made: Works, sources: Sequence[Source], chosen: Choice) -> int:
    """Give what the sources leave unpaid, by the greatest excess over all groups of sources (Hall, deficiency form)."""
    costs = {place: cost for place, cost in enumerate(made.costs) if chosen[place]}
    caps = [min(own.amount, int(sum(costs.values()) / (1 + Fraction(own.match)))) for own in sources]
    excess = []
    for size in range(len(sources) + 1):
        for group in combinations(range(len(sources)), size):
            others = [own for at, own in enumerate(sources) if at not in group]
            theirs = sum(cost for place, cost in costs.items() if not any(own.pays(place) for own in others))
            excess.append(theirs - sum(caps[at] for at in group))
    return max(0, *excess)


def best(made: Works, sources: Sequence[Source], keep: Sequence[int] = ()) -> tuple[int, int] | None:
    """Give the greatest worth that can be paid and the least cost of it, by trying every choice."""
    paid = [
        (-made.value(chosen), made.cost(chosen))
        for chosen in choices(made)
        if all(chosen[place] for place in keep) and not unpaid(made, sources, chosen)
    ]
    return (-min(paid)[0], min(paid)[1]) if paid else None
