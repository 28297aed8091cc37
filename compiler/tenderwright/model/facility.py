"""A dock that could take her."""

from typing import Annotated

from tenderwright.model.common import Water
from tenderwright.model.kinds import Date, DockType, Force, Identifier, Length, LineLoad, Mass
from tenderwright.model.marks import Form, Key, Within
from tenderwright.model.noun import Noun
from tenderwright.notices import Place


class FacilityLimits(Noun, frozen=True, kw_only=True):
    """Limits of a facility."""

    length: Annotated[Length | None, Key("Clear length at the floor of the dock or of the cradle.", "92 m")] = None
    beam: Annotated[Length | None, Key("Clear breadth at the narrowest place she passes.", "18 m")] = None
    sill: Annotated[
        Length | None, Key("Water over the sill at the tide used; a floating dock and a shiplift have none.", "5.4 m")
    ] = None
    blocks: Annotated[Length | None, Key("Water over the blocks at the tide used.", "4.6 m")] = None
    block_height: Annotated[Length | None, Key("Height of the keel blocks.", "1.4 m")] = None
    lift: Annotated[Mass | None, Key("Total lift or capacity.", "1800 t")] = None
    line_load: Annotated[LineLoad | None, Key("The most that a metre of the keel may bear on it.", "30 t/m")] = None
    tide: Annotated[str, Key("Tide at which depths hold.", "mean high water neaps")] = ""
    air_draft: Annotated[Length | None, Key("Clearance under a bridge or line on the way.", "24 m")] = None


class Cars(Noun, frozen=True, kw_only=True):
    """Rail cars that carry the ship."""

    number: Annotated[int, Key("How many cars there are.", 8), Within(least=1, most=200)]
    length: Annotated[Length, Key("Length of a car.", "6.0 m")]
    gap: Annotated[Length, Key("Gap between coupled cars.", "0.5 m")]
    capacity: Annotated[Mass, Key("The most that a car may carry.", "160 t")]
    line_limit: Annotated[LineLoad | None, Key("The most that a metre of the keel may bear on it.", "32 t/m")] = None
    axles: Annotated[int | None, Key("Axles of a car.", 4), Within(least=1, most=50)] = None
    axle_limit: Annotated[Mass | None, Key("The most that an axle may carry, the car's own mass included.", "45 t")] = (
        None
    )
    most_coupled: Annotated[int | None, Key("The most cars that can be coupled.", 8), Within(least=1, most=200)] = None
    own_mass: Annotated[Mass | None, Key("Mass of a car with its blocks.", "14 t")] = None
    block_height: Annotated[Length | None, Key("Top of the keel blocks above the rail.", "1.6 m")] = None
    here: Place


class Hoists(Noun, frozen=True, kw_only=True):
    """Hoists of a shiplift."""

    pairs: Annotated[int, Key("How many pairs of hoists there are.", 12), Within(least=1, most=200)]
    spacing: Annotated[Length, Key("Distance from one pair to the next.", "7.0 m")]
    pair_capacity: Annotated[Mass, Key("Capacity of a pair.", "280 t")]
    bay_mass: Annotated[Mass | None, Key("Mass of the platform bay of a pair.", "46 t")] = None


class Slope(Noun, frozen=True, kw_only=True):
    """Slope of a slipway."""

    gradient: Annotated[
        str, Key("How steep the track is: one in so much.", "1:16"), Form("^1:[0-9]+(\\.[0-9]+)?$", "Gradient")
    ]
    haul: Annotated[Force | None, Key("Pull of the hauling winch.", "900 kN")] = None
    track: Annotated[Length | None, Key("Length of the track.", "118 m"), Within(most="2000 m")] = None


class Certificate(Noun, frozen=True, kw_only=True):
    """Certificate of a dock."""

    by: Annotated[str, Key("Kind of body that certified it.", "classification society")]
    number: Annotated[str, Key("Number on the certificate.", "118/26")] = ""
    valid_until: Annotated[Date | None, Key("Last day on which the certificate is valid.", "2029-03-31")]
    here: Place


class Facility(Noun, frozen=True, kw_only=True):
    """One dock that could take her, by the figures that it publishes."""

    facility: Annotated[Identifier, Key("Identifier, by which bids name the facility.", "north-shiplift")]
    name: Annotated[str, Key("Name of the facility, as the tender prints it.", "North shiplift")]
    place: Annotated[str, Key("Town or harbour where it lies.", "Corve")] = ""
    kind: Annotated[DockType, Key("What kind of facility it is.", "shiplift")]
    limits: Annotated[FacilityLimits, Key("Limits of the facility.")]
    cars: Annotated[Cars | None, Key("Rail cars that carry the ship.")] = None
    hoists: Annotated[Hoists | None, Key("Hoists of a shiplift.")] = None
    slope: Annotated[Slope | None, Key("Slope of a slipway.")] = None
    certificate: Annotated[Certificate | None, Key("Certificate of the dock.")] = None
    water: Annotated[Water | None, Key("Water at the facility.")] = None
    tow: Annotated[Length | None, Key("Distance from the ship's berth.", "64 nmi"), Within(most="40000 km")] = None
    here: Place
