"""The condition of the ship: limits, rules and observations from which survey data become quantities."""

from typing import Annotated

from tenderwright.model.anode_duty import AnodeDuty
from tenderwright.model.kinds import (
    AnodeRef,
    Date,
    Fraction,
    Identifier,
    ItemRef,
    Length,
    Metal,
    OpeningRef,
    Side,
    Speed,
    Temperature,
    Time,
)
from tenderwright.model.marks import Count, Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.model.shell_condition import (
    Apart,
    Doubler,
    Gauging,
    KnownRivets,
    LaminationTest,
    MaterialLimit,
    MemberLimit,
    Pitted,
    PlateAnalysis,
    RenewalPractice,
    Renewed,
    WastageZone,
)
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class Month(Noun, frozen=True, kw_only=True):
    """The climate of one month."""

    month: Annotated[int, Key("Number of the month.", 5), Within(least=1, most=12)]
    mean: Annotated[Temperature, Key("Mean temperature of the air.", "11 degC")]
    range: Annotated[float, Key("Mean of the day's highest less its lowest, in K.", 7), Within(most=60)]
    humidity: Annotated[Fraction, Key("Mean relative humidity of the air.", "78 %")]
    rain: Annotated[Time, Key("Hours with rain in the month.", "52 h")]
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

    what: Annotated[str, Key("Which parts touch each other.", "propeller on its shaft")]
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
    coated: Annotated[str, Key("What coats or parts them, where something does.", "rubber sleeve over the joint")] = ""
    item: Annotated[ItemRef | None, Key("Item that deals with it.", "650")] = None
    here: Place


class TightnessDefaults(Noun, frozen=True, kw_only=True):
    """Defaults of tightness tests."""

    structure: Annotated[str, Key("How boundaries are built."), OneOf("riveted", "welded")]
    tank_head: Annotated[Length | None, Key("Head agreed for tanks, above the tank top.", "1.0 m")] = None
    tank_head_source: Annotated[str, Key("Who agreed to that head, and when.", "naval architect's letter")] = ""
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
    found: Annotated[str, Key("What was found of the leak.", "dry")]


class Leak(Noun, frozen=True, kw_only=True):
    """An entry of the register of leaks."""

    leak: Annotated[Identifier, Key("Identifier of the leak.", "stern-gland")]
    where: Annotated[str, Key("Where she leaks, in words.", "stern gland")]
    at: Annotated[Position, Key("Where along the ship she leaks.", "Fr 2")]
    side: Side
    height: Annotated[Length | None, Key("Height above the keel line.", "1.25 m")] = None
    opening: Annotated[OpeningRef | None, Key("Opening that it is at.", "stern-tube")] = None
    state: Annotated[str, Key("How it was when last seen.", "one drop in five seconds")]
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

    what: Annotated[str, Key("What the clearance is measured at.", "wear-down of the stern bearing")]
    limit: Annotated[Length, Key("Greatest clearance that is allowed.", "7 mm")]
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
            "the berth's licence asks for a docking every five years, and money is set aside for it",
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
        Key(
            "Zones of the shell by how they waste; a reading belongs to the first that fits. Left out for a hull of wood."
        ),
    ] = ()
    members: Annotated[MemberLimit | None, Key("Limit for members inside tanks.")] = None
    pitted: Annotated[tuple[Pitted, ...], Key("Where the shell is pitted, and how much.")] = ()
    renewed: Annotated[
        tuple[Renewed, ...], Key("Plate renewed in the past; readings before that day are left out there.")
    ] = ()
    materials: Annotated[
        tuple[MaterialLimit, ...], Key("Limits of old metal, where they are not the usual 20 % of what was built.")
    ] = ()
    analyses: Annotated[tuple[PlateAnalysis, ...], Key("Analyses of shell plate.")] = ()
    laminations: Annotated[tuple[LaminationTest, ...], Key("Ultrasonic tests of old metal for laminations.")] = ()
    doublers: Annotated[tuple[Doubler, ...], Key("Doublers on the shell.")] = ()
    rivets: Annotated[
        tuple[KnownRivets, ...], Key("Rivets of earlier dockings that were driven cold, ring-welded or left as bolts.")
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
    leaks: Annotated[tuple[Leak, ...], Key("Leaks that are known, each with its history.")] = ()
    clearances: Annotated[tuple[Clearance, ...], Key("Clearances of shaft, bearings and rudder.")] = ()
    here: Place
