"""Coating zones and the schemes that coat them."""

from __future__ import annotations

from dataclasses import dataclass, field

from tenderwright.model.build import Prose
from tenderwright.model.common import AreaEntry
from tenderwright.model.kinds import (
    Area,
    AreaDensity,
    Density,
    Fraction,
    ItemRef,
    Length,
    LengthOrWord,
    TankRef,
    Time,
    Volume,
    ZoneRef,
)
from tenderwright.notices import Place


@dataclass(frozen=True)
class Stiffening:
    """Stiffeners on the boundaries of an internal zone."""

    member: str
    web: Length
    spacing: Length
    here: Place = field(compare=False)
    flange: Length | None = None
    share: Fraction | None = None


@dataclass(frozen=True)
class Zone:
    """A coating zone."""

    zone: str
    name: str
    surface: str
    here: Place = field(compare=False)
    lower: LengthOrWord | None = None
    upper: LengthOrWord | None = None
    tank: TankRef | None = None
    stiffening: tuple[Stiffening, ...] = ()
    area: Area | None = None
    basis: str = ""
    add: tuple[AreaEntry, ...] = ()
    less: tuple[AreaEntry, ...] = ()
    notes: Prose | None = None


@dataclass(frozen=True)
class SchemeExtent:
    """How much of a zone a scheme covers."""

    here: Place = field(compare=False)
    share: Fraction | None = None
    rust_grade: int | None = None
    area: Area | None = None
    basis: str = ""


@dataclass(frozen=True)
class Preparation:
    """Surface preparation and its acceptance."""

    grade: str
    here: Place = field(compare=False)
    profile_low: Length | None = None
    profile_high: Length | None = None
    salts: AreaDensity | None = None
    dust: int | None = None
    hold: str = ""


@dataclass(frozen=True)
class Abrasive:
    """Abrasive consumption and what comes off with it."""

    rate: AreaDensity
    source: str
    here: Place = field(compare=False)
    old_paint: Length | None = None
    old_paint_density: Density | None = None
    rust: AreaDensity | None = None


@dataclass(frozen=True)
class ProfileFill:
    """Paint that fills the blast profile."""

    rz: Length
    k: float
    here: Place = field(compare=False)
    source: str = ""


@dataclass(frozen=True)
class Stripe:
    """Stripe coats."""

    length: Length
    width: Length
    here: Place = field(compare=False)
    coats: int = 1


@dataclass(frozen=True)
class Coat:
    """One coat of a scheme."""

    coat: int
    product: str
    volume_solids: Fraction
    dft: Length
    loss: Fraction
    here: Place = field(compare=False)
    colour: str = ""
    loss_source: str = ""
    thinning: Fraction | None = None
    set_size: Volume | None = None
    stripe: Stripe | None = None
    overcoat_least: Time | None = None
    overcoat_most: Time | None = None


@dataclass(frozen=True)
class Scheme:
    """A coating scheme for one zone."""

    scheme: str
    zone: ZoneRef
    preparation: Preparation
    coats: tuple[Coat, ...]
    here: Place = field(compare=False)
    name: str = ""
    item: ItemRef | None = None
    extent: SchemeExtent | None = None
    abrasive: Abrasive | None = None
    profile_fill: ProfileFill | None = None
