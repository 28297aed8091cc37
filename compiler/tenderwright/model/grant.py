"""An application for a grant: what is asked of whom, for which items, and what the owner says under each heading."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.model.build import Name, Prose
from tenderwright.model.kinds import AnyQuantity, ClauseRef, ItemRef, Time
from tenderwright.notices import Place


@dataclass(frozen=True)
class OutsideCost:
    """A cost outside the tender, such as a naval architect or the tow."""

    what: str
    category: Name
    amount: Decimal
    basis: str
    here: Place = field(compare=False)
    eligible: bool = True


@dataclass(frozen=True)
class InKind:
    """Work given, valued by the hour."""

    what: str
    hours: Time
    rate: Decimal
    category: Name
    basis: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class GrantOutput:
    """Something measurable that the money brings: a quantity as written, or the sum of some lines."""

    output: str
    here: Place = field(compare=False)
    quantity: AnyQuantity | None = None
    lines: tuple[Name, ...] = ()


@dataclass(frozen=True)
class Grant:
    """An application for a grant."""

    profile: Name
    title: str
    here: Place = field(compare=False)
    source: Name | None = None
    asked: Decimal | None = None
    items: tuple[ItemRef, ...] = ()
    confidence: str = "P80"
    dated: date | None = None
    headings: Mapping[str, Prose] = field(default_factory=dict)
    categories: Mapping[str, Name] = field(default_factory=dict)
    """Categories other than by the profile's rules, by item or by line."""
    costs: tuple[OutsideCost, ...] = ()
    in_kind: tuple[InKind, ...] = ()
    outputs: tuple[GrantOutput, ...] = ()
    photographs: tuple[str, ...] = ()
    standards: tuple[ClauseRef, ...] = ()
    risks: tuple[Name, ...] | None = None
    """The risks that are told, by name; left out, those of the chosen items."""
