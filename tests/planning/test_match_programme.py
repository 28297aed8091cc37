"""Who pays the match keeps every giver's rule to the cent, and covers as much as any choice that keeps them could."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

from hypothesis import given, settings
from hypothesis import strategies as st

from tenderwright.planning.match_programme import Cells, Giver, Programme

SHARES = [Fraction(0), Fraction(1, 4), Fraction(1, 2), Fraction(333, 1000), Fraction(1), Fraction(2)]


@st.composite
def programmes(draw: st.DrawFn, largest: int, givers: int) -> Programme:
    number = draw(st.integers(1, givers))
    places = frozenset(range(number + 1))
    money = st.integers(0, largest)
    made = []
    for place in range(number + 1):
        counts = frozenset(draw(st.sets(st.sampled_from(sorted(places)))) - {place})
        inside = frozenset(draw(st.sets(st.sampled_from(sorted(places)))) & counts)
        limits = ((inside, draw(st.sampled_from(SHARES[:5]))),) if inside and draw(st.booleans()) else ()
        in_kind = draw(st.none() | st.sampled_from(SHARES[:5]))
        made.append(Giver(draw(money), draw(st.sampled_from(SHARES)), counts, limits, in_kind, draw(st.booleans())))
    sets = st.sets(st.sampled_from(range(number)), max_size=number).map(frozenset)
    groups = draw(st.lists(st.tuples(sets, money, money), min_size=1, max_size=2, unique_by=lambda one: one[0]))
    open_ = sum(one[1] for one in groups)
    asked = sum(one[2] for one in groups)
    kind = draw(money)
    asked_of = made[-1]
    may = asked_of.match * asked <= open_ + min(
        kind, kind if asked_of.in_kind is None else int(asked_of.in_kind * asked_of.match * asked)
    )
    return Programme(tuple(made[:-1]), tuple(groups), open_, kind, asked_of if may else None, asked)


def keeps(programme: Programme, paid: Cells) -> bool:
    """Tell whether a choice keeps every rule, counted in whole cents and exact fractions."""
    told = [programme.of_a_giver(place, paid) for place in range(len(programme.givers))]
    told += [programme.of_the_asked(paid)] if programme.asked_of is not None else []
    return (
        all(wanted <= counts for wanted, counts, _ in told)
        and all(sum(row) <= giver.free for row, giver in zip(paid, programme.givers, strict=True))
        and all(programme.left(paid, group) >= 0 for group in range(len(programme.open_cents)))
        and all(not row[g] or s in one[0] for s, row in enumerate(paid) for g, one in enumerate(programme.open_cents))
    )


@settings(max_examples=40)
@given(programmes(largest=10**9, givers=4))
def test_every_rule_is_kept_to_the_cent(programme: Programme) -> None:
    assert keeps(programme, programme.solve())


@settings(max_examples=40)
@given(programmes(largest=4, givers=2))
def test_nothing_that_keeps_the_rules_covers_more(programme: Programme) -> None:
    groups = range(len(programme.open_cents))
    rows = [
        product(*(range(programme.open_cents[g][1] + 1) if s in programme.open_cents[g][0] else (0,) for g in groups))
        for s in range(len(programme.givers))
    ]
    best = max(sum(map(sum, paid)) for paid in product(*rows) if keeps(programme, paid))
    assert sum(map(sum, programme.solve())) == best


def test_two_that_match_each_other_cover_all_and_one_alone_nothing() -> None:
    both = tuple(Giver(100, Fraction(1), frozenset({1 - place})) for place in range(2))
    work = ((frozenset({0, 1}), 200, 0),)
    assert Programme(both, work, 200, 0, None, 0).solve() == [[100], [100]]
    assert Programme(both[:1], work, 200, 0, None, 0).solve() == [[0]]


def test_what_is_asked_counts_for_a_giver_that_counts_it() -> None:
    work = ((frozenset({0}), 100, 60),)
    counting = Giver(100, Fraction(1), frozenset({1}))
    assert Programme((counting,), work, 100, 0, None, 60).solve() == [[60]]
    assert Programme((Giver(100, Fraction(1), frozenset()),), work, 100, 0, None, 60).solve() == [[0]]


def test_other_grants_count_up_to_a_share() -> None:
    asked_of = Giver(0, Fraction(1), frozenset({0, 1}), ((frozenset({0}), Fraction(1, 2)),))
    givers = (Giver(100, Fraction(0), frozenset()), Giver(100, Fraction(0), frozenset()))
    work = ((frozenset({0, 1}), 100, 100),)
    assert Programme(givers, work, 100, 0, asked_of, 100).solve() == [[50], [50]]
