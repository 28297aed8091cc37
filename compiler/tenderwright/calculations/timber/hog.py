"""Hog or sag of a keel from its measured line."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record


def hog(keel: Sequence[Mapping[str, float]]) -> Mapping[str, Any]:
    """Find how far the keel stands above the straight line between its ends.

    Formula: hog = z(mid) - (z(f) + z(a))/2; off(x) = z(x) - chord(x). Positive hogged, negative sagged.
    Symbols: height z of the keel over a level line at x [m]; a and f its after and forward ends, mid halfway.
    Range: three points or more at different places; straight between them.
    Source: geometry (derived). Raises OutOfRange.
    """
    points = sorted((one["x"], one["z"]) for one in keel)
    x, z = np.array([p[0] for p in points]), np.array([p[1] for p in points])
    if x.size < 3 or np.any(np.diff(x) <= 0):
        raise OutOfRange("the keel line needs its two ends and a point between, each at a place of its own")
    off = z - np.interp(x, x[[0, -1]], z[[0, -1]])
    greatest = int(np.argmax(np.abs(off)))
    middle = 0.5 * (x[0] + x[-1])
    return {
        "hog": float(np.interp(middle, x, z) - 0.5 * (z[0] + z[-1])),
        "greatest": float(off[greatest]),
        "at": float(x[greatest]),
        "share": float(abs(off[greatest]) / (x[-1] - x[0])),
        "off": off.tolist(),
    }


METHOD = Method(
    name="timber.hog",
    title="Hog of the keel from its measured line",
    formula="hog = z(mid) − (z(f) + z(a))/2, positive where she is hogged",
    source=Citation("Geometry", standing="derived"),
    valid="three points or more; straight between them",
    inputs={
        "keel": listed(
            record(
                "A point of the keel.",
                ("x", "z"),
                x=quantity("length", "Forward of AP."),
                z=quantity("length", "Underside of the keel over a level line.") | {"signed": True},
            ),
            "The keel line, its ends included.",
            3,
        )
    },
    outputs=(
        Symbol("hog", "hog midway; negative where she sags", "length", "mm"),
        Symbol("greatest", "greatest distance from the straight line; negative below it", "length", "mm"),
        Symbol("at", "where that is, forward of the after perpendicular", "length", "m"),
        Symbol("share", "that distance by the length of keel", "fraction", "%"),
        Symbol("off", "height of each point over the straight line", "length", "mm"),
    ),
    kernel=hog,
    example={"keel": [{"x": "0.6 m", "z": "0 mm"}, {"x": "5.6 m", "z": "38 mm"}, {"x": "10.6 m", "z": "4 mm"}]},
    cautions=("blocks are built to the measured line: no straightening in one docking without a structural plan",),
)
