"""Nouns that several files share."""

from typing import Annotated

from tenderwright.model.kinds import Area, Density, Salinity, Temperature
from tenderwright.model.marks import Key, Measured, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


class Extent(Noun, frozen=True, kw_only=True):
    """A stretch along the ship."""

    from_: Annotated[
        Position,
        Key("After end: a frame or a distance forward of the after perpendicular.", "Fr 8", "Fr 31 + 200 mm", "4.2 m"),
    ]
    to: Annotated[Position, Key("Forward end: a frame or a distance forward of the after perpendicular.", "Fr 74")]
    here: Place

    def __str__(self) -> str:
        """Give the stretch as written."""
        return f"{self.from_} to {self.to}"


class AreaEntry(Noun, frozen=True, kw_only=True):
    """An area added to or taken from a zone."""

    what: Annotated[str, Key("What the area is.", "rudder, both sides")]
    area: Annotated[Area, Key("How large it is.", "6.4 m2")]
    basis: Annotated[str, Key("How it is known.", "drawing D-04")] = ""
    here: Place


class Water(Noun, frozen=True, kw_only=True):
    """Water at a place: density as measured, or salinity and temperature to find it from."""

    density: Annotated[
        Density | None,
        Key("Density as measured with a hydrometer.", "1.020 t/m3"),
        Within(least="950 kg/m3", most="1100 kg/m3"),
        Measured("0.5 kg/m3", "a hydrometer; common practice, no source"),
    ] = None
    salinity: Annotated[
        Salinity | None, Key("Salinity, from which the density follows where it was not measured.", "28 g/kg")
    ] = None
    temperature: Annotated[
        Temperature | None, Key("Temperature of the water, which goes with the salinity.", "9 degC")
    ] = None
    here: Place
