from __future__ import annotations

import networkx as nx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schedule.critical_path import METHOD, critical_path, driving

from .networks import HOUSE, TAYLOR, Links, random_networks

END = -1
"""The finish of the whole, as a node."""


def graph(durations: list[float], links: Links) -> nx.DiGraph[int]:
    """Make the network as a graph, each duration on the arrows out of its activity."""
    made: nx.DiGraph[int] = nx.DiGraph()
    made.add_nodes_from(range(len(durations)))
    made.add_weighted_edges_from((i, j, durations[i]) for i, j in links)
    made.add_weighted_edges_from((i, END, days) for i, days in enumerate(durations))
    return made


def test_published_network_of_taylor() -> None:
    # Taylor, Introduction to Management Science, ch. 8, problem 1: ES, EF, LS, LF and float of each activity.
    names, durations, links = TAYLOR
    path = critical_path(durations, links)
    rows = zip(
        names, path.early_start, path.early_finish, path.late_start, path.late_finish, path.total_float, strict=True
    )
    assert list(rows) == [
        ("1-2", 0, 7, 2, 9, 2),
        ("1-3", 0, 10, 0, 10, 0),
        ("2-4", 7, 13, 9, 15, 2),
        ("3-4", 10, 15, 10, 15, 0),
        ("3-5", 10, 14, 14, 18, 4),
        ("4-5", 15, 18, 15, 18, 0),
        ("5-6", 18, 20, 18, 20, 0),
    ]
    assert path.length == 20
    assert [name for name, critical in zip(names, path.critical, strict=True) if critical] == [
        "1-3",
        "3-4",
        "4-5",
        "5-6",
    ]
    assert dict(zip(names, path.free_float, strict=True)) == dict.fromkeys(names, 0.0) | {"2-4": 2, "3-5": 4}
    assert [names[place] for place in driving(path, links, names.index("4-5"))] == ["3-4"]
    assert driving(path, links, 0) == ()


def test_published_network_of_hillier_and_lieberman() -> None:
    # Hillier and Lieberman, Introduction to Operations Research, Reliable Construction Co. (from memory): 44 weeks.
    names, durations, links = HOUSE
    path = critical_path(durations, links)
    assert path.length == 44
    assert "".join(name for name, critical in zip(names, path.critical, strict=True) if critical) == "ABCEFJLN"
    floats = {name: slack for name, slack in zip(names, path.total_float, strict=True) if slack}
    assert floats == {"D": 4, "G": 4, "H": 4, "I": 2, "K": 1, "M": 4}


@given(random_networks())
def test_length_is_the_longest_path_of_the_graph(network: tuple[list[float], Links]) -> None:
    # Reference: networkx.
    durations, links = network
    path = critical_path(durations, links)
    made = graph(durations, links)
    assert path.length == pytest.approx(nx.dag_longest_path_length(made), rel=1e-12)
    longest = [place for place in nx.dag_longest_path(made) if place != END]
    assert all(path.critical[place] for place in longest)
    assert sum(durations[place] for place in longest) == pytest.approx(path.length)


@given(random_networks())
def test_times_and_floats_agree_with_longest_paths(network: tuple[list[float], Links]) -> None:
    # Reference: networkx, longest path into and out of each activity.
    durations, links = network
    path = critical_path(durations, links)
    made = graph(durations, links)
    slack = 1e-8 * (path.length + 1)
    for place in range(len(durations)):
        into = nx.dag_longest_path_length(made.subgraph(nx.ancestors(made, place) | {place}))
        out = nx.dag_longest_path_length(made.subgraph(nx.descendants(made, place) | {place}))
        assert path.early_start[place] == pytest.approx(into, abs=slack)
        assert path.total_float[place] == pytest.approx(path.length - into - out, abs=slack)
        assert 0.0 <= path.free_float[place] <= path.total_float[place] + slack


@given(random_networks(), st.data())
def test_a_delay_within_the_float_keeps_the_length(network: tuple[list[float], Links], data: st.DataObject) -> None:
    durations, links = network
    path = critical_path(durations, links)
    place = data.draw(st.integers(0, len(durations) - 1))
    late = durations.copy()
    late[place] += path.total_float[place]
    assert critical_path(late, links).length == pytest.approx(path.length)
    late[place] += 1.0
    assert critical_path(late, links).length == pytest.approx(path.length + 1.0)


@given(random_networks(), st.data())
def test_what_drives_an_activity_moves_it(network: tuple[list[float], Links], data: st.DataObject) -> None:
    durations, links = network
    path = critical_path(durations, links)
    place = data.draw(st.integers(0, len(durations) - 1))
    drivers = driving(path, links, place)
    assert bool(drivers) == any(after == place for _, after in links)
    for other in drivers:
        late = durations.copy()
        late[other] += 1.0
        assert critical_path(late, links).early_start[place] == pytest.approx(path.early_start[place] + 1.0)


@given(random_networks())
def test_the_order_is_topological(network: tuple[list[float], Links]) -> None:
    durations, links = network
    order = critical_path(durations, links).order
    assert sorted(order) == list(range(len(durations)))
    assert all(order.index(i) < order.index(j) for i, j in links)


def test_rounding_leaves_no_float() -> None:
    # Derived: 0.1 + 0.2 is not 0.3 to the last bit.
    path = critical_path([0.1, 0.2, 0.3, 1.0], [(0, 1), (1, 3), (2, 3)])
    assert path.critical == (True, True, True, True)
    assert path.total_float == (0.0, 0.0, 0.0, 0.0)


def test_nothing_takes_no_time() -> None:
    assert critical_path([], []).length == 0.0
    assert critical_path([0.0, 0.0], [(0, 1)]).critical == (True, True)


def test_what_is_no_network_is_refused() -> None:
    with pytest.raises(OutOfRange, match=r"circle: 1, 3, 2$"):
        critical_path([1.0] * 4, [(0, 1), (1, 3), (3, 2), (2, 1)])
    with pytest.raises(OutOfRange, match=r"circle: 0$"):
        critical_path([1.0], [(0, 0)])
    for duration in (-1.0, float("nan"), float("inf")):
        with pytest.raises(OutOfRange, match="duration"):
            critical_path([duration], [])
    for link in ((0, 2), (-1, 0)):
        with pytest.raises(OutOfRange, match="2 activities"):
            critical_path([1.0, 1.0], [link])


def test_method_gives_its_outputs() -> None:
    names, durations, links = TAYLOR
    activities = [
        {"name": name, "duration": days, "after": [names[i] for i, j in links if j == at]}
        for at, (name, days) in enumerate(zip(names, durations, strict=True))
    ]
    outputs = METHOD.run(activities=activities)
    assert set(outputs) == {symbol.name for symbol in METHOD.outputs}
    assert outputs["length"] == 20
    assert outputs["critical"] == ["1-3", "3-4", "4-5", "5-6"]


def test_method_names_what_is_wrong() -> None:
    first, second = {"name": "blast", "duration": 1.0, "after": ["coat"]}, {"name": "coat", "duration": 2.0}
    with pytest.raises(OutOfRange, match="circle: blast, coat"):
        METHOD.run(activities=[first, second | {"after": ["blast"]}])
    with pytest.raises(OutOfRange, match="blast comes after coat, which is none"):
        METHOD.run(activities=[first])
    with pytest.raises(OutOfRange, match="name of its own"):
        METHOD.run(activities=[second, second])
