"""What can be bought and with which money: items with cost, worth and rules, and sources with theirs."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from fractions import Fraction

from tenderwright.calculations.method import OutOfRange

Pair = tuple[int, int]
_FINEST = 1_000_000


class Contradiction(OutOfRange):
    """Two items are both to be done, but exclude each other."""

    def __init__(self, one: int, other: int) -> None:
        super().__init__(f"items {one} and {other} are both to be done, but exclude each other")
        self.places = (one, other)


@dataclass(frozen=True)
class Works:
    """Items by place: cost in whole cents, worth in whole points, and what goes with what. Raises OutOfRange."""

    costs: tuple[int, ...]
    values: tuple[int, ...]
    must: tuple[bool, ...]
    """Items that are done whatever the money."""
    needs: tuple[Pair, ...] = ()
    """The first is not done without the second."""
    excludes: tuple[Pair, ...] = ()
    """The two are not done together."""
    at_most: tuple[tuple[int, frozenset[int]], ...] = ()
    """Of the items, no more than so many are done."""

    def __post_init__(self) -> None:
        if not len(self.costs) == len(self.values) == len(self.must):
            raise OutOfRange("give the cost, the worth and the must-do of each item")
        if any(cost < 0 for cost in self.costs):
            raise OutOfRange("a cost is less than nothing: set credits off against the item that earns them first")
        if any(value < 0 for value in self.values):
            raise OutOfRange("the worth of an item cannot be less than nothing")
        if not all(isinstance(one, int) for one in (*self.costs, *self.values)):
            raise OutOfRange("costs are whole cents and worths whole points")
        groups = [tuple(group) for _, group in self.at_most]
        for pair in (*self.needs, *self.excludes, *groups):
            if not all(0 <= place < len(self.costs) for place in pair):
                joined = " and ".join(map(str, pair))
                raise OutOfRange(f"a rule joins {joined}, but there are {len(self.costs)} items, from 0")

    def cost(self, chosen: Sequence[bool]) -> int:
        """Add the costs of the items chosen, in cents."""
        return sum(self.paid(chosen))

    def value(self, chosen: Sequence[bool]) -> int:
        """Add the worths of the items chosen."""
        return sum(value for value, taken in zip(self.values, chosen, strict=True) if taken)

    def bound_to(self, keep: Collection[int] = ()) -> frozenset[int]:
        """Give the items done in any case: the must-do items and those kept, with what they need, near and far.

        Raises Contradiction where two of them exclude each other, and OutOfRange where they are too many of a group.
        """
        found = {place for place, must in enumerate(self.must) if must} | set(keep)
        waiting = list(found)
        while waiting:
            place = waiting.pop()
            for needing, needed in self.needs:
                if needing == place and needed not in found:
                    found.add(needed)
                    waiting.append(needed)
        for one, other in self.excludes:
            if one in found and other in found:
                raise Contradiction(one, other)
        for most, group in self.at_most:
            if len(group & found) > most:
                raise OutOfRange(f"{len(group & found)} items are to be done of which at most {most} may be")
        return frozenset(found)

    def paid(self, chosen: Sequence[bool]) -> list[int]:
        """Give the cost of each item chosen, in cents, and nothing for the others."""
        return [cost if taken else 0 for cost, taken in zip(self.costs, chosen, strict=True)]

    def allows(self, chosen: Sequence[bool], bound: Collection[int]) -> bool:
        """Tell whether a choice holds all that it must and keeps every rule."""
        return (
            all(chosen[place] for place in bound)
            and all(chosen[needed] for needing, needed in self.needs if chosen[needing])
            and not any(chosen[one] and chosen[other] for one, other in self.excludes)
            and all(sum(chosen[place] for place in group) <= most for most, group in self.at_most)
        )


@dataclass(frozen=True)
class Source:
    """Money of one source, and what it may pay for. Raises OutOfRange."""

    amount: int
    """Cents."""
    allowed: frozenset[int] | None = None
    """The items that it may pay for; any where it is None."""
    match: float = 0.0
    """Money of all other sources that each unit drawn asks for, on the items done."""

    def __post_init__(self) -> None:
        if not isinstance(self.amount, int) or self.amount < 0:
            raise OutOfRange(f"an amount is whole cents, no less than nothing, got {self.amount:g}")
        if not 0.0 <= self.match <= _FINEST:
            raise OutOfRange(f"the match of a source lies from 0 to {_FINEST:,}, got {self.match:g}")

    def pays(self, place: int) -> bool:
        """Tell whether it may pay for an item."""
        return self.allowed is None or place in self.allowed

    def most(self, cost: int) -> int:
        """Give the most that can be drawn of it, in cents, where all that is done costs so much.

        Formula: all sources together pay the cost C, so that D m <= C - D gives D <= C/(1 + m). Source: derived.
        """
        return min(self.amount, int(cost / (1 + Fraction(self.match).limit_denominator(_FINEST))))

    def is_matched(self, cost: int) -> bool:
        """Tell whether its match, not its amount, limits it where all that is done costs so much."""
        return self.match > 0.0 and cost < self.amount * (1.0 + self.match)
