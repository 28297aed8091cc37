"""Find items that depend on each other in a circle."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from graphlib import CycleError, TopologicalSorter

from tenderwright.model.build import Reference
from tenderwright.model.package import Package
from tenderwright.notices import Note, Notice

RestsOn = Mapping[str, Mapping[str, Reference]]
"""By item, the items that it depends on, with the reference to each."""

MOST_NAMED = 30
"""Items of one knot that are named; the rest are counted."""


def find_cycles(package: Package) -> list[Notice]:
    """Report each knot of items that depend on each other, which may be one circle or many, once."""
    items = package.item_by_name
    rests_on = {name: {to.name: to for to in item.depends_on if to.name in items} for name, item in items.items()}
    try:
        TopologicalSorter(rests_on).prepare()
    except CycleError:
        return [_told(knot, rests_on) for knot in _knots(rests_on)]
    return []


def _knots(rests_on: RestsOn) -> Iterator[list[str]]:
    """Yield the items of each knot, in their order: from each of them one comes to every other and back."""
    import numpy as np
    from scipy.sparse import coo_array
    from scipy.sparse.csgraph import connected_components

    names = list(rests_on)
    place = {name: number for number, name in enumerate(names)}
    links = np.array([(place[name], place[to]) for name, on in rests_on.items() for to in on]).T
    graph = coo_array((np.ones(links.shape[1], np.int8), (links[0], links[1])), shape=(len(names), len(names)))
    knots: dict[int, list[str]] = {}
    for name, knot in zip(names, connected_components(graph, connection="strong")[1].tolist(), strict=True):
        knots.setdefault(knot, []).append(name)
    yield from (knot for knot in knots.values() if len(knot) > 1 or knot[0] in rests_on[knot[0]])


def _told(knot: list[str], rests_on: RestsOn) -> Notice:
    circle = _circle(knot, rests_on)
    round_it = " → ".join([*circle, circle[0]])
    at = rests_on[circle[-1]][circle[0]].at
    within = set(knot)
    if sum(len(within & rests_on[name].keys()) for name in knot) == len(circle):
        message = f"items depend on each other in a circle: {round_it}"
        return Notice("cycle", at, message, hints=("delete one of the numbers under `depends_on`",))
    more = f" and {len(knot) - MOST_NAMED} more" if len(knot) > MOST_NAMED else ""
    message = f"items depend on each other in more than one circle, such as {round_it}"
    named = Note(f"these items rest on each other: {', '.join(knot[:MOST_NAMED])}{more}")
    hint = "delete numbers under `depends_on` until no item comes back to itself"
    return Notice("cycle", at, message, notes=(named,), hints=(hint,))


def _circle(knot: list[str], rests_on: RestsOn) -> list[str]:
    """Give a shortest circle through the first item of a knot, each item before one that it depends on."""
    first, within = knot[0], set(knot)
    came_from: dict[str, str] = {}
    reached = [first]
    for name in reached:
        for to in rests_on[name]:
            if to == first:
                circle = [name]
                while circle[-1] != first:
                    circle.append(came_from[circle[-1]])
                return circle[::-1]
            if to in within and to not in came_from:
                came_from[to] = name
                reached.append(to)
    raise ValueError(f"no circle leads back to {first}")
