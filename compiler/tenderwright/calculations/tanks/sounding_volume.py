"""Volume, weight, centroid and free-surface moment of the liquid in one tank from a sounding."""

from __future__ import annotations

from collections.abc import Mapping
from math import tan
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, quantity
from tenderwright.calculations.tanks.contents import CONTENTS, TankContents, outputs_of
from tenderwright.calculations.tanks.polyhedron import Polyhedron
from tenderwright.calculations.tanks.sounding import at_sounding, at_ullage
from tenderwright.calculations.tanks.tank_input import POINT, SHAPE, tank_from_input

NOTHING_READ = 1e-6
"""A sounding below this is nothing on the rod, m."""


def sounding_volume(
    tank: Mapping[str, Any] | Polyhedron,
    pipe_foot: Mapping[str, float],
    density: float,
    sounding: float | None = None,
    ullage: float | None = None,
    pipe_head: Mapping[str, float] | None = None,
    trim: float = 0.0,
    length_between_perpendiculars: float | None = None,
    heel: float = 0.0,
    permeability: float = 1.0,
) -> TankContents:
    """Compute the liquid in a tank from a sounding or an ullage; see `at_sounding`.

    Nothing on the rod leaves open all that may lie below the foot of the pipe, a pipe full to its head all above that:
    then there is a least and a greatest volume. The contents are those with the liquid at the foot, or at the head.
    Symbols: lengths [m]; density [kg/m3]; heel [rad], starboard down positive; permeability [-].
    Raises OutOfRange where neither or both readings are given, or trim without a length.
    """
    if (sounding is None) == (ullage is None):
        raise OutOfRange("give either a sounding or an ullage")
    if trim and not length_between_perpendiculars:
        raise OutOfRange("a trim needs the length between perpendiculars")
    slope = trim / length_between_perpendiculars if length_between_perpendiculars else 0.0
    built = tank_from_input(tank, pipe_foot, pipe_head, permeability)
    if sounding is not None:
        found = at_sounding(built, sounding, slope, tan(heel))
    else:
        assert ullage is not None
        found = at_ullage(built, ullage, slope, tan(heel))
    assert built.pipe is not None
    read = sounding if sounding is not None else built.pipe.length - (ullage or 0.0)
    if read <= NOTHING_READ:
        return TankContents(found, density, 0.0, found.volume)
    if read >= built.pipe.length - NOTHING_READ and found.volume < built.capacity:
        return TankContents(found, density, found.volume, built.capacity)
    return TankContents(found, density)


def figures_of(found: TankContents) -> dict[str, float]:
    """Give the contents as outputs, with the least and the greatest volume where the reading leaves them open."""
    figures = outputs_of(found)
    if found.least is None or found.greatest is None:
        return figures
    return figures | {"least": found.least, "greatest": found.greatest}


METHOD = Method(
    name="tank.sounding-volume",
    title="Liquid in a tank from a sounding",
    formula="volume below z = zs - (x - xs) tan(trim) - (y - ys) tan(heel), cut from the tank's polyhedron; "
    "FSM = rho i",
    source=Citation("statics of a liquid at rest; divergence theorem on a polyhedron", "", "derived"),
    valid="straight sounding pipe; where the liquid plane misses it there is a least and a greatest",
    inputs={
        "tank": SHAPE,
        "pipe_foot": {**POINT, "description": "Foot of the sounding pipe (striking plate)."},
        "pipe_head": {**POINT, "description": "Head of the pipe; upright to the tank's top where left out."},
        "density": quantity("density", "Density of the liquid."),
        "sounding": length("Depth read along the pipe from its foot."),
        "ullage": length("Distance read down the pipe from its head."),
        "trim": length("Draft aft less draft forward."),
        "length_between_perpendiculars": length("Length that the trim refers to."),
        "heel": quantity("angle", "Heel, positive starboard down."),
        "permeability": quantity("fraction", "Part of the moulded volume that liquid can fill."),
    },
    outputs=(
        *CONTENTS,
        Symbol("least", "least volume that reads so, where the liquid plane misses the pipe", "volume", "m3"),
        Symbol("greatest", "greatest volume that reads so", "volume", "m3"),
    ),
    kernel=sounding_volume,
    figures=figures_of,
    example={
        "tank": {
            "box": {
                "x_aft": "10 m",
                "x_forward": "22 m",
                "y_starboard": "-4 m",
                "y_port": "4 m",
                "bottom": "0 m",
                "top": "2 m",
            }
        },
        "pipe_foot": {"x": "10.5 m", "y": "0 m", "z": "0 m"},
        "density": "1000 kg/m3",
        "sounding": "1 m",
        "trim": "1.2 m",
        "length_between_perpendiculars": "60 m",
    },
    optional=frozenset(
        {"sounding", "ullage", "pipe_head", "trim", "length_between_perpendiculars", "heel", "permeability"}
    ),
    cautions=("Frames and fittings inside the tank are in the permeability, not in the free surface.",),
)
