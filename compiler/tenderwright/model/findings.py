"""The findings of a docking just done: what was found, done, tested and paid, before it becomes history."""

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
    UsedBlocks,
    ValveFound,
)
from tenderwright.model.kinds import (
    Angle,
    AnodeRef,
    AnyQuantity,
    Area,
    AreaDensity,
    Density,
    FacilityRef,
    Fraction,
    ItemRef,
    Length,
    Mass,
    SchemeRef,
    StrakeRef,
    TankRef,
    Time,
    ZoneRef,
)
from tenderwright.notices import Place


@dataclass(frozen=True)
class DockingDates:
    """The days of the docking."""

    docked: date
    undocked: date
    here: Place = field(compare=False)
    arrived: date | None = None
    dry: date | None = None
    departed: date | None = None


@dataclass(frozen=True)
class Condition:
    """How she floated on docking or undocking."""

    drafts: DockingDrafts | None = None
    list_: Angle | None = None
    displacement: Mass | None = None
    density: Density | None = None
    soundings: tuple[SoundingTaken, ...] = ()


@dataclass(frozen=True)
class ReadingTaken:
    """A thickness reading written in the findings themselves."""

    as_built: Length
    measured: Length
    day: date
    instrument: str
    stage: str
    here: Place = field(compare=False)
    strake: StrakeRef | None = None
    frame: float | None = None
    side: str = ""
    tank: TankRef | None = None
    member: str = ""
    kind: str = "plate"


@dataclass(frozen=True)
class AnodeLeft:
    """What was left of one anode, and what was fitted in its place."""

    anode: AnodeRef
    here: Place = field(compare=False)
    left: Fraction | None = None
    left_mass: Mass | None = None
    fitted: Mass | None = None
    alloy: str = ""
    note: str = ""


@dataclass(frozen=True)
class PaintLog:
    """The coating of one zone as it was done."""

    zone: ZoneRef
    grade: str
    coats: tuple[CoatApplied, ...]
    here: Place = field(compare=False)
    scheme: SchemeRef | None = None
    area: Area | None = None
    profile: Length | None = None
    salts: AreaDensity | None = None
    dust: int | None = None
    holidays: int | None = None


@dataclass(frozen=True)
class ConditionFound:
    """A condition-found report."""

    report: str
    day: date
    where: str
    found: Prose
    here: Place = field(compare=False)
    item: ItemRef | None = None
    extent: str = ""
    cause: Prose | None = None
    repair: Prose | None = None
    decision: Prose | None = None
    decided: date | None = None
    done: Prose | None = None


@dataclass(frozen=True)
class Change:
    """A change to the contract."""

    change: str
    day: date
    line: str
    cause: str
    what: str
    amount: Decimal
    here: Place = field(compare=False)
    days: int = 0
    condition: str = ""


@dataclass(frozen=True)
class PoolHours:
    """Hours used of one line of the pool."""

    line: str
    hours: Time
    here: Place = field(compare=False)


@dataclass(frozen=True)
class LinePaid:
    """What one line came to in the end."""

    line: str
    contract: Decimal
    changes: Decimal
    final: Decimal
    here: Place = field(compare=False)
    quantity: AnyQuantity | None = None
    note: str = ""


@dataclass(frozen=True)
class Totals:
    """Totals of the final account as the yard states them."""

    contract: Decimal
    changes: Decimal
    final: Decimal


@dataclass(frozen=True)
class Scrap:
    """Scrap landed."""

    what: str
    mass: Mass
    here: Place = field(compare=False)
    credit: str = ""


@dataclass(frozen=True)
class Findings:
    """The findings of one docking."""

    yard: str
    dock_type: str
    dates: DockingDates
    deferred: tuple[Deferred, ...]
    here: Place = field(compare=False)
    place: str = ""
    facility: FacilityRef | None = None
    dockmaster: str = ""
    weather: Prose | None = None
    on_docking: Condition = field(default_factory=Condition)
    on_undocking: Condition = field(default_factory=Condition)
    blocks: UsedBlocks = field(default_factory=UsedBlocks)
    not_painted: tuple[NotPainted, ...] = ()
    plugs: tuple[PlugDrawn, ...] = ()
    readings: tuple[ReadingTaken, ...] = ()
    readings_file: str = ""
    renewed: tuple[SteelRenewed, ...] = ()
    rivets: tuple[RivetsRenewed, ...] = ()
    anodes: tuple[AnodeLeft, ...] = ()
    valves: tuple[ValveFound, ...] = ()
    clearances: tuple[ClearanceTaken, ...] = ()
    tank_tests: tuple[TankTested, ...] = ()
    paint: tuple[PaintLog, ...] = ()
    conditions_found: tuple[ConditionFound, ...] = ()
    changes: tuple[Change, ...] = ()
    hours_used: tuple[PoolHours, ...] = ()
    currency: str = ""
    publish_prices: bool = False
    bid: str = ""
    prices: tuple[LinePaid, ...] = ()
    totals: Totals | None = None
    scrap: tuple[Scrap, ...] = ()
    days_lost: tuple[DaysLost, ...] = ()
    guarantee_until: date | None = None
    lessons: Prose | None = None
    photographs: tuple[PhotographKept, ...] = ()

    @property
    def docking(self) -> str:
        """Name the docking by the year she was docked."""
        return f"docking-{self.dates.docked.year}"

    @property
    def days(self) -> int:
        """Count the days on blocks, from the day docked to the day undocked."""
        return (self.dates.undocked - self.dates.docked).days
