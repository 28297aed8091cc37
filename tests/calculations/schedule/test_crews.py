from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schedule.crews import crew_links
from tenderwright.calculations.schedule.critical_path import Path, critical_path

from .networks import Links, random_networks

Case = tuple[list[float], Links, list[str], dict[str, int]]


@st.composite
def crewed(draw: st.DrawFn, most: int = 10) -> Case:
    durations, links = draw(random_networks(most))
    needs = draw(
        st.lists(st.sampled_from(["", "welders", "painters"]), min_size=len(durations), max_size=len(durations))
    )
    return durations, links, needs, {"welders": draw(st.integers(1, 3)), "painters": draw(st.integers(1, 2))}


def laid_out(case: Case) -> tuple[Path, tuple[tuple[int, int], ...]]:
    durations, links, needs, capacity = case
    extra = crew_links(durations, links, needs, capacity)
    return critical_path(durations, [*links, *extra]), extra


def most_at_once(path: Path, places: list[int]) -> int:
    """Count the most activities that run together; it is reached where one of them starts."""
    spans = [(path.early_start[place], path.early_finish[place]) for place in places]
    return max((sum(start <= at < finish for start, finish in spans) for at, _ in spans), default=0)


@given(crewed())
def test_no_more_crews_work_at_once_than_there_are(case: Case) -> None:
    durations, _, needs, capacity = case
    path, _ = laid_out(case)
    for crew, count in capacity.items():
        assert most_at_once(path, [place for place, need in enumerate(needs) if need == crew]) <= count
    assert path.length <= sum(durations) * (1 + 1e-12)


@given(crewed(), st.data())
def test_the_links_keep_crews_within_their_number_whatever_the_durations(case: Case, data: st.DataObject) -> None:
    durations, links, needs, capacity = case
    _, extra = laid_out(case)
    count = len(durations)
    other = data.draw(st.lists(st.integers(1, 9).map(float), min_size=count, max_size=count))
    path = critical_path(other, [*links, *extra])
    for crew, number in capacity.items():
        places = [place for place, need in enumerate(needs) if need == crew and durations[place] > 0]
        assert most_at_once(path, places) <= number


@given(crewed())
def test_crews_only_lengthen_and_links_join_one_crew(case: Case) -> None:
    durations, links, needs, _ = case
    path, extra = laid_out(case)
    assert path.length >= critical_path(durations, links).length
    assert all(needs[before] == needs[after] != "" for before, after in extra)
    assert len({before for before, _ in extra}) == len(extra) == len({after for _, after in extra})


@given(crewed())
def test_with_ample_crews_nothing_is_added(case: Case) -> None:
    durations, links, needs, _ = case
    assert crew_links(durations, links, needs, {"welders": len(needs), "painters": len(needs)}) == ()


@given(crewed(), st.data())
def test_names_settle_ties_whatever_the_order(case: Case, data: st.DataObject) -> None:
    durations, links, needs, capacity = case
    names = [f"activity {place}" for place in range(len(durations))]
    moved = data.draw(st.permutations(range(len(durations))))
    at = {old: new for new, old in enumerate(moved)}
    mixed = [(at[i], at[j]) for i, j in links]
    mixed_durations = [durations[old] for old in moved]
    extra = crew_links(mixed_durations, mixed, [needs[old] for old in moved], capacity, [names[old] for old in moved])
    path = critical_path(durations, [*links, *crew_links(durations, links, needs, capacity, names)])
    mixed_path = critical_path(mixed_durations, [*mixed, *extra])
    assert [path.early_start[old] for old in moved] == list(mixed_path.early_start)


def shortest(case: Case) -> float:
    """Find the shortest length by trying every order of the activities, each placed as early as it can be."""
    durations, links, _, _ = case
    lengths = []
    for order in permutations(range(len(durations))):
        if any(order.index(i) > order.index(j) for i, j in links):
            continue
        starts: dict[int, float] = {}
        for place in order:
            earliest = max((starts[i] + durations[i] for i, j in links if j == place), default=0.0)
            times = sorted({earliest, *(starts[i] + durations[i] for i in starts)})
            starts[place] = next(t for t in times if t >= earliest and fits(case, starts, place, t))
        lengths.append(max(starts[i] + durations[i] for i in starts))
    return min(lengths)


def fits(case: Case, starts: dict[int, float], place: int, time: float) -> bool:
    """Tell whether a crew is free for an activity at a time, among those placed."""
    durations, _, needs, capacity = case
    rivals = [i for i in starts if needs[i] and needs[i] == needs[place]]
    moments = [time, *(starts[i] for i in rivals if time < starts[i] < time + durations[place])]
    most = max(sum(starts[i] <= moment < starts[i] + durations[i] for i in rivals) for moment in moments)
    return most < capacity.get(needs[place], 1)


@given(crewed(most=5))
def test_it_is_no_shorter_than_the_shortest_found_by_trying_every_order(case: Case) -> None:
    durations, links, needs, capacity = case
    whole = [float(round(duration) + 1) for duration in durations]
    path, _ = laid_out((whole, links, needs, capacity))
    assert shortest((whole, links, needs, capacity)) <= path.length <= sum(whole)


def test_published_worst_case_of_longest_first() -> None:
    # Graham, Bounds on multiprocessing timing anomalies, SIAM J. Appl. Math. 17 (1969), 416: longest first is worst by
    # 4/3 - 1/(3m); with two crews and jobs of 3, 3, 2, 2, 2 it takes 7 where 6 is the shortest.
    case: Case = ([3.0, 3.0, 2.0, 2.0, 2.0], [], ["w"] * 5, {"w": 2})
    assert laid_out(case)[0].length == 7
    assert shortest(case) == 6


@given(st.lists(st.integers(1, 20).map(float), min_size=1, max_size=12), st.integers(1, 4))
def test_free_jobs_keep_within_the_published_bound(durations: list[float], count: int) -> None:
    # Graham, 1969: list scheduling takes no more than sum/m + (1 - 1/m)·max.
    path, _ = laid_out((durations, [], ["w"] * len(durations), {"w": count}))
    assert path.length <= sum(durations) / count + (1 - 1 / count) * max(durations) + 1e-9


def test_a_short_job_is_fitted_in_before_a_long_wait() -> None:
    # Derived: the crew is needed from day 0 to 2 and from 5 on; the job of 3 days that can wait goes between.
    durations, links = [2.0, 5.0, 4.0, 3.0, 7.0], [(1, 2), (0, 4)]
    extra = crew_links(durations, links, ["w", "", "w", "w", ""], {"w": 1})
    path = critical_path(durations, [*links, *extra])
    assert path.early_start == (0.0, 0.0, 5.0, 2.0, 2.0)
    assert extra == ((0, 3), (3, 2))


def test_an_activity_that_takes_no_time_needs_no_crew() -> None:
    assert crew_links([1.0, 1e-90, 0.0, 1.0], [], ["w"] * 4, {"w": 1}) == ((0, 3),)


def test_what_cannot_be_manned_is_refused() -> None:
    with pytest.raises(OutOfRange, match="crew welders"):
        crew_links([1.0], [], ["welders"], {"welders": 0})
    with pytest.raises(OutOfRange, match="crew welders"):
        crew_links([1.0], [], ["welders"], {})
    with pytest.raises(OutOfRange, match="as many"):
        crew_links([1.0], [], [], {})
    with pytest.raises(OutOfRange, match="circle"):
        crew_links([1.0, 1.0], [(0, 1), (1, 0)], ["", ""], {})
