"""Soundings and ullages: from a reading in the pipe to the liquid in the tank, and back."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from math import cos, hypot, pi, sin

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.filling import FULL, fill
from tenderwright.calculations.tanks.liquid import Liquid, cut_at, cut_levels
from tenderwright.calculations.tanks.polyhedron import Polyhedron
from tenderwright.quantities.display import show

Point = tuple[float, float, float]


class SoundingPipe(Struct, frozen=True):
    """A straight pipe from its foot (striking plate) to its head, in ship axes [m]."""

    foot: Point
    head: Point

    def __post_init__(self) -> None:
        if self.head[2] <= self.foot[2]:
            raise OutOfRange("the head of a sounding pipe must be above its foot")

    @property
    def length(self) -> float:
        """Length along the pipe [m]."""
        return hypot(*(h - f for h, f in zip(self.head, self.foot, strict=True)))

    def point(self, sounding: float) -> Point:
        """Give the point at a sounding [m], measured along the pipe from its foot."""
        share = sounding / self.length
        x, y, z = (f + share * (h - f) for f, h in zip(self.foot, self.head, strict=True))
        return x, y, z


def slanted_pipe(foot: Point, length: float, angle: float, bearing: float = 0.0) -> SoundingPipe:
    """Make a pipe that leans from the vertical.

    Symbols: foot [m]; length along the pipe [m]; angle from the ship's vertical [rad], below a right angle;
    bearing of the lean [rad], 0 forward, pi/2 to port. Raises OutOfRange.
    """
    if length <= 0 or not 0 <= angle < pi / 2:
        raise OutOfRange("a pipe needs a length, and an angle from the vertical below 90 degrees")
    out = length * sin(angle)
    head = (foot[0] + out * cos(bearing), foot[1] + out * sin(bearing), foot[2] + length * cos(angle))
    return SoundingPipe(foot, head)


class Tank(Struct, frozen=True, eq=False, dict=True):
    """A tank: its moulded space, the part of it that liquid can fill, and its sounding pipe."""

    body: Polyhedron
    permeability: float = 1.0
    """Applies to volumes; the free surface keeps its moulded size, which is on the safe side."""
    pipe: SoundingPipe | None = None
    surface: float | None = None
    """Second moment of the free surface that its plan states [m4], whatever the filling; else the body's own."""

    @property
    def planned(self) -> bool:
        """Whether it is a box made from a capacity plan, whose true shape is not known."""
        return self.body.shape is not None and "plan" in self.body.shape

    def __post_init__(self) -> None:
        if not 0 < self.permeability <= 1:
            raise OutOfRange(f"a permeability of {self.permeability:.3f} is outside 0 to 1")

    @cached_property
    def capacity(self) -> float:
        """Volume of liquid that fills the tank [m3]."""
        return self.body.volume * self.permeability

    def contents(self, volume: float, trim_slope: float = 0.0, heel_slope: float = 0.0) -> Liquid:
        """Find the liquid body of a volume [m3] at a trim and heel; see `fill`. Raises OutOfRange."""
        return contents([self], [volume], trim_slope, heel_slope)[0]


def contents(
    tanks: Sequence[Tank],
    volumes: Sequence[float],
    trim_slope: float = 0.0,
    heel_slope: float = 0.0,
    near: Sequence[float] | None = None,
) -> list[Liquid]:
    """Find the liquid bodies of volumes [m3] in several tanks at once; see `fill`. Raises OutOfRange."""
    moulded = [v / t.permeability for v, t in zip(volumes, tanks, strict=True)]
    bodies = fill([t.body for t in tanks], moulded, trim_slope, heel_slope, near)
    return [_shared(b, t) for b, t in zip(bodies, tanks, strict=True)]


def at_sounding(tank: Tank, sounding: float, trim_slope: float = 0.0, heel_slope: float = 0.0) -> Liquid:
    """Find the liquid in a tank from a sounding.

    Formula: the liquid plane passes through the point of the pipe at the sounding s, and slopes by trim and
    heel: z = z_s - (x - x_s)*tan(th) - (y - y_s)*tan(phi).
    Symbols: sounding along the pipe from its foot [m]; trim_slope tan(th) = trim/L, by the stern positive;
    heel_slope tan(phi), starboard down positive.
    Source: statics of a liquid at rest (derived); exact for the polyhedron.
    Range: sounding on the pipe. Where liquid does not reach the pipe a sounding of 0 gives the most there can
    be.
    Raises OutOfRange.
    """
    pipe = _pipe(tank)
    if not 0 <= sounding <= pipe.length * (1 + FULL):
        raise OutOfRange(
            f"a sounding of {show(sounding, 'centre', more=1)} is not on the pipe, 0 to "
            f"{show(pipe.length, 'centre', more=1)}"
        )
    level = float(_levels(pipe, np.array([sounding]), np.array(trim_slope), heel_slope)[0])
    return _shared(cut_at(tank.body, level, trim_slope, heel_slope), tank)


def at_ullage(tank: Tank, ullage: float, trim_slope: float = 0.0, heel_slope: float = 0.0) -> Liquid:
    """Find the liquid in a tank from an ullage [m], measured down the pipe from its head; see
    `at_sounding`."""
    return at_sounding(tank, _pipe(tank).length - ullage, trim_slope, heel_slope)


def sounding_for(tank: Tank, volume: float, trim_slope: float = 0.0, heel_slope: float = 0.0) -> float:
    """Find the sounding [m] that shows a volume [m3].

    Formula: where the liquid plane of `Tank.contents` crosses the pipe. An empty tank sounds 0.
    Range: volume up to capacity; liquid that crosses the pipe. Raises OutOfRange.
    """
    _pipe(tank)
    return sounding_at(tank, volume, tank.contents(volume, trim_slope, heel_slope).level, trim_slope, heel_slope)


def sounding_at(tank: Tank, volume: float, level: float, trim_slope: float = 0.0, heel_slope: float = 0.0) -> float:
    """Find the sounding [m] that shows a volume [m3] whose liquid plane is known; see `sounding_for`."""
    pipe = _pipe(tank)
    at_foot, at_head = _levels(pipe, np.array([0.0, pipe.length]), np.array(trim_slope), heel_slope)
    sounding = pipe.length * (level - float(at_foot)) / float(at_head - at_foot)
    if volume <= FULL:
        return max(sounding, 0.0)
    if not -1e-9 <= sounding <= pipe.length + 1e-9:
        raise OutOfRange(f"a volume of {show(volume, 'capacity', more=1)} does not show in the pipe")
    return min(max(sounding, 0.0), pipe.length)


def sounding_table(tank: Tank, soundings: ArrayLike, trim_slopes: ArrayLike = 0.0, heel_slope: float = 0.0) -> Floats:
    """Compute volumes [m3] by sounding [m] (k,) and trim slope (j,), as an array of shape (k, j).

    See `at_sounding`. Raises OutOfRange where a sounding is not on the pipe.
    """
    pipe = _pipe(tank)
    s = np.atleast_1d(np.asarray(soundings, dtype=np.float64))
    slopes = np.atleast_1d(np.asarray(trim_slopes, dtype=np.float64))
    if np.any(s < 0) or np.any(s > pipe.length * (1 + FULL)):
        raise OutOfRange(f"soundings must lie on the pipe, 0 to {show(pipe.length, 'centre', more=1)}")
    levels = _levels(pipe, s[:, None], slopes[None, :], heel_slope)
    found = cut_levels(tank.body, levels.ravel(), np.tile(slopes, s.size), heel_slope)
    return found.volume.reshape(levels.shape) * tank.permeability


def _levels(pipe: SoundingPipe, sounding: Floats, trim_slope: Floats, heel_slope: float) -> Floats:
    x, y, z = (f + sounding / pipe.length * (h - f) for f, h in zip(pipe.foot, pipe.head, strict=True))
    return np.asarray(z + x * trim_slope + y * heel_slope, dtype=np.float64)


def _pipe(tank: Tank) -> SoundingPipe:
    if tank.pipe is None:
        raise OutOfRange("the tank has no sounding pipe")
    return tank.pipe


def _shared(body: Liquid, tank: Tank) -> Liquid:
    shared = replace(body, volume=body.volume * tank.permeability)
    if not tank.planned or body.surface_area == 0:
        return shared
    if tank.surface is None:
        raise OutOfRange("it is neither full nor empty, and neither its free surface nor its extent is known")
    return replace(shared, surface_transverse=tank.surface)
