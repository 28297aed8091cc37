"""Displacement from a block coefficient, where there are no offsets."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import number, quantity


def block_displacement(
    length: float, breadth: float, draft: float, block_coefficient: float, density: float = 1025.0
) -> dict[str, float]:
    """Estimate volume and displacement from a block coefficient.

    Formula: V = C_B*L*B*T, W = rho*V. Symbols: L, B, T [m]; C_B [-]; density rho [kg/m3]; V [m3], W [kg].
    Source: definition of the block coefficient (Tupper, Introduction to Naval Architecture). Low and high
    take C_B 0.02 either way, the spread of a coefficient read from a similar ship (common practice, no
    source).
    Range: C_B 0.3 to 1. Raises OutOfRange.
    """
    if min(length, breadth, draft, density) <= 0:
        raise OutOfRange("length, breadth, draft and density must be positive")
    if not 0.3 <= block_coefficient <= 1.0:
        raise OutOfRange(f"a block coefficient of {block_coefficient:.3f} is outside 0.3 to 1")
    block = length * breadth * draft
    return {
        "volume": block * block_coefficient,
        "displacement": block * block_coefficient * density,
        "low": block * (block_coefficient - 0.02) * density,
        "high": block * min(block_coefficient + 0.02, 1.0) * density,
    }


METHOD = Method(
    name="hydrostatics.block-displacement",
    title="Displacement from a block coefficient",
    formula="V = CB L B T; W = rho V",
    source=Citation("Tupper, Introduction to Naval Architecture", "definition of the block coefficient"),
    valid="block coefficient 0.3 to 1, for the draft at which it was found",
    inputs={
        "length": quantity("length", "Length the coefficient refers to."),
        "breadth": quantity("length", "Moulded breadth."),
        "draft": quantity("length", "Mean draft."),
        "block_coefficient": number("Block coefficient."),
        "density": quantity("density", "Density of the water."),
    },
    outputs=(
        Symbol("volume", "displaced volume", "volume", "m3"),
        Symbol("displacement", "displacement", "mass", "t"),
        Symbol("low", "displacement with the coefficient 0.02 less", "mass", "t"),
        Symbol("high", "displacement with the coefficient 0.02 more", "mass", "t"),
    ),
    kernel=block_displacement,
    example={"length": "45 m", "breadth": "8.5 m", "draft": "3 m", "block_coefficient": 0.55},
    optional=frozenset({"density"}),
    cautions=("The coefficient changes with draft; use hydrostatic tables or offsets where they exist.",),
)
