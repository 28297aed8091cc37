"""What a trade check may look at."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cached_property
from typing import TypeVar

from msgspec import Struct, field

from tenderwright.calculations.steps.outcome import Absent, Each, Lacking, NotAsked, without_file
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.steps.step import Step
from tenderwright.calculations.value import Record, Value
from tenderwright.checks.places import place_at
from tenderwright.checks.texts import Text, of_package
from tenderwright.linking.link import Links
from tenderwright.model.issued_item import IssuedItem
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.notices import Notice, Place
from tenderwright.reading.source import Source

R = TypeVar("R")
_MISTAKE = "what it rests on has a mistake"


class Unjudged(Struct, frozen=True):
    """A trade check that could not be made, or only in part."""

    code: str
    why: str
    """In words that go on from "not judged: "."""


class Context(Struct, frozen=True, dict=True):
    """The package, its links, what was calculated of the ship, and what was issued before."""

    package: Package
    links: Links
    calculated: Calculated
    issued_items: Mapping[str, IssuedItem] = field(default_factory=dict)
    """The items that earlier issues of the tender held, by number, as the last of them held each."""
    sources: Mapping[str, Source] = field(default_factory=dict)
    """The files as read, for the places of their values."""

    reasons: dict[str, None] = field(default_factory=dict)
    """Why the check at hand could not be made, or only in part: what it asked for below and did not get."""

    def at(self, path: str, *keys: str | int) -> Place:
        """Find the place of a value by its file and keys."""
        return place_at(self.sources, path, *keys)

    def found(self, step: Step[R]) -> R | None:
        """Give the result of a step; where there is none, the check is told of as not made."""
        return self._judged(self.calculated.outcome(step))

    def found_for(self, step: Step[Each[R]], key: str) -> R | None:
        """Give the result for one thing of a step done for each of several."""
        outcome = self.calculated.outcome(step)
        return self._judged(outcome if isinstance(outcome, Absent) else outcome.outcomes.get(key))

    def value(self, name: str) -> Value | None:
        """Give a value of the record; where data or a mistake keep it from it, the check is told of as not made."""
        if name in self.record.missing:
            self.lacks(self.record.missing[name])
        elif name in self.record.failed:
            self.lacks(_MISTAKE)
        return self.record.values.get(name)

    def lacks(self, why: str) -> None:
        """Tell why the check cannot be made, or only in part, such as `it needs allowable in ...`."""
        self.reasons[why] = None

    def lacks_file(self, name: str) -> None:
        """Tell that the check cannot be made for want of a whole file."""
        absent = without_file(self.package, name)
        self.lacks(absent.why if isinstance(absent, Lacking) else _MISTAKE)

    def _judged(self, outcome: R | Absent | None) -> R | None:
        if not isinstance(outcome, Absent):
            return outcome
        if not isinstance(outcome, NotAsked):
            self.lacks(outcome.why if isinstance(outcome, Lacking) else _MISTAKE)
        return None

    @property
    def record(self) -> Record:
        """Give the record of calculation."""
        return self.calculated.record

    @cached_property
    def live_items(self) -> list[Item]:
        """Give the items that are not withdrawn."""
        return [item for item in self.package.items if not item.withdrawn]

    @cached_property
    def texts(self) -> tuple[Text, ...]:
        """Give the texts of the tender, which several checks search."""
        return tuple(of_package(self.package))

    def before(self, item: Item) -> set[str]:
        """Give the numbers of all items that come before this one, by depends_on, near and far."""
        items = self.package.item_by_name
        found: set[str] = set()
        waiting = [reference.name for reference in item.depends_on]
        while waiting:
            name = waiting.pop()
            if name not in found and name in items:
                found.add(name)
                waiting += [reference.name for reference in items[name].depends_on]
        return found

    def rests_on_broken(self, item: Item) -> bool:
        """Tell whether something that comes before this item has a mistake, so that it is not known what it does."""
        items = self.package.item_by_name
        names = {reference.name for reference in item.depends_on}
        for name in self.before(item):
            names |= {reference.name for reference in items[name].depends_on}
        return any(name not in items and self.links.broken.may_hold("item", name) for name in names)


Check = Callable[[Context], Iterator[Notice]]
