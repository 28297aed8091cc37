"""What a trade check of the owner's papers may look at."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cached_property
from typing import TypeVar

from msgspec import Struct, field

from tenderwright.calculations.steps.outcome import Each
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.steps.step import Step
from tenderwright.checks.places import place_at
from tenderwright.model.facility import Facility
from tenderwright.model.item import Item
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.notices import Notice, Place
from tenderwright.planning.approvals import Register, register
from tenderwright.planning.in_dock.short import account_on
from tenderwright.planning.inspection.ordered import inspected_in_dock
from tenderwright.planning.inspection.results import Inspected
from tenderwright.planning.schedule import Schedule
from tenderwright.pricing.in_dock.account import RunningAccount
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.pricing.price import Estimate
from tenderwright.reading.source import Source

R = TypeVar("R")


class OwnerContext(Struct, frozen=True, dict=True):
    """The package, the owner's papers, and the estimate and schedule made from them where they could be made."""

    package: Package
    papers: OwnerPapers
    calculated: Calculated
    estimate: Estimate | None
    schedule: Schedule | None
    ledger: Ledger | None = None
    """What the papers from the dock make of the awarded bid; None before an award."""
    sources: Mapping[str, Source] = field(default_factory=dict)
    """The files as read, for the places of their values."""

    def at(self, path: str, *keys: str | int) -> Place:
        """Find the place of a value by its file and keys."""
        return place_at(self.sources, path, *keys)

    def found_for(self, step: Step[Each[R]], key: str) -> R | None:
        """Give the result of a step for one thing of several; None where it has none."""
        return self.calculated.each(step).get(key)

    def not_judged(self, facility: Facility) -> bool:
        """Tell whether a facility stays in the list though she does not fit it, for a reason that is told."""
        kept = self.papers.kept_of(facility.facility)
        return kept is not None and bool(kept.kept_because)

    @cached_property
    def account(self) -> RunningAccount | None:
        """Give the running account on the last day of which the papers from the dock tell; None without any."""
        if self.ledger is None or self.ledger.last is None:
            return None
        return account_on(self.ledger, self.ledger.last, self.package, self.schedule)

    @cached_property
    def approvals(self) -> Register | None:
        """Give the register of approvals with its days; None where the owner keeps none."""
        return register(self.papers, self.package, self.schedule)

    @cached_property
    def inspected(self) -> Inspected:
        """Give the inspection plan and the register of openings with all that the papers from the dock tell of them."""
        return inspected_in_dock(self.package, self.papers, self.ledger)

    def live_item(self, number: str) -> Item | None:
        """Give an item by number unless it is withdrawn."""
        item = self.package.item_by_name.get(number)
        return item if item is not None and not item.withdrawn else None


OwnerCheck = Callable[[OwnerContext], Iterator[Notice]]
