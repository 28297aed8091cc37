"""Borings into planks and timbers: how much of the thickness is unsound."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record
from tenderwright.calculations.verdict import within


def borings(cores: Sequence[Mapping[str, float]], limit: float) -> Mapping[str, Any]:
    """Hold each boring against the share of its thickness that may be unsound.

    Formula: u = depth to sound wood / thickness; beyond the limit where u > limit. Symbols: lengths in m.
    Source: geometry (derived); the limit is an input. Raises OutOfRange.
    """
    shares = []
    for one in cores:
        if not 0 <= one["sound_from"] <= one["through"] or one["through"] <= 0:
            raise OutOfRange("sound wood is met within the thickness, or not at all at its inner face")
        shares.append(one["sound_from"] / one["through"])
    if not shares:
        raise OutOfRange("there is no boring")
    return {
        "unsound": shares,
        "number": float(len(shares)),
        "beyond": float(sum(not within(share, limit) for share in shares)),
        "greatest": max(shares),
    }


METHOD = Method(
    name="timber.borings",
    title="Unsound wood at borings",
    formula="u = depth to sound wood / thickness",
    source=Citation("Geometry", standing="derived"),
    valid="borings from the outer face inward",
    inputs={
        "cores": listed(
            record(
                "A boring.",
                ("through", "sound_from"),
                through=quantity("length", "Thickness of the wood."),
                sound_from=quantity("length", "Depth to sound wood from the outer face."),
            ),
            "The borings.",
        ),
        "limit": quantity("fraction", "Share of the thickness that may be unsound."),
    },
    outputs=(
        Symbol("unsound", "unsound share of the thickness at each boring", "fraction", "%"),
        Symbol("number", "borings made", "each", "each"),
        Symbol("beyond", "borings beyond the limit", "each", "each"),
        Symbol("greatest", "greatest unsound share", "fraction", "%"),
    ),
    kernel=borings,
    example={"cores": [{"through": "45 mm", "sound_from": "18 mm"}], "limit": "25 %"},
    cautions=("plug each hole: an open boring lets water and borers in",),
)
