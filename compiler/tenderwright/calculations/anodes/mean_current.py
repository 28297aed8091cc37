"""Mean current that anodes gave, from the mass that they lost."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity

_YEAR = 365.25 * 86400.0


def mean_current(wasted: float, mass: float, number: int, capacity: float, years: float) -> float:
    """Find the mean current that anodes gave, A: w m N eps / (8760 t).

    Symbols: fraction wasted w, net mass m in kg, number N, capacity eps in A h/kg, years t. Source: derived.
    Raises OutOfRange.
    """
    if not 0.0 <= wasted <= 1.0:
        raise OutOfRange(f"the wasted part is a fraction of 0 to 1, got {wasted:g}")
    if min(mass, capacity) < 0.0 or number < 0 or not years > 0.0:
        raise OutOfRange("mass, number, capacity and years cannot be less than nothing")
    return wasted * mass * number * capacity / (8760.0 * years)


def _kernel(left: float, mass: float, capacity: float, time: float) -> dict[str, float]:
    return {"current": mean_current(1.0 - left, mass, 1, capacity, time / _YEAR)}


METHOD = Method(
    name="anode.mean-current",
    title="Mean current that anodes gave",
    formula="I = (1 - left) M eps/t",
    source=Citation("Charge of the alloy that was used", standing="derived"),
    valid="anodes whose alloy went into current; the year of the handbooks, 8760 h",
    inputs={
        "left": quantity("fraction", "What was left of them, on the mean."),
        "mass": quantity("mass", "Net mass of all of them when new."),
        "capacity": number("Capacity of the alloy in A h/kg.", exclusiveMinimum=0),
        "time": quantity("time", "Time since they were fitted new."),
    },
    outputs=(Symbol("current", "mean current of all of them", "current", "A"),),
    kernel=_kernel,
    example={"left": "55 %", "mass": "120 kg", "capacity": 780, "time": "3 yr"},
)
