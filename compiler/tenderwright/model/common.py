"""Nouns that several files share."""

from __future__ import annotations

from dataclasses import dataclass, field

from tenderwright.model.kinds import Area, Density, Salinity, Temperature
from tenderwright.notices import Place
from tenderwright.quantities.position import Position


@dataclass(frozen=True)
class Extent:
    """A stretch along the ship."""

    from_: Position
    to: Position
    here: Place = field(compare=False)

    def __str__(self) -> str:
        """Give the stretch as written."""
        return f"{self.from_} to {self.to}"


@dataclass(frozen=True)
class AreaEntry:
    """An area added to or taken from a zone."""

    what: str
    area: Area
    here: Place = field(compare=False)
    basis: str = ""


@dataclass(frozen=True)
class Water:
    """Water at a place: density as measured, or salinity and temperature to find it from."""

    here: Place = field(compare=False)
    density: Density | None = None
    salinity: Salinity | None = None
    temperature: Temperature | None = None
