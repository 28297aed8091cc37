"""Measured wastage and design demand side by side: what the anodes gave, of what the surfaces are reckoned to ask."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number

Reading = Literal["as calculated", "more than calculated", "less than calculated", "less, and some were spent"]

NEAR = 0.25
"""Share within which the two are taken to agree: neither is known better (common practice, no source)."""


class Reconciled(Struct, frozen=True):
    """What the anodes gave, as a share of what is reckoned, and how that is read."""

    share: float
    reading: Reading


def reconciled(measured: float, demand: float, spent: int) -> Reconciled:
    """Set the mean current that anodes gave beside the mean current that the surfaces are reckoned to ask.

    Formula: share = measured/demand; as reckoned within NEAR of one.
    Symbols: measured, demand [A]; spent: anodes wasted beyond what can be used, which gave what they had and no more.
    Source: derived. Raises OutOfRange.
    """
    if measured < 0 or not demand > 0 or spent < 0:
        raise OutOfRange("the demand must be more than nothing, and what was given no less")
    share = measured / demand
    if share > 1 + NEAR:
        return Reconciled(share, "more than calculated")
    if share >= 1 - NEAR:
        return Reconciled(share, "as calculated")
    return Reconciled(share, "less, and some were spent" if spent else "less than calculated")


def outputs_of(found: Reconciled) -> Mapping[str, Any]:
    """Give it as the outputs of the method."""
    return {"share": found.share, "reading": found.reading}


METHOD = Method(
    name="anode.reconciled",
    title="What anodes gave beside what the surfaces are reckoned to ask",
    formula="share = I given/I asked",
    source=Citation("Comparison of the two", standing="derived"),
    valid="mean currents over the same kind of years",
    inputs={
        "measured": number("Mean current that the anodes gave, A.", minimum=0),
        "demand": number("Mean current that the surfaces are reckoned to ask, A.", exclusiveMinimum=0),
        "spent": {"type": "integer", "minimum": 0, "description": "Anodes wasted beyond what can be used."},
    },
    outputs=(
        Symbol("share", "given, as a share of what is reckoned", "fraction", "%"),
        Symbol("reading", "how that is read", "text", ""),
    ),
    kernel=reconciled,
    figures=outputs_of,
    example={"measured": 1.4, "demand": 6.2, "spent": 3},
)
