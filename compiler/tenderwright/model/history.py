"""An earlier docking."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from tenderwright.model.build import Prose
from tenderwright.model.found import (
    ClearanceTaken,
    CoatApplied,
    DaysLost,
    Deferred,
    DockingDrafts,
    NotPainted,
    PhotographKept,
    PlugDrawn,
    RivetsRenewed,
    SoundingTaken,
    SteelRenewed,
    TankTested,
    UsedBlock,
    UsedBlocks,
    ValveFound,
)
from tenderwright.model.kinds import AnodeRef, Area, AreaDensity, Fraction, ItemRef, Length, Mass, Time, ZoneRef
from tenderwright.notices import Place

__all__ = ["Deferred", "DockingDrafts", "UsedBlock", "UsedBlocks"]


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
    profile: Length | None = None
    salts: AreaDensity | None = None
    dust: int | None = None
    coats: tuple[CoatApplied, ...] = ()


@dataclass(frozen=True)
class AnodesFound:
    """What was left of anodes, or of one, and what was fitted."""

    what: str
    left: Fraction | None = None
    renewed: int | None = None
    anode: AnodeRef | None = None
    left_mass: Mass | None = None
    fitted: Mass | None = None
    alloy: str = ""


@dataclass(frozen=True)
class HoursUsed:
    """Hours of one trade used of the pool."""

    work: str
    used: Time
    offered: Time | None = None


@dataclass(frozen=True)
class CauseOfGrowth:
    """What one cause made a price grow by."""

    cause: str
    amount: Decimal


@dataclass(frozen=True)
class Paid:
    """A price paid."""

    work: str
    amount: Decimal
    here: Place = field(compare=False)
    item: ItemRef | None = None
    quantity: str = ""
    unit: str = ""
    rate: Decimal | None = None
    """What was paid for a unit in the end."""
    growth: Decimal | None = None
    growth_causes: tuple[CauseOfGrowth, ...] = ()


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
    soundings: tuple[SoundingTaken, ...] = ()
    undocking_soundings: tuple[SoundingTaken, ...] = ()
    blocks: UsedBlocks = field(default_factory=UsedBlocks)
    not_painted: tuple[NotPainted, ...] = ()
    plugs: tuple[PlugDrawn, ...] = ()
    findings: tuple[Finding, ...] = ()
    renewed: tuple[SteelRenewed, ...] = ()
    rivets: tuple[RivetsRenewed, ...] = ()
    valves: tuple[ValveFound, ...] = ()
    clearances: tuple[ClearanceTaken, ...] = ()
    tank_tests: tuple[TankTested, ...] = ()
    coatings: tuple[CoatingApplied, ...] = ()
    anodes: tuple[AnodesFound, ...] = ()
    currency: str = ""
    prices: tuple[Paid, ...] = ()
    deferred: tuple[Deferred, ...] = ()
    days: int | None = None
    days_lost: tuple[DaysLost, ...] = ()
    hours_used: tuple[HoursUsed, ...] = ()
    guarantee_until: date | None = None
    lessons: Prose | None = None
    photographs: tuple[PhotographKept, ...] = ()
