"""What the owner adds to the returned bids so that they can be compared: confidential."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.notices import Place


@dataclass(frozen=True)
class StatedCost:
    """A cost of the owner's that goes with one bid."""

    amount: Decimal
    basis: str = ""


@dataclass(frozen=True)
class OwnersCosts:
    """What choosing one bid costs the owner beside its prices."""

    here: Place = field(compare=False)
    towing: StatedCost | None = None
    travel: StatedCost | None = None
    owner_days: StatedCost | None = None
    """All the owner's days together, in place of days times day cost."""
    day_cost: Decimal | None = None
    """In place of the day cost that was published."""
    days: int | None = None
    """In place of the days in the bid."""
    days_basis: str = ""


@dataclass(frozen=True)
class Adder:
    """What one bid leaves out, priced."""

    bid: str
    why: str
    here: Place = field(compare=False)
    exclusion: str = ""
    """The exclusion that it answers, in the yard's words or so many of them that it is known."""
    lines: tuple[str, ...] = ()
    amount: Decimal | None = None
    take: str = ""
    """highest (of the other bids, the default without an amount) or estimate."""


@dataclass(frozen=True)
class ConfirmedRate:
    """A clerical mistake that the bidder has confirmed."""

    bid: str
    line: str
    rate: Decimal
    confirmed: date
    here: Place = field(compare=False)
    note: str = ""


@dataclass(frozen=True)
class Finding:
    """What the owner finds of one bid: something missed, and whether it is waived."""

    bid: str
    missed: str
    why: str
    here: Place = field(compare=False)
    waived: bool = False
    criterion: int | None = None
    """Which of the criteria of the tender, counted from 1."""


@dataclass(frozen=True)
class JudgedCriterion:
    """Whether one bid meets one criterion of award, as the owner judges."""

    bid: str
    criterion: int
    """Which of the criteria of the tender, counted from 1."""
    met: bool
    why: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Evaluation:
    """The owner's part in the comparison of bids; a bid is named by its file in owner/bids/, without `.yaml`."""

    here: Place = field(compare=False)
    bids: Mapping[str, OwnersCosts] = field(default_factory=dict)
    adders: tuple[Adder, ...] = ()
    corrections: tuple[ConfirmedRate, ...] = ()
    responsive: tuple[Finding, ...] = ()
    criteria: tuple[JudgedCriterion, ...] = ()
