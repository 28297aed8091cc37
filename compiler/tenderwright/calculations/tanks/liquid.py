"""Liquid in a tank: the part of a polyhedron below the real liquid plane, cut exactly."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike, NDArray

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.tanks.polyhedron import Polyhedron

Edges = tuple[Floats, Floats]
"""Where edges start and end, x and y by edge."""


class Liquid(Struct, frozen=True):
    """The liquid in one tank: volume, centroid and free surface; ship axes, SI."""

    level: float
    """Height at which the liquid plane meets the z axis (x = 0, y = 0) [m]."""
    volume: float
    centroid: tuple[float, float, float]
    surface_area: float
    """Of the free surface projected on the baseplane [m2]; the second moments likewise."""
    surface_transverse: float
    """Second moment about the fore-and-aft axis through the surface's own centroid [m4]."""
    surface_longitudinal: float
    """Second moment about the athwartships axis through the surface's own centroid [m4]."""


class Cut(Struct, frozen=True, eq=False):
    """The same for many cuts at once, as arrays with one row per cut."""

    level: Floats
    volume: Floats
    centroid: Floats
    surface_area: Floats
    surface_transverse: Floats
    surface_longitudinal: Floats

    def liquids(self) -> list[Liquid]:
        """Give each cut as a liquid body."""
        columns = (self.level, self.volume, self.centroid, self.surface_area)
        moments = (self.surface_transverse, self.surface_longitudinal)
        rows = zip(*(c.tolist() for c in (*columns, *moments)), strict=True)
        return [Liquid(level, volume, tuple(centre), *rest) for level, volume, centre, *rest in rows]


class Surfaces(Struct, frozen=True, eq=False):
    """Closed surfaces of triangles, a group for each body, ready to be cut by planes of one slope each.

    Coordinates are measured from the first corner of each body, arrays by coordinate, corner and triangle.
    """

    corners: Floats
    """Shape (3, 3, m) [m]."""
    rise: Floats
    """Of each corner over the plane through the body's first corner, less its own height; shape (3, m) [m]."""
    group: NDArray[np.intp]
    """Of each triangle, shape (m,)."""
    origin: Floats
    """First corner of each body, shape (3, g) [m]."""
    slopes: tuple[Floats, Floats]
    """Of each body's planes: tan(th) positive by the stern, tan(phi) positive starboard down."""

    def only(self, bodies: NDArray[np.bool_]) -> Surfaces:
        """Give some of the bodies."""
        rows = bodies[self.group]
        trim, heel = self.slopes
        number = np.cumsum(bodies) - 1
        return Surfaces(
            self.corners[:, :, rows],
            self.rise[:, rows],
            number[self.group[rows]],
            self.origin[:, bodies],
            (trim[bodies], heel[bodies]),
        )


def surfaces(bodies: Sequence[Polyhedron], trim_slope: ArrayLike = 0.0, heel_slope: ArrayLike = 0.0) -> Surfaces:
    """Make bodies ready to be cut by planes of one slope, or of one slope each."""
    count = len(bodies)
    trim, heel = (np.broadcast_to(np.asarray(v, np.float64), (count,)) for v in (trim_slope, heel_slope))
    corners = np.concatenate([b.from_first_corner for b in bodies], axis=2)
    group = np.repeat(np.arange(count), [len(b.triangles) for b in bodies])
    rise = corners[0] * trim[group] + corners[1] * heel[group]
    return Surfaces(corners, rise, group, np.stack([b.corners[0, 0] for b in bodies], axis=1), (trim, heel))


def cut_levels(body: Polyhedron, levels: ArrayLike, trim_slope: ArrayLike = 0.0, heel_slope: ArrayLike = 0.0) -> Cut:
    """Cut one body by many planes z = level - x*trim_slope - y*heel_slope; see `cut`."""
    planes = np.broadcast_arrays(*(np.atleast_1d(np.asarray(v, float)) for v in (levels, trim_slope, heel_slope)))
    return cut(surfaces([body] * len(planes[0]), *planes[1:]), planes[0])


def cut_at(body: Polyhedron, level: float, trim_slope: float = 0.0, heel_slope: float = 0.0) -> Liquid:
    """Cut one body by one plane z = level - x*trim_slope - y*heel_slope; see `cut`."""
    return cut_levels(body, level, trim_slope, heel_slope).liquids()[0]


def cut(bodies: Surfaces, level: Floats) -> Cut:
    """Cut closed surfaces by liquid planes and measure what lies below, exactly.

    Formula: each triangle is clipped at its plane; the volume is the sum of tetrahedra from a point on the
    plane, so that the free surface itself adds nothing; the free surface's area and moments are sums over its
    edges by Green's theorem. Heights are first sheared so that the plane is level, which keeps volumes.
    Symbols: level of each body's plane, where it meets the z axis [m], shape (g,).
    Source: divergence theorem and Green's theorem on a polyhedron (derived).
    """
    groups, origin, (trim, heel) = len(level), bodies.origin, bodies.slopes
    shift = level - origin[2] - origin[0] * trim - origin[1] * heel
    heights = bodies.corners[2] + (bodies.rise - shift[bodies.group])
    wet, owner, edges, edge_owner = _clip(bodies, heights)
    first, second, third = wet[:, 0], wet[:, 1], wet[:, 2]
    x, y, z = first * _cross(second, third)
    six = x + z + y
    volume = np.bincount(owner, six, groups) / 6
    reach = (first + second + third) * six
    moment = np.array([np.bincount(owner, along, groups) for along in reach]) / 24
    centre = np.divide(moment, volume, out=np.zeros_like(moment), where=np.abs(volume) > 0)
    centre[2] += shift - centre[0] * trim - centre[1] * heel
    area, transverse, longitudinal = (np.where(volume > 0, v, 0.0) for v in _surface(edges, edge_owner, groups))
    return Cut(level, volume, (centre + origin).T, area, transverse, longitudinal)


def _cross(a: Floats, b: Floats) -> Floats:
    """Give the cross products of vectors, coordinates along the first axis."""
    return np.array([a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]])


def _clip(bodies: Surfaces, heights: Floats) -> tuple[Floats, NDArray[np.intp], Edges, NDArray[np.intp]]:
    """Clip triangles at the height 0: what is below, and the edges of the free surface, each with its group."""
    below = heights <= 0
    count = below.sum(axis=0)
    whole, cross = (count == 3).nonzero()[0], ((count == 1) | (count == 2)).nonzero()[0]
    at, two = below.take(cross, axis=1), count.take(cross) == 2
    odd = (at != two).argmax(axis=0)
    row, q = np.arange(len(cross)), np.empty((3, 3, len(cross)))
    _take(bodies, heights, cross, q)
    a, b, c = (q.reshape(3, -1).take((odd + k) % 3 * len(cross) + row, axis=1) for k in range(3))
    ab = a + (b - a) * (a[2] / (a[2] - b[2]))
    ac = a + (c - a) * (a[2] / (a[2] - c[2]))
    ab[2] = ac[2] = 0.0
    tip, quad = (~two).nonzero()[0], two.nonzero()[0]
    first, second = len(whole), len(whole) + len(tip)
    third = second + len(quad)
    wet = np.empty((3, 3, third + len(quad)))
    _take(bodies, heights, whole, wet[:, :, :first])
    for k, (of_tip, of_quad, of_other) in enumerate(((a, ab, ab), (ab, b, c), (ac, c, ac))):
        wet[:, k, first:second] = of_tip.take(tip, axis=1)
        wet[:, k, second:third] = of_quad.take(quad, axis=1)
        wet[:, k, third:] = of_other.take(quad, axis=1)
    owner = bodies.group.take(cross)
    by_quad = owner.take(quad)
    wet_owner = np.concatenate([bodies.group.take(whole), owner.take(tip), by_quad, by_quad])
    return wet, wet_owner, (np.where(two, ab[:2], ac[:2]), np.where(two, ac[:2], ab[:2])), owner


def _take(bodies: Surfaces, heights: Floats, rows: NDArray[np.intp], to: Floats) -> None:
    """Put some of the triangles to a place, with heights over the plane."""
    to[:2] = bodies.corners[:2].take(rows, axis=2)
    to[2] = heights.take(rows, axis=1)


def _surface(edges: Edges, owner: NDArray[np.intp], groups: int) -> tuple[Floats, Floats, Floats]:
    """Give area and second moments (transverse, longitudinal) about the own centroid of each outline of
    edges."""
    (x0, y0), (x1, y1) = edges
    doubled = x0 * y1 - x1 * y0

    def total(values: Floats) -> Floats:
        return np.asarray(np.bincount(owner, doubled * values, groups), dtype=np.float64)

    area = total(np.ones_like(x0)) / 2
    scale = np.divide(1.0, area, out=np.zeros_like(area), where=area > 0)
    x_moment, y_moment = total(x0 + x1) / 6, total(y0 + y1) / 6
    longitudinal = total(x0 * x0 + x0 * x1 + x1 * x1) / 12 - x_moment**2 * scale
    transverse = total(y0 * y0 + y0 * y1 + y1 * y1) / 12 - y_moment**2 * scale
    return area, np.maximum(transverse, 0.0), np.maximum(longitudinal, 0.0)


def capacity(body: Polyhedron) -> Liquid:
    """Measure a body filled to its top."""
    return cut_at(body, body.top)
