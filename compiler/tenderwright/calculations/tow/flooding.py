"""Water that comes in by a hole, and the time in which it fills a space against the pumps."""

from __future__ import annotations

from collections.abc import Mapping
from math import pi, sqrt

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import GRAVITY, length, number, quantity

DISCHARGE = 0.6
"""Coefficient of a sharp-edged hole (common practice, no source)."""


def inflow(bore: float, head: float, coefficient: float = DISCHARGE) -> float:
    """Give Q = C A sqrt(2 g h), m3/s; bore of a round hole, head of water over it [m]. Source: Torricelli (derived)."""
    if bore < 0 or head < 0 or coefficient <= 0:
        raise OutOfRange("bore and head must not be less than nothing, and the coefficient more")
    return coefficient * pi / 4 * bore**2 * sqrt(2 * GRAVITY * head)


def flooding(
    bore: float,
    head: float,
    volume: float,
    permeability: float = 0.95,
    pump: float = 0.0,
    coefficient: float = DISCHARGE,
) -> Mapping[str, float | None]:
    """Give what comes in by a hole, and the time in which it fills a space.

    Formula: Q = C A sqrt(2 g h); t = mu V/(Q - pump), without end where the pumps keep up.
    Symbols: round hole of a bore [m] with a head h [m] held until the space is full, so that the time is the shortest;
        V volume [m3], mu permeability [-]; pump [m3/s].
    Source: derived; C = 0.6 is common practice, no source. With C = 1 it is the damage-control form (from memory).
    Range: permeability over 0 to 1. Raises OutOfRange.
    """
    if volume <= 0 or not 0 < permeability <= 1 or pump < 0:
        raise OutOfRange(
            "the volume must be more than nothing, the permeability over 0 to 1, and no pump less than nothing"
        )
    found = inflow(bore, head, coefficient)
    gains = found - pump
    return {"inflow": found, "gains": max(gains, 0.0), "time": permeability * volume / gains if gains > 0 else None}


METHOD = Method(
    name="tow.flooding",
    title="Water by a hole, and time to fill a space",
    formula="Q = C A √(2 g h); t = μ V/(Q − pump)",
    source=Citation("Outflow of a hole under a constant head", standing="derived"),
    valid="a round hole under water whose head does not fall while the space fills: the time is the shortest",
    inputs={
        "bore": length("Bore of the hole."),
        "head": length("Depth of its centre under the waterline."),
        "volume": quantity("volume", "Space that fills."),
        "permeability": number("Share of it that water can take.", exclusiveMinimum=0, maximum=1),
        "pump": quantity("flow", "What the pumps take out."),
        "coefficient": number("Coefficient of discharge.", exclusiveMinimum=0),
    },
    outputs=(
        Symbol("inflow", "water that comes in", "flow", "m3/h"),
        Symbol("gains", "water that comes in over what the pumps take", "flow", "m3/h"),
        Symbol("time", "time in which the space is full; none where the pumps keep up", "time", "h"),
    ),
    kernel=flooding,
    example={"bore": "100 mm", "head": "3 m", "volume": "60 m3", "pump": "40 m3/h"},
    optional=frozenset({"permeability", "pump", "coefficient"}),
)
