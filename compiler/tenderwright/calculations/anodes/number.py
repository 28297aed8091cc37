"""How many anodes: enough mass, enough current when new, and enough when spent, whichever governs."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

from msgspec import Struct

from tenderwright.calculations.anodes.demand import Demand
from tenderwright.calculations.anodes.mass import anode_mass, anode_number, consumption_rate
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity

Governs = Literal["mass", "current when new", "current when spent"]

CAPACITY = {"zinc": 780.0, "aluminium": 2000.0}
"""Capacity of alloys, A h/kg (from memory, DNV-RP-B401)."""

GREATEST_CAPACITY = {"zinc": 820.0, "aluminium": 2980.0}
"""What Faraday's law allows, A h/kg: a capacity above it is a mistake of unit."""

HANDBOOK_YEAR = 8760 * 3600.0
"""The year of the handbooks, 8760 h, in s."""


class AnodeType(Struct, frozen=True):
    """One type of anode: net mass in kg, currents in A when new and when spent."""

    mass: float
    initial: float
    final: float
    utilisation: float
    alloy: Literal["zinc", "aluminium"] = "zinc"
    capacity: float | None = None
    """A h/kg; that of the alloy where None."""

    @property
    def used_capacity(self) -> float:
        """Give the capacity of its alloy, A h/kg; raises OutOfRange above what Faraday's law allows."""
        if self.alloy not in CAPACITY:
            raise OutOfRange(f"the capacity of {self.alloy} anodes is not known here, only of {' and '.join(CAPACITY)}")
        capacity = CAPACITY[self.alloy] if self.capacity is None else self.capacity
        if capacity > GREATEST_CAPACITY[self.alloy]:
            raise OutOfRange(
                f"no {self.alloy} gives {capacity:g} A h/kg; Faraday's law allows {GREATEST_CAPACITY[self.alloy]:g}"
            )
        return capacity


class AnodeNumber(Struct, frozen=True):
    """The anodes of a life, and what governs."""

    mass: float
    """Net mass needed, kg."""
    by_mass: int
    by_initial: int
    by_final: int

    @property
    def number(self) -> int:
        """Give the greatest of the three."""
        return max(self.by_mass, self.by_initial, self.by_final)

    @property
    def governs(self) -> Governs:
        """Tell which of the three it is, mass first where they are level."""
        if self.by_mass == self.number:
            return "mass"
        return "current when new" if self.by_initial == self.number else "current when spent"


def anodes_needed(demand: Demand, anode: AnodeType, life: float) -> AnodeNumber:
    """Count the anodes for a life, in s.

    Formula: M = Icm T / (eps u); N = max(ceil(M/m), ceil(Ici/Iai), ceil(Icf/Iaf)). Symbols: currents asked Ic in A,
    capacity eps, utilisation u, mass m and currents Ia of one anode.
    Source: DNV-RP-B401 (from memory); mass W = Y S I by MIL-HDBK-1004/10, p. 209. Raises OutOfRange.
    """
    mass = anode_mass(demand.mean, life, consumption_rate(anode.used_capacity, anode.utilisation))
    return AnodeNumber(
        mass,
        anode_number(mass, anode.mass),
        anode_number(demand.initial, anode.initial),
        anode_number(demand.final, anode.final),
    )


def _kernel(
    initial_demand: float,
    mean_demand: float,
    final_demand: float,
    life: float,
    mass: float,
    initial_current: float,
    final_current: float,
    utilisation: float,
    alloy: Literal["zinc", "aluminium"] = "zinc",
    capacity: float | None = None,
) -> AnodeNumber:
    anode = AnodeType(mass, initial_current, final_current, utilisation, alloy, capacity)
    return anodes_needed(Demand(initial_demand, mean_demand, final_demand), anode, life)


def outputs_of(found: AnodeNumber) -> Mapping[str, Any]:
    """Give the outputs of the method from a number of anodes."""
    return {
        "mass": found.mass,
        "by_mass": float(found.by_mass),
        "by_initial": float(found.by_initial),
        "by_final": float(found.by_final),
        "number": float(found.number),
        "governs": found.governs,
    }


def _current(description: str) -> dict[str, Any]:
    return quantity("current", description)


METHOD = Method(
    name="anode.number",
    title="Number of anodes by mass and by current",
    formula="M = Icm T/(ε u); N = max(ceil(M/m), ceil(Ici/Iai), ceil(Icf/Iaf))",
    source=Citation("DNV-RP-B401", "number of anodes; mass as MIL-HDBK-1004/10, p. 209", standing="from memory"),
    valid="anodes of one type, spread so that each gives its own current",
    inputs={
        "initial_demand": _current("Current asked at the start."),
        "mean_demand": _current("Mean current asked."),
        "final_demand": _current("Current asked at the end."),
        "life": quantity("time", "Time that the anodes are to last."),
        "mass": quantity("mass", "Net mass of one anode."),
        "initial_current": _current("Current of one anode when new."),
        "final_current": _current("Current of one anode when spent."),
        "utilisation": quantity("fraction", "Fraction of an anode that is used."),
        "alloy": {
            "type": "string",
            "enum": list(CAPACITY),
            "description": "Zinc (780 A h/kg) unless given; aluminium 2000 A h/kg.",
        },
        "capacity": {
            "type": "number",
            "exclusiveMinimum": 0,
            "description": "Capacity in A h/kg, where it is not the usual one of the alloy.",
        },
    },
    outputs=(
        Symbol("mass", "net mass needed", "mass", "kg"),
        Symbol("by_mass", "anodes by mass", "each", "each"),
        Symbol("by_initial", "anodes by current when new", "each", "each"),
        Symbol("by_final", "anodes by current when spent", "each", "each"),
        Symbol("number", "anodes needed", "each", "each"),
        Symbol("governs", "what governs", "text", ""),
    ),
    kernel=_kernel,
    example={
        "initial_demand": "6.5 A",
        "mean_demand": "4.2 A",
        "final_demand": "7.8 A",
        "life": "5 yr",
        "mass": "10 kg",
        "initial_current": "0.40 A",
        "final_current": "0.30 A",
        "utilisation": "85 %",
    },
    optional=frozenset({"alloy", "capacity"}),
    cautions=("capacities are from memory: the maker's certificate comes before them",),
    figures=outputs_of,
)
