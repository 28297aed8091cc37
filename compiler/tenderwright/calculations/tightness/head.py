"""Heads of water and pressures, and the water in a U-tube that shows them."""

from __future__ import annotations

import math
from collections.abc import Mapping

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import plainly

GRAVITY = 9.80665
FRESH_WATER, SEA_WATER = 1000.0, 1025.0
"""Densities, kg/m³."""


def head_to_pressure(head: float, density: float = FRESH_WATER) -> float:
    """Find the pressure under a head of water, Pa: p = rho g h; head h in m, density rho in kg/m³ (derived).

    Raises OutOfRange.
    """
    _require(head, density, "head")
    return density * GRAVITY * head


def pressure_to_head(pressure: float, density: float = FRESH_WATER) -> float:
    """Find the head of water that makes a pressure, m: h = p/(rho g); pressure p in Pa (derived). Raises OutOfRange."""
    _require(pressure, density, "pressure")
    return pressure / (density * GRAVITY)


def u_tube_height(pressure: float, density: float = FRESH_WATER) -> float:
    """Find the difference of level in a U-tube open to the air, m: that of the head itself (derived).

    A tube that lets the water go at this height is also the relief of the tank. Raises OutOfRange.
    """
    return pressure_to_head(pressure, density)


def _require(value: float, density: float, name: str) -> None:
    if not (math.isfinite(value) and value >= 0.0):
        raise OutOfRange(f"the {name} cannot be less than nothing, got {value:g}")
    if not (math.isfinite(density) and density > 0.0):
        raise OutOfRange(
            f"the density of water must be more than nothing, got {plainly(density, 'density in kilograms')}"
        )


def _kernel(
    head: float | None = None, pressure: float | None = None, density: float = FRESH_WATER
) -> Mapping[str, float]:
    if head is not None and pressure is None:
        found = head_to_pressure(head, density)
    elif pressure is not None and head is None:
        found = pressure
    else:
        raise OutOfRange("give a head or a pressure, and not both")
    return {"pressure": found, "head": pressure_to_head(found, density), "load": found / GRAVITY}


METHOD = Method(
    name="tightness.head",
    title="Head of water and pressure",
    formula="p = ρ g h",
    source=Citation("Hydrostatics, g = 9.80665 m/s²", standing="derived"),
    valid="water at rest",
    inputs={
        "head": quantity("length", "Head of water; give this or the pressure."),
        "pressure": quantity("pressure", "Pressure; give this or the head.", "0.15 bar"),
        "density": quantity("density", "Density of the water; fresh water unless given."),
    },
    outputs=(
        Symbol("pressure", "pressure", "pressure", "bar"),
        Symbol("head", "head of water, and height of the U-tube", "length", "m"),
        Symbol("load", "load that it puts on plate", "area_density", "kg/m2"),
    ),
    kernel=_kernel,
    example={"head": "2.4 m", "density": "1025 kg/m3"},
    optional=frozenset({"head", "pressure", "density"}),
)
