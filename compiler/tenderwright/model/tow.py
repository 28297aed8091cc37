"""The tow of a dead ship to the dock and home, and how she is kept there as one."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.common import Water
from tenderwright.model.docking_plan import ChangedTank
from tenderwright.model.kinds import (
    Angle,
    Area,
    Charge,
    FacilityRef,
    Flow,
    Force,
    Fraction,
    Identifier,
    ItemRef,
    Length,
    Mass,
    Power,
    SignedLength,
    Speed,
    Time,
    Volume,
)
from tenderwright.model.lightship import Weight
from tenderwright.model.marks import Count, Key, MayWait, Measures, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity

Voltage = Annotated[Quantity, Measures("potential")]
Miles = Annotated[Length, Within(most="40000 km")]
HELD = OneOf("automatic", "brake", "pawl", "hook", "hook and chain pendant", "hook and synthetic spring")
NEEDS = OneOf(
    "power",
    "earth",
    "shore isolation",
    "impressed current",
    "fire main",
    "fire watch",
    "extinguishers",
    "rounds",
    "alarms",
    "access",
    "lighting",
    "telephone",
    "visitors",
    "washrooms",
    "heating",
    "rain and deck water",
    "heavy weather",
    "emergency floating",
)
"""What a ship without life of her own needs in dock."""


class Leg(Noun, frozen=True, kw_only=True):
    """A leg of the passage."""

    leg: Annotated[str, Key("The leg in a few words, as on a chart.", "Tender Quay to the fairway buoy")]
    distance: Annotated[Miles, Key("Its length over the ground.", "2 nmi", "3.5 km")]
    speed: Annotated[Speed, Key("Speed planned over this leg.", "4 kn"), Within(most="15 kn")]
    water: Annotated[str, Key("How open the water is.", "open"), OneOf("harbour", "sheltered", "open")]
    shelter: Annotated[
        str, Key("Where she is taken if the weather turns on this leg.", "Back to the quay, or anchor in Sand Bay")
    ] = ""
    limits: Annotated[
        str,
        Key(
            "What else limits it: a bridge, a cable, a lock, a tide, depth.", "Bar: two hours either side of high water"
        ),
    ] = ""
    tug: Annotated[str, Key("Tugs on this leg, and how they are made fast.", "one ahead, one alongside aft")] = ""


class TowingPoint(Noun, frozen=True, kw_only=True):
    """A fitting by which she is towed or held."""

    point: Annotated[str, Key("What the towing point is.", "Bitts on the forecastle, port")]
    use: Annotated[
        str, Key("What is made fast to it.", "bridle"), OneOf("bridle", "towline", "emergency", "astern", "alongside")
    ]
    at: Annotated[Position, Key("Where it stands, along the ship.", "Fr 78")]
    off_centre: Annotated[SignedLength | None, Key("Distance from the centreline, port positive.", "1.1 m")] = None
    height: Annotated[Length, Key("Height above the keel line.", "6.3 m")]
    capacity: Annotated[
        Force | None, Key("What it stands, at the yield of the fitting or of the deck under it.", "300 kN")
    ] = None
    source: Annotated[
        str, Key("Who says what it stands, by what, and when.", "naval architect, 2027-02-20, readings r-07")
    ] = ""
    readings: Annotated[
        Prose | None,
        Key("What was found of it: thickness of the deck under it, rivets, wear.", "Deck under it 7.1 mm of 9.5 mm."),
    ] = None
    here: Place


class Tug(Noun, frozen=True, kw_only=True):
    """The tug, as far as one is known."""

    name: Annotated[str, Key("Name of the tug, or what is asked of one.", "a harbour tug, to be named")]
    bollard_pull: Annotated[
        Mass | None,
        Key("Continuous bollard pull by its certificate, in tonnes or pounds as it stands there.", "14 t", "30000 lb"),
    ] = None
    tested: Annotated[str, Key("Who tested the pull, and when.", "certificate of 2024-05-17")] = ""
    held: Annotated[str, Key("How she holds the towline.", "hook"), HELD] = "hook"


class Bridle(Noun, frozen=True, kw_only=True):
    """A bridle of two legs, from the two towing points that are for it."""

    leg: Annotated[Length, Key("Length of each of its legs.", "9 m")]
    of: Annotated[str, Key("Of what it is made.", "stud-link chain of 32 mm, certificate with the tow master")] = ""


class CurvePoint(Noun, frozen=True, kw_only=True):
    """A point of the manual's curve of hull resistance."""

    speed: Annotated[Speed, Key("Her speed through the water.", "5 kn")]
    per_ton: Annotated[float, Key("R_H/D, pounds of force for each long ton.", 0.5), Within(least=0, most=100)]


class SeaCase(Noun, frozen=True, kw_only=True):
    """Weather for which the pull is reckoned."""

    case: Annotated[Identifier, Key("The case in a word or two.", "probable")]
    speed: Annotated[Speed, Key("Her speed through the water.", "5 kn"), Within(most="15 kn")]
    wind: Annotated[Speed, Key("Wind from ahead, over the ground.", "15 kn")]
    waves: Annotated[str, Key("The sea in words: significant height and kind.", "0.5 m, short")] = ""
    sea: Annotated[Force | None, Key("Resistance in those waves.", "4 kN")] = None
    sea_source: Annotated[str, Key("Whose figure that is.", "tow master's letter of 2027-01-18")] = ""
    efficiency: Annotated[
        Fraction | None,
        Key("Share of her bollard pull that the tug has left at that speed in that sea; 75 % where left out.", "50 %"),
        Within(least="5 %", most="100 %"),
    ] = None


class Resistance(Noun, frozen=True, kw_only=True):
    """What the pull is reckoned from."""

    frontal_area: Annotated[Area, Key("Area seen from ahead above the water.", "60 m2")]
    source: Annotated[str, Key("How that area is known.", "measured on d-01")]
    wind_shape: Annotated[
        float | None, Key("Wind coefficient; 0.7 from memory where left out.", 0.7), Within(above=0, most=2)
    ] = None
    fouling: Annotated[
        float | None,
        Key("Times the friction of a clean hull: 2 for heavy weed to 4 for thick barnacles; 1 where left out.", 3),
        Within(least=1, most=6),
    ] = None
    blades: Annotated[
        Area | None,
        Key("Developed area of the blades of locked propellers; by her length and breadth where left out.", "1.9 m2"),
    ] = None
    hull_curve: Annotated[
        tuple[CurvePoint, ...],
        Key("R_H/D of a like ship, from the manual's figure; left out, its method gives no sum."),
    ] = ()
    curve_source: Annotated[
        str, Key("Who read that curve, for which ship.", "tow master, for a coaster of the figure")
    ] = ""
    cases: Annotated[tuple[SeaCase, ...], Key("Best, probable and worst weather under way."), Count(1)]
    hove_to: Annotated[
        SeaCase | None,
        Key("Weather in which the tug must hold her where she is; 20 m/s of wind in a current of 1 kn where left out."),
    ] = None
    here: Place


class Closure(Noun, frozen=True, kw_only=True):
    """An opening above the shell's own: hatch, door, skylight, ventilator, air pipe, port."""

    what: Annotated[str, Key("What the opening is called.", "Engine room skylight")]
    at: Annotated[Position, Key("Where it is, along the ship.", "Fr 24")]
    off_centre: Annotated[SignedLength | None, Key("Its outer edge from the centreline, port positive.", "1.2 m")] = (
        None
    )
    height: Annotated[Length, Key("Height of its lowest edge above the keel line.", "6.1 m")]
    closed_by: Annotated[str, Key("How it is closed for sea.", "plated, gasket, eight bolts")]
    tight: Annotated[
        str,
        Key("How tight it then is: what stays open, or only sheds spray, lets water in.", "weathertight"),
        OneOf("watertight", "weathertight", "spray only", "stays open"),
    ]
    here: Place


class Compartment(Noun, frozen=True, kw_only=True):
    """A space between main bulkheads."""

    compartment: Annotated[Identifier, Key("Identifier of the space.", "engine-room")]
    name: Annotated[str, Key("Name as it is printed.", "Engine room")]
    from_: Annotated[Position, Key("Bulkhead at its after end.", "Fr 18")]
    to: Annotated[Position, Key("Bulkhead at its forward end.", "Fr 34")]
    top: Annotated[
        Length | None, Key("Height above the keel line to which it may fill before she is in danger.", "3.2 m")
    ] = None
    volume: Annotated[
        Volume | None, Key("Its volume up to there, where her form is not known or decks take room.", "180 m3")
    ] = None
    permeability: Annotated[Fraction | None, Key("Share of it that water can take; 85 % where left out.", "85 %")] = (
        None
    )
    alarm: Annotated[
        str, Key("Its bilge alarm: levels, where it is seen.", "floats at 0.3 m and 0.9 m, lamp on the bridge wing")
    ] = ""
    pump: Annotated[str, Key("The pump that draws on it, and how it is started.", "portable pump 1 by the hatch")] = ""
    pump_flow: Annotated[Flow | None, Key("What that pump takes out.", "30 m3/h", "130 US_gal/min")] = None
    doors: Annotated[
        str,
        Key("Doors and holes in its bulkheads, and how they are closed.", "door Fr 18 dogged; two cable holes plugged"),
    ] = ""
    here: Place


class Load(Noun, frozen=True, kw_only=True):
    """What draws on the battery."""

    what: Annotated[str, Key("What it is that burns.", "sidelights and sternlight, two bulbs each")]
    count: Annotated[int, Key("How many of them burn at once.", 3), Within(least=1, most=1000)] = 1
    power: Annotated[Power, Key("Power of each one.", "25 W")]
    hours: Annotated[Time, Key("Time for which it burns each day.", "13 h"), Within(most="24 h")]


class Electricity(Noun, frozen=True, kw_only=True):
    """Battery, lights and alarms."""

    voltage: Annotated[Voltage, Key("Voltage of the battery.", "24 V")]
    battery: Annotated[Charge | None, Key("Charge of the battery carried.", "400 Ah")] = None
    lasts: Annotated[Time, Key("Time for which it must last: the passage, and waiting for weather.", "4 d")]
    loads: Annotated[tuple[Load, ...], Key("What burns on it."), Count(1)]
    notes: Annotated[
        Prose | None, Key("Where it stands, and how lights are switched.", "In a ventilated box on the boat deck.")
    ] = None
    here: Place


class TowLimits(Noun, frozen=True, kw_only=True):
    """What must be kept for her to sail."""

    source: Annotated[str, Key("Who set them, and when.", "tow surveyor's letter of 2027-03-02")]
    least_gm: Annotated[Length | None, Key("Least metacentric height after free surfaces.", "0.45 m")] = None
    least_trim: Annotated[SignedLength | None, Key("Least trim, positive by the stern.", "0.3 m")] = None
    most_trim: Annotated[SignedLength | None, Key("Greatest trim by the stern.", "0.7 m")] = None
    most_list: Annotated[Angle | None, Key("Greatest list with which she sails.", "0.5 deg")] = None
    least_freeboard: Annotated[
        Length | None, Key("Least height over the water of an opening that lets it in.", "1.5 m")
    ] = None
    least_angle: Annotated[Angle | None, Key("Least heel that brings such an opening to the water.", "30 deg")] = None
    wind: Annotated[Speed | None, Key("Wind above which she does not sail.", "16 kn")] = None
    waves: Annotated[Length | None, Key("Significant height of waves above which she does not sail.", "1 m")] = None
    sight: Annotated[Miles | None, Key("Visibility below which she does not sail.", "2 nmi")] = None
    window: Annotated[Time | None, Key("Time of settled weather that must be forecast.", "48 h")] = None
    here: Place


class Pump(Noun, frozen=True, kw_only=True):
    """A pump aboard for the tow."""

    what: Annotated[str, Key("What pump it is.", "portable diesel pump, 80 mm")]
    where: Annotated[str, Key("Where it stands, with its hose and fuel.", "boat deck, Fr 30, fuel for 24 h")]
    flow: Annotated[Flow | None, Key("What it takes out at the lift there.", "40 m3/h")] = None
    proved: Annotated[str, Key("When it was last seen to take suction.", "2027-04-12")] = ""


class Arrangement(Noun, frozen=True, kw_only=True):
    """How one need of a dead ship in dock is met, where the list of services does not say."""

    need: Annotated[str, Key("Which need this meets.", "alarms"), NEEDS]
    says: Annotated[
        Prose, Key("How that need is met.", "Bilge alarms stay live on the blocks and ring at the gangway.")
    ]
    item: Annotated[ItemRef | None, Key("The item that supplies it.", "145")] = None


class ClosingTime(Noun, frozen=True, kw_only=True):
    """How long an opened opening takes to close."""

    kind: Annotated[
        str,
        Key("Which openings they are.", "sea chest"),
        OneOf(
            "sea chest",
            "suction",
            "discharge",
            "scupper",
            "docking plug",
            "stern tube",
            "echo sounder",
            "sonar or log trunk",
            "other",
            "shell plate",
            "manhole",
        ),
    ]
    each: Annotated[Time, Key("Time for each, by one gang.", "2 h")]
    how: Annotated[str, Key("How it is closed in haste.", "bolted steel blank with rubber")] = ""


class Stop(Noun, frozen=True, kw_only=True):
    """When work or water is stopped in dock."""

    when: Annotated[
        str, Key("In which phase it counts.", "dry"), OneOf("entry", "landing", "dry", "flooding", "afloat")
    ]
    sign: Annotated[str, Key("What is seen or read.", "a cap splits or a gap of more than 5 mm opens")]
    do: Annotated[str, Key("What is then done.", "stop work under her, call the naval architect")]
    source: Annotated[str, Key("Whose rule that is.", "dockmaster's standing orders")]


class InDock(Noun, frozen=True, kw_only=True):
    """How she is kept in dock as a ship without life of her own."""

    arrangements: Annotated[tuple[Arrangement, ...], Key("How needs are met that no service answers."), MayWait()] = ()
    closing: Annotated[
        tuple[ClosingTime, ...], Key("How long open openings take to close, if she must float in haste.")
    ] = ()
    gangs: Annotated[
        int | None, Key("Gangs that close them at once; one where left out.", 2), Within(least=1, most=50)
    ] = None
    flooding: Annotated[Time | None, Key("Time from the order until she floats, openings closed.", "3 h")] = None
    stops: Annotated[
        tuple[Stop, ...], Key("Your own rules for stopping, in place of the usual ones of that phase.")
    ] = ()
    here: Place


class Tow(Noun, frozen=True, kw_only=True):
    """The tow out and home, and the dead ship in dock."""

    tower: Annotated[
        str, Key("Who tows her; what is asked of one while nobody is engaged.", "to be engaged by the owner")
    ]
    master: Annotated[str, Key("Who plans and commands the tow, by office.", "Tow master, engaged by the owner")] = ""
    surveyor: Annotated[
        str, Key("Who surveys her for the tow, and for whom.", "surveyor approved by the insurer, not named yet")
    ] = ""
    dock: Annotated[
        FacilityRef | None, Key("The dock to which the legs lead, where one is chosen.", "sallow-haven-shiplift")
    ] = None
    towed: Annotated[str, Key("How she is towed.", "astern"), OneOf("astern", "alongside")] = "astern"
    length: Annotated[
        Length | None, Key("From the tug's stern to her stern, the line out.", "260 m"), Within(most="2000 m")
    ] = None
    out: Annotated[tuple[Leg, ...], Key("Legs of the passage to the dock, in order."), MayWait()] = ()
    home: Annotated[
        tuple[Leg, ...], Key("Legs of the passage home, where they differ; else the same the other way."), MayWait()
    ] = ()
    tugs: Annotated[tuple[Tug, ...], Key("Tugs, the one that pulls first."), MayWait()] = ()
    points: Annotated[tuple[TowingPoint, ...], Key("Fittings by which she is towed and held.")] = ()
    bridle: Annotated[Bridle | None, Key("The bridle, where there is one.")] = None
    emergency_line: Annotated[
        str,
        Key(
            "The second line, how it is stowed and picked up.",
            "32 mm wire along the port rail in breakable stops, floating messenger and buoy astern",
        ),
    ] = ""
    anchor: Annotated[
        str,
        Key(
            "The anchor that is ready, and who can let it go.",
            "port anchor on the brake, three lengths; let go by one person",
        ),
    ] = ""
    water: Annotated[Water | None, Key("Water of the passage; that of the dock where left out.")] = None
    weights: Annotated[tuple[Weight, ...], Key("What is put aboard or landed for the tow alone.")] = ()
    tanks: Annotated[tuple[ChangedTank, ...], Key("Tanks whose contents are changed for the tow out.")] = ()
    limits: Annotated[TowLimits | None, Key("What must be kept for her to sail.")] = None
    resistance: Annotated[Resistance | None, Key("What the pull is reckoned from.")] = None
    propeller: Annotated[
        str,
        Key("What is done with the propeller for the tow.", "locked"),
        OneOf("locked", "unshipped", "freewheeling", "none"),
    ] = "none"
    shaft: Annotated[
        Prose | None, Key("How the shaft is locked and its gland kept tight.", "Turning gear in, and a bolted bar.")
    ] = None
    rudder: Annotated[Prose | None, Key("How the rudder is held amidships.", "Steel bar from tiller to bulkhead.")] = (
        None
    )
    compartments: Annotated[tuple[Compartment, ...], Key("Spaces between main bulkheads, from aft.")] = ()
    closures: Annotated[tuple[Closure, ...], Key("Openings above those of vessel/openings.yaml, from aft.")] = ()
    pumps: Annotated[tuple[Pump, ...], Key("Pumps aboard for the tow.")] = ()
    electricity: Annotated[Electricity | None, Key("Battery, lights and alarms.")] = None
    riding_crew: Annotated[str, Key("Who is aboard under way; none for an unmanned tow.", "none")] = ""
    boarding: Annotated[
        Prose | None,
        Key("How somebody gets aboard under way, and what she must know first.", "Ladders both sides at Fr 40."),
    ] = None
    boarding_time: Annotated[Time | None, Key("Time until somebody can be aboard.", "2 h")] = None
    in_dock: Annotated[InDock | None, Key("How she is kept in dock.")] = None
    here: Place
