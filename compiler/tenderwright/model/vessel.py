"""The vessel: form, openings, appendages, plating, anodes."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.common import Extent
from tenderwright.model.kinds import (
    Area,
    Date,
    Fraction,
    Frame,
    Identifier,
    Length,
    Mass,
    Side,
    SignedLength,
)
from tenderwright.model.marks import Count, Form, Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class FrameRun(Noun, frozen=True, kw_only=True):
    """A run of equal frame spaces."""

    from_: Annotated[Frame, Key("Frame at which the run begins.", -4)]
    to: Annotated[Frame, Key("Frame at which the run ends, and the next begins.", 6)]
    space: Annotated[
        Length, Key("Distance from each frame of the run to the next.", "500 mm"), Within(least="50 mm", most="10 m")
    ]
    here: Place


class FramePosition(Noun, frozen=True, kw_only=True):
    """Where one frame stands, by a table."""

    frame: Annotated[Frame, Key("Number of the frame.", 12)]
    at: Annotated[
        SignedLength, Key("Its distance from where the table counts, the way the numbers grow.", "6.02 m", "24 ft 3 in")
    ]
    here: Place


class Frames(Noun, frozen=True, kw_only=True):
    """How frames are numbered and spaced, so that `Fr 31 + 200 mm` can be placed."""

    origin: Annotated[
        SignedLength | None,
        Key(
            "Distance of frame 0, or of where the table counts, forward of the after perpendicular; left out it is the "
            "perpendicular from which the numbers grow.",
            "0 m",
        ),
    ] = None
    direction: Annotated[str, Key("Which way numbers grow."), OneOf("forward", "aft")]
    spacing: Annotated[tuple[FrameRun, ...], Key("Runs of equal spaces, in order, without a gap.")] = ()
    positions: Annotated[
        tuple[FramePosition, ...],
        Key("A table of frames in place of the spacing, as uneven as they stand; between two of it spaces are equal."),
    ] = ()
    notes: Annotated[
        Prose | None, Key("How the numbering is known.", "Painted on the frames in the hold; agrees with drawing D-02.")
    ] = None
    here: Place


class DeckEdge(Noun, frozen=True, kw_only=True):
    """The deck edge at a station."""

    height: Annotated[Length, Key("Height of the deck edge above the base line.", "5.2 m")]
    half_breadth: Annotated[Length, Key("Half-breadth to the deck edge.", "3.9 m")]


class Station(Noun, frozen=True, kw_only=True):
    """One station of the table of offsets."""

    station: Annotated[str, Key("Name of the station, as the lines plan has it.", "0")] = ""
    at: Annotated[SignedLength, Key("Distance forward of the after perpendicular; negative abaft it.", "0 m")]
    keel: Annotated[SignedLength, Key("Height of the lowest point of the section above the keel line.", "0 m")]
    half_breadths: Annotated[
        tuple[Annotated[Length, Key("A half-breadth at that place.", "3.21 m")], ...],
        Key("One half-breadth for each waterline; zero below the section's lowest point."),
    ]
    deck: Annotated[DeckEdge, Key("The deck edge, where the section ends.")]
    here: Place


_STATIONS = [
    {"at": at, "keel": "0 m", "half_breadths": breadths, "deck": {"height": height, "half_breadth": breadth}}
    for at, breadths, height, breadth in (
        ("0 m", ["0.20 m", "0.90 m", "2.40 m"], "5.2 m", "3.1 m"),
        ("24 m", ["2.90 m", "4.20 m", "4.55 m"], "4.6 m", "4.55 m"),
        ("48 m", ["0.10 m", "0.15 m", "0.30 m"], "6.1 m", "1.2 m"),
    )
]


class Offsets(Noun, frozen=True, kw_only=True):
    """The hull form as half-breadths at stations and waterlines, to the moulded line."""

    source: Annotated[str, Key("Where the table comes from.", "lifted from drawing D-02")]
    waterlines: Annotated[
        tuple[Annotated[Length, Key("Height above the keel line.", "0.5 m")], ...],
        Key("Heights of the waterlines, rising.", ["0.5 m", "1.5 m", "3.0 m"]),
        Count(3),
    ]
    stations: Annotated[tuple[Station, ...], Key("Stations from aft to forward.", _STATIONS), Count(3)]
    uncertainty: Annotated[
        Fraction | None,
        Key(
            "Standard uncertainty of all half-breadths together, as where a paper plan has shrunk; 0.3 % where left out.",
            "0.5 %",
        ),
    ] = None
    here: Place


class Opening(Noun, frozen=True, kw_only=True):
    """A hull opening."""

    opening: Annotated[Identifier, Key("Identifier, by which items name the opening.", "sea-chest-main")]
    name: Annotated[str, Key("Name as the tender prints it.", "Main sea chest")]
    kind: Annotated[
        str,
        Key("What kind of opening it is.", "sea chest"),
        OneOf(
            "sea chest",
            "suction",
            "discharge",
            "scupper",
            "docking plug",
            "stern tube",
            "echo sounder",
            "sonar or log trunk",
            "hawse pipe",
            "other",
        ),
    ]
    at: Annotated[Position, Key("Where its centre is, along the ship.", "Fr 24")]
    side: Side
    height: Annotated[Length, Key("Height of its centre above the keel line.", "0.9 m")]
    off_centre: Annotated[Length | None, Key("Distance from the centreline.", "2.1 m")] = None
    bore: Annotated[Length | None, Key("Bore or clear width.", "150 mm")] = None
    length: Annotated[Length | None, Key("Clear length, for chests.", "600 mm")] = None
    valve: Annotated[str, Key("The valve or other closure that stands on it.", "angle, bronze, flanged")] = ""
    state: Annotated[
        str, Key("The state it is in now.", "in use"), OneOf("in use", "blanked afloat", "seized", "unknown")
    ] = ""
    notes: Annotated[Prose | None, Key("What was found of it.", "Flange wasted on the lower half.")] = None
    here: Place


class Appendage(Noun, frozen=True, kw_only=True):
    """What stands out of the hull."""

    appendage: Annotated[Identifier, Key("Identifier of the appendage.", "rudder")]
    name: Annotated[str, Key("Name as the tender prints it.", "Rudder")]
    kind: Annotated[
        str,
        Key("What kind of appendage it is.", "rudder"),
        OneOf(
            "rudder",
            "stern frame",
            "bilge keel",
            "bossing",
            "shaft bracket",
            "skeg",
            "false keel",
            "fin",
            "trunk",
            "guard",
            "other",
        ),
    ]
    extent: Annotated[Extent, Key("Where it reaches along the ship.")]
    side: Side = "centreline"
    area: Annotated[Area | None, Key("Area to be coated, all faces.", "8.2 m2")] = None
    lowest: Annotated[SignedLength | None, Key("Lowest point above the keel line.", "-0.1 m")] = None
    outreach: Annotated[Length | None, Key("Farthest point from the centreline.", "4.4 m")] = None
    material: Annotated[str, Key("What it is made of.", "cast steel")] = ""
    notes: Annotated[Prose | None, Key("What else is known of it.", "Rebuilt at the docking of 1988.")] = None
    here: Place


class PlateRun(Noun, frozen=True, kw_only=True):
    """A run of plates of one thickness."""

    from_: Annotated[Position, Key("After end of the run.", "Fr 10")]
    to: Annotated[Position, Key("Forward end of the run.", "Fr 30")]
    thickness: Annotated[Length, Key("Thickness as built; a pound-plate name may be used.", "10.2 lb plate", "9.5 mm")]
    inner: Annotated[
        bool,
        Key("Whether the plates lie under those of the strakes beside them, of an in-and-out plating.", True),
    ] = False


class ShellJoint(Noun, frozen=True, kw_only=True):
    """How one kind of joint of a strake is riveted."""

    joint: Annotated[
        str,
        Key("Its upper seam, the seam of the lowest strake to the keel, its butts, or its frames.", "seam"),
        OneOf("seam", "lower seam", "butt", "frame"),
    ]
    kind: Annotated[
        str,
        Key("How the plates are joined: lapped, or under a strap on one face or on both.", "lap"),
        OneOf("lap", "strap", "double strap"),
    ]
    rows: Annotated[int, Key("Rows of rivets; of a strap on each side of the butt.", 2), Within(least=1, most=6)]
    rivet: Annotated[Length, Key("Diameter of the rivets.", "19 mm"), Within(least="5 mm", most="60 mm")]
    pitch: Annotated[
        Length | None, Key("Pitch; 4.5 diameters, or 7 at frames, unless given.", "85 mm"), Within(least="10 mm")
    ] = None
    from_: Annotated[Position | None, Key("After end, where it is riveted otherwise elsewhere.", "Fr 30")] = None
    to: Annotated[Position | None, Key("Forward end of that stretch.", "Fr 58")] = None
    here: Place


class Strake(Noun, frozen=True, kw_only=True):
    """A strake of shell plating."""

    strake: Annotated[str, Key("Letter, A from the keel.", "A"), Form("^[A-Z]{1,2}$", "Letter of a strake")]
    name: Annotated[str, Key("Name of the strake, beside its letter.", "garboard")]
    from_girth: Annotated[Length, Key("Girth from the keel centreline amidships to the lower edge.", "0 m")]
    to_girth: Annotated[Length, Key("Girth to the upper edge.", "1.2 m")]
    plates: Annotated[tuple[PlateRun, ...], Key("Runs of plates, from aft.")]
    material: Annotated[
        str,
        Key("What it is made of; as the hull of vessel/particulars.yaml unless given.", "wrought iron"),
        OneOf("mild steel", "early steel", "wrought iron"),
    ] = ""
    riveting: Annotated[str, Key("What else is to be said of its riveting.", "heads inside, points outside")] = ""
    joints: Annotated[
        tuple[ShellJoint, ...],
        Key("Its joints that differ from the ship's usual ones in vessel/condition.yaml; the first that fits counts."),
    ] = ()
    butts: Annotated[
        tuple[Annotated[Position, Key("A butt.", "Fr 18")], ...],
        Key("Butts, from aft, where plates of one run meet; a run is one plate where none are given."),
    ] = ()
    here: Place


class Anode(Noun, frozen=True, kw_only=True):
    """A sacrificial anode."""

    anode: Annotated[Identifier, Key("Identifier, by which items and findings name the anode.", "p1")]
    at: Annotated[Position, Key("Where its centre is, along the ship.", "Fr 12")]
    side: Side
    height: Annotated[Length, Key("Height above the keel line.", "1.1 m")]
    alloy: Annotated[str, Key("Alloy of which it is cast.", "zinc"), OneOf("zinc", "aluminium", "magnesium")]
    mass: Annotated[Mass, Key("Net mass of alloy when new.", "10 kg")]
    fixing: Annotated[str, Key("How it is held to the shell.", "bolted"), OneOf("bolted", "welded")] = ""
    length: Annotated[Length | None, Key("Length of the casting when new.", "300 mm")] = None
    width: Annotated[Length | None, Key("Width of the casting when new.", "150 mm")] = None
    thickness: Annotated[Length | None, Key("Thickness of the casting when new.", "35 mm")] = None
    left: Annotated[Fraction | None, Key("Share left, last seen.", "35 %")] = None
    seen: Annotated[Date | None, Key("Day it was last seen.", "2025-10-08")] = None
    here: Place


class AnodeFamily(Noun, frozen=True, kw_only=True):
    """Anodes of one kind that are known by their number alone, spread over a stretch of the ship."""

    family: Annotated[
        Identifier,
        Key("Identifier of the family; its anodes are named after it, as in bilge-1 to bilge-24.", "bilge"),
    ]
    count: Annotated[int, Key("How many there are.", 24), Within(least=1, most=500)]
    extent: Annotated[Extent, Key("Where they are along the ship; they are taken as evenly spread.")]
    side: Side = "both"
    height: Annotated[Length, Key("Height above the keel line, on the mean.", "1.1 m")]
    alloy: Annotated[str, Key("Alloy of which they are cast.", "zinc"), OneOf("zinc", "aluminium", "magnesium")]
    mass: Annotated[Mass, Key("Net mass of alloy of each when new.", "10 kg")]
    fixing: Annotated[str, Key("How they are held to the shell.", "bolted"), OneOf("bolted", "welded")] = ""
    length: Annotated[Length | None, Key("Length of each casting when new.", "300 mm")] = None
    width: Annotated[Length | None, Key("Width of each casting when new.", "150 mm")] = None
    thickness: Annotated[Length | None, Key("Thickness of each casting when new.", "35 mm")] = None
    left: Annotated[Fraction | None, Key("Share left of each on the mean, last seen.", "35 %")] = None
    seen: Annotated[Date | None, Key("Day they were last seen.", "2025-10-08")] = None
    here: Place


class Openings(Noun, frozen=True, kw_only=True):
    """Every opening in the shell below the weather deck line that concerns a docking."""

    openings: Annotated[tuple[Opening, ...], Key("The openings in her shell, from aft to forward."), Count(1)]


class Appendages(Noun, frozen=True, kw_only=True):
    """What stands out of the hull: rudder, bilge keels, stern frame, brackets."""

    appendages: Annotated[tuple[Appendage, ...], Key("What stands out of her hull.")]


class Strakes(Noun, frozen=True, kw_only=True):
    """Strakes of shell plating with thickness as built."""

    strakes: Annotated[tuple[Strake, ...], Key("Strakes from the keel up."), Count(1)]


class Anodes(Noun, frozen=True, kw_only=True):
    """The sacrificial anodes that are fitted to her."""

    anodes: Annotated[tuple[Anode, ...], Key("The anodes that are fitted to her now.")] = ()
    families: Annotated[
        tuple[AnodeFamily, ...], Key("Anodes that are known by number, kind and mass, without an entry each.")
    ] = ()
