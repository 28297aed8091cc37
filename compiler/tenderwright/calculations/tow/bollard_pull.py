"""The bollard pull asked of a tug: the greatest of all weathers, by what she has left of hers in each."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import GRAVITY, listed, quantity, record, text

EFFICIENCY = 0.75
"""Share of her bollard pull that a tug has left under way in flat water (common practice, no source); it falls to
0.3 or 0.5 for a small tug in a high sea."""


def bollard_pull(cases: Sequence[Mapping[str, Any]]) -> Mapping[str, Any]:
    """Give the greatest pull and the bollard pull that it takes, over all weathers of which the pull is known.

    Formula: BP = max(pull/efficiency)/g.
    Symbols: pull [N] of each case, left out where it is not known; efficiency [-].
    Source: common practice, no source; the survival case of MSC/Circ.884, 9.4, is from memory.
    Range: efficiency over 0 to 1. Raises OutOfRange.
    """
    known = [one for one in cases if one.get("pull") is not None]
    if not known:
        raise OutOfRange("the pull is known in no weather")
    if any(not 0 < one["efficiency"] <= 1 for one in known):
        raise OutOfRange("the tug's efficiency must be over 0 to 1")
    governs = max(known, key=lambda one: one["pull"] / one["efficiency"])
    needed = governs["pull"] / governs["efficiency"]
    return {
        "pull": max(one["pull"] for one in known),
        "needed": needed,
        "bollard": needed / GRAVITY,
        "governs": governs["name"],
        "unknown": ", ".join(one["name"] for one in cases if one.get("pull") is None),
    }


METHOD = Method(
    name="tow.bollard-pull",
    title="Bollard pull asked of a tug",
    formula="BP = max(pull/efficiency)/g",
    source=Citation("Pull over efficiency, the greatest of all weathers", standing="common practice, no source"),
    valid="efficiencies from the tug's master; a tug that cannot hold the hove-to case drifts with her tow",
    inputs={
        "cases": listed(
            record(
                "A weather.",
                ("name", "efficiency"),
                name=text("What it is called."),
                pull=quantity("force", "Pull asked at the tug; left out where it is not known."),
                efficiency=quantity("fraction", "Share of her bollard pull that the tug has left."),
            ),
            "Weathers, with the pull in each.",
        ),
    },
    outputs=(
        Symbol("pull", "greatest pull on the gear", "force", "kN"),
        Symbol("needed", "bollard pull asked, as a force", "force", "kN"),
        Symbol("bollard", "bollard pull asked, as certificates state it", "mass", "t"),
        Symbol("governs", "weather that asks it", "text", ""),
        Symbol("unknown", "weathers in which the pull is not known", "text", ""),
    ),
    kernel=bollard_pull,
    example={
        "cases": [
            {"name": "probable", "pull": "30 kN", "efficiency": "75 %"},
            {"name": "hove to", "pull": "41 kN", "efficiency": "50 %"},
        ]
    },
)
