"""The docking plan for tender: blocks, allowables, clearances, and what moves while she is dry."""

from typing import Annotated

from tenderwright.model.kinds import (
    Area,
    Date,
    ItemRef,
    Length,
    LineLoad,
    Liquid,
    Mass,
    Pressure,
    SecondMoment,
    SignedAngle,
    SignedLength,
    SignedMass,
    Speed,
    TankRef,
    Volume,
)
from tenderwright.model.lightship import U_HEIGHT_ABOARD, U_MASS_ABOARD, U_OFF_CENTRE_ABOARD
from tenderwright.model.marks import Count, Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class BlockLayer(Noun, frozen=True, kw_only=True):
    """A layer of the block, from the floor up."""

    material: Annotated[str, Key("Material of the layer.", "oak")]
    height: Annotated[Length, Key("Height of the layer.", "300 mm")]
    stiffness: Annotated[Pressure | None, Key("Modulus across the grain.", "600 MPa")] = None
    source: Annotated[str, Key("Where the modulus of the layer comes from.", "from memory")] = ""


class KeelBlocks(Noun, frozen=True, kw_only=True):
    """A row of keel blocks, or one block."""

    at: Annotated[Position, Key("Centre of the block, or of the aftermost of a row.", "Fr 6")]
    to: Annotated[Position | None, Key("Centre of the foremost of a row.", "Fr 70")] = None
    every: Annotated[
        int, Key("One block at every so many frames; 2 means every other frame.", 2), Within(least=1, most=100)
    ] = 1
    pitch: Annotated[
        Length | None,
        Key("Distance from each block of the row to the next, for blocks that follow no frames.", "1.2 m", "4 ft"),
        Within(least="100 mm"),
    ] = None
    length: Annotated[Length, Key("Length of the cap along the ship.", "300 mm")]
    width: Annotated[Length, Key("Width of the cap.", "1.0 m")]
    bearing_width: Annotated[
        Length | None,
        Key(
            "Width over which the keel bears on the cap, where a plate spreads it; the keel's own width where left out.",
            "400 mm",
        ),
    ] = None
    layers: Annotated[
        tuple[BlockLayer, ...],
        Key("What each block is built of; with a modulus for each layer, an elastic hull can be set on them."),
    ] = ()
    off_frame: Annotated[
        str, Key("Why it stands between frames, where it has to.", "the keel rises forward of Fr 74")
    ] = ""
    here: Place


class SideBlocks(Noun, frozen=True, kw_only=True):
    """A pair of side blocks, port and starboard."""

    at: Annotated[Position, Key("Frame it stands on.", "Fr 37")]
    off_centre: Annotated[Length, Key("Centre of the cap from the centreline.", "2.0 m")]
    length: Annotated[Length | None, Key("Length along the ship.", "400 mm")] = None
    width: Annotated[Length | None, Key("Width across the ship.", "500 mm")] = None
    here: Place


class CitedLength(Noun, frozen=True, kw_only=True):
    """A length that is an input with its source."""

    value: Annotated[Length, Key("The least distance that is kept.", "0.3 m")]
    source: Annotated[
        str,
        Key(
            "Where it comes from, with clause or page; or 'common practice, no source'; or 'from memory'.",
            "common practice, no source",
        ),
    ]
    here: Place


class CitedAngle(Noun, frozen=True, kw_only=True):
    """An angle that is an input with its source."""

    value: Annotated[SignedAngle, Key("Positive where it falls aft.", "0 deg")]
    source: Annotated[
        str, Key("Where it comes from: who measured it, or the page of the document.", "dock certificate, 2024-03")
    ]
    here: Place


class CitedPressure(Noun, frozen=True, kw_only=True):
    """A pressure that is an input with its source."""

    value: Annotated[Pressure, Key("The pressure that is allowed, and no more.", "2.3 MPa"), Within(most="1000 MPa")]
    source: Annotated[str, Key("Where it comes from, with the page of a document.", "common practice, no source")]
    here: Place


class CitedNumber(Noun, frozen=True, kw_only=True):
    """A number that is an input with its source."""

    value: Annotated[float, Key("The number, without a unit.", 0.3), Within(most=2)]
    source: Annotated[
        str, Key("Where it comes from: who tested or decided it, or a work and its table.", "from memory")
    ]
    here: Place


class CitedMass(Noun, frozen=True, kw_only=True):
    """A mass that is an input with its source."""

    value: Annotated[Mass, Key("The greatest load, as a mass.", "25 t")]
    source: Annotated[str, Key("Whose figure it is, with its date.", "naval architect's letter of 2027-02-12")]
    here: Place


class Girder(Noun, frozen=True, kw_only=True):
    """The hull girder, for the elastic keel line."""

    second_moment: Annotated[
        SecondMoment, Key("Second moment of area of the midship section about its neutral axis.", "0.42 m4")
    ]
    modulus: Annotated[Pressure, Key("Young's modulus of the steel.", "200000 MPa")]
    source: Annotated[str, Key("Where both come from, with the page.", "stability book of 2011, page 14")]
    here: Place


class CalculatedLoads(Noun, frozen=True, kw_only=True):
    """Greatest loads of the keel blocks as a naval architect calculated them from her own weights and stiffness."""

    pressure: Annotated[Pressure, Key("Greatest pressure on a cap.", "2.6 MPa"), Within(most="1000 MPa")]
    line_load: Annotated[LineLoad, Key("Greatest load along the keel.", "38 t/m")]
    source: Annotated[str, Key("Whose calculation it is, with its date.", "naval architect's block loads, 2027-02-12")]
    here: Place


class Wind(Noun, frozen=True, kw_only=True):
    """Wind on her when she stands on blocks."""

    speed: Annotated[Speed, Key("Speed of the wind for which she is shored.", "30 m/s")]
    coefficient: Annotated[
        float, Key("Drag coefficient of the hull and upper works seen from the side.", 0.92), Within(most=5)
    ]
    area: Annotated[Area, Key("Side area above the blocks.", "420 m2")]
    height: Annotated[Length, Key("Height of its centre above the keel.", "4.1 m")]
    source: Annotated[str, Key("Where the coefficient comes from.", "from memory")]
    here: Place


class Earthquake(Noun, frozen=True, kw_only=True):
    """Sideways acceleration as a share of gravity."""

    coefficient: Annotated[float, Key("Sideways acceleration as a share of gravity.", 0.05), Within(most=2)]
    source: Annotated[str, Key("Where it comes from: the code and clause, or who decided it.", "from memory")]
    here: Place


class MovedWeight(Noun, frozen=True, kw_only=True):
    """A weight that comes aboard or goes while she is dry."""

    what: Annotated[str, Key("What weight it is that is moved.", "propeller, unshipped")]
    mass: Annotated[SignedMass, Key("Mass; negative for what goes.", "-1.35 t", "-1.35 t ± 50 kg"), U_MASS_ABOARD]
    at: Annotated[Position, Key("Longitudinal centre of what is moved.", "Fr 1")]
    height: Annotated[Length, Key("Vertical centre above the keel line.", "1.2 m"), U_HEIGHT_ABOARD]
    off_centre: Annotated[SignedLength | None, Key("Transverse centre, port positive.", "0 m"), U_OFF_CENTRE_ABOARD] = (
        None
    )
    item: Annotated[ItemRef | None, Key("The item that moves it.", "830")] = None
    here: Place


class ChangedTank(Noun, frozen=True, kw_only=True):
    """A tank's contents when she is floated."""

    tank: Annotated[TankRef, Key("The tank whose contents change.", "forepeak")]
    liquid: Annotated[Liquid, Key("What is in it when she floats again; none for an empty tank.", "none")]
    volume: Annotated[Volume | None, Key("Volume in it when she floats again.", "0 m3")] = None
    item: Annotated[ItemRef | None, Key("The item that empties or fills it.", "720")] = None
    here: Place


class DockingPlan(Noun, frozen=True, kw_only=True):
    """Blocks, allowables, clearances and the weights that move while she is dry: planning data for the docking calculations."""

    keel_blocks: Annotated[
        tuple[KeelBlocks, ...], Key("The keel blocks, in rows or one by one, from aft to forward."), Count(1)
    ]
    side_blocks: Annotated[tuple[SideBlocks, ...], Key("Side blocks, in pairs.")] = ()
    taken_out: Annotated[
        tuple[Position, ...],
        Key(
            "Keel blocks that are taken out while she is dry, one at a time, each by a frame under its cap; where none "
            "is named, any of them may be.",
            ["Fr 12", "Fr 21"],
        ),
    ] = ()
    block_height: Annotated[Length | None, Key("Height of the keel blocks above the dock floor.", "1.4 m")] = None
    declivity: Annotated[CitedAngle | None, Key("Slope of the block line.")] = None
    allowable: Annotated[CitedPressure | None, Key("Allowable pressure on the caps.")] = None
    girder: Annotated[Girder | None, Key("Hull girder, for the elastic keel line.")] = None
    hull_at_side_blocks: Annotated[
        CitedMass | None,
        Key("Greatest load that shell and frame take at a side block, as a naval architect found it."),
    ] = None
    calculated_loads: Annotated[
        CalculatedLoads | None,
        Key("Loads of the keel blocks by the naval architect, judged in place of those that rest on estimates."),
    ] = None
    clearance: Annotated[
        CitedLength | None, Key("Least distance from the edge of a cap to an opening, plug, anode or transducer.")
    ] = None
    margin: Annotated[CitedLength | None, Key("Least distance between a footprint and one of an earlier docking.")] = (
        None
    )
    under_keel: Annotated[CitedLength | None, Key("Least water between keel and blocks when she enters.")] = None
    over_sill: Annotated[CitedLength | None, Key("Least water between keel and sill.")] = None
    beside: Annotated[CitedLength | None, Key("Least clearance on each side.")] = None
    ends: Annotated[CitedLength | None, Key("Least clearance at each end.")] = None
    wind: Annotated[Wind | None, Key("Wind on her when she stands on blocks.")] = None
    earthquake: Annotated[Earthquake | None, Key("Sideways acceleration as a share of gravity.")] = None
    friction: Annotated[CitedNumber | None, Key("Coefficient of friction between keel and caps.")] = None
    least_gm: Annotated[Length | None, Key("Least GM that must remain while she lands.", "0.15 m")] = None
    ordered_by: Annotated[str, Key("Who alone may order the water moved, landing and floating.", "the dockmaster")] = ""
    moved_while_dry: Annotated[
        tuple[MovedWeight, ...], Key("Weights moved while she is dry, and before docking by items of that phase.")
    ] = ()
    tanks_at_undocking: Annotated[
        tuple[ChangedTank, ...], Key("Tanks whose contents change before she is floated.")
    ] = ()
    plug_register: Annotated[ItemRef | None, Key("The item that keeps the register of docking plugs.", "125")] = None
    stability_checked: Annotated[
        Date | None, Key("Day of the last stability check of the undocking condition.", "2027-04-12")
    ] = None
    here: Place
