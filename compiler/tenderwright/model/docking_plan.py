"""The docking plan for tender: blocks, allowables, clearances, and what moves while she is dry."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from tenderwright.model.kinds import Angle, Area, ItemRef, Length, Mass, Pressure, SecondMoment, Speed, TankRef, Volume
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


@dataclass(frozen=True)
class BlockLayer:
    """A layer of a block, from the floor up."""

    material: str
    height: Length
    stiffness: Pressure | None = None
    source: str = ""


@dataclass(frozen=True)
class KeelBlocks:
    """A row of keel blocks, or one block."""

    at: Position
    length: Length
    width: Length
    here: Place = field(compare=False)
    to: Position | None = None
    every: int = 1
    bearing_width: Length | None = None
    """Over which the keel bears on the cap where a plate spreads it."""
    layers: tuple[BlockLayer, ...] = ()


@dataclass(frozen=True)
class SideBlocks:
    """A pair of side blocks."""

    at: Position
    off_centre: Length
    here: Place = field(compare=False)
    length: Length | None = None
    width: Length | None = None


@dataclass(frozen=True)
class CitedLength:
    """A length that is an input with its source."""

    value: Length
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class CitedAngle:
    """An angle that is an input with its source."""

    value: Angle
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class CitedPressure:
    """A pressure that is an input with its source."""

    value: Pressure
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class CitedNumber:
    """A number that is an input with its source."""

    value: float
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Girder:
    """The hull girder, for the elastic keel line."""

    second_moment: SecondMoment
    modulus: Pressure
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Wind:
    """Wind on her when she stands on blocks."""

    speed: Speed
    coefficient: float
    area: Area
    height: Length
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Earthquake:
    """Sideways acceleration as a share of gravity."""

    coefficient: float
    source: str
    here: Place = field(compare=False)


@dataclass(frozen=True)
class MovedWeight:
    """A weight that comes aboard or goes while she is dry."""

    what: str
    mass: Mass
    at: Position
    height: Length
    here: Place = field(compare=False)
    off_centre: Length | None = None
    item: ItemRef | None = None


@dataclass(frozen=True)
class ChangedTank:
    """A tank's contents when she is floated."""

    tank: TankRef
    liquid: str
    here: Place = field(compare=False)
    volume: Volume | None = None
    item: ItemRef | None = None


@dataclass(frozen=True)
class DockingPlan:
    """The docking plan for tender."""

    keel_blocks: tuple[KeelBlocks, ...]
    here: Place = field(compare=False)
    side_blocks: tuple[SideBlocks, ...] = ()
    block_height: Length | None = None
    declivity: CitedAngle | None = None
    allowable: CitedPressure | None = None
    girder: Girder | None = None
    clearance: CitedLength | None = None
    margin: CitedLength | None = None
    under_keel: CitedLength | None = None
    over_sill: CitedLength | None = None
    beside: CitedLength | None = None
    ends: CitedLength | None = None
    wind: Wind | None = None
    earthquake: Earthquake | None = None
    friction: CitedNumber | None = None
    least_gm: Length | None = None
    moved_while_dry: tuple[MovedWeight, ...] = ()
    tanks_at_undocking: tuple[ChangedTank, ...] = ()
    plug_register: ItemRef | None = None
    stability_checked: date | None = None
