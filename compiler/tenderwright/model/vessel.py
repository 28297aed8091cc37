"""The vessel: particulars, form, tanks, openings, plating, coating zones, anodes, lightship."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from tenderwright.model.build import Prose
from tenderwright.model.common import Extent, Water
from tenderwright.model.kinds import (
    Angle,
    Area,
    Density,
    DrawingRef,
    Fraction,
    Length,
    LengthOrWord,
    Mass,
    Volume,
)
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


@dataclass(frozen=True)
class Hull:
    """How the hull is built."""

    material: str
    fastening: str
    notes: Prose | None = None


@dataclass(frozen=True)
class Dimensions:
    """Principal dimensions."""

    length_overall: Length
    length_between_perpendiculars: Length
    beam: Length
    depth: Length
    draft: Length
    air_draft: Length | None = None
    aft_overhang: Length | None = None


@dataclass(frozen=True)
class Keel:
    """The keel, which stands on the blocks."""

    kind: str
    straight: Extent
    width: Length
    here: Place = field(compare=False)
    depth: Length | None = None
    rake: Length | None = None


@dataclass(frozen=True)
class DraftMarks:
    """One set of draft marks."""

    name: str
    at: Position
    side: str = "both"
    datum: Length | None = None


@dataclass(frozen=True)
class Propeller:
    """The propeller."""

    diameter: Length
    material: str
    blades: int | None = None
    mass: Mass | None = None
    at: Position | None = None


@dataclass(frozen=True)
class HazardousMaterial:
    """A hazardous material known or suspected aboard."""

    material: str
    where: str
    status: str
    report: DrawingRef | None = None


@dataclass(frozen=True)
class Particulars:
    """What the ship is."""

    name: str
    built: int
    type: str
    dimensions: Dimensions
    keel: Keel
    here: Place = field(compare=False)
    builder: str = ""
    significance: Prose | None = None
    status: Prose | None = None
    hull: Hull | None = None
    displacement: Mass | None = None
    draft_marks: tuple[DraftMarks, ...] = ()
    machinery: Prose | None = None
    propeller: Propeller | None = None
    hazards: tuple[HazardousMaterial, ...] = ()


@dataclass(frozen=True)
class FrameRun:
    """A run of equal frame spaces."""

    from_: int
    to: int
    space: Length
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Frames:
    """How frames are numbered and spaced."""

    origin: Length
    direction: str
    spacing: tuple[FrameRun, ...]
    notes: Prose | None = None


@dataclass(frozen=True)
class DeckEdge:
    """The deck edge at a station."""

    height: Length
    half_breadth: Length


@dataclass(frozen=True)
class Station:
    """One station of the table of offsets."""

    at: Length
    keel: Length
    half_breadths: tuple[Length, ...]
    deck: DeckEdge
    here: Place = field(compare=False)
    station: str = ""


@dataclass(frozen=True)
class Offsets:
    """The table of offsets."""

    source: str
    waterlines: tuple[Length, ...]
    stations: tuple[Station, ...]
    here: Place = field(compare=False)


@dataclass(frozen=True)
class Bounds:
    """Planes that bound a tank, and where the hull itself does."""

    from_: Position
    to: Position
    bottom: LengthOrWord
    top: Length
    inboard: Length
    outboard: LengthOrWord
    here: Place = field(compare=False)


@dataclass(frozen=True)
class TableRow:
    """A row of the ship's own sounding table."""

    sounding: Length
    volume: Volume


@dataclass(frozen=True)
class SoundingPipe:
    """A sounding pipe."""

    at: Position
    foot: Length
    here: Place = field(compare=False)
    off_centre: Length | None = None
    head: Length | None = None
    slant: Angle | None = None


@dataclass(frozen=True)
class Contents:
    """What is in a tank on arrival."""

    liquid: str
    here: Place = field(compare=False)
    density: Density | None = None
    sounding: Length | None = None
    ullage: Length | None = None
    volume: Volume | None = None
    read: date | None = None


@dataclass(frozen=True)
class Tank:
    """A tank, cofferdam or void."""

    tank: str
    name: str
    use: str
    contents: Contents
    here: Place = field(compare=False)
    side: str = "centreline"
    held_oil: bool = False
    confined: bool = True
    bounds: Bounds | None = None
    permeability: Fraction | None = None
    table: tuple[TableRow, ...] = ()
    capacity: Volume | None = None
    pipe: SoundingPipe | None = None
    movable: bool = False
    notes: Prose | None = None


@dataclass(frozen=True)
class Opening:
    """A hull opening."""

    opening: str
    name: str
    kind: str
    at: Position
    side: str
    height: Length
    here: Place = field(compare=False)
    off_centre: Length | None = None
    bore: Length | None = None
    length: Length | None = None
    valve: str = ""
    state: str = ""
    notes: Prose | None = None


@dataclass(frozen=True)
class Appendage:
    """What stands out of the hull."""

    appendage: str
    name: str
    extent: Extent
    here: Place = field(compare=False)
    side: str = "centreline"
    area: Area | None = None
    lowest: Length | None = None
    outreach: Length | None = None
    material: str = ""
    notes: Prose | None = None


@dataclass(frozen=True)
class PlateRun:
    """A run of plates of one thickness."""

    from_: Position
    to: Position
    thickness: Length
    inner: bool = False


@dataclass(frozen=True)
class Strake:
    """A strake of shell plating."""

    strake: str
    name: str
    from_girth: Length
    to_girth: Length
    plates: tuple[PlateRun, ...]
    here: Place = field(compare=False)
    riveting: str = ""
    butts: tuple[Position, ...] = ()
    """Where plates of one run meet."""


@dataclass(frozen=True)
class Anode:
    """A sacrificial anode."""

    anode: str
    at: Position
    side: str
    height: Length
    alloy: str
    mass: Mass
    here: Place = field(compare=False)
    fixing: str = ""
    length: Length | None = None
    width: Length | None = None
    thickness: Length | None = None
    left: Fraction | None = None
    seen: date | None = None


@dataclass(frozen=True)
class LightshipWeight:
    """The lightship."""

    mass: Mass
    at: Length
    height: Length
    source: str
    here: Place = field(compare=False)
    off_centre: Length | None = None


@dataclass(frozen=True)
class Weight:
    """A weight aboard."""

    what: str
    mass: Mass
    at: Position
    height: Length
    here: Place = field(compare=False)
    off_centre: Length | None = None
    basis: str = ""


@dataclass(frozen=True)
class ObservedDrafts:
    """Drafts last read."""

    aft: Length
    forward: Length
    read: date
    here: Place = field(compare=False)


@dataclass(frozen=True)
class DockingCondition:
    """The condition wanted for docking."""

    trim: Length
    here: Place = field(compare=False)
    least_gm: Length | None = None
    most_list: Angle | None = None


@dataclass(frozen=True)
class Lightship:
    """Lightship, weights aboard, water, and the condition wanted."""

    lightship: LightshipWeight
    weights: tuple[Weight, ...]
    here: Place = field(compare=False)
    water: Water | None = None
    observed: ObservedDrafts | None = None
    docking: DockingCondition | None = None
