"""Tanks and cofferdams: bounds, capacity plan or table, pipes, contents."""

from typing import Annotated

from tenderwright.model.build import Prose
from tenderwright.model.kinds import (
    Date,
    Density,
    Fraction,
    Identifier,
    Length,
    LengthOrShell,
    Liquid,
    Mass,
    Moment,
    SecondMoment,
    Side,
    SignedAngle,
    SignedLength,
    Volume,
)
from tenderwright.model.marks import Count, Key, Measured, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class Bounds(Noun, frozen=True, kw_only=True):
    """Planes that bound a tank, and where the hull itself does."""

    from_: Annotated[Position, Key("Bulkhead at the after end of the tank.", "Fr 60")]
    to: Annotated[Position, Key("Bulkhead at the forward end of the tank.", "Fr 70")]
    bottom: Annotated[LengthOrShell, Key("Height of the bottom above the keel line, or `shell`.", "shell", "0.9 m")]
    top: Annotated[Length, Key("Height of the top above the keel line.", "2.4 m")]
    inboard: Annotated[
        Length, Key("Distance of the inboard boundary from the centreline; 0 m for a tank across the ship.", "0 m")
    ]
    outboard: Annotated[
        LengthOrShell, Key("Distance of the outboard boundary from the centreline, or `shell`.", "shell", "2.1 m")
    ]
    here: Place


class CapacityPlan(Noun, frozen=True, kw_only=True):
    """A tank as the ship's capacity plan gives it, where her form or the tank's bounds are not known."""

    at: Annotated[Position, Key("Where its centre is when it is full, along the ship.", "Fr 54 + 200 mm")]
    off_centre: Annotated[
        SignedLength | None, Key("Its centre from the centreline; port positive, and nothing where left out.", "2.1 m")
    ] = None
    height: Annotated[Length, Key("Height of its centre above the keel line, when it is full.", "0.62 m")]
    inertia: Annotated[
        SecondMoment | None,
        Key("Free surface: its second moment about its own fore-and-aft axis.", "38 m4"),
        Within(most="1000000 m4"),
    ] = None
    moment: Annotated[Moment | None, Key("Free-surface moment, in place of the inertia.", "39 t*m")] = None
    density: Annotated[
        Density | None,
        Key(
            "Density for which that moment is stated; the lighter of what is in the tank and what it is for if left out.",
            "1.025 t/m3",
        ),
        Within(least="500 kg/m3", most="3000 kg/m3"),
    ] = None
    breadth: Annotated[
        Length | None,
        Key(
            "Its greatest breadth, for where no free surface is stated; her beam, or half of it for a side tank, if left "
            "out.",
            "3.9 m",
        ),
    ] = None
    from_: Annotated[Position | None, Key("After end of the tank, where it is known.", "Fr 51")] = None
    to: Annotated[Position | None, Key("Fore end of the tank.", "Fr 61")] = None
    bottom: Annotated[Length | None, Key("Height of its lowest point above the keel line.", "0 m")] = None
    here: Place


class TableRow(Noun, frozen=True, kw_only=True):
    """A row of the ship's own sounding table, by the sounding or by the ullage."""

    sounding: Annotated[
        Length | None, Key("Depth of liquid in the sounding pipe; American papers call it the innage.", "0.5 m")
    ] = None
    ullage: Annotated[Length | None, Key("Ullage, in a table that goes by it; then all its rows do.", "1.9 m")] = None
    volume: Annotated[Volume, Key("Volume in the tank at that sounding or ullage.", "3.1 m3")]
    here: Place


class SoundingPipe(Noun, frozen=True, kw_only=True):
    """A sounding pipe."""

    at: Annotated[Position, Key("Where its foot is, along the ship.", "Fr 61")]
    off_centre: Annotated[SignedLength | None, Key("Distance from the centreline; port positive.", "0.4 m")] = None
    foot: Annotated[Length, Key("Height of the striking plate above the keel line.", "0.1 m")]
    head: Annotated[Length | None, Key("Height of the pipe's top above the keel line, for ullages.", "5.1 m")] = None
    slant: Annotated[
        SignedAngle | None,
        Key("Slant from the ship's vertical, forward as it rises; negative where it leans aft.", "0 deg"),
    ] = None
    here: Place


_TAPE = "a sounding by tape; common practice, no source"


class Contents(Noun, frozen=True, kw_only=True):
    """What is in a tank on arrival."""

    liquid: Annotated[Liquid, Key("What is in the tank; none for an empty one.", "fresh water")]
    density: Annotated[
        Density | None,
        Key("Density of the liquid, if it was measured.", "1.012 t/m3"),
        Within(least="500 kg/m3", most="3000 kg/m3"),
    ] = None
    sounding: Annotated[
        Length | None, Key("Sounding on an even keel at the pipe.", "0.85 m"), Measured("10 mm", _TAPE)
    ] = None
    ullage: Annotated[Length | None, Key("Ullage, in place of a sounding.", "1.2 m"), Measured("10 mm", _TAPE)] = None
    volume: Annotated[
        Volume | None, Key("Volume, in place of a sounding.", "6.2 m3"), Measured("5 %", "as told; derived")
    ] = None
    full: Annotated[
        Fraction | None,
        Key("How full it is, as a share of its capacity, in place of a sounding.", "98 %"),
        Measured("5 %", "as told; derived"),
    ] = None
    mass: Annotated[
        Mass | None, Key("Mass of what is in it, in place of a sounding.", "6.4 t"), Measured("5 %", "as told; derived")
    ] = None
    read: Annotated[Date | None, Key("Day it was sounded.", "2027-04-12")] = None
    here: Place


class Tank(Noun, frozen=True, kw_only=True):
    """A tank, cofferdam or void."""

    tank: Annotated[Identifier, Key("Identifier, by which items and plans name the tank.", "forepeak")]
    name: Annotated[str, Key("Name as the tender prints it.", "Forepeak")]
    use: Annotated[
        str,
        Key("What it is for now."),
        OneOf("ballast", "fresh water", "fuel oil", "lubricating oil", "bilge or slops", "cofferdam", "void"),
    ]
    side: Side = "centreline"
    held_oil: Annotated[bool, Key("Whether it has ever held oil; decides gas-free work.")] = False
    confined: Annotated[bool, Key("Whether it is a confined space.")] = True
    bounds: Annotated[
        Bounds | None, Key("A tank bounded by planes and, where `shell` is written, by the hull itself.")
    ] = None
    permeability: Annotated[Fraction | None, Key("Share of the space that liquid can fill.", "97 %")] = None
    plan: Annotated[
        CapacityPlan | None,
        Key(
            "Its centre and free surface by the capacity plan, with `capacity`; used where bounds and hull are not known."
        ),
    ] = None
    table: Annotated[
        tuple[TableRow, ...], Key("The ship's own sounding table; used before the bounds where it is given.")
    ] = ()
    capacity: Annotated[Volume | None, Key("Capacity when 100 % full, from the ship's papers.", "18.5 m3")] = None
    pipe: Annotated[SoundingPipe | None, Key("The sounding pipe, which turns a sounding into a volume.")] = None
    contents: Annotated[Contents, Key("What is in it on arrival.")]
    movable: Annotated[bool, Key("Whether its contents may be moved to trim the ship for docking.")] = False
    notes: Annotated[
        Prose | None,
        Key("What else the yard should know of it.", "The manhole is under the chain; the chain is ranged first."),
    ] = None
    here: Place


class Tanks(Noun, frozen=True, kw_only=True):
    """Tanks and cofferdams: bounds or table, pipes, contents."""

    tanks: Annotated[tuple[Tank, ...], Key("Her tanks, cofferdams and voids."), Count(1)]
