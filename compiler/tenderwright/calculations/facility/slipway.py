"""Hauling a ship up a slipway: the force on the haul, and what the slope means for landing on the cradle."""

from __future__ import annotations

from collections.abc import Mapping
from math import atan, cos, sin, tan
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import GRAVITY, number, quantity, text
from tenderwright.calculations.verdict import VERDICT_SYMBOLS, Limit, Verdict, verdict, verdict_outputs

FRICTION = 0.0125
"""Rolling resistance by weight (derived): Crandall, part 4, puts the effort on the level at about 20 % of hauling up a
slope of 5 %, so that mu = 0.2 (0.05 + mu)."""


STEEPEST = atan(0.5)
"""Slope of 1 in 2, rad."""


def haul_force(weight: float, cradle: float, slope: float, friction: float = FRICTION) -> float:
    """Give the force that hauls ship and cradle up the track, F = (W + W_c) g (sin a + mu cos a), N.

    Symbols: W, W_c [kg]; a slope of the track [rad]; mu rolling resistance [-].
    Source: statics (derived); mu 0.0125 derived from Crandall on marine railways, part 4 (effort of transfer).
    Range: ship wholly out of the water. Raises OutOfRange.
    """
    if weight <= 0 or min(cradle, friction) < 0 or not 0 <= slope < STEEPEST:
        raise OutOfRange("weight must be more than nothing, cradle and friction not less, and the slope below 1 in 2")
    return (weight + cradle) * GRAVITY * (sin(slope) + friction * cos(slope))


def slope_of(rise: float, run: float) -> float:
    """Give the angle of a track that rises `rise` in `run`, rad. Raises OutOfRange."""
    if rise < 0 or run <= 0:
        raise OutOfRange("a gradient is a rise of nothing or more in a run of more than nothing")
    return atan(rise / run)


def cradle_declivity(slope: float, wedge: float = 0.0) -> float:
    """Give the declivity of the cradle's blocks, the slope of the track less that of its wedges, rad.

    Symbols: slope and wedge [rad]; a cradle built level has a wedge as steep as the track. Source: derived.
    """
    return atan(tan(slope) - tan(wedge))


def slipway_limits(
    force: float, haul: float | None, travel: float | None = None, track: float | None = None, source: str = ""
) -> tuple[Limit, ...]:
    """Set the haul force [N] beside what the haul can do, and the travel [m] beside the track where it is given."""
    limits = [Limit("haul force", "force", force, haul, source=source)]
    if travel is not None:
        limits.append(Limit("travel on the track", "length", travel, track, source=source))
    return tuple(limits)


class Hauled(Struct, frozen=True):
    """A ship on a slipway: angles in rad, the haul in N, trim in m."""

    slope: float
    force: float
    declivity: float
    resting_trim: float | None
    limits: tuple[Limit, ...]
    verdict: Verdict


def _kernel(
    weight: float,
    rise: float,
    run: float,
    cradle: float = 0.0,
    friction: float = FRICTION,
    haul: float | None = None,
    wedge: float = 0.0,
    length: float | None = None,
    source: str = "",
) -> Hauled:
    slope = slope_of(rise, run)
    if not 0 <= wedge < STEEPEST:
        raise OutOfRange("the slope built into the cradle must be from nothing to 1 in 2")
    force = haul_force(weight, cradle, slope, friction)
    declivity = cradle_declivity(slope, wedge)
    limits = slipway_limits(force, haul, source=source)
    return Hauled(slope, force, declivity, None if length is None else length * tan(declivity), limits, verdict(limits))


def outputs_of(found: Hauled) -> Mapping[str, Any]:
    """Give the haul as outputs."""
    return {
        **verdict_outputs(found.verdict),
        "slope": found.slope,
        "haul_force": found.force,
        "declivity": found.declivity,
        "resting_trim": found.resting_trim,
    }


METHOD = Method(
    name="facility.slipway",
    title="Haul force on a slipway",
    formula="F = (W + W_c) g (sin α + μ cos α); declivity of the blocks = slope of the track less the wedges",
    source=Citation("Statics; Crandall on marine railways, part 4, for μ = 0.0125", "", "derived"),
    valid="ship out of the water; slopes below 1 in 2",
    inputs={
        "weight": quantity("mass", "Weight of the ship."),
        "rise": number("Rise of the track, as in 1 in 17.", minimum=0),
        "run": number("Run of the track for that rise.", exclusiveMinimum=0),
        "cradle": quantity("mass", "Weight of cradle, cars and blocks."),
        "friction": number("Rolling resistance by weight; 0.0125 where left out.", minimum=0),
        "haul": quantity("force", "Greatest force of the haul, as certified."),
        "wedge": quantity("angle", "Slope built into the cradle against that of the track.", "2 deg"),
        "length": quantity("length", "Length over which trim is measured, for the trim that lands her evenly."),
        "source": text("Where the figure of the haul comes from, such as the certificate."),
    },
    outputs=(
        *VERDICT_SYMBOLS,
        Symbol("slope", "slope of the track", "angle", "deg"),
        Symbol("haul_force", "haul force", "force", "kN"),
        Symbol("declivity", "declivity of the blocks", "angle", "deg"),
        Symbol("resting_trim", "trim at which she lands on all the blocks at once", "length", "m"),
    ),
    kernel=_kernel,
    figures=outputs_of,
    example={"weight": "600 t", "rise": 1, "run": 17, "cradle": "60 t", "haul": "980 kN", "length": "48 m"},
    optional=frozenset({"cradle", "friction", "haul", "wedge", "length", "source"}),
    cautions=(
        "starting off takes more than rolling: the certificate of the haul says what it allows for",
        "overloads on record of 25 % in all and 75 % in places (Crandall, Ports '89) are no allowance",
    ),
)
