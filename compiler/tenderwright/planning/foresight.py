"""All that the owner can foresee of a docking: how dear, how long, and what the money buys."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from msgspec import Struct

from tenderwright.calculations.steps.kept import Kept
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.planning.ladder import Ladder, ladders
from tenderwright.planning.outlook import Outlook, outlook
from tenderwright.planning.schedule import Schedule
from tenderwright.planning.trials import trials
from tenderwright.pricing.growth import Growth, growth_by_kind
from tenderwright.pricing.price import Estimate


class Foreseen(Struct, frozen=True):
    """What takes long to work out: the trials summed up, and the ladders."""

    outlook: Outlook
    ladders: dict[str, Ladder]


@dataclass(frozen=True)
class Foresight:
    """The owner's papers, and what estimate, schedule, trials and ladder make of them."""

    papers: OwnerPapers
    schedule: Schedule | None
    outlook: Outlook
    growth: tuple[Growth, ...] = ()
    ladders: Mapping[str, Ladder] = field(default_factory=dict)
    """By confidence, P50 and P80; empty without owner/scope.yaml or owner/funding.yaml."""


def foresee(
    papers: OwnerPapers,
    package: Package,
    estimate: Estimate,
    schedule: Schedule | None,
    kept: Kept | None = None,
    content: bytes = b"",
) -> Foresight:
    """Run the trials and work out the ladders; takes seconds, so only what prints them asks for it.

    Where results are kept, they are found by the content of all that was read.
    """

    def work() -> Foreseen:
        run = trials(papers, estimate, schedule)
        seen = outlook(run, estimate, schedule.dock_days_tendered if schedule else None)
        return Foreseen(seen, ladders(papers, package, run))

    found = work() if kept is None else kept.of("foresight", content, Foreseen, work)
    return Foresight(papers, schedule, found.outlook, growth_by_kind(package, papers), found.ladders)
