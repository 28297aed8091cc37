"""A bid as read: what a yard wrote into the price form, before anything is corrected or compared."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.model.kinds import FacilityRef
from tenderwright.notices import Place

NOWHERE = Place("")
"""The place of what was made and not read from a package."""


@dataclass(frozen=True)
class BidLine:
    """A line of a bid as read."""

    rate: Decimal | None = None
    """Rate, lump sum, or percentage of a mark-up, to four decimals; positive for credits too."""
    status: str = ""
    """priced, zero, included, no bid or empty; left out in papers written by hand, where a rate says it."""
    extension: Decimal | None = None
    """The amount that stood in the row, which need not be quantity times rate; negative for credits."""
    note: str = ""
    as_written: str = ""
    """What stood in the cell of the price, where it was not a plain number."""
    here: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class Exclusion:
    """Something that a yard leaves out, assumes, or offers instead."""

    text: str
    lines: tuple[str, ...] = ()
    kind: str = "exclusion"
    """exclusion, assumption or alternative."""
    effect: str = ""
    """Its effect on the price in the yard's words; never counted in."""
    here: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True)
class BidAnswer:
    """What a yard answers to one of the owner's questions."""

    ask: str
    answer: str


@dataclass(frozen=True)
class Bid:
    """A returned bid as read."""

    yard: str
    received: date
    lines: Mapping[str, BidLine]
    here: Place = field(compare=False)
    facility: FacilityRef | None = None
    file: str = ""
    """Name of the workbook that it was read from."""
    sha256: str = ""
    edition: str = ""
    currency: str = ""
    valid_until: date | None = None
    section_totals: Mapping[str, Decimal] = field(default_factory=dict)
    """Sub-totals by section as they stood on the form."""
    base_total: Decimal | None = None
    total: Decimal | None = None
    """The evaluated total as it stood on the form, without the owner's days."""
    exclusions: tuple[Exclusion, ...] = ()
    addenda: tuple[int, ...] = ()
    """Numbers of the addenda acknowledged."""
    site_visit: bool | None = None
    dates_accepted: bool | None = None
    earliest_docking: date | None = None
    days: int | None = None
    """Days from arrival to redelivery, by the yard's programme."""
    dock_days: int | None = None
    answers: tuple[BidAnswer, ...] = ()
    doubts: tuple[str, ...] = ()
    """What the reading left to a person."""
