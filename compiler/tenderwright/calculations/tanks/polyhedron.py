"""A tank's space as a closed polyhedron, and the ways to build one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property
from itertools import pairwise
from typing import Any, Literal

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike, NDArray

from tenderwright.calculations.hydrostatics.hull_form import NEAR, HullForm
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.quantities.display import show

Indices = NDArray[np.intp]
Side = Literal["port", "starboard", "both"]


class Polyhedron(Struct, frozen=True, eq=False, dict=True):
    """A closed surface of triangles, anticlockwise seen from outside; coordinates x, y, z in ship axes
    [m]."""

    vertices: Floats
    """Shape (n, 3)."""
    triangles: Indices
    """Indices of vertices, shape (m, 3)."""
    shape: Mapping[str, Any] | None = None
    """What it was built from, as an input; None for a body that is only a part of one."""

    def as_input(self) -> Mapping[str, Any]:
        """Give what it was built from."""
        assert self.shape is not None
        return self.shape

    @cached_property
    def corners(self) -> Floats:
        """Coordinates of each triangle's corners [m], shape (m, 3, 3)."""
        return self.vertices[self.triangles]

    @cached_property
    def from_first_corner(self) -> Floats:
        """The same measured from the first of them, by coordinate, corner and triangle, shape (3, 3, m)."""
        return np.ascontiguousarray((self.corners - self.corners[0, 0]).transpose(2, 1, 0))

    @cached_property
    def volume(self) -> float:
        """Volume enclosed [m3], as the sum of tetrahedra from one corner."""
        a, b, c = (self.corners[:, i] - self.vertices[0] for i in range(3))
        return float(np.einsum("mi,mi->", a, np.cross(b, c))) / 6

    @property
    def bottom(self) -> float:
        """Height of the lowest point [m]."""
        return float(self.vertices[:, 2].min())

    @property
    def top(self) -> float:
        """Height of the highest point [m]."""
        return float(self.vertices[:, 2].max())

    @property
    def surface_area(self) -> float:
        """Area of all its faces [m2]."""
        a, b, c = (self.corners[:, i] for i in range(3))
        return float(np.linalg.norm(np.cross(b - a, c - a), axis=1).sum() / 2)

    @property
    def lower_corner(self) -> Floats:
        """Least x, y and z [m]."""
        return np.asarray(self.vertices.min(axis=0), dtype=np.float64)

    @property
    def upper_corner(self) -> Floats:
        """Greatest x, y and z [m]."""
        return np.asarray(self.vertices.max(axis=0), dtype=np.float64)


def joined(bodies: Sequence[Polyhedron]) -> Polyhedron:
    """Join bodies into one; faces that two of them share cancel."""
    firsts = np.cumsum([0, *(len(b.vertices) for b in bodies[:-1])])
    return Polyhedron(
        np.concatenate([b.vertices for b in bodies]),
        np.concatenate([b.triangles + first for b, first in zip(bodies, firsts, strict=True)]),
    )


def mirrored(body: Polyhedron) -> Polyhedron:
    """Mirror a body in the centreline plane."""
    return Polyhedron(body.vertices * np.array([1.0, -1.0, 1.0]), body.triangles[:, ::-1])


def box(x: tuple[float, float], y: tuple[float, float], z: tuple[float, float]) -> Polyhedron:
    """Make a rectangular tank between two positions on each axis [m]. Raises OutOfRange where it has no
    size."""
    if not (x[0] < x[1] and y[0] < y[1] and z[0] < z[1]):
        raise OutOfRange("a box needs a lower and a higher bound on each axis")
    section = [(y[0], z[0]), (y[1], z[0]), (y[1], z[1]), (y[0], z[1])]
    return lofted([x[0], x[1]], [section, section])


def lofted(x: ArrayLike, sections: ArrayLike) -> Polyhedron:
    """Make a tank from transverse sections, straight between them.

    Symbols: x positions [m], rising, shape (k,); sections corners (y, z) [m], shape (k, n, 2), in the same
    order at every section, either way round. Raises OutOfRange.
    """
    positions, outline = np.asarray(x, dtype=np.float64), np.asarray(sections, dtype=np.float64)
    if outline.ndim != 3 or outline.shape[0] != positions.size or outline.shape[2] != 2:
        raise OutOfRange("each section needs the same number of corners, each with y and z, and one position")
    count, corners, _ = outline.shape
    if count < 2 or corners < 3 or np.any(np.diff(positions) <= 0):
        raise OutOfRange("a tank needs at least two sections, running forward, of three or more corners")
    vertices = np.concatenate([np.broadcast_to(positions[:, None, None], (count, corners, 1)), outline], axis=2)
    triangles = _skin(count, corners)
    if _doubled_areas(outline).sum() < 0:
        triangles = triangles[:, ::-1]
    return Polyhedron(vertices.reshape(-1, 3), triangles)


def _doubled_areas(outline: Floats) -> Floats:
    y, z = outline[..., 0], outline[..., 1]
    return np.asarray(np.sum(y * np.roll(z, -1, axis=1) - np.roll(y, -1, axis=1) * z, axis=1), dtype=np.float64)


def _skin(count: int, corners: int) -> Indices:
    """Give the triangles of sides and ends for sections that run from y towards z."""
    here = np.arange(corners)
    on = np.roll(here, -1)
    first = (np.arange(count - 1) * corners)[:, None]
    a, b, c, d = first + here, first + on, first + corners + on, first + corners + here
    sides = np.concatenate([np.stack([a, b, c], axis=-1), np.stack([a, c, d], axis=-1)]).reshape(-1, 3)
    fan = np.stack([np.zeros(corners - 2, dtype=np.intp), here[1:-1], here[2:]], axis=-1)
    return np.concatenate([sides, fan[:, ::-1], fan + (count - 1) * corners])


def from_hull(
    form: HullForm,
    x: tuple[float, float],
    *,
    bottom: float | None = None,
    top: float | None = None,
    inboard: float = 0.0,
    outboard: float | None = None,
    side: Side = "both",
    slices_per_station: int = 2,
) -> Polyhedron:
    """Make a tank bounded by the hull between two positions x [m].

    Symbols: bottom, top heights [m], None for the hull's bottom and the deck edge; inboard, outboard
    distances from the centreline [m], None for the shell; side of the centreline. `both` with inboard 0 is
    one tank across the centreline, otherwise two wings with one free surface between them.
    Formula: the shell is read at heights of the waterlines and half-way between, at and between stations, and
    joined by straight lines (derived).
    Range: between the first and last station. Raises OutOfRange where nothing is left inside the hull.
    """
    if not x[0] < x[1] or (outboard is not None and not inboard < outboard) or inboard < 0:
        raise OutOfRange("a tank's after end must be aft of its fore end, and its inboard side inside its outboard")
    cuts = _cuts(form, x, slices_per_station)
    keels, decks = [form.keel_at(v) for v in cuts], [form.deck_at(v) for v in cuts]
    low = min(keels) if bottom is None else bottom
    high = max(decks) if top is None else top
    if low >= high:
        raise OutOfRange(
            f"the tank's top, {show(high, 'centre', more=1)}, is not above its bottom, {show(low, 'centre', more=1)}"
        )
    levels = _levels(form, low, high)
    outlines = []
    for v, keel, deck in zip(cuts, keels, decks, strict=True):
        z = np.clip(levels, keel, deck)
        shell = form.half_breadth_at(v, z)
        outer = shell if outboard is None else np.minimum(shell, outboard)
        inner = np.minimum(outer, inboard)
        outlines.append(np.stack([np.append(outer, inner[::-1]), np.append(z, z[::-1])], axis=-1))
    if np.all(np.abs(_doubled_areas(np.array(outlines))) < NEAR):
        raise OutOfRange("no part of the tank lies inside the hull")
    port = lofted(cuts, outlines)
    if side == "port":
        return port
    return mirrored(port) if side == "starboard" else joined([port, mirrored(port)])


def _cuts(form: HullForm, x: tuple[float, float], slices: int) -> Floats:
    inside = form.stations[(form.stations > x[0] + NEAR) & (form.stations < x[1] - NEAR)]
    ends = np.concatenate([[x[0]], inside, [x[1]]])
    parts = [np.linspace(a, b, slices + 1)[:-1] for a, b in pairwise(ends.tolist())]
    return np.append(np.concatenate(parts), x[1])


def _levels(form: HullForm, low: float, high: float) -> Floats:
    inside = form.waterlines[(form.waterlines > low + NEAR) & (form.waterlines < high - NEAR)]
    ends = np.concatenate([[low], inside, [high]])
    middles = (ends[:-1] + ends[1:]) / 2
    return np.sort(np.concatenate([ends, middles]))
