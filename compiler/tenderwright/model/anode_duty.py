"""What the anodes have to do, and where further ones may go."""

from typing import Annotated

from tenderwright.model.kinds import (
    AnodeRef,
    Area,
    CurrentDensity,
    Date,
    Fraction,
    Length,
    ZoneRef,
)
from tenderwright.model.marks import Count, Key, OneOf, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class AnodeLot(Noun, frozen=True, kw_only=True):
    """Anodes fitted new on one day."""

    anodes: Annotated[
        tuple[Annotated[AnodeRef, Key("An anode.", "p1")], ...], Key("The anodes that were fitted together."), Count(1)
    ]
    on: Annotated[Date, Key("Day on which they were fitted.", "2007-10-10")]
    here: Place


class ProtectedSurface(Noun, frozen=True, kw_only=True):
    """A surface that the anodes look after."""

    name: Annotated[str, Key("What the surface is.", "painted shell")]
    zone: Annotated[ZoneRef | None, Key("Coating zone whose area it is.", "underwater")] = None
    share: Annotated[Fraction | None, Key("Share of that area; all unless given.", "97 %")] = None
    area: Annotated[Area | None, Key("Area, where it is no zone.", "4 m2")] = None
    initial: Annotated[CurrentDensity, Key("Current density of bare steel at first.", "150 mA/m2")]
    mean: Annotated[CurrentDensity, Key("Mean density of the protective current.", "80 mA/m2")]
    final: Annotated[CurrentDensity, Key("Current density at the end.", "100 mA/m2")]
    a: Annotated[
        float | None,
        Key("Breakdown of its coating when new; leave a and b out for a bare surface.", 0.02),
        Within(least=0, most=1),
    ] = None
    b: Annotated[
        float | None, Key("How much more of its coating breaks down in each year.", 0.012), Within(least=0, most=1)
    ] = None
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    here: Place


class AnodeStrip(Noun, frozen=True, kw_only=True):
    """A strip of shell, on either side, where further anodes may go."""

    from_: Annotated[Position, Key("After end of the strip.", "Fr 4")]
    to: Annotated[Position, Key("Forward end of the strip.", "Fr 76")]
    height: Annotated[Length, Key("Height above the keel line.", "1.4 m")]
    here: Place


class AnodeDuty(Noun, frozen=True, kw_only=True):
    """What the anodes have to do."""

    fitted: Annotated[tuple[AnodeLot, ...], Key("When anodes were fitted new."), Count(1)]
    surfaces: Annotated[tuple[ProtectedSurface, ...], Key("The surfaces that the anodes protect."), Count(1)]
    capacity: Annotated[float, Key("Capacity of the alloy in A h/kg.", 780), Within(above=0, most=10000)]
    resistivity: Annotated[float, Key("Resistivity of the water in ohm m.", 0.25), Within(above=0, most=1000)]
    utilisation: Annotated[Fraction, Key("Share of an anode that can be used.", "85 %")]
    shape: Annotated[
        str,
        Key("Shape and fixing, for the resistance."),
        OneOf("long slender", "short slender", "long flush", "short flush"),
    ]
    strip: Annotated[AnodeStrip | None, Key("Where further anodes may go.")] = None
    renewed_between: Annotated[
        str,
        Key(
            "How they are renewed between dockings, where they do not last.",
            "divers renew the bolted ones every second spring",
        ),
    ] = ""
    source: Annotated[
        str,
        Key(
            "Who says so: a work with its clause, or `from memory`, or `common practice, no source`.",
            "USCG NVIC 7-68, Appendix E, local wastage",
            "common practice, no source",
        ),
    ]
    here: Place
