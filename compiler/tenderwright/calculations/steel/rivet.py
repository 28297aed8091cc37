"""Diameter of a rivet and of its hole from the thickness of the plate."""

from __future__ import annotations

import math
from collections.abc import Mapping

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import plainly

_INCH = 0.0254


def rivet_diameter(thickness: float) -> float:
    """Find the diameter of a rivet before driving, m: d = 1.2 sqrt(t) in inches (plate thickness t in m).

    Source: Unwin, in A Text-Book of Mechanical Engineering. Raises OutOfRange.
    """
    return 1.2 * _root_inches(thickness) * _INCH


def rivet_hole(thickness: float) -> float:
    """Find the diameter of the hole, and of the rivet driven, m: 1.3 sqrt(t) in inches (thickness t in m).

    Source: Unwin, as `rivet_diameter`. Raises OutOfRange.
    """
    return 1.3 * _root_inches(thickness) * _INCH


def rivet_diameter_metric(thickness: float) -> float:
    """Find the diameter of a rivet by the metric form, m: d = 6 sqrt(t) in millimetres (thickness t in m).

    It gives 0.8 % less than the form in inches. Source: Unwin, metric form. Raises OutOfRange.
    """
    _require(thickness)
    return 6.0 * math.sqrt(thickness * 1e3) * 1e-3


def _root_inches(thickness: float) -> float:
    _require(thickness)
    return math.sqrt(thickness / _INCH)


def _require(thickness: float) -> None:
    if not (math.isfinite(thickness) and thickness > 0.0):
        raise OutOfRange(f"the thickness of the plate must be more than nothing, got {plainly(thickness, 'centre')}")


def _kernel(thickness: float) -> Mapping[str, float]:
    return {
        "diameter": rivet_diameter(thickness),
        "hole": rivet_hole(thickness),
        "diameter_metric": rivet_diameter_metric(thickness),
    }


METHOD = Method(
    name="steel.rivet",
    title="Diameter of a rivet and its hole",
    formula="d = 1.2 √t, hole 1.3 √t (inches); d = 6 √t (millimetres)",
    source=Citation("Unwin, in A Text-Book of Mechanical Engineering"),
    valid="a first size for a joint that cannot be measured; the ship's own rivets come before it",
    inputs={"thickness": quantity("length", "Thickness of one plate of the joint.")},
    outputs=(
        Symbol("diameter", "diameter of the rivet", "length", "mm"),
        Symbol("hole", "diameter of the hole", "length", "mm"),
        Symbol("diameter_metric", "diameter of the rivet by the metric form", "length", "mm"),
    ),
    kernel=_kernel,
    example={"thickness": "3/8 in"},
)
