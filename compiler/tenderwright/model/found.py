"""What a docking finds and does: the pieces that the findings of a docking and its history entry share."""

from collections.abc import Mapping
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
from tenderwright.model.marks import Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class DockingDrafts(Noun, frozen=True, kw_only=True):
    """Drafts on docking or undocking."""

    aft: Annotated[Length, Key("Draft read at the marks aft.", "3.5 m")]
    forward: Annotated[Length, Key("Draft read at the marks forward.", "2.9 m")]


class UsedBlock(Noun, frozen=True, kw_only=True):
    """A block, or a row of blocks, as used."""

    at: Annotated[Position, Key("Centre of the block, or of the first of a row.", "Fr 12")]
    to: Annotated[Position | None, Key("Centre of the last of a row.", "Fr 66")] = None
    pitch: Annotated[
        Length | None, Key("Distance from each block of a row to the next.", "1.2 m"), Within(least="50 mm")
    ] = None
    length: Annotated[Length | None, Key("Length along the ship.", "300 mm")] = None
    width: Annotated[Length | None, Key("Width of its cap across the ship.", "1.0 m")] = None
    off_centre: Annotated[Length | None, Key("Distance from the centreline; 0 m for keel blocks.", "2.0 m")] = None
    side: Side = "centreline"
    height: Annotated[Length | None, Key("Height of its cap above the floor of the dock.", "1.5 m")] = None
    painted: Annotated[
        bool, Key("Whether the shell under it was painted at this docking, the block being moved for it.")
    ] = False
    here: Place


class UsedBlocks(Noun, frozen=True, kw_only=True):
    """The blocks of a docking."""

    keel: Annotated[tuple[UsedBlock, ...], Key("The keel blocks on which she stood.")] = ()
    sides: Annotated[tuple[UsedBlock, ...], Key("The side blocks that were hauled in under her.")] = ()
    plan: Annotated[DrawingRef | None, Key("The docking plan by which she was docked.", "d-10")] = None
    notes: Annotated[
        Prose | None,
        Key("What the next dockmaster should know of how she stood.", "The block at Fr 60 stood under the doubler."),
    ] = None


class SoundingTaken(Noun, frozen=True, kw_only=True):
    """What was in a tank."""

    tank: Annotated[TankRef, Key("The tank that was sounded.", "forepeak")]
    liquid: Annotated[str, Key("What was in it.", "sea water")] = ""
    sounding: Annotated[Length | None, Key("Depth of the liquid in the sounding pipe.", "0.62 m")] = None
    ullage: Annotated[
        Length | None, Key("Depth of the empty space above the liquid, where that was measured instead.", "1.2 m")
    ] = None
    volume: Annotated[Volume | None, Key("Volume in the tank, where that was stated instead.", "2.4 m3")] = None


class NotPainted(Noun, frozen=True, kw_only=True):
    """A place left without coating."""

    zone: Annotated[ZoneRef, Key("The coating zone in which the bare place lies.", "underwater")]
    where: Annotated[str, Key("Where the place is, in words.", "sole piece abaft Fr 2")]
    from_: Annotated[Position | None, Key("After end of the bare place.", "Fr 2")] = None
    to: Annotated[Position | None, Key("Forward end of the bare place.", "Fr 4")] = None
    side: Side = ""
    area: Annotated[Area | None, Key("Area that was left bare.", "0.4 m2")] = None
    why: Annotated[str, Key("Why it was left bare.", "block not moved")] = ""
    here: Place


class PlugDrawn(Noun, frozen=True, kw_only=True):
    """A docking plug drawn and refitted."""

    plug: Annotated[OpeningRef, Key("Docking plug, by its opening.", "plug-forepeak")]
    drawn: Annotated[Date, Key("Day on which the plug was drawn.", "2027-05-19")]
    refitted: Annotated[Date, Key("Day on which the plug was back in its place.", "2027-05-19")]
    state: Annotated[str, Key("State of plug, thread and seat.", "thread sound, head rounded")] = ""
    done: Annotated[str, Key("What was done with the plug.", "new bronze plug")] = ""
    witness: Annotated[str, Key("Who saw it refitted.", "ship manager")] = ""
    here: Place


class SteelRenewed(Noun, frozen=True, kw_only=True):
    """A plate, floor or frame renewed."""

    what: Annotated[
        str, Key("What part was renewed."), OneOf("plate", "insert", "doubler", "floor", "frame", "bracket", "other")
    ]
    strake: Annotated[StrakeRef | None, Key("The strake that the plate belongs to.", "C")] = None
    tank: Annotated[TankRef | None, Key("Tank or space it bounds.", "forepeak")] = None
    from_: Annotated[Position | None, Key("After end of the new steel.", "Fr 42")] = None
    to: Annotated[Position | None, Key("Forward end of the new steel.", "Fr 46")] = None
    side: Side = ""
    thickness: Annotated[Length | None, Key("Thickness of the steel fitted.", "10 mm")] = None
    mass: Annotated[Mass | None, Key("Mass of the steel fitted.", "186 kg")] = None
    how: Annotated[str, Key("How it is held."), OneOf("riveted", "welded", "welded and riveted", "bolted")]
    material: Annotated[str, Key("Grade, heat number, certificate.", "grade A, heat 61 204, certificate 3.1")] = ""
    test: Annotated[str, Key("Test and its result.", "hose at 2 bar, tight")] = ""
    drawing: Annotated[DrawingRef | None, Key("Drawing that shows it as built.", "d-12")] = None
    why: Annotated[str, Key("What was found that made it necessary.", "5.1 mm left")] = ""
    item: Annotated[ItemRef | None, Key("The item of the tender under which it was done.", "310")] = None
    here: Place


class RivetsRenewed(Noun, frozen=True, kw_only=True):
    """Rivets renewed or mended."""

    number: Annotated[int, Key("How many rivets it was.", 64), Within(least=1)]
    how: Annotated[str, Key("What was done with them."), OneOf("renewed", "ring-welded", "caulked", "plugged")]
    strake: Annotated[StrakeRef | None, Key("The strake that they hold.", "B")] = None
    from_: Annotated[Position | None, Key("After end of the stretch.", "Fr 20")] = None
    to: Annotated[Position | None, Key("Forward end of the stretch.", "Fr 33")] = None
    side: Side = ""
    diameter: Annotated[Length | None, Key("Diameter of the rivets.", "19 mm")] = None
    seam: Annotated[str, Key("Seam, butt or frame.", "upper seam")] = ""
    why: Annotated[str, Key("What was found that made it necessary.", "heads below half their height")] = ""
    item: Annotated[ItemRef | None, Key("The item of the tender under which it was done.", "315")] = None
    here: Place


class TimberFound(Noun, frozen=True, kw_only=True):
    """A plank, fastening, seam, frame or bolt of a hull of wood: what was found, and what was done."""

    component: Annotated[str, Key("What part of the hull it is."), OneOf("plank", "fastening", "seam", "frame", "bolt")]
    what: Annotated[str, Key("Which one, by its number or in words.", "plank p1-1, port garboard")]
    from_: Annotated[Position | None, Key("After end of the stretch.", "0.9 m")] = None
    to: Annotated[Position | None, Key("Forward end of the stretch.", "5.2 m")] = None
    side: Side = ""
    number: Annotated[int | None, Key("How many of them, where they are counted.", 118), Within(least=1)] = None
    length: Annotated[Length | None, Key("Length of plank or seam.", "4.3 m"), Within(most="10000 m")] = None
    found: Annotated[str, Key("What was found of it.", "soft to half its thickness at the hood end")]
    done: Annotated[str, Key("What was done about it.", "renewed in oak, 38 mm")]
    material: Annotated[str, Key("Wood, fastening or caulking that was used.", "green oak, treenails of 28 mm")] = ""
    item: Annotated[ItemRef | None, Key("The item of the tender under which it was done.", "310")] = None
    here: Place


class ValveFound(Noun, frozen=True, kw_only=True):
    """A sea valve or other closure in the shell: what was found, what was done, how it was tested."""

    opening: Annotated[OpeningRef, Key("The opening in the shell that it closes.", "sea-chest-main")]
    found: Annotated[Prose, Key("What was found of it.", "Spindle bent, seat scored.")]
    done: Annotated[Prose, Key("What was done with it.", "Spindle straightened, seat ground in.")]
    test: Annotated[str, Key("How its tightness was tested.", "body at 3 bar, seat at 2 bar, 10 min each")] = ""
    pressure: Annotated[Pressure | None, Key("Pressure at which it was tested.", "2 bar"), Within(most="100 bar")] = (
        None
    )
    tight: Annotated[bool | None, Key("Whether it was tight.")] = None
    witness: Annotated[str, Key("Who saw the test.", "ship manager")] = ""


class FilledRow(Noun, frozen=True, kw_only=True):
    """A row of a table of the tender as the yard filled it."""

    table: Annotated[str, Key("Title of the table.", "Sea valves, as found")]
    row: Annotated[str, Key("What the row is about.", "Fire pump suction")]
    cells: Annotated[
        Mapping[str, Annotated[str, Key("What the yard wrote.", "0.3 mm")]],
        Key("What stands in the cells, by heading."),
    ]


class ClearanceTaken(Noun, frozen=True, kw_only=True):
    """A clearance or weardown of shaft or rudder."""

    of: Annotated[str, Key("What the clearance belongs to.", "shaft"), OneOf("shaft", "rudder", "other")]
    where: Annotated[str, Key("Where it was measured.", "after bearing, top")]
    found: Annotated[Length, Key("Clearance that was found in dock.", "5.4 mm")]
    limit: Annotated[Length | None, Key("Greatest clearance that was taken as allowed.", "7 mm")] = None
    limit_source: Annotated[str, Key("Where the limit comes from.", "yard's figure of 2007")] = ""
    left: Annotated[Length | None, Key("Clearance as she left the dock.", "1.2 mm")] = None
    done: Annotated[str, Key("What was done about it.", "staves renewed")] = ""


class TankTested(Noun, frozen=True, kw_only=True):
    """A test of a tank or space."""

    tank: Annotated[TankRef, Key("The tank or space that was tested.", "forepeak")]
    test: Annotated[str, Key("How it was tested."), OneOf("head of water", "air", "hose", "vacuum box", "none")]
    head: Annotated[Length | None, Key("Head above the top.", "0.9 m"), Within(most="50 m")] = None
    pressure: Annotated[
        Pressure | None, Key("Pressure of the air, for a test by air.", "0.15 bar"), Within(most="100 bar")
    ] = None
    held: Annotated[Time | None, Key("How long it was held.", "30 min")] = None
    tight: Annotated[bool, Key("Whether it was tight.")]
    day: Annotated[Date | None, Key("Day of the test.", "2027-05-19")] = None
    witness: Annotated[str, Key("Who saw the test done.", "naval architect")] = ""
    note: Annotated[str, Key("What happened at the test.", "two rivets caulked, tested again")] = ""
    here: Place


class DryFilm(Noun, frozen=True, kw_only=True):
    """Statistics of dry film thickness."""

    mean: Annotated[Length, Key("Mean of the readings.", "158 um")]
    least: Annotated[Length | None, Key("Least of the readings.", "118 um")] = None
    most: Annotated[Length | None, Key("Greatest of the readings.", "240 um")] = None
    deviation: Annotated[Length | None, Key("Standard deviation of the readings.", "22 um")] = None
    readings: Annotated[int | None, Key("How many readings were taken."), Within(least=1)] = None
    of: Annotated[str, Key("Of which coats the readings are."), OneOf("this coat", "all so far")] = ""


class CoatApplied(Noun, frozen=True, kw_only=True):
    """A coat as applied."""

    coat: Annotated[int, Key("Number of the coat, from the steel out."), Within(least=1)]
    product: Annotated[str, Key("Product, by generic type.", "epoxy anticorrosive")]
    batches: Annotated[
        tuple[Annotated[str, Key("Batch number.", "A 2703-118")], ...],
        Key("Batch numbers on the tins, of base and hardener."),
    ] = ()
    begun: Annotated[DayAndTime, Key("When the coat was begun.", "2027-05-19 09:30")] = ""
    ended: Annotated[DayAndTime, Key("When it was ended.", "2027-05-19 09:30")] = ""
    air: Annotated[Temperature | None, Key("Temperature of the air while it was applied.", "14 degC")] = None
    steel: Annotated[Temperature | None, Key("Temperature of the steel while it was applied.", "13 degC")] = None
    humidity: Annotated[Fraction | None, Key("Relative humidity of the air while it was applied.", "68 %")] = None
    dew_point: Annotated[Temperature | None, Key("Dew point of the air while it was applied.", "8.2 degC")] = None
    thinning: Annotated[Fraction | None, Key("Thinner added, as a share of the volume of the paint.", "5 %")] = None
    wft: Annotated[Length | None, Key("Mean thickness of the wet film.", "210 um")] = None
    dft: Annotated[DryFilm | None, Key("Dry film, of this coat alone or of all coats so far.")] = None
    inspector: Annotated[str, Key("Who inspected the coat, by office and not by name.", "coating inspector")] = ""
    here: Place


class DaysLost(Noun, frozen=True, kw_only=True):
    """Days lost, with their cause."""

    days: Annotated[int, Key("How many days were lost to it.", 2), Within(least=1, most=3650)]
    cause: Annotated[Cause, Key("What kind of cause it was.", "weather")]
    what: Annotated[str, Key("What happened on those days.", "rain over the blast")] = ""


class PhotographKept(Noun, frozen=True, kw_only=True):
    """A photograph, or a set of them."""

    what: Annotated[str, Key("What is to be seen on it.", "strake C, doubler cropped")]
    where: Annotated[str, Key("What part of the ship it shows.", "Fr 44, port")] = ""
    when: Annotated[
        str, Key("When it was taken: before, during or after the work.", "during"), OneOf("before", "during", "after")
    ] = ""
    item: Annotated[ItemRef | None, Key("The item of the tender that it belongs to.", "335")] = None
    file: Annotated[str, Key("Where it is kept.", "2027/335-14.jpg")] = ""


class Deferred(Noun, frozen=True, kw_only=True):
    """Work put off."""

    what: Annotated[str, Key("The work that was put off.", "Plate of strake F, starboard, at Fr 52")]
    where: Annotated[str, Key("Where in the ship the work lies.", "strake F, starboard, Fr 52")] = ""
    condition: Annotated[str, Key("Condition it was left in.", "7.4 mm of 9.5 mm")] = ""
    why: Annotated[str, Key("Why it was put off.", "No dry days left for it")] = ""
    by: Annotated[str, Key("When it is to be done.", "next docking")] = ""
    item: Annotated[ItemRef | None, Key("The item that it belonged to.", "310")] = None
