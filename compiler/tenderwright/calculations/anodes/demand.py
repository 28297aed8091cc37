"""Current that steel asks of her anodes when they are new, on average, and when they are spent."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.anodes.breakdown import BARE, Breakdown, coating_breakdown
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import listed, number, quantity
from tenderwright.quantities.display import plainly

B401 = Citation("DNV-RP-B401", "design current densities, bare steel, 0 to 30 m", standing="from memory")
LR_OFFSHORE = Citation("Lloyd's Register, Offshore Units", "Part 8, Ch. 4, Table 4.1.1")

_YEAR = 365.25 * 86400.0


class Densities(Struct, frozen=True):
    """Current densities of bare steel in one water, A/m²: to polarise, on average, and at the end of the life."""

    water: str
    initial: float
    mean: float
    final: float
    source: Citation

    def __post_init__(self) -> None:
        for value in (self.initial, self.mean, self.final):
            if not (math.isfinite(value) and value >= 0.0):
                raise OutOfRange(f"a current density cannot be less than nothing, got {value:g} A/m2")


WATERS: tuple[Densities, ...] = (
    Densities("tropical, above 20 degC", 0.150, 0.070, 0.100, B401),
    Densities("sub-tropical, 12 to 20 degC", 0.170, 0.080, 0.110, B401),
    Densities("temperate, 7 to 11 degC", 0.200, 0.100, 0.130, B401),
    Densities("arctic, below 7 degC", 0.250, 0.120, 0.170, B401),
    Densities("North Sea north of 62 N", 0.220, 0.100, 0.130, LR_OFFSHORE),
    Densities("North Sea, 55 to 62 N", 0.180, 0.090, 0.120, LR_OFFSHORE),
    Densities("southern North Sea", 0.150, 0.080, 0.100, LR_OFFSHORE),
    Densities("Gulf, West Africa, Brazil, China, India", 0.130, 0.070, 0.090, LR_OFFSHORE),
    Densities("Mediterranean, Gulf of Mexico, US West, W Australia", 0.110, 0.060, 0.080, LR_OFFSHORE),
    Densities("mud", 0.025, 0.020, 0.020, LR_OFFSHORE),
)
"""Current densities that have been published for bare steel; all are for structures that stand, not ships under way."""


class Surface(Struct, frozen=True):
    """One surface to protect: area in m², its water, and how its coating breaks down."""

    area: float
    densities: Densities
    breakdown: Breakdown = BARE

    def __post_init__(self) -> None:
        if not (math.isfinite(self.area) and self.area >= 0.0):
            raise OutOfRange(f"an area cannot be less than nothing, got {plainly(self.area, 'area')}")


class Demand(Struct, frozen=True):
    """Current asked, A."""

    initial: float
    mean: float
    final: float


def total_demand(surfaces: Sequence[Surface]) -> Demand:
    """Find the current that all surfaces ask.

    Formula: I = sum(A i fc), each at the start, on average and at the end. Symbols as `Surface`.
    Source: DNV-RP-B401 (from memory); sum of area by density MIL-HDBK-1004/10, p. 209. Raises OutOfRange.
    """
    return Demand(
        sum(s.area * s.densities.initial * s.breakdown.initial for s in surfaces),
        sum(s.area * s.densities.mean * s.breakdown.mean for s in surfaces),
        sum(s.area * s.densities.final * s.breakdown.final for s in surfaces),
    )


def _kernel(surfaces: Sequence[Mapping[str, Any]], life: float) -> Mapping[str, float]:
    years = life / _YEAR
    taken = []
    for surface in surfaces:
        given = Densities("given", surface["initial"], surface["mean"], surface["final"], B401)
        coated = "a" in surface or "b" in surface
        broken = coating_breakdown(surface.get("a", 0.0), surface.get("b", 0.0), years) if coated else BARE
        taken.append(Surface(surface["area"], given, broken))
    found = total_demand(taken)
    return {"initial": found.initial, "mean": found.mean, "final": found.final}


def _density(description: str) -> dict[str, Any]:
    return quantity("current_density", description)


METHOD = Method(
    name="anode.current-demand",
    title="Current demand with the breakdown of coatings",
    formula="I = Σ A i fc; fc = a + b t, at most 1; mean a + b T/2, or 1 − (1 − a)²/(2 b T) where the final passes 1",
    source=Citation("DNV-RP-B401", "current demand; MIL-HDBK-1004/10, p. 209", standing="from memory"),
    valid="steel in still or slow sea water; a hull under way asks more",
    inputs={
        "surfaces": listed(
            {
                "type": "object",
                "properties": {
                    "area": quantity("area", "Wetted area."),
                    "initial": _density("Current density of bare steel to polarise it."),
                    "mean": _density("Mean current density of bare steel."),
                    "final": _density("Current density of bare steel at the end."),
                    "a": number(
                        "Breakdown of the coating when new; leave a and b out for bare steel.", minimum=0, maximum=1
                    ),
                    "b": number("Breakdown of the coating per year.", minimum=0, maximum=1),
                },
                "required": ["area", "initial", "mean", "final"],
                "additionalProperties": False,
            },
            "The surfaces to protect.",
        ),
        "life": quantity("time", "Time that the anodes are to last."),
    },
    outputs=(
        Symbol("initial", "current at the start", "current", "A"),
        Symbol("mean", "mean current", "current", "A"),
        Symbol("final", "current at the end", "current", "A"),
    ),
    kernel=_kernel,
    example={
        "surfaces": [
            {
                "area": "520 m2",
                "initial": "150 mA/m2",
                "mean": "80 mA/m2",
                "final": "100 mA/m2",
                "a": 0.05,
                "b": 0.025,
            },
            {"area": "4 m2", "initial": "150 mA/m2", "mean": "80 mA/m2", "final": "100 mA/m2"},
        ],
        "life": "10 yr",
    },
    cautions=("breakdown constants of coatings and the densities of DNV-RP-B401 are from memory",),
)
