"""Volume of a wedge of liquid lying against the after bulkhead."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.quantities.display import show


def wedge_volume(
    sounding: float,
    tank_length: float,
    tank_breadth: float,
    tank_height: float,
    pipe_to_after_bulkhead: float,
    trim: float,
    length: float,
) -> dict[str, float]:
    """Compute the volume of a wedge of liquid against the after bulkhead.

    Formula: s_a = s + d*tan(th); wet length w = s_a/tan(th); V = b*s_a^2/(2 tan(th)); tan(th) = t/L.
    Symbols: sounding s [m]; pipe forward of the after bulkhead d [m]; trim t by the stern over length L [m];
    tank length, breadth b, height [m].
    Source: geometry of a wedge (derived).
    Range: trim by the stern, wet length not over the tank's length, depth at the bulkhead not over its
    height.
    Raises OutOfRange.
    """
    if min(tank_length, tank_breadth, tank_height, length) <= 0 or sounding < 0:
        raise OutOfRange("tank and ship dimensions must be positive, and the sounding not negative")
    if not 0 <= pipe_to_after_bulkhead <= tank_length:
        raise OutOfRange(
            f"the pipe, {show(pipe_to_after_bulkhead, 'centre', more=1)} from the after bulkhead, is not in the tank"
        )
    slope = trim / length
    if slope <= 0:
        raise OutOfRange("a wedge against the after bulkhead needs trim by the stern")
    depth = sounding + pipe_to_after_bulkhead * slope
    wet_length = depth / slope
    if wet_length > tank_length:
        raise OutOfRange(
            f"the liquid is {show(wet_length, 'centre', more=1)} long and reaches the fore bulkhead: it is no wedge"
        )
    if depth > tank_height:
        raise OutOfRange(
            f"the liquid is {show(depth, 'centre', more=1)} deep at the after bulkhead and touches the top"
        )
    return {
        "depth_at_bulkhead": depth,
        "wet_length": wet_length,
        "volume": tank_breadth * depth * wet_length / 2,
    }


METHOD = Method(
    name="tank.wedge",
    title="Wedge of liquid against the after bulkhead",
    formula="sa = s + d t/L; w = sa L/t; V = b sa w/2",
    source=Citation("Geometry of a wedge", standing="derived"),
    valid="rectangular tank, trim by the stern, liquid short of the fore bulkhead",
    inputs={
        "sounding": _length("Sounding in the pipe."),
        "tank_length": _length("Length of the tank."),
        "tank_breadth": _length("Breadth of the tank."),
        "tank_height": _length("Height of the tank."),
        "pipe_to_after_bulkhead": _length("Pipe forward of the after bulkhead."),
        "trim": _length("Draft aft less draft forward."),
        "length": _length("Length that the trim refers to."),
    },
    outputs=(
        Symbol("depth_at_bulkhead", "depth of liquid at the after bulkhead", "length", "m"),
        Symbol("wet_length", "length of bottom covered", "length", "m"),
        Symbol("volume", "volume of liquid", "volume", "m3"),
    ),
    kernel=wedge_volume,
    example={
        "sounding": "0.1 m",
        "tank_length": "12 m",
        "tank_breadth": "8 m",
        "tank_height": "2 m",
        "pipe_to_after_bulkhead": "0.5 m",
        "trim": "1.2 m",
        "length": "60 m",
    },
)
