"""The order in which activities can be done, by what comes before what."""

from __future__ import annotations

from collections.abc import Sequence
from graphlib import CycleError, TopologicalSorter
from heapq import heapify, heappop, heappush

from tenderwright.calculations.method import OutOfRange

Links = Sequence[tuple[int, int]]
"""Pairs of places: the first comes before the second."""


class Circle(OutOfRange):
    """Activities come after each other in a circle."""

    def __init__(self, places: tuple[int, ...]) -> None:
        super().__init__(f"activities come after each other in a circle: {', '.join(map(str, places))}")
        self.places = places
        """The circle, each place before the next and the last before the first."""


def neighbours(count: int, links: Links) -> tuple[list[list[int]], list[list[int]]]:
    """Give what comes straight before and straight after each activity, in rising order, each once.

    Raises OutOfRange where a link names an activity that there is not.
    """
    before: list[list[int]] = [[] for _ in range(count)]
    after: list[list[int]] = [[] for _ in range(count)]
    for first, second in sorted(set(links)):
        if not (0 <= first < count and 0 <= second < count):
            raise OutOfRange(f"a link goes from {first} to {second}, but there are {count} activities, from 0")
        before[second].append(first)
        after[first].append(second)
    return before, after


def topological_order(count: int, links: Links) -> tuple[int, ...]:
    """Give the activities so that each stands after all that come before it, lower places first where it is free.

    Source: A. B. Kahn, Topological sorting of large networks, Communications of the ACM 5 (1962), 558 (from memory).
    Raises Circle.
    """
    before, _ = neighbours(count, links)
    sorter = TopologicalSorter(dict(enumerate(before)))
    try:
        sorter.prepare()
    except CycleError as error:
        circle: list[int] = error.args[1][1:]
        start = circle.index(min(circle))
        raise Circle((*circle[start:], *circle[:start])) from error
    free = list(sorter.get_ready())
    heapify(free)
    order = []
    while free:
        order.append(heappop(free))
        sorter.done(order[-1])
        for place in sorter.get_ready():
            heappush(free, place)
    return tuple(order)
