"""Who pays for what: sources drawn on in order, to the cent."""

from __future__ import annotations

from collections import deque
from collections.abc import Sequence
from itertools import pairwise

from tenderwright.calculations.method import Citation
from tenderwright.calculations.scope.works import Source

SOURCE = Citation(
    "J. Edmonds and R. M. Karp, Theoretical improvements in algorithmic efficiency for network flow problems",
    "Journal of the ACM 19 (1972), 248",
    standing="from memory",
)

Drawn = tuple[tuple[int, ...], ...]
"""Cents by source and item."""


def pay(costs: Sequence[int], sources: Sequence[Source]) -> Drawn:
    """Pay as much of the costs as the sources can, the first source as much as it can, then the second, and so on.

    Method: greatest flow from sources to items in whole cents, by shortest augmenting paths, source by source; a path
    may move what an earlier source pays from one item to another, but takes none of it away, so that each source in
    its turn is drawn on as far as those before it leave room. Symbols: costs by item in cents, 0 for what is not done;
    a source gives at most `Source.most` of their sum. Source: `SOURCE`.
    """
    whole = sum(costs)
    unpaid = list(costs)
    drawn = [[0] * len(costs) for _ in sources]
    for source, own in enumerate(sources):
        left = own.most(whole)
        while left and (path := _path(source, sources, drawn, unpaid)):
            moved = min([left, unpaid[path[-1][1]], *(drawn[payer][item] for payer, item in _given_up(path))])
            for payer, item in path:
                drawn[payer][item] += moved
            for payer, item in _given_up(path):
                drawn[payer][item] -= moved
            unpaid[path[-1][1]] -= moved
            left -= moved
    return tuple(tuple(row) for row in drawn)


def missing(costs: Sequence[int], sources: Sequence[Source]) -> int:
    """Give what the sources leave unpaid of the costs, in cents, exactly."""
    return sum(costs) - sum(map(sum, pay(costs, sources)))


def short_of(drawn: Drawn, costs: Sequence[int], sources: Sequence[Source]) -> frozenset[int]:
    """Give the group of sources that is short where not all is paid: all of them are spent, on what only they may pay.

    Formula: the sources that may pay for an item not paid in full, and those that may pay for an item that one of them
    pays for, and so on: the lesser side of a least cut. Source: the theorem of greatest flow and least cut.
    """
    paid = [sum(row[item] for row in drawn) for item in range(len(costs))]
    waiting = [item for item, cost in enumerate(costs) if paid[item] < cost]
    seen, group = set(waiting), set[int]()
    while waiting:
        item = waiting.pop()
        for source in range(len(sources)):
            if source not in group and sources[source].pays(item):
                group.add(source)
                theirs = [other for other, amount in enumerate(drawn[source]) if amount and other not in seen]
                seen.update(theirs)
                waiting += theirs
    return frozenset(group)


def _given_up(path: Sequence[tuple[int, int]]) -> list[tuple[int, int]]:
    """Give what the later payers of a path give up, each the item that the payer before it takes over."""
    return [(later[0], earlier[1]) for earlier, later in pairwise(path)]


def _path(
    source: int, sources: Sequence[Source], drawn: Sequence[Sequence[int]], unpaid: Sequence[int]
) -> list[tuple[int, int]]:
    """Find the shortest chain by which a source can pay more: it pays an item, whose payer pays another, and so on.

    Each link is the payer and the item that it pays more of; the last item is not yet paid in full. Empty of none.
    """
    came: dict[int, tuple[int, int] | None] = {source: None}
    """By payer, the payer before it and the item which that one takes over."""
    seen: set[int] = set()
    waiting = deque([source])
    while waiting:
        payer = waiting.popleft()
        reached = [item for item in range(len(unpaid)) if item not in seen and sources[payer].pays(item)]
        for item in reached:
            if unpaid[item]:
                path = [(payer, item)]
                while (before := came[path[0][0]]) is not None:
                    path.insert(0, before)
                return path
        for item in reached:
            seen.add(item)
            for other in range(len(sources)):
                if drawn[other][item] and other not in came:
                    came[other] = (payer, item)
                    waiting.append(other)
    return []
