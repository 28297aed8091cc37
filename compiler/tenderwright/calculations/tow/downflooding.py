"""The heel at which the still water reaches each opening that lets it in."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import atan2
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, listed, record, text


def downflooding(openings: Sequence[Mapping[str, Any]], length: float, draft: float, trim: float) -> Mapping[str, Any]:
    """Give each opening its height over the waterline and the heel that brings it there, and the least of both;
    the heel that lets water in is that of openings that are not closed tight for sea.

    Formula: freeboard f = z - (T + trim (1/2 - x/L)); angle = atan(f/|y|), the waterline turning about its centre.
    Symbols: x forward of AP, y from the centreline, z lowest edge above the baseline, L, T, trim by the stern [m].
    Source: geometry (derived). The ship's own sinkage and trim as she heels are left out: for wall-sided ships.
    Range: openings over the waterline. Raises OutOfRange.
    """
    if length <= 0 or not openings:
        raise OutOfRange("it needs a length and at least one opening")
    rows = []
    for one in openings:
        over = one["z"] - (draft + trim * (0.5 - one["x"] / length))
        if over < 0:
            raise OutOfRange(f"{one['name']} is under water when she floats upright")
        angle = atan2(over, abs(one["y"]))
        rows.append({"name": one["name"], "over": over, "angle": angle, "lets_in": one.get("lets_in", True)})
    lowest = min(rows, key=lambda row: row["over"])
    first = min((row for row in rows if row["lets_in"]), key=lambda row: row["angle"], default=None)
    return {
        "openings": rows,
        "freeboard": lowest["over"],
        "lowest": lowest["name"],
        "angle": first["angle"] if first is not None else None,
        "first": first["name"] if first is not None else "",
    }


METHOD = Method(
    name="tow.downflooding",
    title="Heel at which water reaches the openings",
    formula="f = z − T − trim (½ − x/L); φ = atan(f/|y|)",
    source=Citation("Geometry of the upright waterline turned about its centreline", standing="derived"),
    valid="wall-sided ships at small trim; heel by wind, roll and sea, and her own sinkage, are left out",
    inputs={
        "openings": listed(
            record(
                "An opening.",
                ("name", "x", "y", "z"),
                name=text("What it is."),
                x=length("Forward of AP."),
                y=length("From the centreline."),
                z=length("Its lowest edge above the baseline."),
                lets_in={"type": "boolean", "description": "Whether it lets water in when it is closed for sea."},
            ),
            "Openings by which water comes in.",
        ),
        "length": length("Length between perpendiculars."),
        "draft": length("Draft amidships."),
        "trim": length("Trim by the stern."),
    },
    outputs=(
        Symbol(
            "openings",
            "each opening",
            "table",
            "",
            (
                Symbol("name", "the opening", "text", ""),
                Symbol("over", "its height over the water", "length", "m"),
                Symbol("angle", "the heel that brings it to the water", "angle", "deg"),
                Symbol("lets_in", "whether it then lets water in", "truth", ""),
            ),
        ),
        Symbol("freeboard", "height of the lowest over the water", "length", "m"),
        Symbol("lowest", "which that is", "text", ""),
        Symbol(
            "angle",
            "least heel that brings an opening that lets it in to the water; none where none does",
            "angle",
            "deg",
        ),
        Symbol("first", "which that is", "text", ""),
    ),
    kernel=downflooding,
    example={
        "openings": [{"name": "engine room skylight", "x": "12 m", "y": "1.2 m", "z": "5.6 m"}],
        "length": "48 m",
        "draft": "3.2 m",
        "trim": "0.4 m",
    },
)
