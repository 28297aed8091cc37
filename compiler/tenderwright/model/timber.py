"""The condition of a hull of wood: planks, seams, borings, moisture, fastenings, borers, sheathing and hog."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import (
    Area,
    Date,
    Days,
    DrawingRef,
    Fraction,
    Identifier,
    ItemRef,
    Length,
    Side,
    SignedLength,
    Time,
)
from tenderwright.model.marks import Key, Measures, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position
from tenderwright.quantities.quantity import Quantity

Fastening = Annotated[
    str,
    Key("What kind of fastening it is.", "copper"),
    OneOf("treenail", "copper", "iron", "galvanised iron", "yellow metal", "bronze", "stainless steel"),
]


class Plank(Noun, frozen=True, kw_only=True):
    """A plank of the shell, from butt to butt."""

    plank: Annotated[Identifier, Key("Identifier of the plank.", "p3-2")]
    strake: Annotated[str, Key("The strake that it belongs to, counted from the keel or named.", "3")]
    side: Side
    from_: Annotated[Position, Key("Where its after butt is.", "2.4 m")]
    to: Annotated[Position, Key("Where its forward butt is.", "6.1 m")]
    species: Annotated[str, Key("What wood it is.", "oak")]
    thickness: Annotated[Length, Key("Thickness when it was fitted.", "45 mm"), Within(most="1 m")]
    width: Annotated[Length, Key("Width where it is broadest.", "190 mm"), Within(most="2 m")]
    condition: Annotated[
        str, Key("As it was found."), OneOf("sound", "watch", "soft", "split", "worn", "not seen", "renew")
    ]
    fitted: Annotated[
        int | None, Key("Year in which it was fitted, where it is not the first.", 1974), Within(least=1500, most=2200)
    ] = None
    item: Annotated[ItemRef | None, Key("Item that renews or mends it.", "310")] = None
    notes: Annotated[str, Key("What else was seen of it.", "soft over 600 mm at the after butt")] = ""
    here: Place


class Seam(Noun, frozen=True, kw_only=True):
    """A stretch of seam, or the butts of a strake, in one state."""

    seam: Annotated[str, Key("Which seam or butts.", "garboard seam")]
    side: Side
    from_: Annotated[Position | None, Key("After end of the stretch.", "0.6 m")] = None
    to: Annotated[Position | None, Key("Forward end of the stretch.", "10.8 m")] = None
    length: Annotated[Length, Key("Length of seam, of both sides where it is of both.", "20 m")]
    material: Annotated[str, Key("What it is caulked with.", "oakum, two threads")] = ""
    depth: Annotated[Length | None, Key("Depth of the seam.", "35 mm"), Within(most="1 m")] = None
    state: Annotated[str, Key("As it was found."), OneOf("hard", "soft", "weeping", "spewed", "open")]
    payed: Annotated[str, Key("What it is payed or stopped with.", "putty of red lead and linseed oil")] = ""
    raked: Annotated[Date | None, Key("Day on which it was last raked out and caulked anew.", "2019-05-12")] = None
    here: Place


class Boring(Noun, frozen=True, kw_only=True):
    """A boring into a plank or timber, with its core."""

    core: Annotated[str, Key("Number of the boring and of its core.", "B4")]
    where: Annotated[str, Key("What was bored, and where.", "plank p3-2")]
    at: Annotated[Position, Key("Where along the ship.", "2.6 m")]
    side: Side
    height: Annotated[Length | None, Key("Height above the keel line.", "0.9 m")] = None
    through: Annotated[Length, Key("Thickness of the wood at the boring.", "45 mm"), Within(most="2 m")]
    sound_from: Annotated[
        Length, Key("Depth to sound wood from the outer face; nothing where it is sound from there.", "18 mm")
    ]
    decay: Annotated[Fraction | None, Key("Decay of the core, as its examiner gives it.", "40 %")] = None
    plugged: Annotated[bool, Key("Whether the hole was plugged.")]
    item: Annotated[ItemRef | None, Key("Item that deals with what was found.", "310")] = None
    here: Place


class MoistureReading(Noun, frozen=True, kw_only=True):
    """A reading of the moisture of the wood, at a spot that is found again."""

    spot: Annotated[str, Key("Name of the spot, the same at each survey.", "M2")]
    at: Annotated[Position, Key("Where along the ship.", "9.8 m")]
    side: Side
    height: Annotated[Length | None, Key("Height above the keel line.", "1.4 m")] = None
    reading: Annotated[Fraction, Key("Moisture that the meter showed, by dry mass.", "24 %")]
    day: Annotated[Date | None, Key("Day, where it is not that of the survey.", "2026-10-03")] = None
    here: Place


class DrawnFastening(Noun, frozen=True, kw_only=True):
    """A fastening that was drawn."""

    fastening: Annotated[str, Key("Number of the fastening.", "F7")]
    side: Side
    at: Annotated[Position | None, Key("Where along the ship.", "4.2 m")] = None
    new: Annotated[Length, Key("Diameter when it was fitted.", "12 mm"), Within(most="200 mm")]
    now: Annotated[Length, Key("Its least diameter as drawn.", "9.5 mm"), Within(most="200 mm")]
    neck: Annotated[bool, Key("Whether it is wasted to a neck where plank and frame meet.")] = False
    pull: Annotated[str, Key("How it came out."), OneOf("hard", "fair", "easy", "broke")] = ""
    wood: Annotated[str, Key("The wood round it."), OneOf("sound", "soft", "nail sick", "stained")] = ""
    replaced_by: Annotated[str, Key("What took its place.", "bronze bolt, 12 mm")] = ""
    here: Place


class FastenedZone(Noun, frozen=True, kw_only=True):
    """A zone of the hull whose fastenings are of one kind, and those that were drawn of it."""

    zone: Annotated[Identifier, Key("Identifier of the zone of fastenings.", "bottom")]
    name: Annotated[str, Key("What the zone is, in words.", "bottom planking to frames")]
    below_water: Annotated[bool, Key("Whether it lies below the water or between wind and water.")]
    kind: Fastening
    number: Annotated[int, Key("How many fastenings there are in it, both sides.", 620), Within(least=1, most=1000000)]
    counted: Annotated[str, Key("How that number is known.", "4 to a frame and strake, 31 frames, 5 strakes")] = ""
    drawn: Annotated[tuple[DrawnFastening, ...], Key("Those that were drawn, chosen at random.")] = ()
    item: Annotated[ItemRef | None, Key("Item that renews them.", "330")] = None
    here: Place


class KeelBolt(Noun, frozen=True, kw_only=True):
    """A keel bolt."""

    bolt: Annotated[str, Key("Number of the bolt, from aft.", "K3")]
    at: Annotated[Position, Key("Where along the ship.", "4.4 m")]
    kind: Fastening
    diameter: Annotated[Length, Key("Diameter when it was fitted.", "25 mm"), Within(most="500 mm")]
    now: Annotated[
        Length | None, Key("Least diameter now, where it was drawn or seen by X-ray.", "21 mm"), Within(most="500 mm")
    ] = None
    by: Annotated[str, Key("How it was looked at."), OneOf("drawn", "X-ray", "hammer", "not looked at")]
    item: Annotated[ItemRef | None, Key("Item that renews it.", "340")] = None
    here: Place


class Borers(Noun, frozen=True, kw_only=True):
    """A place that borers have attacked."""

    kind: Annotated[str, Key("Which borer it is."), OneOf("shipworm", "gribble", "not known")]
    where: Annotated[str, Key("The place, in words.", "after face of the sternpost, below the rudder")]
    at: Annotated[Position, Key("Where along the ship.", "0.2 m")]
    side: Side
    depth: Annotated[Length | None, Key("How deep they went.", "12 mm"), Within(most="2 m")] = None
    live: Annotated[bool | None, Key("Whether they were alive.")] = None
    treated: Annotated[str, Key("What was done against them.", "scraped, dried and tarred")] = ""
    item: Annotated[ItemRef | None, Key("Item that deals with it.", "360")] = None
    here: Place


class Torn(Noun, frozen=True, kw_only=True):
    """A place where the sheathing is torn or gone."""

    where: Annotated[str, Key("The place, in words.", "forefoot, starboard")]
    at: Annotated[Position, Key("Where along the ship.", "10.9 m")]
    side: Side
    area: Annotated[Area, Key("Area that is bare.", "0.3 m2")]
    item: Annotated[ItemRef | None, Key("Item that makes it good.", "350")] = None
    here: Place


class Sheathing(Noun, frozen=True, kw_only=True):
    """The sheathing over the planking."""

    metal: Annotated[str, Key("Metal of which it is.", "copper")]
    thickness: Annotated[Length | None, Key("Thickness of the sheets.", "0.7 mm"), Within(most="100 mm")] = None
    nails: Annotated[str, Key("What nails hold it.", "copper, 38 mm")] = ""
    under: Annotated[str, Key("What lies under it.", "tarred felt")] = ""
    torn: Annotated[tuple[Torn, ...], Key("Places where it is torn or gone.")] = ()
    here: Place


class KeelPoint(Noun, frozen=True, kw_only=True):
    """The height of the keel at one place, over a level line."""

    at: Annotated[Position, Key("Where along the keel.", "5.6 m")]
    height: Annotated[
        SignedLength, Key("Height of the underside of the keel over the line.", "38 mm"), Within(most="5 m")
    ]
    here: Place


class HogDrafts(Noun, frozen=True, kw_only=True):
    """Drafts read on one day, from which hog follows while she floats."""

    forward: Annotated[Length, Key("Draft at the stem.", "1.22 m"), Within(most="30 m")]
    midships: Annotated[Length, Key("Draft midway between the two, mean of both sides.", "1.36 m"), Within(most="30 m")]
    aft: Annotated[Length, Key("Draft at the sternpost.", "1.58 m"), Within(most="30 m")]
    here: Place


class Hog(Noun, frozen=True, kw_only=True):
    """How far the keel is from straight, as measured."""

    day: Annotated[Date, Key("Day on which it was measured.", "2026-10-03")]
    by: Annotated[str, Key("How it was measured.", "wire along the keel, on the hard")]
    keel: Annotated[tuple[KeelPoint, ...], Key("The keel line, from aft to forward, its two ends included.")] = ()
    drafts: Annotated[HogDrafts | None, Key("Drafts, where it was measured afloat.")] = None
    blocks: Annotated[str, Key("To which line the keel blocks are built."), OneOf("measured line", "straight line")] = (
        ""
    )
    here: Place


class Potential(Noun, frozen=True, kw_only=True):
    """A potential of bonded metal in the water, against silver/silver chloride."""

    at: Annotated[Position, Key("Where along the ship.", "0.4 m")]
    side: Side = ""
    potential: Annotated[
        Quantity,
        Measures("potential", signed=True),
        Key("Potential against silver/silver chloride in sea water.", "-0.58 V"),
        Within(least="-3 V", most="3 V"),
    ]
    here: Place


class TimberPractice(Noun, frozen=True, kw_only=True):
    """Limits and practice that the ship's shipwright or surveyor gives; what is left out is not judged."""

    moisture: Annotated[Fraction | None, Key("Moisture above which decay is looked for.", "20 %")] = None
    unsound: Annotated[
        Fraction | None, Key("Share of the thickness that may be unsound before the plank is renewed.", "25 %")
    ] = None
    fastening_loss: Annotated[
        Fraction | None, Key("Loss of a fastening's area at which it is counted as failed.", "30 %")
    ] = None
    confidence: Annotated[
        Fraction | None,
        Key("Confidence of the bounds on the share of failed fastenings; 95 % unless given.", "95 %"),
        Within(least="50 %", most="99.9 %"),
    ] = None
    waste: Annotated[
        Fraction | None, Key("Board bought beyond what is fitted, as a share of it.", "30 %"), Within(most="300 %")
    ] = None
    days_dry: Annotated[Days | None, Key("Days she may stand dry before the planking shrinks too far.", 14)] = None
    wetting: Annotated[
        str,
        Key("How the planking is kept wet meanwhile.", "salt water sprayed on morning and evening, sheets to sunward"),
    ] = ""
    wetting_item: Annotated[ItemRef | None, Key("Item under which it is kept wet.", "130")] = None
    taking_up: Annotated[Time | None, Key("Time until the planking has taken up after floating.", "3 d")] = None
    pumps: Annotated[str, Key("Pumps that stand ready meanwhile.", "two of 20 m3/h, one of them on the dock")] = ""
    watch: Annotated[ItemRef | None, Key("Item under which she is watched and pumped after floating.", "840")] = None
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "surveyor's letter of 2026-11-02",
            "common practice, no source",
        ),
    ]
    here: Place


class Timber(Noun, frozen=True, kw_only=True):
    """The condition of a hull of wood, as one survey found it, and what is done by it."""

    surveyed: Annotated[Date, Key("Day of the survey.", "2026-10-03")]
    surveyor: Annotated[str, Key("Who surveyed her, by office.", "marine surveyor, wooden craft")]
    lying: Annotated[
        str, Key("How she lay when she was surveyed."), OneOf("afloat", "on a grid", "in dry dock", "ashore")
    ]
    report: Annotated[DrawingRef | None, Key("The report of the survey.", "r-01")] = None
    moisture_meter: Annotated[
        str,
        Key(
            "The meter that read the moisture, and for which wood it was set.",
            "resistance meter, insulated pins 25 mm, set for oak",
        ),
    ] = ""
    planks: Annotated[tuple[Plank, ...], Key("The planks of the shell that the survey tells of.")] = ()
    seams: Annotated[tuple[Seam, ...], Key("The seams and butts.")] = ()
    borings: Annotated[tuple[Boring, ...], Key("Borings and their cores.")] = ()
    moisture: Annotated[tuple[MoistureReading, ...], Key("Readings of moisture in the wood.")] = ()
    fastenings: Annotated[tuple[FastenedZone, ...], Key("What was found of the fastenings, by zone.")] = ()
    keel_bolts: Annotated[tuple[KeelBolt, ...], Key("Keel bolts, from aft.")] = ()
    borers: Annotated[tuple[Borers, ...], Key("Places that borers have attacked.")] = ()
    sheathing: Annotated[Sheathing | None, Key("The sheathing, where she has one.")] = None
    hog: Annotated[Hog | None, Key("How far the keel is from straight.")] = None
    potentials: Annotated[tuple[Potential, ...], Key("Potentials of bonded metals in the water.")] = ()
    practice: Annotated[TimberPractice | None, Key("What is allowed, and by whose practice.")] = None
    notes: Annotated[Prose | None, Key("What else the survey says.", "Ceiling was lifted in the hold only.")] = None
    here: Place
