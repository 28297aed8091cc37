"""Where a known volume of liquid lies in a tank: weight, centroid and free-surface moment."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, quantity
from tenderwright.calculations.tanks.liquid import Liquid
from tenderwright.calculations.tanks.polyhedron import Polyhedron
from tenderwright.calculations.tanks.tank_input import SHAPE, tank_from_input

NO_PLACE = "it holds liquid but has neither bounds nor a `plan`, so the liquid cannot be placed in the ship"
NOTHING = Liquid(0.0, 0.0, (0.0, 0.0, 0.0), 0.0, 0.0, 0.0)


class TankContents(Struct, frozen=True):
    """The liquid in a tank and its density [kg/m3]."""

    liquid: Liquid
    density: float
    least: float | None = None
    """The least volume [m3] that reads so, where the liquid plane misses the pipe; None where it does not."""
    greatest: float | None = None
    """The greatest [m3]."""

    @property
    def mass(self) -> float:
        """Mass of the liquid [kg]."""
        return self.liquid.volume * self.density


CONTENTS = (
    Symbol("volume", "volume of liquid", "volume", "m3"),
    Symbol("mass", "mass of liquid", "mass", "t"),
    Symbol("x", "centroid forward of AP", "length", "m"),
    Symbol("y", "centroid to port", "length", "m"),
    Symbol("z", "centroid above the baseline", "length", "m"),
    Symbol("free_surface_moment", "transverse free-surface moment", "moment", "t*m"),
    Symbol("longitudinal_free_surface_moment", "longitudinal free-surface moment", "moment", "t*m"),
)


def outputs_of(found: TankContents) -> dict[str, float]:
    """Give the contents of a tank as outputs; an empty tank has no centroid."""
    liquid, density = found.liquid, found.density
    outputs = {"volume": liquid.volume, "mass": found.mass}
    if not liquid.volume:
        return outputs
    moments = (liquid.surface_transverse * density, liquid.surface_longitudinal * density)
    names = ("x", "y", "z", "free_surface_moment", "longitudinal_free_surface_moment")
    return outputs | dict(zip(names, (*liquid.centroid, *moments), strict=True))


def tank_contents(
    density: float,
    volume: float | None = None,
    tank: Mapping[str, Any] | Polyhedron | None = None,
    trim: float = 0.0,
    length_between_perpendiculars: float | None = None,
    permeability: float = 1.0,
    mass: float | None = None,
    full: float | None = None,
) -> TankContents:
    """Find how a volume of liquid lies in a tank at a trim; see `Tank.contents`.

    Symbols: volume [m3], or mass [kg], or share of the capacity [-]; density [kg/m3]; trim, draft aft less draft
    forward, and length [m]; permeability [-].
    Raises OutOfRange where there is liquid and no shape to place it in, and for a trim without a length.
    """
    if sum(one is not None for one in (volume, mass, full)) != 1:
        raise OutOfRange("give one of a volume, a mass, and how full the tank is")
    if trim and not length_between_perpendiculars:
        raise OutOfRange("a trim needs the length between perpendiculars")
    if tank is None:
        if volume or mass or full:
            raise OutOfRange(NO_PLACE)
        return TankContents(NOTHING, density)
    slope = trim / length_between_perpendiculars if length_between_perpendiculars else 0.0
    built = tank_from_input(tank, permeability=permeability)
    if volume is None:
        volume = mass / density if mass is not None else (full or 0.0) * built.capacity
    return TankContents(built.contents(volume, slope), density)


METHOD = Method(
    name="tank.contents",
    title="Where a known volume of liquid lies in a tank",
    formula="volume below z = z0 - x tan(trim), cut from the tank's polyhedron; W = rho V; FSM = rho i",
    source=Citation("statics of a liquid at rest; divergence theorem on a polyhedron", "", "derived"),
    valid="volume up to the capacity; a tank with liquid in it has a shape",
    inputs={
        "volume": quantity("volume", "Volume of liquid."),
        "mass": quantity("mass", "Mass of liquid, in place of a volume."),
        "full": quantity("fraction", "Share of the capacity, in place of a volume."),
        "density": quantity("density", "Density of the liquid."),
        "tank": SHAPE,
        "trim": length("Draft aft less draft forward."),
        "length_between_perpendiculars": length("Length that the trim refers to."),
        "permeability": quantity("fraction", "Part of the moulded volume that liquid can fill."),
    },
    outputs=CONTENTS,
    kernel=tank_contents,
    figures=outputs_of,
    example={
        "volume": "40 m3",
        "density": "1025 kg/m3",
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
    },
    optional=frozenset({"volume", "mass", "full", "tank", "trim", "length_between_perpendiculars", "permeability"}),
    cautions=("Frames and fittings inside the tank are in the permeability, not in the free surface.",),
)
