"""Area of a band of shell between two waterlines, such as a boottop, or from a waterline to the deck edge."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS, OFFSETS, hull_from_offsets
from tenderwright.calculations.hydrostatics.shell_area import end_area, shell_area
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import quantity


def band_area(form: HullForm, lower: float | None = None, upper: float | None = None, trim: float = 0.0) -> float:
    """Compute the area of hull, shell and flat ends, between two waterlines [m2].

    Symbols: lower, upper drafts amidships [m]; None for the keel and for the deck edge; trim of both [m].
    Formula and source: see `shell_area`. Raises OutOfRange.
    """
    return shell_area(form, lower, upper, trim) + end_area(form, lower, upper, trim)


def band_area_from_offsets(
    offsets: Mapping[str, Any],
    lower: float | None = None,
    upper: float | None = None,
    trim: float = 0.0,
    share: float = 0.0,
) -> dict[str, float]:
    """Compute a band's area [m2] from a table of offsets; lower, upper and trim in m, share how sure areas are."""
    area = band_area(hull_from_offsets(offsets), lower, upper, trim)
    return {"area": area, "uncertainty": share * area}


METHOD = Method(
    name="hydrostatics.band-area",
    title="Area of shell between two waterlines",
    formula="A = S(z upper) - S(z lower); S by girths corrected for slope",
    source=Citation("girths by Simpson's rule with obliquity", "checked against the exact Wigley hull", "derived"),
    valid="moulded shell, both sides; a waterline above the deck edge stops at the deck edge",
    inputs={
        "offsets": OFFSETS,
        "lower": _length("Lower waterline, midway between perpendiculars; the keel where left out."),
        "upper": _length("Upper waterline, midway between perpendiculars; the deck edge where left out."),
        "trim": _length("Trim of both waterlines, positive by the stern."),
        "share": quantity("fraction", "Standard uncertainty of areas of this shell, as a share.", "1 %"),
    },
    outputs=(
        Symbol("area", "area of the band, both sides", "area", "m2"),
        Symbol("uncertainty", "its standard uncertainty", "area", "m2"),
    ),
    kernel=band_area_from_offsets,
    example={"offsets": EXAMPLE_OFFSETS, "lower": "2.2 m", "upper": "2.8 m"},
    optional=frozenset({"lower", "upper", "trim", "share"}),
    cautions=("Bulwarks, rudder and other appendages are not included.",),
)
