"""The owner's confidential papers: rates, funding, risks, bids."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import TYPE_CHECKING

from tenderwright.model.award import Award
from tenderwright.model.bid import Bid, BidLine
from tenderwright.model.build import Prose
from tenderwright.model.evaluation import Evaluation
from tenderwright.model.funding import Funding, Scope
from tenderwright.model.grant import Grant
from tenderwright.model.in_dock import InDock
from tenderwright.model.kinds import Fraction, ItemRef, Time
from tenderwright.model.profile import Profile
from tenderwright.model.programme import Programme
from tenderwright.model.question import AskedBy
from tenderwright.model.rates import PriceIndices, Rates
from tenderwright.notices import Place

if TYPE_CHECKING:
    from tenderwright.model.closing import Closing

__all__ = ["Bid", "BidLine"]


@dataclass(frozen=True)
class Risk:
    """Something that may go wrong."""

    risk: str
    what: Prose
    here: Place = field(compare=False)
    item: ItemRef | None = None
    likelihood: Fraction | None = None
    low: Decimal | None = None
    high: Decimal | None = None
    answer: Prose | None = None
    bears_on: str = "cost"
    days_low: Time | None = None
    days_high: Time | None = None


@dataclass(frozen=True)
class Risks:
    """The owner's risks."""

    risks: tuple[Risk, ...]


@dataclass(frozen=True)
class OwnerPapers:
    """All that lies under owner/."""

    rates: Rates | None = None
    funding: Funding | None = None
    risks: Risks | None = None
    indices: PriceIndices | None = None
    programme: Programme | None = None
    scope: Scope | None = None
    questions: AskedBy | None = None
    bids: Mapping[str, Bid] = field(default_factory=dict)
    evaluation: Evaluation | None = None
    award: Award | None = None
    in_dock: Mapping[str, InDock] = field(default_factory=dict)
    """What was found, changed and done in dock, by file."""
    closings: Mapping[str, Closing] = field(default_factory=dict)
    """Final accounts of earlier dockings, by file."""
    grants: Mapping[str, Grant] = field(default_factory=dict)
    """Applications for grants, by file."""
    profiles: Mapping[str, Profile] = field(default_factory=dict)
    """Profiles of funders' forms by name, where there is an application: the owner's own, and those shipped."""
    broken: frozenset[str] = frozenset()
    """Files that have mistakes, and so are left out."""
