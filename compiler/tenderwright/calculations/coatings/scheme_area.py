"""Area that a paint scheme covers: a share of its zone, or an area that was measured."""

from __future__ import annotations

from tenderwright.calculations.coatings.patch_area import rusted_fraction
from tenderwright.calculations.coatings.ranges import require_not_negative
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity


def scheme_area(
    zone: float, share: float | None = None, rust_grade: int | None = None, measured: float | None = None
) -> dict[str, float]:
    """Find the area that a scheme covers, m².

    Formula: A = share x A_zone, the share as surveyed or the greatest that a rust grade stands for; or A as measured.
    Symbols: zone and measured in m², share a fraction, rust_grade by ASTM D610; the whole zone where none is given.
    Source: derived; ASTM D610, Table 1. Raises OutOfRange.
    """
    require_not_negative("area of the zone", zone)
    if sum(one is not None for one in (share, rust_grade, measured)) > 1:
        raise OutOfRange("give a share, a rust grade or an area, and not two of them")
    if measured is not None:
        require_not_negative("area as measured", measured)
        return {"area": measured}
    if rust_grade is not None:
        share = rusted_fraction(rust_grade, "ASTM D610").greatest
    if share is None:
        share = 1.0
    if not 0.0 <= share <= 1.0:
        raise OutOfRange(f"the share of a zone is from 0 % to 100 %, got {100.0 * share:g} %")
    return {"area": zone * share}


METHOD = Method(
    name="coating.area",
    title="Area that a scheme covers",
    formula="A = share x A_zone; or A as measured",
    source=Citation("Share of a zone, as surveyed; of a rust grade, ASTM D610, Table 1", standing="derived"),
    valid="share between 0 and 100 %",
    inputs={
        "zone": quantity("area", "Area of the zone."),
        "share": quantity("fraction", "Share of the zone that it covers; all of it unless given."),
        "rust_grade": {
            "type": "integer",
            "minimum": 0,
            "maximum": 10,
            "description": "Rust grade by ASTM D610; the greatest share that it stands for is taken.",
        },
        "measured": quantity("area", "The area itself, where it was measured.", "120 m2"),
    },
    outputs=(Symbol("area", "area of the scheme", "area", "m2"),),
    kernel=scheme_area,
    example={"zone": "440 m2", "share": "35 %"},
    optional=frozenset({"share", "rust_grade", "measured"}),
)
