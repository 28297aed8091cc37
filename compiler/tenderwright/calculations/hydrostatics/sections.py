"""Section curves: for each station one curve of half-breadth over height, from keel through waterlines to
deck edge."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.hydrostatics.simpson import Floats, parabola_starts

GAUSS_NODES = (0.8611363115940526, 0.33998104358485626)
GAUSS_WEIGHTS = (0.34785484513745357, 0.6521451548625464)
"""Gauss-Legendre quadrature with four points, on -1 to 1 (Abramowitz and Stegun, table 25.4)."""
NODES: Floats = 0.5 * (np.array([-GAUSS_NODES[0], -GAUSS_NODES[1], GAUSS_NODES[1], GAUSS_NODES[0]]) + 1.0)
NODE_WEIGHTS: Floats = 0.5 * np.array([*GAUSS_WEIGHTS, *GAUSS_WEIGHTS[::-1]])


class SectionCurves(Struct, frozen=True, eq=False):
    """Half-breadth y over height z at each station, as pieces y = a + b*u + c*u^2 with u = z - knot.

    Arrays have one row per station. Rows are padded at the deck edge with pieces of no height. Heights are
    clipped between keel and deck edge, so a section never holds more than it does up to its deck.
    """

    knots: Floats
    a: Floats
    b: Floats
    c: Floats
    area_below: Floats
    """Half area [m2] below each piece; moment_below likewise, about z = 0 [m3]."""
    moment_below: Floats
    every: NDArray[np.intp]
    """The station indices 0 .. n-1."""

    def half_breadth(self, z: Floats, station: NDArray[np.intp] | None = None) -> Floats:
        """Give the half-breadth [m] at heights z [m], by station along the last axis or at the stations
        named, whose shape goes with that of z."""
        if station is None:
            return self.half_section(z)[2]
        knots = self.knots[station]
        clipped = np.minimum(np.maximum(z, knots[..., 0]), knots[..., -1])
        piece = (clipped[..., None] > knots[..., 1:-1]).sum(axis=-1)
        u = clipped - self.knots[station, piece]
        y = self.a[station, piece] + u * (self.b[station, piece] + u * self.c[station, piece])
        return np.where(z < knots[..., 0], 0.0, np.maximum(y, 0.0))

    def half_area(self, z: Floats) -> Floats:
        """Give the half section area [m2] up to heights z [m], shape (..., stations)."""
        return self.half_section(z)[0]

    def half_section(self, z: Floats) -> tuple[Floats, Floats, Floats]:
        """Give area [m2], moment about z = 0 [m3] and half-breadth [m] of the half section up to heights z [m]."""
        knots = self.knots
        clipped = np.minimum(np.maximum(z, knots[:, 0]), knots[:, -1])
        piece = self.every * self.a.shape[1] + (clipped[..., None] > knots[:, 1:-1]).sum(axis=-1)
        a, b, c, knot = self.a.take(piece), self.b.take(piece), self.c.take(piece), knots.take(piece + self.every)
        u = clipped - knot
        area = u * (a + u * (b / 2 + u * c / 3))
        moment = u * u * (a / 2 + u * (b / 3 + u * c / 4))
        y = np.where(z < knots[:, 0], 0.0, np.maximum(a + u * (b + u * c), 0.0))
        return self.area_below.take(piece) + area, self.moment_below.take(piece) + knot * area + moment, y

    def half_girth(self, z: Floats) -> Floats:
        """Give the half girth [m] from the centreline up to heights z [m], shape (stations,)."""
        u, du = self.pieces_up_to(z)
        slope = self.b[..., None] + 2 * u * self.c[..., None]
        arc = np.sum(np.sqrt(1 + slope**2) * NODE_WEIGHTS * du[..., None], axis=(-1, -2))
        return np.where(z < self.knots[:, 0], 0.0, self.a[:, 0] + arc)

    def pieces_up_to(self, z: Floats) -> tuple[Floats, Floats]:
        """Give quadrature nodes u (stations, pieces, nodes) and wetted heights (stations, pieces) up to z
        [m]."""
        low = self.knots[:, :-1]
        du = np.clip(z[:, None], low, self.knots[:, 1:]) - low
        return du[..., None] * NODES, du


def section_curves(points: Iterable[tuple[Floats, Floats, bool]]) -> SectionCurves:
    """Build the curves from each station's (heights [m], half-breadths [m], whether the last point is the
    deck edge).

    Points below the deck edge are joined by parabolas, in pairs from the keel as Simpson's rule takes them;
    the last step up to the deck edge is straight.
    """
    rows = [_pieces(z, y, to_deck) for z, y, to_deck in points]
    longest = max(len(z) for z, *_ in rows)
    knots = np.array([np.pad(z, (0, longest - len(z)), mode="edge") for z, *_ in rows])
    a = np.array([np.pad(y, (0, longest - len(y)), mode="edge")[:-1] for _, y, *_ in rows])
    b = np.array([np.pad(v, (0, longest - 1 - len(v))) for *_, v, _ in rows])
    c = np.array([np.pad(v, (0, longest - 1 - len(v))) for *_, v in rows])
    h = np.diff(knots)
    area = h * (a + h * (b / 2 + h * c / 3))
    moment = knots[:, :-1] * area + h * h * (a / 2 + h * (b / 3 + h * c / 4))
    return SectionCurves(knots, a, b, c, _below(area), _below(moment), np.arange(len(rows)))


def _below(parts: Floats) -> Floats:
    return np.cumsum(parts, axis=1) - parts


def _pieces(z: Floats, y: Floats, to_deck: bool) -> tuple[Floats, Floats, Floats, Floats]:
    starts = parabola_starts(z[:-1] if to_deck else z)
    slopes = np.diff(y) / np.diff(z)
    b, c = slopes.copy(), np.zeros(len(slopes))
    for k, start in enumerate(starts.tolist()):
        if start >= 0:
            c[k] = (slopes[start + 1] - slopes[start]) / (z[start + 2] - z[start])
            b[k] = slopes[k] - c[k] * (z[k + 1] - z[k])
    return z, y, b, c
