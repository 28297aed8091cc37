"""Weights and liquids summed to a mass, a centre of gravity and a free-surface moment."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import asdict

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.liquid import Liquid
from tenderwright.calculations.tanks.sounding import Tank, contents
from tenderwright.quantities.display import show


class Weight(Struct, frozen=True):
    """A fixed mass [kg] at a place in ship axes [m], with any free-surface moment [kg m] given for it."""

    name: str
    mass: float
    x: float
    y: float
    z: float
    free_surface_moment: float = 0.0

    def as_input(self) -> dict[str, object]:
        """Give it by names."""
        return asdict(self)


class TankLoad(Struct, frozen=True, eq=False):
    """A tank with the mass [kg] of liquid in it and the liquid's density [kg/m3]."""

    name: str
    tank: Tank
    density: float
    mass: float

    def as_input(self) -> dict[str, object]:
        """Give the tank's shape and what is in it."""
        return {
            "name": self.name,
            "shape": self.tank.body,
            "density": self.density,
            "mass": self.mass,
            "permeability": self.tank.permeability,
        }

    @property
    def volume(self) -> float:
        """Volume of liquid [m3]."""
        return self.mass / self.density


class Loading(Struct, frozen=True):
    """A sum of weights: mass [kg], centre of gravity [m] and free-surface moment [kg m]."""

    mass: float
    lcg: float
    tcg: float
    vcg: float
    free_surface_moment: float


def liquids(
    tanks: Sequence[TankLoad],
    trim_slope: float = 0.0,
    heel_slope: float = 0.0,
    near: Sequence[float] | None = None,
) -> list[Liquid]:
    """Find the liquid bodies in the tanks at a trim and heel. Raises OutOfRange where one is overfull.

    `near` gives levels to start from [m]; see `fill`.
    """
    for load in tanks:
        if load.mass < 0 or load.density <= 0:
            raise OutOfRange(f"{load.name}: the mass must not be negative and the density must be positive")
        if load.volume > load.tank.capacity * (1 + 1e-9):
            raise OutOfRange(
                f"{load.name}: {show(load.volume, 'capacity')} is more than it holds, "
                f"{show(load.tank.capacity, 'capacity')}"
            )
    return contents([t.tank for t in tanks], [t.volume for t in tanks], trim_slope, heel_slope, near)


def summed(weights: Sequence[Weight], tanks: Sequence[TankLoad], bodies: Sequence[Liquid]) -> Loading:
    """Sum weights and the liquid bodies of the tanks.

    Formula: W = sum(w), LCG = sum(w*x)/W, and so for TCG and VCG; FSM = sum(given) + sum(rho*i_T).
    Source: moments of weights (Derrett, Ship Stability for Masters and Mates). Raises OutOfRange where W is
    not positive.
    """
    parts = [(w.mass, w.x, w.y, w.z, w.free_surface_moment) for w in weights]
    for load, body in zip(tanks, bodies, strict=True):
        parts.append((load.mass, *body.centroid, body.surface_transverse * load.density))
    mass = sum(p[0] for p in parts)
    if mass <= 0:
        raise OutOfRange("the weights must sum to more than nothing")
    x, y, z = (sum(p[0] * p[axis] for p in parts) / mass for axis in (1, 2, 3))
    return Loading(mass, x, y, z, sum(p[4] for p in parts))
