"""What a docking finds and does: the pieces that the findings of a docking and its history entry share."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from tenderwright.model.build import Prose
from tenderwright.model.kinds import (
    Area,
    DrawingRef,
    Fraction,
    ItemRef,
    Length,
    Mass,
    OpeningRef,
    Pressure,
    StrakeRef,
    TankRef,
    Temperature,
    Time,
    Volume,
    ZoneRef,
)
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
    painted: bool = False
    """Whether the shell under it was painted all the same, the block being moved for it."""


@dataclass(frozen=True)
class UsedBlocks:
    """The blocks of a docking."""

    keel: tuple[UsedBlock, ...] = ()
    sides: tuple[UsedBlock, ...] = ()
    plan: DrawingRef | None = None
    notes: Prose | None = None


@dataclass(frozen=True)
class SoundingTaken:
    """What was in a tank."""

    tank: TankRef
    liquid: str = ""
    sounding: Length | None = None
    ullage: Length | None = None
    volume: Volume | None = None


@dataclass(frozen=True)
class NotPainted:
    """A place left without coating."""

    zone: ZoneRef
    where: str
    here: Place = field(compare=False)
    from_: Position | None = None
    to: Position | None = None
    side: str = ""
    area: Area | None = None
    why: str = ""


@dataclass(frozen=True)
class PlugDrawn:
    """A docking plug drawn and refitted."""

    plug: OpeningRef
    drawn: date
    refitted: date
    here: Place = field(compare=False)
    state: str = ""
    done: str = ""
    witness: str = ""


@dataclass(frozen=True)
class SteelRenewed:
    """A plate, floor or frame renewed."""

    what: str
    how: str
    here: Place = field(compare=False)
    strake: StrakeRef | None = None
    tank: TankRef | None = None
    from_: Position | None = None
    to: Position | None = None
    side: str = ""
    thickness: Length | None = None
    mass: Mass | None = None
    material: str = ""
    test: str = ""
    drawing: DrawingRef | None = None
    why: str = ""
    item: ItemRef | None = None


@dataclass(frozen=True)
class RivetsRenewed:
    """Rivets renewed or mended."""

    number: int
    how: str
    here: Place = field(compare=False)
    strake: StrakeRef | None = None
    from_: Position | None = None
    to: Position | None = None
    side: str = ""
    diameter: Length | None = None
    seam: str = ""
    why: str = ""
    item: ItemRef | None = None


@dataclass(frozen=True)
class ValveFound:
    """A sea valve or other closure in the shell: what was found, what was done, how it was tested."""

    opening: OpeningRef
    found: Prose
    done: Prose
    test: str = ""
    pressure: Pressure | None = None
    tight: bool | None = None
    witness: str = ""


@dataclass(frozen=True)
class ClearanceTaken:
    """A clearance or weardown of shaft or rudder."""

    of: str
    where: str
    found: Length
    limit: Length | None = None
    limit_source: str = ""
    left: Length | None = None
    done: str = ""


@dataclass(frozen=True)
class TankTested:
    """A test of a tank or space."""

    tank: TankRef
    test: str
    tight: bool
    here: Place = field(compare=False)
    head: Length | None = None
    pressure: Pressure | None = None
    held: Time | None = None
    day: date | None = None
    witness: str = ""
    note: str = ""


@dataclass(frozen=True)
class DryFilm:
    """Statistics of dry film thickness."""

    mean: Length
    least: Length | None = None
    most: Length | None = None
    deviation: Length | None = None
    readings: int | None = None
    of: str = ""


@dataclass(frozen=True)
class CoatApplied:
    """A coat as applied."""

    coat: int
    product: str
    here: Place = field(compare=False)
    batches: tuple[str, ...] = ()
    begun: str = ""
    ended: str = ""
    air: Temperature | None = None
    steel: Temperature | None = None
    humidity: Fraction | None = None
    dew_point: Temperature | None = None
    thinning: Fraction | None = None
    wft: Length | None = None
    dft: DryFilm | None = None
    inspector: str = ""


@dataclass(frozen=True)
class DaysLost:
    """Days lost, with their cause."""

    days: int
    cause: str
    what: str = ""


@dataclass(frozen=True)
class PhotographKept:
    """A photograph, or a set of them."""

    what: str
    where: str = ""
    when: str = ""
    item: ItemRef | None = None
    file: str = ""


@dataclass(frozen=True)
class Deferred:
    """Work put off."""

    what: str
    where: str = ""
    condition: str = ""
    why: str = ""
    by: str = ""
    item: ItemRef | None = None
