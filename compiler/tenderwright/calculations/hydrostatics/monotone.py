"""Monotone cubic curves through the columns of a table."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.simpson import Floats


class Monotone(Struct, frozen=True, eq=False):
    """Cubic curves through tabulated values that rise and fall where these do, and nowhere else. Make it with
    `monotone`."""

    knots: Floats
    """Rising, shape (n,)."""
    values: Floats
    """Shape (n, columns); slopes likewise."""
    slopes: Floats

    def at(self, x: ArrayLike) -> tuple[Floats, Floats]:
        """Give values and slopes at places x, held between the first knot and the last, each (k, columns)."""
        held = np.clip(np.atleast_1d(np.asarray(x, dtype=np.float64)), self.knots[0], self.knots[-1])
        piece = np.clip(np.searchsorted(self.knots, held, side="right") - 1, 0, self.knots.size - 2)
        h = (self.knots[piece + 1] - self.knots[piece])[:, None]
        u = (held - self.knots[piece])[:, None] / h
        y, rise = self.values[piece], self.values[piece + 1] - self.values[piece]
        a, b = h * self.slopes[piece], h * self.slopes[piece + 1]
        bent, curled = 3 * rise - 2 * a - b, a + b - 2 * rise
        return y + u * (a + u * (bent + u * curled)), (a + u * (2 * bent + 3 * u * curled)) / h


def monotone(knots: Floats, values: Floats) -> Monotone:
    """Draw monotone cubics through values (n, columns) at rising knots (n,), n at least 2.

    Formula: cubic Hermite; between two steps of one sign the slope is their harmonic mean, weighted by the steps'
    lengths, else nothing; at the ends by the parabola through three values, held to the sign of the step there.
    Source: Fritsch and Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci.
    Stat. Comput. 5 (1984).
    """
    h, step = np.diff(knots)[:, None], np.diff(values, axis=0) / np.diff(knots)[:, None]
    slopes = np.zeros_like(values)
    if knots.size == 2:
        slopes[:] = step
        return Monotone(knots, values, slopes)
    before, after = h[:-1] + 2 * h[1:], 2 * h[:-1] + h[1:]
    one_way = step[:-1] * step[1:] > 0
    low, high = np.where(one_way, step[:-1], 1.0), np.where(one_way, step[1:], 1.0)
    slopes[1:-1] = np.where(one_way, (before + after) / (before / low + after / high), 0.0)
    slopes[0] = _end(h[0], h[1], step[0], step[1])
    slopes[-1] = _end(h[-1], h[-2], step[-1], step[-2])
    return Monotone(knots, values, slopes)


def _end(h: Floats, next_h: Floats, step: Floats, next_step: Floats) -> Floats:
    slope = ((2 * h + next_h) * step - h * next_step) / (h + next_h)
    slope = np.where(slope * step <= 0, 0.0, slope)
    held: Floats = np.where((step * next_step <= 0) & (np.abs(slope) > 3 * np.abs(step)), 3 * step, slope)
    return held
