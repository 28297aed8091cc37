"""The condition of the ship: limits, rules and observations from which survey data become quantities."""

from typing import Annotated

from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.kinds import (
    AnodeRef,
    Area,
    Date,
    Fraction,
    Identifier,
    ItemRef,
    Length,
    Metal,
    OpeningRef,
    Side,
    Speed,
    StrakeRef,
    Temperature,
    Time,
)
from tenderwright.model.marks import Count, Kept, Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class WastageZone(Noun, frozen=True, kw_only=True):
    """A zone of the shell by how it wastes, and what plate in it may lose."""

    zone: Annotated[Identifier, Key("Identifier of the zone.", "wind-and-water")]
    name: Annotated[str, Key("Name as the tender prints it.", "wind and water strake")]
    strakes: Annotated[
        tuple[Annotated[StrakeRef, Key("A strake.", "B")], ...], Key("Strakes that it takes in."), Count(1)
    ]
    from_: Annotated[Position | None, Key("After end; the whole length unless given.", "Fr 33")] = None
    to: Annotated[
        Position | None, Key("Forward end of the zone; the whole length of the strakes where left out.", "Fr 44")
    ] = None
    allowable: Annotated[Fraction, Key("What plate may lose of its thickness as built before it is renewed.", "25 %")]
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    here: Place


class MemberLimit(Noun, frozen=True, kw_only=True):
    """What members inside tanks may lose."""

    allowable: Annotated[Fraction, Key("What a member may lose.", "25 %")]
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    here: Place


class Pitted(Noun, frozen=True, kw_only=True):
    """A pitted stretch of a strake."""

    strake: Annotated[StrakeRef, Key("The strake that is pitted.", "B")]
    side: Side
    from_: Annotated[Position, Key("After end of the pitted stretch.", "Fr 33")]
    to: Annotated[Position, Key("Forward end of the pitted stretch.", "Fr 44")]
    share: Annotated[Fraction, Key("Share of one face that is pits.", "18 %")]
    item: Annotated[ItemRef | None, Key("Item that welds and fills the pits.", "330")] = None
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    here: Place


class Renewed(Noun, frozen=True, kw_only=True):
    """Plate renewed in the past."""

    what: Annotated[str, Key("What was done.", "insert of 10 mm")]
    strake: Annotated[StrakeRef, Key("The strake in which plate was renewed.", "E")]
    side: Side
    from_: Annotated[Position, Key("After end of the plate.", "Fr 34")]
    to: Annotated[Position, Key("Forward end of the plate.", "Fr 37")]
    on: Annotated[Date, Key("Day on which it was renewed, from which its wastage counts.", "2007-10-01")]
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    here: Place


class Apart(Noun, frozen=True, kw_only=True):
    """Plate that an item of its own renews."""

    item: Annotated[ItemRef, Key("The item that renews the plate.", "335")]
    strake: Annotated[StrakeRef, Key("The strake in which the plate is.", "C")]
    side: Side
    from_: Annotated[Position, Key("After end of the plate.", "Fr 42")]
    to: Annotated[Position, Key("Forward end of the plate.", "Fr 46")]
    here: Place


class WorkPlace(Noun, frozen=True, kw_only=True):
    """Strakes on which work is slower, by the tariff's names."""

    strakes: Annotated[
        tuple[Annotated[StrakeRef, Key("A strake.", "B")], ...], Key("The strakes where this place is."), Count(1)
    ]
    place: Annotated[
        str,
        Key("Place, by the tariff's names."),
        OneOf("flat", "bottom shell", "keel", "garboard", "bilge", "deck", "bulkhead"),
    ]
    curvature: Annotated[
        str, Key("How the plate is curved: in no, one or two directions.", "single"), OneOf("none", "single", "double")
    ] = "none"
    here: Place


class RenewalPractice(Noun, frozen=True, kw_only=True):
    """How plate is renewed: least sizes, fastening, rivets and rates."""

    fastening: Annotated[
        str, Key("How inserts are fastened; riveted unless given."), OneOf("riveted", "welded edges")
    ] = "riveted"
    least_bays: Annotated[int, Key("Least frame spaces of an insert; 1 unless given.", 1), Within(least=1, most=50)] = 1
    least_size: Annotated[Length | None, Key("Least side of an insert; 300 mm unless given.", "300 mm")] = None
    corner: Annotated[
        float | None, Key("Radius of a free corner in thicknesses; 5 unless given.", 5), Within(most=100)
    ] = None
    mill_tolerance: Annotated[
        Fraction | None, Key("Mass over nominal; by thickness from the published table unless given.", "5 %")
    ] = None
    rivet: Annotated[Length, Key("Diameter of the shell's rivets.", "19 mm")]
    seam_rows: Annotated[int, Key("Rows of rivets in a seam.", 1), Within(least=1, most=6)]
    butt_rows: Annotated[int, Key("Rows of rivets in a butt.", 2), Within(least=1, most=6)]
    seam_pitch: Annotated[
        Length | None, Key("Pitch of rivets along seams; 4.5 diameters unless given.", "85 mm"), Within(least="10 mm")
    ] = None
    frame_pitch: Annotated[
        Length | None, Key("Pitch along frames; 7 diameters unless given.", "133 mm"), Within(least="10 mm")
    ] = None
    pit_measure: Annotated[
        Area | None,
        Key("Area of pit mouth that one priced measure of welding covers; 10 cm2 unless given.", "10 cm2"),
        Within(least="1 mm2", most="1 m2"),
    ] = None
    hours_rate: Annotated[
        float | None,
        Key("Man-hours per tonne of one's own; the published tariff unless given.", 260),
        Within(above=0, most=10000),
    ] = None
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    work: Annotated[tuple[WorkPlace, ...], Key("What makes work on some strakes slower.")] = ()
    here: Place


class Gauging(Noun, frozen=True, kw_only=True):
    """How densely she is gauged in dock."""

    all: Annotated[
        tuple[Annotated[StrakeRef, Key("A strake.", "B")], ...],
        Key("Strakes of which every plate is gauged."),
        Count(1),
    ]
    selected: Annotated[
        tuple[Annotated[StrakeRef, Key("A strake.", "B")], ...],
        Key("Strakes of which one plate in three is gauged."),
        Count(1),
    ]
    here: Place


class Month(Noun, frozen=True, kw_only=True):
    """The climate of one month."""

    month: Annotated[int, Key("Number of the month.", 5), Within(least=1, most=12)]
    mean: Annotated[Temperature, Key("Mean temperature of the air.", "11 degC")]
    range: Annotated[float, Key("Mean of the day's highest less its lowest, in K.", 7), Within(most=60)]
    humidity: Annotated[Fraction, Key("Mean relative humidity.", "78 %")]
    rain: Annotated[Time, Key("Hours with rain.", "52 h")]
    wind: Annotated[Speed, Key("Mean speed of the wind.", "5.4 m/s")]
    here: Place


class Climate(Noun, frozen=True, kw_only=True):
    """The climate of the place where she is docked."""

    place: Annotated[str, Key("The place whose weather it is.", "Sallow Haven")]
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    day_begins: Annotated[float, Key("Hour at which work begins; 7 unless given.", 7), Within(least=0, most=24)] = 7.0
    day_ends: Annotated[float, Key("Hour at which work ends; 17 unless given.", 17), Within(least=0, most=24)] = 17.0
    months: Annotated[tuple[Month, ...], Key("The months in which she may be docked, or all twelve."), Count(1)]
    here: Place


class MetalPair(Noun, frozen=True, kw_only=True):
    """Two metals in contact in sea water."""

    what: Annotated[str, Key("What touches what.", "propeller on its shaft")]
    one: Annotated[Metal, Key("Metal of the first.")]
    other: Annotated[Metal, Key("Metal of the second.")]
    where: Annotated[str, Key("Where the two touch.", "taper of the tail shaft")]
    bonded: Annotated[
        str,
        Key("How the two are bonded to the hull, where they are.", "slip ring and brush on the shaft, 5 mV or less"),
    ] = ""
    anodes: Annotated[
        tuple[Annotated[AnodeRef, Key("An anode.", "r1")], ...], Key("Anodes that look after the pair.")
    ] = ()
    coated: Annotated[str, Key("What coats or parts them, where something does.", "neoprene sleeve over the joint")] = (
        ""
    )
    item: Annotated[ItemRef | None, Key("Item that deals with it.", "650")] = None
    here: Place


class TightnessDefaults(Noun, frozen=True, kw_only=True):
    """Defaults of tightness tests."""

    structure: Annotated[str, Key("How boundaries are built."), OneOf("riveted", "welded")]
    tank_head: Annotated[Length | None, Key("Head agreed for tanks, above the tank top.", "1.0 m")] = None
    tank_head_source: Annotated[str, Key("Who agreed it.", "naval architect's letter")] = ""
    no_hose: Annotated[
        tuple[Annotated[OpeningRef, Key("An opening.", "echo-sounder")], ...],
        Key("Openings at which no hose can play."),
    ] = ()
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    here: Place


class Look(Noun, frozen=True, kw_only=True):
    """What was found of a leak at one time."""

    on: Annotated[Date, Key("Day on which it was looked at.", "2007-09-20")]
    found: Annotated[str, Key("What was found.", "dry")]


class Leak(Noun, frozen=True, kw_only=True):
    """An entry of the register of leaks."""

    leak: Annotated[
        Identifier,
        Key("Identifier of the leak.", "stern-gland"),
        Kept("it tells a leak from the others, from one docking to the next"),
    ]
    where: Annotated[str, Key("Where she leaks, in words.", "stern gland")]
    at: Annotated[Position, Key("Where along the ship she leaks.", "Fr 2")]
    side: Side
    height: Annotated[Length | None, Key("Height above the keel line.", "1.25 m")] = None
    opening: Annotated[OpeningRef | None, Key("Opening that it is at.", "stern-tube")] = None
    state: Annotated[str, Key("As last seen.", "one drop in five seconds")]
    seen: Annotated[Date, Key("Day it was last seen.", "2026-06-16")]
    history: Annotated[tuple[Look, ...], Key("What was seen of it earlier.")] = ()
    item: Annotated[ItemRef | None, Key("Item that deals with it.", "620")] = None
    here: Place


class Measured(Noun, frozen=True, kw_only=True):
    """A clearance as measured on one day."""

    on: Annotated[Date, Key("Day on which it was measured.", "2007-09-20")]
    clearance: Annotated[Length, Key("Clearance that was measured.", "5.0 mm")]
    here: Place


class Clearance(Noun, frozen=True, kw_only=True):
    """A clearance of shaft, bearing or rudder, with its limit."""

    what: Annotated[str, Key("What is measured.", "wear-down of the stern bearing")]
    limit: Annotated[Length, Key("Greatest clearance allowed.", "7 mm")]
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    found: Annotated[tuple[Measured, ...], Key("As found, oldest first."), Count(1)]
    item: Annotated[ItemRef | None, Key("Item that deals with it.", "620")] = None
    here: Place


class ShipCondition(Noun, frozen=True, kw_only=True):
    """Limits, rules and observations from which survey data become quantities: wastage of the shell, anodes, climate, tightness, leaks and clearances."""

    next_docking: Annotated[Time, Key("Time from the docking planned to the next.", "5 yr")]
    next_docking_because: Annotated[
        str,
        Key(
            "What makes that time hold, where it is much shorter than she went before.",
            "the berth's licence asks for a docking every five years, and money is laid by for it",
        ),
    ] = ""
    gauge_uncertainty: Annotated[
        Length | None, Key("Uncertainty of a survey's mean thickness; 0.1 mm unless given.", "0.1 mm")
    ] = None
    confidence: Annotated[
        Fraction | None,
        Key("One-sided confidence at which plate is watched: 90 % unless given (common practice, no source).", "90 %"),
        Within(least="50 %", most="99.9 %"),
    ] = None
    zones: Annotated[
        tuple[WastageZone, ...],
        Key("Zones of the shell by how they waste; a reading belongs to the first that fits."),
        Count(1),
    ]
    members: Annotated[MemberLimit | None, Key("Limit for members inside tanks.")] = None
    pitted: Annotated[tuple[Pitted, ...], Key("Pitting as seen.")] = ()
    renewed: Annotated[
        tuple[Renewed, ...], Key("Plate renewed in the past; readings before that day are left out there.")
    ] = ()
    apart: Annotated[
        tuple[Apart, ...], Key("Plate that an item of its own renews, left out of the quantities here.")
    ] = ()
    renewal: Annotated[RenewalPractice | None, Key("How plate is renewed.")] = None
    gauging: Annotated[Gauging | None, Key("How densely she is gauged in dock.")] = None
    anodes: Annotated[AnodeDuty | None, Key("What the anodes have to do.")] = None
    climate: Annotated[Climate | None, Key("Climate of the place where she is docked.")] = None
    metals: Annotated[tuple[MetalPair, ...], Key("Unlike metals in contact in sea water.")] = ()
    tightness: Annotated[TightnessDefaults | None, Key("Defaults of tightness tests.")] = None
    leaks: Annotated[tuple[Leak, ...], Key("Register of leaks.")] = ()
    clearances: Annotated[tuple[Clearance, ...], Key("Clearances of shaft, bearings and rudder.")] = ()
    here: Place
