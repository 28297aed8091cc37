"""Wetted surface read from a table of hydrostatics."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.curves_input import CURVES, EXAMPLE_CURVES, curves_from_input
from tenderwright.calculations.hydrostatics.monotone import monotone
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show


def wetted_from_curves(curves: Mapping[str, Any] | HullCurves, draft: float) -> dict[str, float]:
    """Read the wetted surface [m2] at a draft on an even keel [m] from its column, by monotone cubics.

    Source: see `monotone`. Range: drafts within the table, which gives a wetted surface. Raises OutOfRange.
    """
    hull = curves_from_input(curves)
    if hull.wetted_surface is None:
        raise OutOfRange("the table gives no wetted surface")
    low, high = float(hull.drafts[0]), float(hull.drafts[-1])
    if not low <= draft <= high:
        raise OutOfRange(
            f"the table runs from a draft of {show(low, 'centre', more=1)} to one of "
            f"{show(high, 'centre', more=1)}, not to {show(draft, 'draft', more=1)}"
        )
    found, _ = monotone(hull.drafts, hull.wetted_surface[:, None]).at(draft)
    return {"wetted_surface": float(found[0, 0])}


METHOD = Method(
    name="hydrostatics.wetted-surface-from-curves",
    title="Wetted surface from curves of form or a table",
    formula="monotone cubics in draft",
    source=Citation("Fritsch and Butland, SIAM J. Sci. Stat. Comput. 5", "1984"),
    valid="even keel, drafts within the table",
    inputs={"curves": CURVES, "draft": quantity("length", "Draft above the baseline.")},
    outputs=(Symbol("wetted_surface", "wetted surface", "area", "m2"),),
    kernel=wetted_from_curves,
    example={
        "curves": {
            **EXAMPLE_CURVES,
            "rows": [
                {**row, "wetted_surface": f"{surface} m2"}
                for row, surface in zip(EXAMPLE_CURVES["rows"], (215, 264, 302, 339, 376, 412, 449), strict=True)
            ],
        },
        "draft": "2.5 m",
    },
    cautions=("Appendages are included or not as the source of the table says.",),
)
