"""Where the money may come from, and what the work is worth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.model.build import Prose
from tenderwright.model.kinds import Fraction, ItemRef
from tenderwright.notices import Place


@dataclass(frozen=True)
class FundingSource:
    """One source of money."""

    source: str
    name: str
    amount: Decimal
    here: Place = field(compare=False)
    kept_back: Decimal = Decimal(0)
    status: str = ""
    likelihood: Fraction | None = None
    only: tuple[ItemRef, ...] = ()
    eligible: tuple[str, ...] = ()
    match: Fraction | None = None
    spend_by: date | None = None
    decided: date | None = None
    public: str = ""
    notes: Prose | None = None


@dataclass(frozen=True)
class Funding:
    """Where the money may come from."""

    sources: tuple[FundingSource, ...]


@dataclass(frozen=True)
class Weights:
    """Weights of the three scores of an item."""

    risk: int
    preservation: int
    safety: int


@dataclass(frozen=True)
class Worth:
    """The owner's judgement of one item."""

    here: Place = field(compare=False)
    must: bool = False
    risk: int = 0
    preservation: int = 0
    safety: int = 0
    needs: tuple[ItemRef, ...] = ()
    excludes: tuple[ItemRef, ...] = ()
    only_when_dry: bool | None = None
    public: str = ""
    publish_cost: bool = False


@dataclass(frozen=True)
class Scope:
    """What the work is worth, item by item."""

    weights: Weights
    items: Mapping[str, Worth]
    here: Place = field(compare=False)
    confidence: str = "P80"
    steps: int = 5
