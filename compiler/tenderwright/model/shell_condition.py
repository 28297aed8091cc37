"""The condition of the shell: what its plate may lose, its pits and earlier repairs, and how plate is renewed."""

from typing import Annotated

from tenderwright.model.kinds import (
    Area,
    Date,
    Fraction,
    Identifier,
    ItemRef,
    Length,
    Side,
    StrakeRef,
)
from tenderwright.model.marks import Count, Key, OneOf, Within
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

    what: Annotated[str, Key("What was done to the plate.", "insert of 10 mm")]
    strake: Annotated[StrakeRef, Key("The strake in which plate was renewed.", "E")]
    side: Side
    from_: Annotated[Position, Key("After end of the plate.", "Fr 34")]
    to: Annotated[Position, Key("Forward end of the plate.", "Fr 37")]
    thickness: Annotated[Length | None, Key("Thickness of the new plate.", "10 mm")] = None
    edges: Annotated[str, Key("How it is joined to the old plate.", "welded"), OneOf("welded", "riveted")] = ""
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


class Doubler(Noun, frozen=True, kw_only=True):
    """A plate that was laid over the shell."""

    what: Annotated[str, Key("What was put on, and how large it is.", "doubler of 8 mm, 2.4 m by 1.0 m")]
    strake: Annotated[StrakeRef, Key("The strake over which it lies.", "C")]
    side: Side
    from_: Annotated[Position, Key("After end of the doubler.", "Fr 38")]
    to: Annotated[Position, Key("Forward end of the doubler.", "Fr 42")]
    thickness: Annotated[Length | None, Key("Thickness of the doubler.", "8 mm")] = None
    edges: Annotated[str, Key("How it is fastened.", "welded"), OneOf("welded", "riveted")] = "welded"
    on: Annotated[Date, Key("Day on which it was laid.", "1988-05-10")]
    item: Annotated[ItemRef | None, Key("Item that takes it off.", "335")] = None
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "docking report of 1988",
        ),
    ]
    here: Place


class KnownRivets(Noun, frozen=True, kw_only=True):
    """Rivets of earlier dockings that are not as built."""

    how: Annotated[
        str,
        Key("What was done to them.", "driven cold"),
        OneOf("driven cold", "ring-welded", "replaced by bolts"),
    ]
    number: Annotated[int, Key("How many rivets there are.", 64), Within(least=1, most=100000)]
    strakes: Annotated[
        tuple[Annotated[StrakeRef, Key("A strake.", "B")], ...], Key("The strakes in which they are."), Count(1)
    ]
    side: Side
    from_: Annotated[Position, Key("After end of the stretch.", "Fr 20")]
    to: Annotated[Position, Key("Forward end of the stretch.", "Fr 33")]
    on: Annotated[Date, Key("Day on which it was done.", "2007-10-05")]
    item: Annotated[ItemRef | None, Key("Item that renews or tests them.", "315")] = None
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "docking report of 2007",
        ),
    ]
    here: Place


class MaterialLimit(Noun, frozen=True, kw_only=True):
    """What plate of one material may lose, whatever its zone allows."""

    material: Annotated[
        str, Key("Material of the plate.", "wrought iron"), OneOf("mild steel", "early steel", "wrought iron")
    ]
    allowable: Annotated[Fraction, Key("The most that its plate may lose.", "20 %")]
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "owner's naval architect, letter of 2026",
        ),
    ]
    here: Place


class PlateAnalysis(Noun, frozen=True, kw_only=True):
    """An analysis of shell plate, compared with acceptance figures before any weld."""

    strakes: Annotated[
        tuple[Annotated[StrakeRef, Key("A strake.", "B")], ...],
        Key("The strakes that the sample speaks for."),
        Count(1),
    ]
    on: Annotated[Date, Key("Day of the analysis.", "2026-11-03")]
    carbon: Annotated[Fraction | None, Key("Share of carbon by mass.", "0.18 %")] = None
    manganese: Annotated[Fraction | None, Key("Share of manganese by mass.", "0.50 %")] = None
    sulphur: Annotated[Fraction | None, Key("Share of sulphur by mass.", "0.040 %")] = None
    phosphorus: Annotated[Fraction | None, Key("Share of phosphorus by mass.", "0.040 %")] = None
    nitrogen: Annotated[Fraction | None, Key("Share of nitrogen by mass.", "0.006 %")] = None
    source: Annotated[str, Key("The laboratory, and its report.", "laboratory report 26-114, item 310")]
    here: Place


class LaminationTest(Noun, frozen=True, kw_only=True):
    """An ultrasonic test of strakes for laminations."""

    strakes: Annotated[
        tuple[Annotated[StrakeRef, Key("A strake.", "B")], ...], Key("The strakes that were tested."), Count(1)
    ]
    on: Annotated[Date, Key("Day of the test.", "2026-11-03")]
    readings: Annotated[int, Key("Readings that came back from the far face.", 117), Within(least=0, most=1000000)]
    laminated: Annotated[int, Key("Readings that came back from within the plate.", 3), Within(least=0, most=1000000)]
    source: Annotated[str, Key("Who tested, and where it is written.", "thickness report of 2025")]
    here: Place


class Apart(Noun, frozen=True, kw_only=True):
    """Plate that an item of its own renews."""

    item: Annotated[ItemRef, Key("The item that renews the plate.", "335")]
    strake: Annotated[StrakeRef, Key("The strake in which the plate is.", "C")]
    side: Side
    from_: Annotated[Position, Key("After end of the plate.", "Fr 42")]
    to: Annotated[Position, Key("Forward end of the plate.", "Fr 46")]
    ends: Annotated[
        str,
        Key("How its ends are joined to the old plate, where not as those of other inserts.", "weld"),
        OneOf("riveted lap", "riveted strap", "weld"),
    ] = ""
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
        str,
        Key("How edges of inserts along seams are fastened; riveted unless given."),
        OneOf("riveted", "welded edges"),
    ] = "riveted"
    ends: Annotated[
        str,
        Key("How ends of inserts are joined to the old plate; as the edges are unless given.", "riveted strap"),
        OneOf("riveted lap", "riveted strap", "weld"),
    ] = ""
    least_bays: Annotated[int, Key("Least frame spaces of an insert; 1 unless given.", 1), Within(least=1, most=50)] = 1
    least_size: Annotated[Length | None, Key("Least side of an insert; 300 mm unless given.", "300 mm")] = None
    corner: Annotated[
        float | None, Key("Radius of a free corner in thicknesses; 5 unless given.", 5), Within(most=100)
    ] = None
    mill_tolerance: Annotated[
        Fraction | None, Key("Mass over nominal; by thickness from the published table unless given.", "5 %")
    ] = None
    rivet: Annotated[Length, Key("Diameter of the rivets of the ship's usual joints.", "19 mm")]
    seam_rows: Annotated[
        int, Key("Rows of rivets in a seam, where its strake does not say otherwise.", 1), Within(least=1, most=6)
    ]
    butt_rows: Annotated[
        int,
        Key("Rows of rivets in a lapped butt, where its strake does not say otherwise.", 2),
        Within(least=1, most=6),
    ]
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
