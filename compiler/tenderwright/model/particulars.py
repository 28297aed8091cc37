"""What the ship is: identity, dimensions, keel, machinery, marks, known hazards."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.common import Extent
from tenderwright.model.kinds import (
    DrawingRef,
    Identifier,
    Length,
    Mass,
    OpeningRef,
    Side,
    SignedLength,
)
from tenderwright.model.marks import AbsentMeans, Count, Key, MayWait, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class WoodHull(Noun, frozen=True, kw_only=True):
    """How a hull of wood is built; its condition is told in vessel/timber.yaml."""

    laid: Annotated[str, Key("How the planking is laid."), OneOf("carvel", "clinker", "double diagonal", "strip")]
    planking: Annotated[str, Key("Wood of the planking.", "oak to the wale, larch above")]
    thickness: Annotated[Length, Key("Thickness of the bottom planking as built.", "45 mm"), Within(most="1 m")]
    frames: Annotated[str, Key("What the frames are, and how far apart.", "double sawn oak, 75 mm sided, 380 mm apart")]
    framing: Annotated[str, Key("Of what the frames are made."), OneOf("wood", "iron", "steel")] = "wood"
    sheathing: Annotated[
        str, Key("Sheathing of the bottom; left out where there is none.", "copper over tarred felt")
    ] = ""


class Hull(Noun, frozen=True, kw_only=True):
    """How the hull is built."""

    material: Annotated[
        str,
        Key("What the shell is made of.", "mild steel"),
        OneOf("mild steel", "early steel", "wrought iron", "wood", "composite"),
    ]
    fastening: Annotated[
        str,
        Key("How plates are joined, or by what the planks are fastened."),
        OneOf(
            "riveted",
            "welded",
            "riveted and welded",
            "treenails",
            "copper clenched",
            "iron",
            "yellow metal",
            "bolts",
            "of several kinds",
        ),
    ]
    wood: Annotated[WoodHull | None, Key("How a hull of wood is built.")] = None
    notes: Annotated[
        Prose | None,
        Key("What else is known of how she is built.", "Doubled at the turn of the bilge, Fr 30 to Fr 52."),
    ] = None

    @property
    def composite(self) -> bool:
        """Tell whether planks stand on frames of metal."""
        return self.material == "composite" or (self.wood is not None and self.wood.framing != "wood")

    @property
    def of_wood(self) -> bool:
        """Tell whether planks and frames are of wood."""
        return self.material == "wood" and not self.composite

    @property
    def of_metal(self) -> bool:
        """Tell whether the shell is of plates."""
        return self.material not in ("wood", "composite")


class Dimensions(Noun, frozen=True, kw_only=True):
    """Principal dimensions."""

    length_overall: Annotated[Length, Key("Length from the foremost to the aftermost point of the hull.", "51.8 m")]
    length_between_perpendiculars: Annotated[Length, Key("Length between her perpendiculars.", "48.0 m")]
    beam: Annotated[Length, Key("Her greatest moulded breadth.", "9.1 m")]
    depth: Annotated[Length, Key("Moulded depth at side amidships.", "4.6 m")]
    draft: Annotated[Length, Key("Usual mean draft, above the keel line.", "3.2 m")]
    air_draft: Annotated[Length | None, Key("Height of the highest fixed point above the waterline.", "19 m")] = None
    aft_overhang: Annotated[Length | None, Key("Overhang abaft the after perpendicular.", "2.6 m")] = None


class Keel(Noun, frozen=True, kw_only=True):
    """The keel, which stands on the blocks."""

    kind: Annotated[str, Key("What kind of keel she has."), OneOf("bar", "flat")]
    width: Annotated[Length, Key("Width that bears on the block.", "200 mm")]
    depth: Annotated[Length | None, Key("Depth of a bar keel below the keel line.", "180 mm"), AbsentMeans("none")] = (
        None
    )
    drag: Annotated[
        SignedLength | None,
        Key(
            "How much deeper the keel is at the after perpendicular than at the forward one, where it is built so and her form does not show it. Heights are then from the keel amidships.",
            "0.6 m",
        ),
    ] = None
    straight: Annotated[Extent, Key("The straight part that can stand on blocks.")]
    here: Place


class DraftMarks(Noun, frozen=True, kw_only=True):
    """One set of draft marks."""

    name: Annotated[str, Key("Where the marks are, in a word.", "aft")]
    at: Annotated[Position, Key("Frame or distance at which the marks are cut.", "Fr 0")]
    side: Side = "both"
    datum: Annotated[
        SignedLength | None,
        Key("Height of the mark's zero above the keel line; negative if below it.", "-0.18 m"),
        AbsentMeans("the keel line"),
    ] = None


class Propeller(Noun, frozen=True, kw_only=True):
    """A propeller."""

    diameter: Annotated[Length, Key("Diameter over the tips of the blades.", "2.3 m"), Within(most="20 m")]
    material: Annotated[str, Key("What it is cast of.", "manganese bronze")]
    blades: Annotated[int | None, Key("How many blades it has.", 4), Within(least=1, most=20)] = None
    mass: Annotated[Mass | None, Key("Mass of the propeller without its shaft.", "1.4 t")] = None
    at: Annotated[Position | None, Key("Where its boss is, along the ship.", "Fr 2")] = None


class Shaft(Noun, frozen=True, kw_only=True):
    """A propeller shaft, and what is left of it."""

    shaft: Annotated[Identifier, Key("Identifier, by which texts name the shaft.", "port-shaft")]
    name: Annotated[str, Key("Name as the tender prints it.", "Port shaft")]
    side: Annotated[
        str, Key("On which side of the ship it lies.", "port"), OneOf("centreline", "port", "starboard")
    ] = "centreline"
    off_centre: Annotated[
        Length | None,
        Key("Distance of its propeller from the centreline; that of its stern tube unless given.", "2.4 m"),
    ] = None
    height: Annotated[
        SignedLength | None,
        Key(
            "Height of its centre above the keel line, at the propeller; that of its stern tube unless given.", "1.2 m"
        ),
    ] = None
    tube: Annotated[OpeningRef | None, Key("The opening by which it leaves the hull.", "stern-tube")] = None
    diameter: Annotated[Length | None, Key("Diameter of the shaft in its stern tube.", "210 mm")] = None
    state: Annotated[
        str,
        Key("What is there now.", "propeller fitted"),
        OneOf("propeller fitted", "propeller removed", "drawn and blanked"),
    ] = "propeller fitted"
    propeller: Annotated[Propeller | None, Key("Its propeller, fitted or kept; left out where she has it no more.")] = (
        None
    )
    notes: Annotated[Prose | None, Key("What else is known of it.", "Locked by a brake at the thrust block.")] = None
    here: Place


class HazardousMaterial(Noun, frozen=True, kw_only=True):
    """A hazardous material known or suspected aboard."""

    material: Annotated[
        str,
        Key("Which material it is.", "lead paint"),
        OneOf("lead paint", "pcb", "asbestos", "tributyltin", "mercury", "oil residue", "other"),
    ]
    where: Annotated[str, Key("Where in the ship it is.", "topside, under all later coats")]
    status: Annotated[str, Key("How it is known."), OneOf("tested present", "tested absent", "suspected", "not tested")]
    report: Annotated[
        DrawingRef | None, Key("The report that tells of it, by its number in drawings.yaml.", "r-03")
    ] = None


class OutlinePoint(Noun, frozen=True, kw_only=True):
    """A corner of an outline."""

    at: Annotated[Position, Key("Where it is, along the ship.", "Fr 40")]
    height: Annotated[SignedLength, Key("Its height above the keel line.", "7.2 m")]


class SideOutline(Noun, frozen=True, kw_only=True):
    """What is seen from the side besides the hull, as a line from corner to corner."""

    name: Annotated[str, Key("What the shape is of.", "Deckhouse")]
    points: Annotated[
        tuple[OutlinePoint, ...],
        Key("Its corners in order, as far as they are known; a closed shape ends where it begins."),
        Count(2),
    ]


class Particulars(Noun, frozen=True, kw_only=True):
    """What she is: identity, dimensions, keel, machinery, marks, known hazards."""

    name: Annotated[str, Key("Name of the ship.", "Marram")]
    built: Annotated[int | None, Key("Year in which she was built.", 1934), Within(least=1500, most=2200)]
    builder: Annotated[str, Key("Who built her, by the name of the time.", "Sallow and Reeve")] = ""
    type: Annotated[str, Key("What she was built as.", "lighthouse tender")]
    significance: Annotated[
        Prose | None,
        Key(
            "Why she matters, in a few sentences.",
            "The last steam lighthouse tender of her coast with her boilers in place.",
        ),
    ] = None
    status: Annotated[Prose | None, Key("How she is used now.", "Museum ship, afloat; open from April to October.")] = (
        None
    )
    class_: Annotated[str, Key("Society in whose class she is; left out for a ship in none.", "Lloyd's Register")] = ""
    hull: Annotated[Hull | None, Key("How the hull is built.")] = None
    dimensions: Annotated[Dimensions, Key("Her principal dimensions, from plan or measured.")]
    displacement: Annotated[
        Mass | None,
        Key(
            "Displacement at the usual draft, as stated in her papers; checked against her lines or curves of form.",
            "720 t",
        ),
    ] = None
    keel: Annotated[Keel, Key("The keel, which stands on the blocks.")]
    draft_marks: Annotated[
        tuple[DraftMarks, ...], Key("Her draft marks, by which the drafts on docking are read.")
    ] = ()
    outlines: Annotated[
        tuple[SideOutline, ...],
        Key(
            "Deckhouses, funnels, masts and the like from the side, for the docking plan alone; nothing rests on them."
        ),
    ] = ()
    machinery: Annotated[
        Prose | None,
        Key(
            "Engine and shafting, in a few sentences.",
            "Triple expansion, 1934, turned by hand twice a year; one shaft.",
        ),
    ] = None
    shafts: Annotated[
        tuple[Shaft, ...], Key("Her propeller shafts, those without a propeller too; left out where she has none.")
    ] = ()
    hazards: Annotated[tuple[HazardousMaterial, ...], Key("Hazardous materials known or suspected."), MayWait()] = ()
    here: Place
