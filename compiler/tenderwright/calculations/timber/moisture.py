"""Readings of the moisture of wood, held against a limit."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, quantity
from tenderwright.calculations.verdict import within

LEAST, MOST = 0.07, 0.25
"""Between which a resistance meter gives the moisture; above it only ranks wet and wetter."""
SOURCE = Citation("US Forest Products Laboratory, report 2147", "resistance meters")


def moisture(readings: Sequence[float], limit: float) -> Mapping[str, float]:
    """Hold readings of moisture against the limit above which decay is looked for.

    Formula: counts of readings above the limit, and outside 7 % to 25 %.
    Symbols: moisture by dry mass [-]. Range: none below zero.
    Source: the range of the meter US Forest Products Laboratory, report 2147; the limit is an input. Raises OutOfRange.
    """
    if not readings:
        raise OutOfRange("there is no reading")
    if min(readings) < 0:
        raise OutOfRange("wood is no drier than dry")
    return {
        "number": float(len(readings)),
        "mean": sum(readings) / len(readings),
        "greatest": max(readings),
        "above": float(sum(not within(one, limit) for one in readings)),
        "ranked_only": float(sum(not (LEAST <= one <= MOST) for one in readings)),
    }


METHOD = Method(
    name="timber.moisture",
    title="Moisture of the wood",
    formula="readings above the limit; a resistance meter measures from 7 % to 25 % and only ranks beyond",
    source=SOURCE,
    valid="a resistance meter set for the wood and its temperature",
    inputs={
        "readings": listed(quantity("fraction", "A reading, by dry mass."), "The readings."),
        "limit": quantity("fraction", "Moisture above which decay is looked for."),
    },
    outputs=(
        Symbol("number", "readings taken", "each", "each"),
        Symbol("mean", "mean of the readings", "fraction", "%"),
        Symbol("greatest", "greatest reading", "fraction", "%"),
        Symbol("above", "readings above the limit", "each", "each"),
        Symbol("ranked_only", "readings outside what the meter can measure", "each", "each"),
    ),
    kernel=moisture,
    example={"readings": ["16 %", "19 %", "27 %"], "limit": "20 %"},
    cautions=("wet wood is not yet decayed wood, and planking below water is always wet: bore where it reads high",),
)
