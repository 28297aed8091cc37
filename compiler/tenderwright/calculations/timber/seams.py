"""Seams to rake out and caulk, by their state."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity, record

STATES = ("hard", "soft", "weeping", "spewed", "open")
RAKED = ("soft", "weeping", "spewed", "open")
"""States in which a seam is raked out and caulked anew: all but hard (common practice, no source)."""


def seam_lengths(seams: Sequence[Mapping[str, Any]]) -> Mapping[str, float]:
    """Sum up seams by their state.

    Formula: rake = sum of l over all that are not hard. Symbols: length l of each stretch [m].
    Source: common practice, no source. Raises OutOfRange.
    """
    by_state = dict.fromkeys(STATES, 0.0)
    for one in seams:
        if one["length"] < 0:
            raise OutOfRange("a seam is no shorter than nothing")
        by_state[one["state"]] += one["length"]
    return {
        **by_state,
        "total": sum(by_state.values()),
        "rake": sum(by_state[state] for state in RAKED),
    }


METHOD = Method(
    name="timber.seams",
    title="Seams to rake out and caulk",
    formula="rake = Σ l of seams that are soft, weeping, spewed or open",
    source=Citation("Shipwrights' practice", standing="common practice, no source"),
    valid="carvel planking; the seams of planks renewed are not counted again",
    inputs={
        "seams": listed(
            record(
                "A stretch of seam.",
                ("length", "state"),
                length=quantity("length", "Its length."),
                state={"type": "string", "enum": list(STATES), "description": "As it was found."},
            ),
            "The seams and butts.",
            0,
        )
    },
    outputs=(
        *(Symbol(state, f"length of seam found {state}", "length", "m") for state in STATES),
        Symbol("total", "length of seam looked at", "length", "m"),
        Symbol("rake", "length of seam to rake out and caulk", "length", "m"),
    ),
    kernel=seam_lengths,
    example={"seams": [{"length": "22 m", "state": "hard"}, {"length": "9.5 m", "state": "weeping"}]},
    cautions=("caulking driven hard into dry planking may start fastenings when the wood swells",),
)
