"""The condition of the ship: limits, rules and observations from which survey data become quantities."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from tenderwright.model.kinds import (
    AnodeRef,
    Area,
    CurrentDensity,
    Fraction,
    ItemRef,
    Length,
    OpeningRef,
    Speed,
    StrakeRef,
    Temperature,
    Time,
    ZoneRef,
)
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


@dataclass(frozen=True)
class WastageZone:
    """A zone of the shell by how it wastes, and what plate in it may lose."""

    zone: str
    name: str
    strakes: tuple[StrakeRef, ...]
    allowable: Fraction
    source: str
    here: Place = field(compare=False)
    from_: Position | None = None
    to: Position | None = None


@dataclass(frozen=True)
class MemberLimit:
    """What members inside tanks may lose."""

    allowable: Fraction
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Pitted:
    """A pitted stretch of a strake."""

    strake: StrakeRef
    side: str
    from_: Position
    to: Position
    share: Fraction
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Renewed:
    """Plate renewed in the past."""

    what: str
    strake: StrakeRef
    side: str
    from_: Position
    to: Position
    on: date
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Apart:
    """Plate that an item of its own renews."""

    item: ItemRef
    strake: StrakeRef
    side: str
    from_: Position
    to: Position
    here: Place = field(compare=False)


@dataclass(frozen=True)
class WorkPlace:
    """Strakes on which work is slower, by the tariff's names."""

    strakes: tuple[StrakeRef, ...]
    place: str
    here: Place = field(compare=False)
    curvature: str = "none"


@dataclass(frozen=True)
class RenewalPractice:
    """How plate is renewed: least sizes, fastening, rivets and rates."""

    rivet: Length
    seam_rows: int
    butt_rows: int
    source: str
    here: Place = field(compare=False)
    fastening: str = "riveted"
    least_bays: int = 1
    least_size: Length | None = None
    corner: float | None = None
    mill_tolerance: Fraction | None = None
    seam_pitch: Length | None = None
    frame_pitch: Length | None = None
    hours_rate: float | None = None
    work: tuple[WorkPlace, ...] = ()


@dataclass(frozen=True)
class Gauging:
    """How densely she is gauged in dock."""

    all: tuple[StrakeRef, ...]
    selected: tuple[StrakeRef, ...]
    here: Place = field(compare=False)


@dataclass(frozen=True)
class AnodeLot:
    """Anodes fitted new on one day."""

    anodes: tuple[AnodeRef, ...]
    on: date
    here: Place = field(compare=False)


@dataclass(frozen=True)
class ProtectedSurface:
    """A surface that the anodes look after."""

    name: str
    initial: CurrentDensity
    mean: CurrentDensity
    final: CurrentDensity
    source: str
    here: Place = field(compare=False)
    zone: ZoneRef | None = None
    share: Fraction | None = None
    area: Area | None = None
    a: float | None = None
    b: float | None = None


@dataclass(frozen=True)
class AnodeStrip:
    """A strip of shell, on either side, where further anodes may go."""

    from_: Position
    to: Position
    height: Length
    here: Place = field(compare=False)


@dataclass(frozen=True)
class AnodeDuty:
    """What the anodes have to do."""

    fitted: tuple[AnodeLot, ...]
    surfaces: tuple[ProtectedSurface, ...]
    capacity: float
    resistivity: float
    utilisation: Fraction
    shape: str
    source: str
    here: Place = field(compare=False)
    strip: AnodeStrip | None = None
    renewed_between: str = ""
    """How they are renewed between dockings, where they do not last."""


@dataclass(frozen=True)
class Month:
    """The climate of one month."""

    month: int
    mean: Temperature
    range: float
    humidity: Fraction
    rain: Time
    wind: Speed
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Climate:
    """The climate of the place where she is docked."""

    place: str
    source: str
    months: tuple[Month, ...]
    here: Place = field(compare=False)
    day_begins: float = 7.0
    day_ends: float = 17.0


@dataclass(frozen=True)
class MetalPair:
    """Two metals in contact in sea water."""

    what: str
    one: str
    other: str
    where: str
    here: Place = field(compare=False)
    bonded: str = ""
    anodes: tuple[AnodeRef, ...] = ()
    coated: str = ""
    item: ItemRef | None = None


@dataclass(frozen=True)
class TightnessDefaults:
    """Defaults of tightness tests."""

    structure: str
    source: str
    here: Place = field(compare=False)
    tank_head: Length | None = None
    tank_head_source: str = ""
    no_hose: tuple[OpeningRef, ...] = ()


@dataclass(frozen=True)
class Look:
    """What was found of a leak at one time."""

    on: date
    found: str


@dataclass(frozen=True)
class Leak:
    """An entry of the register of leaks."""

    leak: str
    where: str
    at: Position
    side: str
    state: str
    seen: date
    here: Place = field(compare=False)
    height: Length | None = None
    opening: OpeningRef | None = None
    history: tuple[Look, ...] = ()
    item: ItemRef | None = None


@dataclass(frozen=True)
class Measured:
    """A clearance as measured on one day."""

    on: date
    clearance: Length
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Clearance:
    """A clearance of shaft, bearing or rudder, with its limit."""

    what: str
    limit: Length
    source: str
    found: tuple[Measured, ...]
    here: Place = field(compare=False)
    item: ItemRef | None = None


@dataclass(frozen=True)
class ShipCondition:
    """Everything of vessel/condition.yaml."""

    zones: tuple[WastageZone, ...]
    next_docking: Time
    here: Place = field(compare=False)
    gauge_uncertainty: Length | None = None
    members: MemberLimit | None = None
    pitted: tuple[Pitted, ...] = ()
    renewed: tuple[Renewed, ...] = ()
    apart: tuple[Apart, ...] = ()
    renewal: RenewalPractice | None = None
    gauging: Gauging | None = None
    anodes: AnodeDuty | None = None
    climate: Climate | None = None
    metals: tuple[MetalPair, ...] = ()
    tightness: TightnessDefaults | None = None
    leaks: tuple[Leak, ...] = ()
    clearances: tuple[Clearance, ...] = ()
