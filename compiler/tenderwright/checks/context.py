"""What a trade check may look at."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.value import Record
from tenderwright.linking.link import Links
from tenderwright.model.issued_item import IssuedItem
from tenderwright.model.item import Item
from tenderwright.model.package import Package
from tenderwright.notices import Notice


@dataclass(frozen=True)
class Context:
    """The package, its links, what was calculated of the ship, and what was issued before."""

    package: Package
    links: Links
    calculated: Calculated
    issued_items: Mapping[str, IssuedItem] = field(default_factory=dict)
    """The items that earlier issues of the tender held, by number, as the last of them held each."""

    @property
    def record(self) -> Record:
        """Give the record of calculation."""
        return self.calculated.record

    @cached_property
    def live_items(self) -> list[Item]:
        """Give the items that are not withdrawn."""
        return [item for item in self.package.items if not item.withdrawn]

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
