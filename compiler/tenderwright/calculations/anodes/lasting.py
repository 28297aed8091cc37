"""How long a number of anodes lasts by mass."""

from __future__ import annotations

from typing import Literal

from tenderwright.calculations.anodes.demand import Demand
from tenderwright.calculations.anodes.mass import consumption_rate
from tenderwright.calculations.anodes.number import CAPACITY, AnodeType
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity


def greatest_life(demand: Demand, anode: AnodeType, number: int) -> float:
    """Find how long a number of anodes lasts by mass, s: N m eps u / Icm (derived). Raises OutOfRange."""
    if number < 0:
        raise OutOfRange(f"the number of anodes cannot be less than nothing, got {number}")
    if demand.mean <= 0.0:
        raise OutOfRange("anodes that nothing asks current of have no life to find")
    return number * anode.mass / (demand.mean * consumption_rate(anode.used_capacity, anode.utilisation))


def _kernel(
    mean_demand: float,
    number: int,
    mass: float,
    utilisation: float,
    alloy: Literal["zinc", "aluminium"] = "zinc",
    capacity: float | None = None,
) -> dict[str, float]:
    anode = AnodeType(mass, 0.0, 0.0, utilisation, alloy, capacity)
    return {"lasts": greatest_life(Demand(0.0, mean_demand, 0.0), anode, number)}


METHOD = Method(
    name="anode.lasting",
    title="Time that anodes last by mass",
    formula="T = N m eps u/Icm",
    source=Citation("Charge of the alloy that can be used", standing="derived"),
    valid="anodes of one type that share the current evenly; that they give it when new and when spent is not shown",
    inputs={
        "mean_demand": quantity("current", "Mean current asked."),
        "number": {"type": "integer", "minimum": 0, "description": "Anodes fitted."},
        "mass": quantity("mass", "Net mass of one anode."),
        "utilisation": quantity("fraction", "Fraction of an anode that is used."),
        "alloy": {
            "type": "string",
            "enum": list(CAPACITY),
            "description": "Zinc (780 A h/kg) unless given; aluminium 2000 A h/kg.",
        },
        "capacity": number("Capacity in A h/kg, where it is not the usual one of the alloy.", exclusiveMinimum=0),
    },
    outputs=(Symbol("lasts", "time that anodes fitted new last by mass", "time", "yr"),),
    kernel=_kernel,
    example={"mean_demand": "4.2 A", "number": 26, "mass": "10 kg", "utilisation": "85 %"},
    optional=frozenset({"alloy", "capacity"}),
    cautions=("capacities are from memory: the maker's certificate comes before them",),
)
