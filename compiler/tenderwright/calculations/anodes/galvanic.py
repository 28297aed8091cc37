"""Unlike metals in contact in sea water: which of a pair wastes, and how far apart they stand."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity

Risk = Literal["little", "some", "marked"]

SOURCE = Citation("Galvanic series in sea water, as in general handbooks", standing="from memory")

SOME, MARKED = 0.05, 0.20
"""Differences from which a pair is at some risk, and at marked risk, V (common practice, no source)."""


class Metal(Struct, frozen=True):
    """A metal's place in the series: its potential in flowing sea water, V against silver/silver chloride."""

    name: str
    low: float
    high: float

    @property
    def middle(self) -> float:
        """Give the middle of the range."""
        return 0.5 * (self.low + self.high)


METALS: dict[str, Metal] = {
    metal.name: metal
    for metal in (
        Metal("zinc", -1.03, -0.98),
        Metal("aluminium alloy", -1.00, -0.75),
        Metal("mild steel", -0.71, -0.58),
        Metal("wrought iron", -0.71, -0.58),
        Metal("cast iron", -0.71, -0.58),
        Metal("lead", -0.25, -0.19),
        Metal("brass", -0.40, -0.30),
        Metal("manganese bronze", -0.34, -0.27),
        Metal("gunmetal", -0.31, -0.24),
        Metal("tin bronze", -0.31, -0.24),
        Metal("aluminium bronze", -0.42, -0.31),
        Metal("copper", -0.37, -0.29),
        Metal("copper-nickel", -0.28, -0.18),
        Metal("nickel-copper alloy", -0.14, -0.04),
        Metal("stainless steel, passive", -0.10, 0.00),
        Metal("stainless steel, active", -0.57, -0.43),
        Metal("titanium", -0.05, 0.06),
        Metal("graphite", 0.20, 0.30),
    )
}
"""The series, from `SOURCE`: ranges, for a metal moves with flow, temperature and age."""


class Pair(Struct, frozen=True):
    """Two metals in contact."""

    wastes: str | None
    """The one that wastes; None where the two are the same or stand level."""
    spared: str | None
    difference: float
    """Between the middles of their ranges, V."""
    risk: Risk
    small_anode: bool
    """Whether the one that wastes is also the smaller surface, which makes it waste fast."""


def galvanic_pair(one: str, other: str, area_one: float = 1.0, area_other: float = 1.0) -> Pair:
    """Judge two metals in contact in sea water.

    The more negative wastes, faster where it is the smaller surface: a steel rivet in a bronze plate wastes fast, a
    bronze propeller by a painted hull draws on every bare spot. Symbols: names of metals of `METALS`; wetted areas in
    one unit. Source: `SOURCE`; bounds of risk common practice. Raises OutOfRange for a metal not in the series.
    """
    for name in (one, other):
        if name not in METALS:
            raise OutOfRange(f"no metal of the series is called {name!r}")
    if min(area_one, area_other) <= 0.0:
        raise OutOfRange("surfaces in contact have areas of more than nothing")
    first, second = METALS[one], METALS[other]
    difference = abs(first.middle - second.middle)
    if difference == 0.0:
        return Pair(None, None, 0.0, "little", False)
    one_wastes = first.middle < second.middle
    risk: Risk = "marked" if difference >= MARKED else "some" if difference >= SOME else "little"
    small = (area_one < area_other) if one_wastes else (area_other < area_one)
    return Pair(one if one_wastes else other, other if one_wastes else one, difference, risk, small)


def _kernel(one: str, other: str, area_one: float | None = None, area_other: float | None = None) -> Mapping[str, Any]:
    known = area_one is not None and area_other is not None
    found = galvanic_pair(one, other, area_one or 1.0, area_other or 1.0) if known else galvanic_pair(one, other)
    return {
        "wastes": found.wastes,
        "spared": found.spared,
        "difference": found.difference,
        "risk": found.risk,
        "small_anode": found.small_anode if known else None,
    }


def _area(description: str) -> dict[str, Any]:
    return quantity("area", description, "2 m2")


METHOD = Method(
    name="anode.galvanic-pair",
    title="Unlike metals in contact in sea water",
    formula="ΔE between the middles of their ranges in the galvanic series; the more negative wastes",
    source=SOURCE,
    valid="bare metals in electrical contact in the same sea water",
    inputs={
        "one": {"type": "string", "enum": list(METALS), "description": "A metal."},
        "other": {
            "type": "string",
            "enum": list(METALS),
            "description": "The other metal.",
        },
        "area_one": _area("Wetted area of the first."),
        "area_other": _area("Wetted area of the other."),
    },
    outputs=(
        Symbol("wastes", "the metal that wastes", "text", ""),
        Symbol("spared", "the metal that is spared", "text", ""),
        Symbol("difference", "difference of potential", "potential", "V"),
        Symbol("risk", "little, some or marked", "text", ""),
        Symbol("small_anode", "whether the one that wastes is the smaller surface", "truth", ""),
    ),
    kernel=_kernel,
    example={"one": "mild steel", "other": "manganese bronze"},
    optional=frozenset({"area_one", "area_other"}),
    cautions=("the series is from memory, and potentials move with flow and age: it ranks, it does not measure",),
)
