"""Hog or sag of a ship afloat, from her drafts."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity


def hog_by_drafts(forward: float, midships: float, aft: float) -> Mapping[str, float]:
    """Find hog from three drafts read on one day in still water.

    Formula: hog = (d_f + d_a)/2 - d_m, positive where she is hogged. Symbols: drafts forward, aft and midway [m].
    Source: geometry (derived). Raises OutOfRange.
    """
    if min(forward, midships, aft) < 0:
        raise OutOfRange("a draft is no less than nothing")
    return {"hog": 0.5 * (forward + aft) - midships}


METHOD = Method(
    name="timber.hog-by-drafts",
    title="Hog from drafts",
    formula="hog = (d_f + d_a)/2 − d_m, positive where she is hogged",
    source=Citation("Geometry", standing="derived"),
    valid="marks above a keel that is straight as built; the middle one midway between the others",
    inputs={
        "forward": quantity("length", "Draft forward."),
        "midships": quantity("length", "Draft midway, mean of both sides."),
        "aft": quantity("length", "Draft aft."),
    },
    outputs=(Symbol("hog", "hog midway; negative where she sags", "length", "mm"),),
    kernel=hog_by_drafts,
    example={"forward": "1.22 m", "midships": "1.36 m", "aft": "1.58 m"},
    cautions=("three drafts have the error of three readings: measure the keel line on the hard",),
)
