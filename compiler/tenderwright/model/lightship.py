"""The lightship, the weights aboard, and the condition wanted for docking."""

from typing import Annotated

from tenderwright.model.common import Water
from tenderwright.model.kinds import (
    Angle,
    Date,
    Length,
    Mass,
    SignedLength,
    SignedMass,
)
from tenderwright.model.marks import Key, Measured
from tenderwright.model.noun import Noun
from tenderwright.notices import Place
from tenderwright.quantities.position import Position

_OLD_LINES = "drafts read on old lines; common practice, no source"
_HEIGHT = "not inclined of late; common practice, no source"
_UPRIGHT = "a list read to 0.2 degrees at a metacentric height of 0.6 m; derived"
U_MASS_ABOARD = Measured("5 %", "tallied or judged by eye; common practice, no source")
U_HEIGHT_ABOARD = Measured("0.1 m", "measured from the deck; common practice, no source")
U_OFF_CENTRE_ABOARD = Measured("50 mm", "measured from the centreline; common practice, no source")


class LightshipWeight(Noun, frozen=True, kw_only=True):
    """The lightship."""

    mass: Annotated[Mass, Key("Mass of the lightship.", "560 t", "560 t ± 6 t"), Measured("1 %", _OLD_LINES)]
    at: Annotated[
        SignedLength,
        Key("Longitudinal centre forward of the after perpendicular.", "23.4 m"),
        Measured("0.1 m", _OLD_LINES),
    ]
    height: Annotated[
        Length, Key("Vertical centre above the keel line.", "3.6 m", "3.6 m ± 0.1 m"), Measured("0.15 m", _HEIGHT)
    ]
    off_centre: Annotated[
        SignedLength | None, Key("Transverse centre, port positive.", "0 m"), Measured("2 mm", _UPRIGHT)
    ] = None
    source: Annotated[str, Key("Where it comes from, with date.", "inclining experiment of 2009, report R-06")]
    here: Place


class Weight(Noun, frozen=True, kw_only=True):
    """A weight aboard."""

    what: Annotated[str, Key("What the weight is.", "ballast, cast iron, in hold")]
    mass: Annotated[SignedMass, Key("Mass; negative for what is removed.", "38 t", "38 t ± 2 %"), U_MASS_ABOARD]
    at: Annotated[Position, Key("Longitudinal centre of the weight.", "Fr 40")]
    height: Annotated[Length, Key("Vertical centre above the keel line.", "1.1 m"), U_HEIGHT_ABOARD]
    off_centre: Annotated[SignedLength | None, Key("Transverse centre, port positive.", "0 m"), U_OFF_CENTRE_ABOARD] = (
        None
    )
    basis: Annotated[str, Key("How it is known.", "tallied aboard, 2026-09-14")] = ""
    here: Place


class ObservedDrafts(Noun, frozen=True, kw_only=True):
    """Drafts last read."""

    aft: Annotated[Length, Key("At the after perpendicular, above the keel line.", "3.4 m")]
    forward: Annotated[Length, Key("At the forward perpendicular.", "3.0 m")]
    read: Annotated[Date, Key("Day on which the drafts were read.", "2026-10-14")]
    here: Place


class DockingCondition(Noun, frozen=True, kw_only=True):
    """The condition wanted for docking."""

    trim: Annotated[SignedLength, Key("Trim wanted, positive by the stern.", "0.3 m")]
    trim_tolerance: Annotated[
        Length | None, Key("How far the trim may be from the one wanted, either way; 0.1 m where left out.", "0.1 m")
    ] = None
    least_gm: Annotated[Length | None, Key("Least fluid GM afloat.", "0.3 m")] = None
    most_list: Annotated[Angle | None, Key("Greatest list with which she may land.", "0.5 deg")] = None
    here: Place


class Lightship(Noun, frozen=True, kw_only=True):
    """Lightship weight and centre, weights aboard, and the condition wanted for docking."""

    lightship: Annotated[
        LightshipWeight, Key("The lightship: her mass and centre without what the list of weights and the tanks hold.")
    ]
    weights: Annotated[tuple[Weight, ...], Key("Weights aboard on arrival, tanks excepted.")]
    water: Annotated[Water | None, Key("Water at the dock.")] = None
    observed: Annotated[ObservedDrafts | None, Key("Drafts last read, for comparison.")] = None
    docking: Annotated[DockingCondition | None, Key("Condition wanted for docking.")] = None
    here: Place
