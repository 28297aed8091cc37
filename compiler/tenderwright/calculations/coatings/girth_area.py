"""Area of a band of shell from girths that were measured with a tape at stations along the ship."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import hypot, sqrt

import numpy as np

from tenderwright.calculations.coatings.ranges import require_positive
from tenderwright.calculations.hydrostatics.simpson import Floats, weights
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import listed, record
from tenderwright.quantities.display import plainly

LEAST = 3
"""Girths below which nothing is found."""
BETWEEN = 0.4
"""Part of the root of the sum of squares of what each girth changes that is one standard uncertainty, as for a hull
lofted from sections (derived)."""
TAPE = 0.02
"""Standard uncertainty of an area by tape over plates, landings and the ends, as a share (derived: the tests hold it
against hulls known by their offsets)."""


def girth_area(girths: Sequence[Mapping[str, float]], beam: float, along: float | None = None) -> dict[str, float]:
    """Find the area of a band, both sides, m², and its standard uncertainty.

    Formula: A = 2 f S(g), S Simpson's rule along the ship; f = l/(x_n - x_1), or without the length l along the shell
        1 + (2/3)(B/(x_n - x_1))^2, as for waterlines that are parabolas. u^2 = (0.4)^2 sum (change of A where a girth
        between the ends is left out)^2 + (A (f - 1))^2 where f is not measured + (2 % of A)^2.
    Symbols: girths with x forward of AP and girth g of one side, edge to edge [m], the first and last where the band
        ends; beam B [m]; along: length l of the band along the shell, one side [m].
    Source: girths by Simpson's rule, Tupper, Introduction to Naval Architecture, p. 26; f and u derived.
    Range: at least three girths; a length along the shell between 1 and 1.25 times that along the ship. Raises
        OutOfRange.
    """
    require_positive("beam", beam)
    if len(girths) < LEAST:
        raise OutOfRange(f"an area by girths needs at least {LEAST} of them")
    rows = sorted(girths, key=lambda one: one["x"])
    x, g = (np.array([one[name] for one in rows], dtype=np.float64) for name in ("x", "girth"))
    if np.any(g < 0):
        raise OutOfRange("a girth must not be less than nothing")
    span = float(x[-1] - x[0])
    if along is not None and not span <= along <= 1.25 * span:
        raise OutOfRange(
            f"{plainly(along, 'centre')} along the shell do not go with {plainly(span, 'centre')} along the ship"
        )
    slope = along / span if along is not None else 1 + 2 / 3 * (beam / span) ** 2 if span > 0 else 1.0
    area = 2 * slope * _integral(x, g)
    left_out = [2 * slope * _integral(np.delete(x, i), np.delete(g, i)) - area for i in range(1, x.size - 1)]
    between = BETWEEN * sqrt(sum(change**2 for change in left_out))
    sloping = area * (slope - 1) if along is None else 0.0
    return {"area": area, "uncertainty": hypot(between, sloping, TAPE * area), "slope": slope}


def _integral(x: Floats, g: Floats) -> float:
    return float(weights(x) @ g)


METHOD = Method(
    name="zone.girth-area",
    title="Area of a band of shell by girths",
    formula="A = 2 f S(g); f = l/(x_n − x_1), or 1 + (2/3)(B/(x_n − x_1))² where l is not measured",
    source=Citation("Tupper, Introduction to Naval Architecture", "p. 26, for Simpson's rule; f derived", "derived"),
    valid="girths from edge to edge of the band, the first and last where it ends",
    inputs={
        "girths": listed(
            record(
                "A girth.",
                ("x", "girth"),
                x=_length("Forward of AP."),
                girth=_length("Of one side, from edge to edge of the band."),
            ),
            "Girths along the ship.",
        ),
        "beam": _length("Greatest breadth of the hull."),
        "along": _length("Length of the band along the shell, one side.", "41 m"),
    },
    outputs=(
        Symbol("area", "area of the band, both sides", "area", "m2"),
        Symbol("uncertainty", "its standard uncertainty", "area", "m2"),
        Symbol("slope", "what the slope of the shell along the ship makes of it", "fraction", ""),
    ),
    kernel=girth_area,
    example={
        "girths": [
            {"x": x, "girth": girth}
            for x, girth in (("0 m", "1.1 m"), ("4 m", "3.6 m"), ("12 m", "5.9 m"), ("20 m", "6.4 m"),
                             ("28 m", "6.0 m"), ("36 m", "3.9 m"), ("40 m", "2.6 m"))
        ],
        "beam": "8.4 m",
    },
    optional=frozenset({"along"}),
    cautions=("A flat transom, bulwarks, rudder and other appendages are not included.",),
)  # fmt: skip
