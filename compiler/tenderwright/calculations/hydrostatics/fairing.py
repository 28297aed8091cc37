"""Fair curves along the ship through readings that are a little off, moved no more than the readings allow."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from tenderwright.calculations.hydrostatics.simpson import Floats

STIFFEST = 4.0
"""Power of ten of the stiffness from which a curve is a parabola through all readings; the softest is as much
below nothing."""
STEPS = 24
"""Halvings of that range until the stiffness is found."""


def faired(positions: Sequence[Floats], readings: Sequence[Floats], reading: float) -> list[Floats]:
    """Move readings [m] along the ship to where they lie fairest; the first and last of each curve are held.

    Formula: the curve f that makes sum (f - y)^2 + s * sum (third differences of f)^2 least, with the greatest
        stiffness s, one for all curves, for which sum (f - y)^2 is at most u^2 (n - tr H); f = H y.
    Symbols: positions [m] and readings y [m] of each curve; u the standard uncertainty of a reading [m]; n their
        number.
    Source: E. T. Whittaker, On a new method of graduation, Proc. Edinburgh Math. Soc. 41 (1923), with divided
        differences for uneven spacing; the stiffness by the sum of squares that the readings may leave (derived).
    Range: a curve of fewer than four readings is left as it is.
    """
    bent = [_third_differences(x) for x in positions]
    low, high = -STIFFEST, STIFFEST
    if _allowed(bent, readings, reading, 10.0**high):
        low = high
    for _ in range(STEPS if low < high else 0):
        middle = (low + high) / 2
        low, high = (middle, high) if _allowed(bent, readings, reading, 10.0**middle) else (low, middle)
    if low == -STIFFEST:
        return list(readings)
    return [_smoother(d, y.size, 10.0**low) @ y for d, y in zip(bent, readings, strict=True)]


def _allowed(bent: Sequence[Floats], readings: Sequence[Floats], reading: float, stiffness: float) -> bool:
    """Tell whether what is left over is no more than readings of that uncertainty leave."""
    left, free = 0.0, 0.0
    for d, y in zip(bent, readings, strict=True):
        smoother = _smoother(d, y.size, stiffness)
        left += float(np.sum((smoother @ y - y) ** 2))
        free += y.size - float(np.trace(smoother))
    return left <= reading**2 * free


def _smoother(bent: Floats, count: int, stiffness: float) -> Floats:
    """Give the matrix that turns readings into the fair curve; the ends are held by their weight."""
    weights = np.eye(count)
    weights[[0, -1], [0, -1]] = 1e6
    return np.asarray(np.linalg.solve(weights + stiffness * bent.T @ bent, weights), dtype=np.float64)


def _third_differences(x: Floats) -> Floats:
    """Give the matrix of the third divided differences, times the cube of the mean spacing and 3!."""
    order, count = 3, x.size
    if count <= order:
        return np.zeros((0, count))
    found: Floats = np.eye(count)
    for k in range(1, order + 1):
        found = np.asarray(np.diff(found, axis=0) * k / (x[k:] - x[:-k])[:, None], dtype=np.float64)
    return np.asarray(found * ((x[-1] - x[0]) / (count - 1)) ** order, dtype=np.float64)
