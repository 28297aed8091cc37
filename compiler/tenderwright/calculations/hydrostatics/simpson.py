"""Simpson's rules for even and uneven spacing: one rule for pairing intervals, along the ship and up a
section."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed

Floats = NDArray[np.float64]

LARGEST_RATIO = 2.0
"""Neighbouring intervals share a parabola up to this ratio of their lengths; beyond it an end weight turns
negative."""


def _alike(first: float, second: float) -> bool:
    return max(first, second) <= LARGEST_RATIO * min(first, second) * (1 + 1e-9)


def parabola_starts(x: Floats) -> NDArray[np.intp]:
    """Give for each interval the first of the three points whose parabola spans it, or -1 for a straight
    line.

    Intervals are taken in pairs from the first. One left over, at the end or before a break in spacing, uses
    the parabola through the point before it (the 5, 8, -1 rule). Derived; LARGEST_RATIO is ours.
    """
    gaps = np.diff(x).tolist()
    starts = np.full(len(gaps), -1, dtype=np.intp)
    k = 0
    while k < len(gaps):
        if k + 1 < len(gaps) and _alike(gaps[k], gaps[k + 1]):
            starts[k : k + 2] = k
            k += 2
            continue
        if k > 0 and _alike(gaps[k - 1], gaps[k]):
            starts[k] = k - 1
        k += 1
    return starts


def weights(x: ArrayLike) -> Floats:
    """Give the quadrature weights w [m] so that the sum of w*f(x) is the integral of f over x [m], shape
    (n,).

    For evenly spaced pairs these are Simpson's first rule, h/3*(1, 4, 2, ..., 4, 1). A triple of points with
    spacings a, b is integrated as the parabola through them.
    Range: at least two points, strictly increasing. Raises OutOfRange.
    """
    points = np.asarray(x, dtype=np.float64)
    if points.ndim != 1 or points.size < 2 or np.any(np.diff(points) <= 0):
        raise OutOfRange("ordinates need at least two positions, each greater than the one before")
    result = np.zeros(points.size)
    for k, start in enumerate(parabola_starts(points).tolist()):
        h = float(points[k + 1] - points[k])
        if start < 0:
            result[k : k + 2] += h / 2
            continue
        result[k : k + 2] += h / 6
        result[start : start + 3] += 4 * h / 6 * _basis(points[start : start + 3], points[k] + h / 2)
    return result


def _basis(nodes: Floats, x: float) -> Floats:
    a, b, c = nodes.tolist()
    return np.array(
        [
            (x - b) * (x - c) / ((a - b) * (a - c)),
            (x - a) * (x - c) / ((b - a) * (b - c)),
            (x - a) * (x - b) / ((c - a) * (c - b)),
        ]
    )


def simpson_area(ordinates: Sequence[float], positions: Sequence[float]) -> dict[str, float]:
    """Integrate ordinates over their positions: area, centroid and second moment about the centroid.

    Formula: A = S(y), c = S(x*y)/S(y), I = S(x^2*y) - A*c^2, S being Simpson's rule.
    Symbols: y ordinates [m], whole breadths; x positions [m], each shape (n,).
    Source: Tupper, Introduction to Naval Architecture, p. 26. Raises OutOfRange.
    """
    if len(ordinates) != len(positions):
        raise OutOfRange(f"there are {len(ordinates)} ordinates but {len(positions)} positions")
    x, y = np.asarray(positions, dtype=np.float64), np.asarray(ordinates, dtype=np.float64)
    w = weights(x)
    area = float(w @ y)
    if area <= 0:
        raise OutOfRange("the ordinates enclose no area")
    centroid = float(w @ (x * y)) / area
    second_moment = float(w @ (x * x * y)) - area * centroid**2
    return {"area": area, "centroid": centroid, "second_moment": second_moment}


METHOD = Method(
    name="hydrostatics.simpson",
    title="Area under ordinates by Simpson's rule",
    formula="A = S(y); centroid = S(x y)/S(y); I = S(x^2 y) - A centroid^2; S(f) = h/3 (f0 + 4 f1 + 2 f2 + ... + fn)",
    source=Citation("Tupper, Introduction to Naval Architecture", "p. 26"),
    valid="smooth curves; spacing may be uneven, "
    "and where neighbouring intervals differ more than 2 to 1 they are integrated apart",
    inputs={
        "ordinates": listed(
            {"type": "string", "quantity": "length"},
            "Whole ordinates, such as full breadths of a waterplane, in order.",
            2,
        ),
        "positions": listed({"type": "string", "quantity": "length"}, "Where each ordinate stands, rising.", 2),
    },
    outputs=(
        Symbol("area", "area under the curve", "area", "m2"),
        Symbol("centroid", "position of the centroid", "length", "m"),
        Symbol("second_moment", "second moment about the centroid", "second_moment", "m4"),
    ),
    kernel=simpson_area,
    example={
        "ordinates": ["0 m", "7.4 m", "11.8 m", "15.2 m", "15.0 m", "9.2 m", "0.2 m"],
        "positions": ["0 m", "20 m", "40 m", "60 m", "80 m", "100 m", "120 m"],
    },
)
