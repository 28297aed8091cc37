"""What the ship is: identity, dimensions, keel, machinery, marks, known hazards."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.common import Extent
from tenderwright.model.kinds import (
    DrawingRef,
    Length,
    Mass,
    Side,
    SignedLength,
)
from tenderwright.model.marks import Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class Hull(Noun, frozen=True, kw_only=True):
    """How the hull is built."""

    material: Annotated[str, Key("Shell material."), OneOf("mild steel", "wrought iron")]
    fastening: Annotated[str, Key("How plates are joined."), OneOf("riveted", "welded", "riveted and welded")]
    notes: Annotated[Prose | None, Key("Details.")] = None


class Dimensions(Noun, frozen=True, kw_only=True):
    """Principal dimensions."""

    length_overall: Annotated[Length, Key("Length overall.", "51.8 m")]
    length_between_perpendiculars: Annotated[Length, Key("Length between perpendiculars.", "48.0 m")]
    beam: Annotated[Length, Key("Moulded beam.", "9.1 m")]
    depth: Annotated[Length, Key("Moulded depth at side amidships.", "4.6 m")]
    draft: Annotated[Length, Key("Usual mean draft, above the keel line.", "3.2 m")]
    air_draft: Annotated[Length | None, Key("Height of the highest fixed point above the waterline.", "19 m")] = None
    aft_overhang: Annotated[Length | None, Key("Overhang abaft the after perpendicular.", "2.6 m")] = None


class Keel(Noun, frozen=True, kw_only=True):
    """The keel, which stands on the blocks."""

    kind: Annotated[str, Key("Kind of keel."), OneOf("bar", "flat")]
    width: Annotated[Length, Key("Width that bears on the block.", "200 mm")]
    depth: Annotated[Length | None, Key("Depth of a bar keel below the keel line.", "180 mm")] = None
    straight: Annotated[Extent, Key("The straight part that can stand on blocks.")]
    here: Place


class DraftMarks(Noun, frozen=True, kw_only=True):
    """One set of draft marks."""

    name: Annotated[str, Key("Where.", "aft")]
    at: Annotated[Position, Key("Position.", "Fr 0")]
    side: Side = "both"
    datum: Annotated[
        SignedLength | None, Key("Height of the mark's zero above the keel line; negative if below it.", "-0.18 m")
    ] = None


class Propeller(Noun, frozen=True, kw_only=True):
    """The propeller."""

    diameter: Annotated[Length, Key("Diameter.", "2.3 m"), Within(most="20 m")]
    material: Annotated[str, Key("Material.", "manganese bronze")]
    blades: Annotated[int | None, Key("Number of blades.", 4), Within(least=1, most=20)] = None
    mass: Annotated[Mass | None, Key("Mass.", "1.4 t")] = None
    at: Annotated[Position | None, Key("Position.", "Fr 2")] = None


class HazardousMaterial(Noun, frozen=True, kw_only=True):
    """A hazardous material known or suspected aboard."""

    material: Annotated[
        str, Key("Which."), OneOf("lead paint", "pcb", "asbestos", "tributyltin", "mercury", "oil residue", "other")
    ]
    where: Annotated[str, Key("Where.")]
    status: Annotated[str, Key("How it is known."), OneOf("tested present", "tested absent", "suspected", "not tested")]
    report: Annotated[DrawingRef | None, Key("The report.", "r-03")] = None


class Particulars(Noun, frozen=True, kw_only=True):
    """What she is: identity, dimensions, keel, machinery, marks, known hazards."""

    name: Annotated[str, Key("Name.", "Marram")]
    built: Annotated[int, Key("Year of build.", 1934), Within(least=1500, most=2200)]
    builder: Annotated[str, Key("Builder (invented in the demonstration).")] = ""
    type: Annotated[str, Key("Type.", "lighthouse tender")]
    significance: Annotated[Prose | None, Key("Why she matters, in a few sentences.")] = None
    status: Annotated[Prose | None, Key("How she is used now.")] = None
    hull: Annotated[Hull | None, Key("How the hull is built.")] = None
    dimensions: Annotated[Dimensions, Key("Principal dimensions.")]
    displacement: Annotated[
        Mass | None,
        Key("Displacement at the usual draft, as stated in the ship's papers; checked against the offsets.", "720 t"),
    ] = None
    keel: Annotated[Keel, Key("The keel, which stands on the blocks.")]
    draft_marks: Annotated[tuple[DraftMarks, ...], Key("Draft marks.")] = ()
    machinery: Annotated[Prose | None, Key("Engine and shafting, in a few sentences.")] = None
    propeller: Annotated[Propeller | None, Key("Propeller.")] = None
    hazards: Annotated[tuple[HazardousMaterial, ...], Key("Hazardous materials known or suspected.")] = ()
    here: Place
