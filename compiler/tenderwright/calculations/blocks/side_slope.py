"""Whether a side block stays where it is set: the slope of the shell over it against friction."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import atan, hypot, tan
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity, record, text
from tenderwright.calculations.verdict import Limit


class Slopes(Struct, frozen=True):
    """The slope of the shell over each side block, rad, and the steepest against the angle of friction."""

    slopes: tuple[float, ...]
    limit: Limit

    @property
    def steepest(self) -> int:
        """Give the index of the steepest."""
        return max(range(len(self.slopes)), key=self.slopes.__getitem__)


def steepest_slope(bevel: float, bevel_forward: float) -> float:
    """Give the slope of a plane from its rise across and along the ship, tan^2 = tan^2 + tan^2, rad.

    Source: geometry (derived).
    """
    return atan(hypot(tan(bevel), tan(bevel_forward)))


def side_slopes(
    blocks: Sequence[Mapping[str, float]], friction: float | None = None, friction_source: str = ""
) -> Slopes:
    """Hold the slope over each block against friction: a block under a steeper shell is pressed out from under it.

    Formula: tan(slope) <= mu, so slope <= atan(mu): along the slope N sin - mu N cos <= 0.
    Symbols: bevel across and along [rad]; mu between shell and cap, or cap and block, the lesser [-].
    Source: statics of a body on an inclined plane (derived). Raises OutOfRange.
    """
    if not blocks:
        raise OutOfRange("there are no side blocks")
    if (friction is None) != (not friction_source.strip()):
        raise OutOfRange("a coefficient of friction needs its source, and a source its coefficient")
    if friction is not None and friction < 0:
        raise OutOfRange("the coefficient of friction must not be less than nothing")
    slopes = tuple(steepest_slope(b["bevel"], b.get("bevel_forward", 0.0)) for b in blocks)
    return Slopes(slopes, slope_limit(max(slopes), friction, friction_source))


def slope_limit(slope: float | None, friction: float | None, source: str) -> Limit:
    """Hold a slope [rad], None where the shell is not known, against the angle of friction."""
    angle = None if friction is None else atan(friction)
    return Limit("slope of the shell over a side block, against friction", "angle", slope, angle, source=source)


def outputs_of(found: Slopes) -> Mapping[str, Any]:
    """Give the slopes as outputs."""
    limit = found.limit
    return {
        "slopes": list(found.slopes),
        "greatest": limit.demand,
        "number": float(found.steepest + 1),
        "friction_angle": limit.limit,
        "margin": limit.margin,
        "met": limit.met,
    }


METHOD = Method(
    name="blocks.side-slope",
    title="Slope of the shell over side blocks against friction",
    formula="tan²β = tan²β across + tan²β along; β ≤ atan μ",
    source=Citation("Statics of a body on an inclined plane", standing="derived"),
    valid="caps cut to the shell and not held by cleats, shores or wedges; the hull's weight pressing straight down",
    inputs={
        "blocks": listed(
            record(
                "A side block, or a pair of them.",
                ("bevel",),
                bevel=quantity("angle", "Rise of the shell outboard."),
                bevel_forward=quantity("angle", "Rise of the shell along the ship, of either sign."),
            ),
            "The side blocks.",
        ),
        "friction": number("Coefficient of friction of shell, cap and block, the least.", minimum=0),
        "friction_source": text("Where it comes from; needed with it."),
    },
    outputs=(
        Symbol("slopes", "slope over each", "angle", "deg"),
        Symbol("greatest", "greatest slope", "angle", "deg"),
        Symbol("number", "number of the block with it", "each", "each"),
        Symbol("friction_angle", "slope at which friction no longer holds", "angle", "deg"),
        Symbol("margin", "what is left to that", "angle", "deg"),
        Symbol("met", "whether friction holds; not known without it", "truth", ""),
    ),
    kernel=side_slopes,
    figures=outputs_of,
    example={
        "blocks": [{"bevel": "10 deg", "bevel_forward": "1 deg"}, {"bevel": "15 deg", "bevel_forward": "-3 deg"}],
        "friction": 0.3,
        "friction_source": "steel on timber (from memory)",
    },
    optional=frozenset({"friction", "friction_source"}),
    cautions=("wet, painted or greasy timber holds less; a block that slips leaves the others to carry her",),
)
