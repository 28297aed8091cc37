"""Liquid in a tank: the part of a polyhedron below the real liquid plane, cut exactly."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike, NDArray

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.tanks.polyhedron import Polyhedron


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


def cut_levels(body: Polyhedron, levels: ArrayLike, trim_slope: ArrayLike = 0.0, heel_slope: ArrayLike = 0.0) -> Cut:
    """Cut one body by many planes z = level - x*trim_slope - y*heel_slope; see `cut`."""
    planes = np.broadcast_arrays(*(np.atleast_1d(np.asarray(v, float)) for v in (levels, trim_slope, heel_slope)))
    count = len(planes[0])
    corners = np.broadcast_to(body.corners, (count, *body.corners.shape)).reshape(-1, 3, 3)
    return cut(corners, np.repeat(np.arange(count), len(body.corners)), *planes)


def cut_at(body: Polyhedron, level: float, trim_slope: float = 0.0, heel_slope: float = 0.0) -> Liquid:
    """Cut one body by one plane z = level - x*trim_slope - y*heel_slope; see `cut`."""
    return cut_levels(body, level, trim_slope, heel_slope).liquids()[0]


def cut(corners: Floats, group: NDArray[np.intp], level: Floats, trim_slope: Floats, heel_slope: Floats) -> Cut:
    """Cut closed surfaces by liquid planes and measure what lies below, exactly.

    Formula: each triangle is clipped at its plane; the volume is the sum of tetrahedra from a point on the
    plane, so that the free surface itself adds nothing; the free surface's area and moments are sums over its
    edges by Green's theorem. Heights are first sheared so that the plane is level, which keeps volumes.
    Symbols: corners of all triangles [m] shape (m, 3, 3); group number of the body each belongs to, shape
    (m,); per group (g,): level [m], trim_slope tan(th) positive by the stern, heel_slope tan(phi) positive
    starboard down.
    Source: divergence theorem and Green's theorem on a polyhedron (derived).
    """
    groups = len(level)
    origin = _first_corner(corners, group, groups)
    shift = level - origin[:, 2] - origin[:, 0] * trim_slope - origin[:, 1] * heel_slope
    p = corners - origin[group][:, None]
    sheared = p[..., 0] * trim_slope[group][:, None] + p[..., 1] * heel_slope[group][:, None]
    p[..., 2] += sheared - shift[group][:, None]
    wet, owner, edges, edge_owner = _clip(p, group)
    six = np.einsum("mi,mi->m", wet[:, 0], _cross(wet[:, 1], wet[:, 2]))
    volume = np.bincount(owner, six, groups) / 6
    reach = (wet[:, 0] + wet[:, 1] + wet[:, 2]) * six[:, None]
    first = np.stack([np.bincount(owner, reach[:, i], groups) for i in range(3)], axis=-1) / 24
    centre = np.divide(first, volume[:, None], out=np.zeros_like(first), where=np.abs(volume[:, None]) > 0)
    centre[:, 2] += shift - centre[:, 0] * trim_slope - centre[:, 1] * heel_slope
    area, transverse, longitudinal = (np.where(volume > 0, v, 0.0) for v in _surface(edges, edge_owner, groups))
    return Cut(level, volume, centre + origin, area, transverse, longitudinal)


def _cross(a: Floats, b: Floats) -> Floats:
    """Give what `np.cross` gives for vectors in space, in half the time for the few that a tank has."""
    product = np.empty_like(a)
    product[:, 0] = a[:, 1] * b[:, 2] - a[:, 2] * b[:, 1]
    product[:, 1] = a[:, 2] * b[:, 0] - a[:, 0] * b[:, 2]
    product[:, 2] = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    return product


def _first_corner(corners: Floats, group: NDArray[np.intp], groups: int) -> Floats:
    origin = np.zeros((groups, 3))
    origin[group[::-1]] = corners[::-1, 0]
    return origin


def _clip(p: Floats, group: NDArray[np.intp]) -> tuple[Floats, NDArray[np.intp], Floats, NDArray[np.intp]]:
    """Clip triangles at z = 0: what is below, and the edges of the free surface, each with its group."""
    below = p[..., 2] <= 0
    count = below[:, 0].astype(np.intp) + below[:, 1] + below[:, 2]
    whole = count == 3
    cross = (count == 1) | (count == 2)
    q, owner, two = p[cross], group[cross], count[cross] == 2
    odd = np.where(two, np.argmin(below[cross], axis=1), np.argmax(below[cross], axis=1))
    row = np.arange(len(q))
    a, b, c = (q[row, (odd + k) % 3] for k in range(3))
    ab = a + (b - a) * (a[:, 2] / (a[:, 2] - b[:, 2]))[:, None]
    ac = a + (c - a) * (a[:, 2] / (a[:, 2] - c[:, 2]))[:, None]
    ab[:, 2] = ac[:, 2] = 0.0
    tip, quad = ~two, two
    wet = np.concatenate(
        [
            p[whole],
            np.stack([a[tip], ab[tip], ac[tip]], axis=1),
            np.stack([ab[quad], b[quad], c[quad]], axis=1),
            np.stack([ab[quad], c[quad], ac[quad]], axis=1),
        ]
    )
    wet_owner = np.concatenate([group[whole], owner[tip], owner[quad], owner[quad]])
    start, end = np.where(two[:, None], ab, ac), np.where(two[:, None], ac, ab)
    return wet, wet_owner, np.stack([start[:, :2], end[:, :2]], axis=1), owner


def _surface(edges: Floats, owner: NDArray[np.intp], groups: int) -> tuple[Floats, Floats, Floats]:
    """Give area and second moments (transverse, longitudinal) about the own centroid of each outline of
    edges."""
    (x0, y0), (x1, y1) = edges[:, 0].T, edges[:, 1].T
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
