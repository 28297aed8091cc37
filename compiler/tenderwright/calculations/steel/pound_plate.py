"""Plate named by its weight: a 20.4 lb plate is half an inch of steel."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol

_INCH = 0.0254

PoundPlateMetal = Literal["steel", "wrought iron"]

POUNDS_PER_INCH: dict[PoundPlateMetal, float] = {"steel": 40.8, "wrought iron": 40.0}
"""Weight of plate in lb/ft² for each inch; the figure for wrought iron is from memory."""

TOLERANCE = 0.02
"""Greatest difference between a name and the nearest sixteenth that passes as rounding."""


@dataclass(frozen=True)
class PoundPlate:
    """A plate known by its pounds per square foot; thicknesses in m."""

    pounds: float
    metal: PoundPlateMetal
    exact: float
    """Thickness of that weight."""
    sixteenths: int
    """Nearest whole number of sixteenths of an inch."""
    difference: float
    """Exact thickness over the nominal one, less 1."""

    @property
    def nominal(self) -> float:
        """Give the thickness in whole sixteenths of an inch, m."""
        return self.sixteenths * _INCH / 16.0

    @property
    def doubtful(self) -> bool:
        """Tell whether the name is further from a sixteenth than rounding explains."""
        return abs(self.difference) > TOLERANCE


def pound_plate(pounds: float, metal: PoundPlateMetal = "steel") -> PoundPlate:
    """Find the thickness of a plate from its weight in pounds per square foot.

    Formula: t[in] = lb / 40.8 for steel, lb / 40 for wrought iron; the nominal is the nearest 1/16 in.
    Source: TB 55-1900-201-45/1, Appendix E-11 (7.7 lb is 3/16 in); Pressure Vessel Design Manual, Table 2-18.
    Raises OutOfRange for a weight that is not above nothing.
    """
    if not (math.isfinite(pounds) and pounds > 0.0):
        raise OutOfRange(f"the weight of a plate must be more than nothing, got {pounds:g} lb/ft2")
    inches = pounds / POUNDS_PER_INCH[metal]
    sixteenths = max(1, round(16.0 * inches))
    return PoundPlate(pounds, metal, inches * _INCH, sixteenths, 16.0 * inches / sixteenths - 1.0)


def read_pound_plate(name: str, metal: PoundPlateMetal = "steel") -> PoundPlate:
    """Read a name such as `20.4 lb plate`, `10-lb` or `15.3#` and find its thickness.

    Source: as `pound_plate`. Raises OutOfRange for a name that is not pounds of plate.
    """
    found = re.fullmatch(r"\s*(\d+(?:\.\d+)?)[\s-]*(?:lbs?\.?|pounds?|#)(?:[\s-]*plate)?\s*", name.casefold())
    if found is None:
        raise OutOfRange(f"{name!r} does not name a plate by its pounds, as '20.4 lb plate' does")
    return pound_plate(float(found[1]), metal)


def _kernel(plate: str, metal: PoundPlateMetal = "steel") -> Mapping[str, Any]:
    found = read_pound_plate(plate, metal)
    return {
        "exact": found.exact,
        "nominal": found.nominal,
        "sixteenths": float(found.sixteenths),
        "difference": found.difference,
        "doubtful": found.doubtful,
    }


METHOD = Method(
    name="steel.pound-plate",
    title="Thickness of a plate named by its weight",
    formula="t = lb / 40.8 in for steel, lb / 40 in for wrought iron; nearest 1/16 in",
    source=Citation("TB 55-1900-201-45/1", "Appendix E-11"),
    valid="names in pounds per square foot; a name more than 2 % from a sixteenth is doubtful",
    inputs={
        "plate": {
            "type": "string",
            "description": "The name of the plate.",
            "examples": ["20.4 lb plate", "10 lb"],
        },
        "metal": {
            "type": "string",
            "enum": ["steel", "wrought iron"],
            "description": "Steel unless given.",
        },
    },
    outputs=(
        Symbol("exact", "thickness of that weight", "length", "mm"),
        Symbol("nominal", "nearest sixteenth of an inch", "length", "mm"),
        Symbol("sixteenths", "whole sixteenths of an inch", "each", "each"),
        Symbol("difference", "exact over nominal, less 1", "fraction", "%"),
        Symbol("doubtful", "whether it is more than 2 % from a sixteenth", "truth", ""),
    ),
    kernel=_kernel,
    example={"plate": "20.4 lb plate"},
    optional=frozenset({"metal"}),
    cautions=("names were rounded, and plate was rolled over its weight: gauge before ordering",),
)
