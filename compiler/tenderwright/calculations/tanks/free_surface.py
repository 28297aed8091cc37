"""Free-surface moment of a rectangular tank and the metacentric height it costs."""

from __future__ import annotations

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity


def free_surface(
    length: float, breadth: float, density: float, displacement: float, divisions: int = 1
) -> dict[str, float]:
    """Compute the free-surface moment of a slack rectangular tank and its loss of GM.

    Formula: i = l*b^3/(12 n^2); FSM = rho*i; loss of GM = FSM/W.
    Symbols: l, b [m]; n equal divisions by longitudinal bulkheads [-]; rho of the liquid [kg/m3]; W [kg];
    i [m4], FSM [kg m], loss [m].
    Source: Derrett, Ship Stability for Masters and Mates, pp. 193-195.
    Range: slack, small heel, the surface reaching neither top nor bottom. Raises OutOfRange.
    """
    if min(length, breadth, density, displacement) <= 0:
        raise OutOfRange("length, breadth, density and displacement must be positive")
    if divisions < 1 or divisions != int(divisions):
        raise OutOfRange("the number of divisions must be a whole number, at least 1")
    second_moment = length * breadth**3 / (12 * divisions**2)
    return {
        "second_moment": second_moment,
        "free_surface_moment": second_moment * density,
        "loss_of_gm": second_moment * density / displacement,
    }


METHOD = Method(
    name="tank.free-surface",
    title="Free surface of a rectangular tank",
    formula="i = l b^3/(12 n^2); FSM = rho i; loss of GM = FSM/W",
    source=Citation("Derrett, Ship Stability for Masters and Mates", "pp. 193-195"),
    valid="slack rectangular tank, small heel",
    inputs={
        "length": quantity("length", "Length of the free surface."),
        "breadth": quantity("length", "Whole breadth of the free surface."),
        "density": quantity("density", "Density of the liquid."),
        "displacement": quantity("mass", "Displacement of the ship."),
        "divisions": {
            "type": "integer",
            "minimum": 1,
            "description": "Equal parts into which longitudinal bulkheads divide the breadth.",
        },
    },
    outputs=(
        Symbol("second_moment", "second moment of the free surface", "second_moment", "m4"),
        Symbol("free_surface_moment", "free-surface moment", "moment", "t*m"),
        Symbol("loss_of_gm", "virtual loss of metacentric height", "length", "m"),
    ),
    kernel=free_surface,
    example={"length": "15 m", "breadth": "10 m", "density": "1025 kg/m3", "displacement": "8000 t"},
    optional=frozenset({"divisions"}),
)
