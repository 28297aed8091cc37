"""Area of patch repairs from the rust grade of a surface: ASTM D610 and ISO 4628-3."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from msgspec import Struct

from tenderwright.calculations.coatings.ranges import require_not_negative
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity

RustScale = Literal["ASTM D610", "ISO 4628-3"]

_D610_UPPER = {
    10: 0.0001,
    9: 0.0003,
    8: 0.001,
    7: 0.003,
    6: 0.01,
    5: 0.03,
    4: 0.10,
    3: 0.16,
    2: 0.33,
    1: 0.50,
    0: 1.00,
}
"""Greatest fraction rusted in each grade, ASTM D610, Table 1; grade 0 is anything above one half."""

_ISO_4628_3 = {
    0: (0.0, 0.0),
    1: (0.0005, 0.0005),
    2: (0.005, 0.005),
    3: (0.01, 0.01),
    4: (0.08, 0.08),
    5: (0.40, 0.50),
}
"""Fraction rusted of each grade Ri, ISO 4628-3 (from memory); one figure but for Ri 5."""

SOURCES = {
    "ASTM D610": Citation("ASTM D610", "Table 1"),
    "ISO 4628-3": Citation("ISO 4628-3", "Ri grades", standing="from memory"),
}


class RustedFraction(Struct, frozen=True):
    """The least and greatest fraction of an area that a rust grade stands for."""

    least: float
    greatest: float

    @property
    def middle(self) -> float:
        """Give the middle of the range."""
        return 0.5 * (self.least + self.greatest)


def rusted_fraction(grade: int, scale: RustScale) -> RustedFraction:
    """Give the fraction rusted that a grade stands for; D610 runs from 10 (sound) to 0, ISO from 0 to 5.

    Source: ASTM D610, Table 1 (each grade from the bound of the next better); ISO 4628-3 (from memory).
    Raises OutOfRange for a grade that the scale does not have.
    """
    if scale == "ASTM D610":
        if grade not in _D610_UPPER:
            raise OutOfRange(f"ASTM D610 has grades 0 to 10, got {grade}")
        return RustedFraction(_D610_UPPER.get(grade + 1, 0.0), _D610_UPPER[grade])
    if grade not in _ISO_4628_3:
        raise OutOfRange(f"ISO 4628-3 has grades Ri 0 to Ri 5, got {grade}")
    return RustedFraction(*_ISO_4628_3[grade])


def patch_area(area: float, grade: int, scale: RustScale) -> float:
    """Find the area of rust to repair in an area, m²: the area by the middle of its grade.

    Source: as `rusted_fraction`; the middle is derived. Raises OutOfRange.
    """
    require_not_negative("area", area)
    return area * rusted_fraction(grade, scale).middle


def _kernel(area: float, grade: int, scale: RustScale) -> Mapping[str, float]:
    fraction = rusted_fraction(grade, scale)
    return {
        "patches": patch_area(area, grade, scale),
        "least": area * fraction.least,
        "greatest": area * fraction.greatest,
        "fraction": fraction.middle,
    }


METHOD = Method(
    name="coating.patch-area",
    title="Area of patch repairs from a rust grade",
    formula="A_p = A · middle of the grade's range",
    source=Citation("ASTM D610", "Table 1; ISO 4628-3 from memory"),
    valid="visible rust as graded; the area blasted and feathered round each patch is larger",
    inputs={
        "area": quantity("area", "Area that was graded."),
        "grade": {
            "type": "integer",
            "minimum": 0,
            "maximum": 10,
            "description": "Rust grade: 10 (sound) to 0 by ASTM D610, or Ri 0 (sound) to 5 by ISO 4628-3.",
        },
        "scale": {
            "type": "string",
            "enum": ["ASTM D610", "ISO 4628-3"],
            "description": "Scale of the grade.",
        },
    },
    outputs=(
        Symbol("patches", "area of patches", "area", "m2"),
        Symbol("least", "least area the grade stands for", "area", "m2"),
        Symbol("greatest", "greatest area the grade stands for", "area", "m2"),
        Symbol("fraction", "middle of the grade's range", "fraction", "%"),
    ),
    kernel=_kernel,
    example={"area": "620 m2", "grade": 4, "scale": "ASTM D610"},
    cautions=("the two scales run in opposite directions",),
)
