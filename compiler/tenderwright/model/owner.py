"""The owner's confidential papers: rates, funding, risks, bids."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from typing import TYPE_CHECKING

from tenderwright.model.build import Prose
from tenderwright.model.kinds import FacilityRef, Fraction, ItemRef
from tenderwright.notices import Place

if TYPE_CHECKING:
    from tenderwright.model.closing import Closing


@dataclass(frozen=True)
class Rate:
    """The owner's rate for one line."""

    rate: Decimal
    here: Place = field(compare=False)
    low: Decimal | None = None
    high: Decimal | None = None
    basis: str = ""
    note: str = ""


@dataclass(frozen=True)
class Shared:
    """How shared services are spread over the items."""

    items: tuple[ItemRef, ...]
    rule: str


@dataclass(frozen=True)
class Contingency:
    """Contingency, shown and never buried."""

    share: Fraction
    why: str


@dataclass(frozen=True)
class Rates:
    """What the owner expects each line to cost."""

    base_month: str
    lines: Mapping[str, Rate]
    here: Place = field(compare=False)
    shared: Shared | None = None
    dock_days: Mapping[str, float] = field(default_factory=dict)
    contingency: Contingency | None = None


@dataclass(frozen=True)
class FundingSource:
    """One source of money."""

    source: str
    name: str
    amount: Decimal
    here: Place = field(compare=False)
    status: str = ""
    likelihood: Fraction | None = None
    only: tuple[ItemRef, ...] = ()
    match: Fraction | None = None
    spend_by: date | None = None
    notes: Prose | None = None


@dataclass(frozen=True)
class Funding:
    """Where the money may come from."""

    sources: tuple[FundingSource, ...]


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


@dataclass(frozen=True)
class Risks:
    """The owner's risks."""

    risks: tuple[Risk, ...]


@dataclass(frozen=True)
class BidLine:
    """A line of a bid as read."""

    rate: Decimal | None = None
    status: str = ""
    extension: Decimal | None = None
    note: str = ""


@dataclass(frozen=True)
class Bid:
    """A returned bid as read."""

    yard: str
    received: date
    lines: Mapping[str, BidLine]
    here: Place = field(compare=False)
    facility: FacilityRef | None = None
    edition: str = ""
    exclusions: tuple[str, ...] = ()
    addenda: tuple[int, ...] = ()


@dataclass(frozen=True)
class OwnerPapers:
    """All that lies under owner/."""

    rates: Rates | None = None
    funding: Funding | None = None
    risks: Risks | None = None
    bids: Mapping[str, Bid] = field(default_factory=dict)
    closings: Mapping[str, Closing] = field(default_factory=dict)
    """Final accounts of earlier dockings, by file."""
