"""Coating zones and the schemes that coat them."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.common import AreaEntry
from tenderwright.model.kinds import (
    Area,
    AreaDensity,
    Density,
    Fraction,
    Identifier,
    ItemRef,
    Length,
    LengthOrDeck,
    LengthOrKeel,
    TankRef,
    Time,
    Volume,
    ZoneRef,
)
from tenderwright.model.marks import AbsentMeans, Count, Key, Measured, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position

_GIRTH_PLACES = ["0 m", "Fr 8", "Fr 20", "Fr 40", "Fr 60", "Fr 76", "48 m"]
_GIRTHS = ["1.0 m", "3.4 m", "5.1 m", "6.3 m", "5.6 m", "3.9 m", "2.9 m"]


class Stiffening(Noun, frozen=True, kw_only=True):
    """Stiffeners on the boundaries of an internal zone."""

    member: Annotated[str, Key("Which members they are.", "shell frames")]
    web: Annotated[Length, Key("Depth of the web of each stiffener, from the plate.", "90 mm")]
    flange: Annotated[Length | None, Key("Width of flange; 0 mm for a flat bar.", "60 mm")] = None
    spacing: Annotated[Length, Key("Spacing of the members.", "560 mm"), Within(least="50 mm")]
    share: Annotated[Fraction | None, Key("Share of the boundary that carries them.", "70 %")] = None
    here: Place


class Girths(Noun, frozen=True, kw_only=True):
    """Girths of a band of shell, measured with a tape."""

    source: Annotated[str, Key("Who measured them, and when.", "taped in the dock of 2007, docking report R-04")]
    at: Annotated[
        tuple[Annotated[Position, Key("Where a girth was measured.", "Fr 20")], ...],
        Key("Places from aft to forward; the first and last where the band ends.", _GIRTH_PLACES),
        Count(5),
    ]
    girths: Annotated[
        tuple[Annotated[Length, Key("Girth of one side.", "4.35 m")], ...],
        Key(
            "At each place the girth of one side from edge to edge of the band, from the middle of the keel where it begins "
            "there; at the very ends the height of the band on stem or stern.",
            _GIRTHS,
        ),
        Count(5),
    ]
    along: Annotated[
        Length | None, Key("Length of the band along the shell, one side; estimated where left out.", "49.1 m")
    ] = None
    here: Place


class Zone(Noun, frozen=True, kw_only=True):
    """A coating zone."""

    zone: Annotated[Identifier, Key("Identifier, by which schemes and items name the zone.", "underwater")]
    name: Annotated[str, Key("Name as the tender prints it.", "Underwater shell")]
    surface: Annotated[str, Key("How its area is found."), OneOf("shell band", "internal", "stated")]
    lower: Annotated[
        LengthOrKeel | None,
        Key("Lower edge of a shell band: a height above the keel line, or `keel`.", "keel", "2.9 m"),
        AbsentMeans("the keel"),
    ] = None
    upper: Annotated[
        LengthOrDeck | None, Key("Upper edge: a height, or `deck`.", "3.5 m", "deck"), AbsentMeans("the deck edge")
    ] = None
    girths: Annotated[
        Girths | None, Key("Girths of a shell band; used where there is neither a table of offsets nor sections.")
    ] = None
    tank: Annotated[TankRef | None, Key("The tank whose inside this is, for internal zones.", "forepeak")] = None
    stiffening: Annotated[tuple[Stiffening, ...], Key("Stiffeners; both faces are counted.")] = ()
    area: Annotated[
        Area | None,
        Key("The area itself, where `surface` is `stated`.", "140 m2", "140 m2 ± 4 m2"),
        Measured("3 %", "measured or taken from an older paper; common practice, no source"),
    ] = None
    basis: Annotated[str, Key("How a stated area is known.", "measured in the dock of 2007")] = ""
    add: Annotated[tuple[AreaEntry, ...], Key("Areas to be added to the zone, such as a rudder.")] = ()
    less: Annotated[tuple[AreaEntry, ...], Key("Areas that are taken off the zone.")] = ()
    notes: Annotated[
        Prose | None, Key("What else is known of the zone.", "Fouling is heavy abaft Fr 20, starboard.")
    ] = None
    here: Place


class SchemeExtent(Noun, frozen=True, kw_only=True):
    """How much of a zone a scheme covers."""

    share: Annotated[Fraction | None, Key("A share of the zone.", "35 %")] = None
    rust_grade: Annotated[
        int | None,
        Key("ASTM D610 rust grade 0 to 10; the upper bound of its band gives the share."),
        Within(least=0, most=10),
    ] = None
    area: Annotated[Area | None, Key("Area to be coated, where it is stated as such.", "120 m2")] = None
    basis: Annotated[str, Key("How the extent is known.", "diver's survey 2026")] = ""
    here: Place


class Preparation(Noun, frozen=True, kw_only=True):
    """Surface preparation and its acceptance."""

    grade: Annotated[
        str, Key("Grade by ISO 8501-1, ISO 8501-4, or the joint standards.", "Sa 2 1/2", "Wa 2 1/2", "St 3")
    ]
    flash_rust: Annotated[
        str,
        Key("Greatest flash rust after water-jetting, by ISO 8501-4: light, medium or heavy.", "M"),
        OneOf("L", "M", "H"),
    ] = ""
    profile_low: Annotated[Length | None, Key("Least profile of the blasted steel that is accepted.", "50 um")] = None
    profile_high: Annotated[Length | None, Key("Greatest profile of the blasted steel that is accepted.", "85 um")] = (
        None
    )
    salts: Annotated[AreaDensity | None, Key("Greatest soluble salts, as sodium chloride.", "50 mg/m2")] = None
    dust: Annotated[int | None, Key("Greatest dust quantity, ISO 8502-3.", 2), Within(least=0, most=5)] = None
    hold: Annotated[str, Key("Which hold point accepts it: number of the hold in the item.", "H1")] = ""
    here: Place


class Abrasive(Noun, frozen=True, kw_only=True):
    """Abrasive consumption and what comes off with it."""

    rate: Annotated[AreaDensity, Key("Abrasive used for a square metre.", "40 kg/m2")]
    source: Annotated[str, Key("Where the rate comes from.", "common practice, no source")]
    old_paint: Annotated[Length | None, Key("Thickness of old coating removed.", "600 um")] = None
    old_paint_density: Annotated[
        Density | None, Key("Density of the old paint, for the weight of waste.", "1.4 t/m3")
    ] = None
    rust: Annotated[
        AreaDensity | None, Key("Rust removed from a square metre, for the weight of waste.", "0.5 kg/m2")
    ] = None
    here: Place


class ProfileFill(Noun, frozen=True, kw_only=True):
    """Paint that fills the blast profile."""

    rz: Annotated[Length, Key("Height of the profile that the paint fills.", "75 um")]
    k: Annotated[float, Key("Share of the profile height.", 0.5), Within(most=1)]
    source: Annotated[str, Key("Where that share comes from.", "common practice, no source")] = ""
    here: Place


class Stripe(Noun, frozen=True, kw_only=True):
    """Stripe coats."""

    length: Annotated[Length, Key("Length of all the edges that get stripe coats.", "340 m"), Within(most="50000 m")]
    width: Annotated[Length, Key("Width of the band that a stripe coat covers along an edge.", "80 mm")]
    coats: Annotated[int, Key("How many stripe coats.", 1), Within(least=1, most=20)] = 1
    here: Place


class Coat(Noun, frozen=True, kw_only=True):
    """One coat of a scheme."""

    coat: Annotated[int, Key("Number of the coat, counted from the steel out.", 1), Within(least=1, most=50)]
    product: Annotated[
        str,
        Key(
            "Generic type of paint: no maker's name in a tender that is open to equivalents.",
            "epoxy anticorrosive primer",
        ),
    ]
    colour: Annotated[str, Key("Colour, so that one coat can be told from the next.", "grey")] = ""
    volume_solids: Annotated[Fraction, Key("Share of the paint that stays as dry film, from its data sheet.", "72 %")]
    dft: Annotated[Length, Key("Thickness of the dry film that is asked for.", "125 um")]
    loss: Annotated[Fraction, Key("Share of the paint that is lost in application.", "30 %")]
    loss_source: Annotated[str, Key("Where the loss comes from.", "common practice, no source")] = ""
    thinning: Annotated[Fraction | None, Key("Thinner by volume of paint.", "5 %")] = None
    set_size: Annotated[
        Volume | None,
        Key("Contents of one set or tin; sets are never split.", "20 L"),
        Within(least="0.05 L", most="1 m3"),
    ] = None
    stripe: Annotated[Stripe | None, Key("Stripe coats on edges, rivets and welds.")] = None
    overcoat_least: Annotated[Time | None, Key("Least time before the next coat at 15 degC.", "8 h")] = None
    overcoat_most: Annotated[Time | None, Key("Greatest time before the next coat.", "30 d")] = None
    here: Place


class Scheme(Noun, frozen=True, kw_only=True):
    """One scheme: preparation and coats for one zone."""

    scheme: Annotated[Identifier, Key("Identifier, by which items name the scheme.", "underwater-spot")]
    name: Annotated[str, Key("Name as the tender prints it.", "Underwater shell, bare areas")] = ""
    zone: Annotated[ZoneRef, Key("The zone it coats.", "underwater")]
    item: Annotated[ItemRef | None, Key("The item that applies it.", "420")] = None
    extent: Annotated[SchemeExtent | None, Key("How much of the zone.")] = None
    preparation: Annotated[Preparation, Key("Surface preparation and its acceptance.")]
    abrasive: Annotated[Abrasive | None, Key("Abrasive, as an input with its source.")] = None
    profile_fill: Annotated[ProfileFill | None, Key("Paint that fills the profile.")] = None
    coats: Annotated[tuple[Coat, ...], Key("The coats, from the steel out."), Count(1)]
    before_water: Annotated[
        Time | None, Key("Least time from the last coat until water stands on it, at 15 degC.", "7 d", "24 h")
    ] = None
    here: Place


class Zones(Noun, frozen=True, kw_only=True):
    """Coating zones with their geometry, and the schemes that coat them."""

    zones: Annotated[tuple[Zone, ...], Key("The coating zones, each with what bounds it."), Count(1)]
    schemes: Annotated[tuple[Scheme, ...], Key("The schemes, each for one zone.")]
