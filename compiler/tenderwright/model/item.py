"""A work item and its parts."""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal

from tenderwright.model.build import Prose
from tenderwright.model.common import Extent
from tenderwright.model.day import Day
from tenderwright.model.kinds import (
    AnodeRef,
    AnyQuantity,
    DrawingRef,
    Fraction,
    ItemRef,
    OpeningRef,
    SchemeRef,
    StrakeRef,
    TankRef,
    Time,
    ValueRef,
    ZoneRef,
)
from tenderwright.notices import Place


@dataclass(frozen=True)
class Where:
    """Where an item is."""

    text: Prose | None = None
    extent: Extent | None = None
    side: str = ""
    tanks: tuple[TankRef, ...] = ()
    boundary_of: tuple[TankRef, ...] = ()
    zones: tuple[ZoneRef, ...] = ()
    openings: tuple[OpeningRef, ...] = ()
    strakes: tuple[StrakeRef, ...] = ()
    anodes: tuple[AnodeRef, ...] = ()


@dataclass(frozen=True)
class Access:
    """Access, and what is in the way."""

    staging: Prose | None = None
    interference: Prose | None = None


@dataclass(frozen=True)
class OwnerFurnished:
    """Something furnished by the owner."""

    what: str
    quantity: AnyQuantity
    here: Place = field(compare=False)
    delivered: Day | None = None
    where: str = ""


@dataclass(frozen=True)
class YardFurnished:
    """Something furnished by the yard."""

    what: str
    quantity: AnyQuantity | None = None
    standard: str = ""


@dataclass(frozen=True)
class Heritage:
    """What is significant, and how it is treated."""

    significance: Prose
    treatment: str
    keep_fabric: bool = False
    photographs: str = ""


@dataclass(frozen=True)
class Test:
    """A test and what passes."""

    __test__ = False

    test: str
    accept: Prose
    when: str = ""


@dataclass(frozen=True)
class Hold:
    """An inspection point."""

    hold: str
    at: str
    by: tuple[str, ...]
    notice: Time
    accept: Prose
    here: Place = field(compare=False)
    kind: str = "hold"
    record: str = ""


@dataclass(frozen=True)
class Report:
    """A report the yard hands over."""

    report: str
    due: Day
    here: Place = field(compare=False)
    copies: str = ""


@dataclass(frozen=True)
class Decision:
    """A decision gate."""

    who: str
    within: Time
    on: Prose


@dataclass(frozen=True)
class Line:
    """One line that the yard prices."""

    line: str
    text: str
    price: str
    here: Place = field(compare=False)
    kind: str = ""
    quantity: AnyQuantity | None = None
    takes: ValueRef | None = None
    share: Fraction | None = None
    round_up: AnyQuantity | None = None
    unit: str = ""
    basis: str = ""
    amount: Decimal | None = None
    where: str = ""


@dataclass(frozen=True)
class Item:
    """A work item."""

    item: int
    title: str
    kind: str
    phase: str
    scope: Prose
    here: Place = field(compare=False)
    revision: int = 0
    withdrawn: bool = False
    system: str = ""
    safety: bool = False
    where: Where = field(default_factory=Where)
    references: tuple[DrawingRef, ...] = ()
    depends_on: tuple[ItemRef, ...] = ()
    requirements: tuple[Prose, ...] = ()
    access: Access | None = None
    schemes: tuple[SchemeRef, ...] = ()
    owner_furnished: tuple[OwnerFurnished, ...] = ()
    yard_furnished: tuple[YardFurnished, ...] = ()
    does: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()
    precautions: Prose | None = None
    heritage: Heritage | None = None
    tests: tuple[Test, ...] = ()
    holds: tuple[Hold, ...] = ()
    reports: tuple[Report, ...] = ()
    decision: Decision | None = None
    option_until: Day | None = None
    deferral: Prose | None = None
    lines: tuple[Line, ...] = ()
    photographs: tuple[str, ...] = ()

    @property
    def number(self) -> str:
        """Give the item number as printed."""
        return str(self.item)

    def kind_of(self, line: Line) -> str:
        """Give the kind of a line: its own, or the item's."""
        return line.kind or self.kind
