"""A dock that could take her."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from tenderwright.model.build import Prose
from tenderwright.model.common import Water
from tenderwright.model.kinds import Force, Length, LineLoad, Mass
from tenderwright.notices import Place


@dataclass(frozen=True)
class FacilityLimits:
    """Limits of a facility."""

    length: Length | None = None
    beam: Length | None = None
    sill: Length | None = None
    blocks: Length | None = None
    block_height: Length | None = None
    lift: Mass | None = None
    line_load: LineLoad | None = None
    tide: str = ""
    air_draft: Length | None = None


@dataclass(frozen=True)
class Cars:
    """Rail cars that carry the ship."""

    number: int
    length: Length
    gap: Length
    capacity: Mass
    here: Place = field(compare=False)
    line_limit: LineLoad | None = None
    axles: int | None = None
    axle_limit: Mass | None = None
    most_coupled: int | None = None
    own_mass: Mass | None = None
    block_height: Length | None = None


@dataclass(frozen=True)
class Hoists:
    """Hoists of a shiplift."""

    pairs: int
    spacing: Length
    pair_capacity: Mass
    bay_mass: Mass | None = None


@dataclass(frozen=True)
class Slope:
    """Slope of a slipway."""

    gradient: str
    haul: Force | None = None
    track: Length | None = None


@dataclass(frozen=True)
class Certificate:
    """Certificate of a dock."""

    by: str
    here: Place = field(compare=False)
    number: str = ""
    valid_until: date | None = None


@dataclass(frozen=True)
class Facility:
    """One facility."""

    facility: str
    name: str
    kind: str
    limits: FacilityLimits
    here: Place = field(compare=False)
    place: str = ""
    cars: Cars | None = None
    hoists: Hoists | None = None
    slope: Slope | None = None
    certificate: Certificate | None = None
    water: Water | None = None
    tow: Length | None = None
    notes: Prose | None = None
