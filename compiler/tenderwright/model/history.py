"""An earlier docking."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.model.build import Prose
from tenderwright.model.kinds import Area, DrawingRef, Fraction, ItemRef, Length, ZoneRef
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


@dataclass(frozen=True)
class DockingDrafts:
    """Drafts on docking or undocking."""

    aft: Length
    forward: Length


@dataclass(frozen=True)
class UsedBlock:
    """A block, or a row of blocks, as used."""

    at: Position
    here: Place = field(compare=False)
    to: Position | None = None
    pitch: Length | None = None
    length: Length | None = None
    width: Length | None = None
    off_centre: Length | None = None
    side: str = "centreline"
    height: Length | None = None


@dataclass(frozen=True)
class UsedBlocks:
    """The blocks of a docking."""

    keel: tuple[UsedBlock, ...] = ()
    sides: tuple[UsedBlock, ...] = ()
    plan: DrawingRef | None = None
    notes: Prose | None = None


@dataclass(frozen=True)
class Finding:
    """Something found."""

    where: str
    found: Prose
    done: Prose | None = None
    extent: str = ""


@dataclass(frozen=True)
class CoatingApplied:
    """A coating applied at a docking."""

    zone: ZoneRef
    system: str
    area: Area | None = None
    preparation: str = ""


@dataclass(frozen=True)
class AnodesFound:
    """What was left of anodes."""

    what: str
    left: Fraction | None = None
    renewed: int | None = None


@dataclass(frozen=True)
class Paid:
    """A price paid."""

    work: str
    amount: Decimal
    here: Place = field(compare=False)
    item: ItemRef | None = None
    quantity: str = ""
    growth: Decimal | None = None


@dataclass(frozen=True)
class Deferred:
    """Work put off."""

    what: str
    why: str = ""
    by: str = ""


@dataclass(frozen=True)
class EarlierDocking:
    """One earlier docking."""

    docking: str
    yard: str
    dock_type: str
    docked: date
    undocked: date
    here: Place = field(compare=False)
    place: str = ""
    drafts: DockingDrafts | None = None
    undocking_drafts: DockingDrafts | None = None
    blocks: UsedBlocks = field(default_factory=UsedBlocks)
    findings: tuple[Finding, ...] = ()
    coatings: tuple[CoatingApplied, ...] = ()
    anodes: tuple[AnodesFound, ...] = ()
    currency: str = ""
    prices: tuple[Paid, ...] = ()
    deferred: tuple[Deferred, ...] = ()
    days: int | None = None
    lessons: Prose | None = None
