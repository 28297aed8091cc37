"""Linear correction of a sounding for trim and heel, in a tank of constant section."""

from __future__ import annotations

from math import cos, tan

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show


def trim_correction(
    sounding: float,
    tank_length: float,
    tank_breadth: float,
    tank_height: float,
    pipe_forward_of_centre: float,
    trim: float,
    length: float,
    pipe_to_port_of_centre: float = 0.0,
    heel: float = 0.0,
    slant: float = 0.0,
) -> dict[str, float]:
    """Correct a sounding for trim and heel.

    Formula: s_c = s*cos(psi) + x_d*tan(th) + y_d*tan(phi), tan(th) = t/L; V = l*b*s_c.
    Symbols: sounding s on the tape [m]; slant psi of the pipe from the vertical [rad]; x_d, y_d of the point
    of the pipe at the liquid, forward and to port of the tank's centre [m]; trim t, by the stern positive,
    over length L [m]; heel phi [rad], starboard down positive; tank l, b, height [m].
    Source: statics of a liquid at rest (derived).
    Range: a rectangular tank whose bottom is all covered and whose top is all dry:
    (l*|tan th| + b*|tan phi|)/2 <= s_c <= height less the same. Raises OutOfRange.
    """
    if min(tank_length, tank_breadth, tank_height, length) <= 0 or sounding < 0:
        raise OutOfRange("tank and ship dimensions must be positive, and the sounding not negative")
    along, across = trim / length, tan(heel)
    corrected = sounding * cos(slant) + pipe_forward_of_centre * along + pipe_to_port_of_centre * across
    margin = (tank_length * abs(along) + tank_breadth * abs(across)) / 2
    if not margin <= corrected <= tank_height - margin:
        raise OutOfRange(
            f"the corrected sounding, {show(corrected, 'centre', more=1)}, lies outside "
            f"{show(margin, 'centre', more=1)} to "
            f"{show(tank_height - margin, 'centre', more=1)}, so the liquid does not cover the whole "
            "bottom or touches the top"
        )
    return {
        "correction": corrected - sounding,
        "corrected_sounding": corrected,
        "volume": tank_length * tank_breadth * corrected,
    }


METHOD = Method(
    name="tank.trim-correction",
    title="Sounding corrected for trim and heel",
    formula="sc = s cos(slant) + xd t/L + yd tan(heel); V = l b sc",
    source=Citation("statics of a liquid at rest", "", "derived"),
    valid="rectangular tank, bottom wholly covered and top wholly dry",
    inputs={
        "sounding": _length("Sounding on the tape."),
        "tank_length": _length("Length of the tank."),
        "tank_breadth": _length("Breadth of the tank."),
        "tank_height": _length("Height of the tank."),
        "pipe_forward_of_centre": _length("Pipe forward of the tank's centre, at the liquid; negative aft."),
        "trim": _length("Draft aft less draft forward."),
        "length": _length("Length that the trim refers to."),
        "pipe_to_port_of_centre": _length("Pipe to port of the tank's centre; negative to starboard."),
        "heel": quantity("angle", "Heel, positive starboard down."),
        "slant": quantity("angle", "Lean of the pipe from the vertical."),
    },
    outputs=(
        Symbol("correction", "correction to the sounding", "length", "m"),
        Symbol("corrected_sounding", "mean depth of liquid", "length", "m"),
        Symbol("volume", "volume of liquid", "volume", "m3"),
    ),
    kernel=trim_correction,
    example={
        "sounding": "1 m",
        "tank_length": "12 m",
        "tank_breadth": "8 m",
        "tank_height": "2 m",
        "pipe_forward_of_centre": "-5.5 m",
        "trim": "1.2 m",
        "length": "60 m",
    },
    optional=frozenset({"pipe_to_port_of_centre", "heel", "slant"}),
)
