"""What a docking finds and does: the pieces that the findings of a docking and its history entry share."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import (
    Area,
    Cause,
    Date,
    DayAndTime,
    DrawingRef,
    Fraction,
    ItemRef,
    Length,
    Mass,
    OpeningRef,
    Pressure,
    Side,
    StrakeRef,
    TankRef,
    Temperature,
    Time,
    Volume,
    ZoneRef,
)
from tenderwright.model.marks import KEPT, Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class DockingDrafts(Noun, frozen=True, kw_only=True):
    """Drafts on docking or undocking."""

    aft: Annotated[Length, Key("Aft.", "3.5 m")]
    forward: Annotated[Length, Key("Forward.", "2.9 m")]


class UsedBlock(Noun, frozen=True, kw_only=True):
    """A block, or a row of blocks, as used."""

    at: Annotated[Position, Key("Centre of the block, or of the first of a row.", "Fr 12")]
    to: Annotated[Position | None, Key("Centre of the last of a row.")] = None
    pitch: Annotated[Length | None, Key("Pitch of a row.", "1.2 m"), Within(least="50 mm")] = None
    length: Annotated[Length | None, Key("Length along the ship.", "300 mm")] = None
    width: Annotated[Length | None, Key("Width.", "1.0 m")] = None
    off_centre: Annotated[Length | None, Key("Distance from the centreline; 0 m for keel blocks.", "2.0 m")] = None
    side: Side = "centreline"
    height: Annotated[Length | None, Key("Height."), KEPT] = None
    painted: Annotated[
        bool, Key("Whether the shell under it was painted at this docking, the block being moved for it.")
    ] = False
    """Whether the shell under it was painted all the same, the block being moved for it."""
    here: Place


class UsedBlocks(Noun, frozen=True, kw_only=True):
    """The blocks of a docking."""

    keel: Annotated[tuple[UsedBlock, ...], Key("Keel blocks.")] = ()
    sides: Annotated[tuple[UsedBlock, ...], Key("Side blocks.")] = ()
    plan: Annotated[DrawingRef | None, Key("Docking plan used.", "d-10")] = None
    notes: Annotated[Prose | None, Key("Notes.")] = None


class SoundingTaken(Noun, frozen=True, kw_only=True):
    """What was in a tank."""

    tank: Annotated[TankRef, Key("Tank.", "forepeak")]
    liquid: Annotated[str, Key("Liquid.", "sea water")] = ""
    sounding: Annotated[Length | None, Key("Sounding.", "0.62 m")] = None
    ullage: Annotated[Length | None, Key("Ullage.", "1.2 m")] = None
    volume: Annotated[Volume | None, Key("Volume.", "2.4 m3")] = None


class NotPainted(Noun, frozen=True, kw_only=True):
    """A place left without coating."""

    zone: Annotated[ZoneRef, Key("Zone.", "underwater")]
    where: Annotated[str, Key("Where.", "sole piece abaft Fr 2")]
    from_: Annotated[Position | None, Key("After end.", "Fr 2")] = None
    to: Annotated[Position | None, Key("Forward end.", "Fr 4")] = None
    side: Side = ""
    area: Annotated[Area | None, Key("Area.", "0.4 m2")] = None
    why: Annotated[str, Key("Why.", "block not moved")] = ""
    here: Place


class PlugDrawn(Noun, frozen=True, kw_only=True):
    """A docking plug drawn and refitted."""

    plug: Annotated[OpeningRef, Key("Docking plug, by its opening.", "plug-forepeak")]
    drawn: Annotated[Date, Key("Day drawn.", "2027-05-19")]
    refitted: Annotated[Date, Key("Day refitted.", "2027-05-19")]
    state: Annotated[str, Key("State of plug, thread and seat.", "thread sound, head rounded")] = ""
    done: Annotated[str, Key("What was done.", "new bronze plug")] = ""
    witness: Annotated[str, Key("Who saw it refitted.", "ship manager")] = ""
    here: Place


class SteelRenewed(Noun, frozen=True, kw_only=True):
    """A plate, floor or frame renewed."""

    what: Annotated[
        str, Key("What was renewed."), OneOf("plate", "insert", "doubler", "floor", "frame", "bracket", "other")
    ]
    strake: Annotated[StrakeRef | None, Key("Strake.", "C")] = None
    tank: Annotated[TankRef | None, Key("Tank or space it bounds.", "forepeak")] = None
    from_: Annotated[Position | None, Key("After end.", "Fr 42")] = None
    to: Annotated[Position | None, Key("Forward end.", "Fr 46")] = None
    side: Side = ""
    thickness: Annotated[Length | None, Key("Thickness fitted.", "10 mm")] = None
    mass: Annotated[Mass | None, Key("Mass fitted.", "186 kg")] = None
    how: Annotated[str, Key("How it is held."), OneOf("riveted", "welded", "welded and riveted", "bolted")]
    material: Annotated[str, Key("Grade, heat number, certificate.", "grade A, heat 61 204, certificate 3.1")] = ""
    test: Annotated[str, Key("Test and its result.", "hose at 2 bar, tight")] = ""
    drawing: Annotated[DrawingRef | None, Key("Drawing as built.")] = None
    why: Annotated[str, Key("Why.", "5.1 mm left")] = ""
    item: Annotated[ItemRef | None, Key("Item.", "310"), KEPT] = None
    here: Place


class RivetsRenewed(Noun, frozen=True, kw_only=True):
    """Rivets renewed or mended."""

    number: Annotated[int, Key("How many."), Within(least=1)]
    how: Annotated[str, Key("What was done."), OneOf("renewed", "ring-welded", "caulked", "plugged")]
    strake: Annotated[StrakeRef | None, Key("Strake.", "B")] = None
    from_: Annotated[Position | None, Key("After end.", "Fr 20")] = None
    to: Annotated[Position | None, Key("Forward end.", "Fr 33")] = None
    side: Side = ""
    diameter: Annotated[Length | None, Key("Diameter.", "19 mm")] = None
    seam: Annotated[str, Key("Seam, butt or frame.", "upper seam")] = ""
    why: Annotated[str, Key("Why.", "heads below half their height")] = ""
    item: Annotated[ItemRef | None, Key("Item.", "315"), KEPT] = None
    here: Place


class ValveFound(Noun, frozen=True, kw_only=True):
    """A sea valve or other closure in the shell: what was found, what was done, how it was tested."""

    opening: Annotated[OpeningRef, Key("Opening.", "sea-chest-main")]
    found: Annotated[Prose, Key("What was found.")]
    done: Annotated[Prose, Key("What was done.")]
    test: Annotated[str, Key("Test.", "body at 3 bar, seat at 2 bar, 10 min each")] = ""
    pressure: Annotated[Pressure | None, Key("Test pressure.", "2 bar"), Within(most="100 bar")] = None
    tight: Annotated[bool | None, Key("Whether it was tight.")] = None
    witness: Annotated[str, Key("Who saw the test.", "ship manager")] = ""


class ClearanceTaken(Noun, frozen=True, kw_only=True):
    """A clearance or weardown of shaft or rudder."""

    of: Annotated[str, Key("Of what."), OneOf("shaft", "rudder", "other")]
    where: Annotated[str, Key("Where.", "after bearing, top")]
    found: Annotated[Length, Key("As found.", "5.4 mm")]
    limit: Annotated[Length | None, Key("Limit taken.", "7 mm")] = None
    limit_source: Annotated[str, Key("Where the limit comes from.", "yard's figure of 2007")] = ""
    left: Annotated[Length | None, Key("As left.", "1.2 mm")] = None
    done: Annotated[str, Key("What was done.", "staves renewed")] = ""


class TankTested(Noun, frozen=True, kw_only=True):
    """A test of a tank or space."""

    tank: Annotated[TankRef, Key("Tank.", "forepeak")]
    test: Annotated[str, Key("How it was tested."), OneOf("head of water", "air", "hose", "vacuum box", "none")]
    head: Annotated[Length | None, Key("Head above the top.", "0.9 m"), Within(most="50 m")] = None
    pressure: Annotated[Pressure | None, Key("Pressure.", "0.15 bar"), Within(most="100 bar")] = None
    held: Annotated[Time | None, Key("How long it was held.", "30 min")] = None
    tight: Annotated[bool, Key("Whether it was tight.")]
    day: Annotated[Date | None, Key("Day.", "2027-05-19")] = None
    witness: Annotated[str, Key("Who saw it.", "naval architect")] = ""
    note: Annotated[str, Key("Note.", "two rivets caulked, tested again")] = ""
    here: Place


class DryFilm(Noun, frozen=True, kw_only=True):
    """Statistics of dry film thickness."""

    mean: Annotated[Length, Key("Mean.", "158 um")]
    least: Annotated[Length | None, Key("Least.", "118 um")] = None
    most: Annotated[Length | None, Key("Most.", "240 um")] = None
    deviation: Annotated[Length | None, Key("Standard deviation.", "22 um")] = None
    readings: Annotated[int | None, Key("How many readings."), Within(least=1)] = None
    of: Annotated[str, Key("Of which coats."), OneOf("this coat", "all so far")] = ""


class CoatApplied(Noun, frozen=True, kw_only=True):
    """A coat as applied."""

    coat: Annotated[int, Key("Number of the coat, from the steel out."), Within(least=1)]
    product: Annotated[str, Key("Product, by generic type.", "epoxy anticorrosive")]
    batches: Annotated[tuple[Annotated[str, Key("Batch number.", "A 2703-118")], ...], Key("Batch numbers.")] = ()
    begun: Annotated[DayAndTime, Key("When the coat was begun.", "2027-05-19 09:30")] = ""
    ended: Annotated[DayAndTime, Key("When it was ended.", "2027-05-19 09:30")] = ""
    air: Annotated[Temperature | None, Key("Air.", "14 degC")] = None
    steel: Annotated[Temperature | None, Key("Steel.", "13 degC")] = None
    humidity: Annotated[Fraction | None, Key("Relative humidity.", "68 %")] = None
    dew_point: Annotated[Temperature | None, Key("Dew point.", "8.2 degC")] = None
    thinning: Annotated[Fraction | None, Key("Thinner added.", "5 %")] = None
    wft: Annotated[Length | None, Key("Wet film, mean.", "210 um")] = None
    dft: Annotated[DryFilm | None, Key("Dry film, of this coat alone or of all coats so far.")] = None
    inspector: Annotated[str, Key("Who inspected.", "coating inspector")] = ""
    here: Place


class DaysLost(Noun, frozen=True, kw_only=True):
    """Days lost, with their cause."""

    days: Annotated[int, Key("How many."), Within(least=1, most=3650)]
    cause: Annotated[Cause, Key("Cause.")]
    what: Annotated[str, Key("What happened.", "rain over the blast")] = ""


class PhotographKept(Noun, frozen=True, kw_only=True):
    """A photograph, or a set of them."""

    what: Annotated[str, Key("What it shows.", "strake C, doubler cropped")]
    where: Annotated[str, Key("Where.", "Fr 44, port")] = ""
    when: Annotated[str, Key("When."), OneOf("before", "during", "after")] = ""
    item: Annotated[ItemRef | None, Key("Item.", "335")] = None
    file: Annotated[str, Key("Where it is kept.", "2027/335-14.jpg")] = ""


class Deferred(Noun, frozen=True, kw_only=True):
    """Work put off."""

    what: Annotated[str, Key("What.")]
    where: Annotated[str, Key("Where.", "strake F, starboard, Fr 52")] = ""
    condition: Annotated[str, Key("Condition it was left in.", "7.4 mm of 9.5 mm")] = ""
    why: Annotated[str, Key("Why.")] = ""
    by: Annotated[str, Key("When it is to be done.", "next docking")] = ""
    item: Annotated[ItemRef | None, Key("Item it belonged to.")] = None
