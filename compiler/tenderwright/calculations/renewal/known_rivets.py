"""Rivets that earlier dockings drove cold, ring-welded, or left as bolts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, record

HOW = ("driven cold", "ring-welded", "replaced by bolts")


def known_rivets(rivets: Sequence[Mapping[str, Any]]) -> dict[str, float]:
    """Count rivets that are not as built, by what was done to them.

    Formula: sums of the numbers written. Range: those that the papers of earlier dockings tell of; more may be there.
    Source: derived; what each asks for: USCG NVIC 7-68, E-37 and E-38 (ring-welding is temporary, bolts for an
    emergency), cold-driven ones sounded one by one (common practice, no source). Raises OutOfRange.
    """
    if any(one["number"] < 0 for one in rivets):
        raise OutOfRange("a number of rivets cannot be less than nothing")
    sums = {how: float(sum(one["number"] for one in rivets if one["how"] == how)) for how in HOW}
    return {"cold": sums["driven cold"], "ring_welded": sums["ring-welded"], "bolts": sums["replaced by bolts"]}


METHOD = Method(
    name="renewal.known-rivets",
    title="Rivets of earlier dockings that are not as built",
    formula="sums of the numbers written",
    source=Citation("Sum of numbers", standing="derived"),
    valid="what the papers of earlier dockings tell of; more may be there",
    inputs={
        "rivets": listed(
            record(
                "Some rivets.",
                ("how", "number"),
                how={"type": "string", "enum": list(HOW), "description": "What was done to them."},
                number={"type": "integer", "minimum": 0, "description": "How many."},
            ),
            "The rivets that are known of.",
            0,
        )
    },
    outputs=(
        Symbol("cold", "rivets driven cold, each to be sounded", "each", "each"),
        Symbol("ring_welded", "rivets ring-welded for the time being", "each", "each"),
        Symbol("bolts", "bolts in rivet holes", "each", "each"),
    ),
    kernel=known_rivets,
    example={"rivets": [{"how": "ring-welded", "number": 64}, {"how": "driven cold", "number": 130}]},
    cautions=("a rivet driven cold looks like another: the papers or the hammer tell, and the papers may be wrong",),
)
