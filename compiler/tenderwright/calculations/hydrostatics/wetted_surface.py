"""Wetted surface of the moulded hull from its offsets."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS, OFFSETS, hull_from_offsets
from tenderwright.calculations.hydrostatics.shell_area import end_area, shell_area
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import Citation, Method, Symbol
from tenderwright.calculations.schema import quantity


def wetted_surface(form: HullForm, draft: float, trim: float = 0.0) -> float:
    """Compute the wetted surface [m2] at a draft amidships [m] and trim [m]: shell and flat ends, no
    appendages.

    Formula and source: see `shell_area`. Range: no deck edge under water. Raises OutOfRange.
    """
    hydrostatics(form, draft, trim)
    return shell_area(form, None, draft, trim) + end_area(form, None, draft, trim)


def wetted_surface_from_offsets(offsets: Mapping[str, Any], draft: float, trim: float = 0.0) -> dict[str, float]:
    """Compute wetted surface [m2] from a table of offsets; draft amidships and trim in m."""
    form = hull_from_offsets(offsets)
    return {
        "wetted_surface": wetted_surface(form, draft, trim),
        "ends": end_area(form, None, draft, trim),
    }


DRAFT = quantity("length", "Draft above the baseline, midway between perpendiculars.")
TRIM = quantity("length", "Draft aft less draft forward.")

METHOD = Method(
    name="hydrostatics.wetted-surface",
    title="Wetted surface from offsets",
    formula="S = 2 S(integral sqrt(1 + (dy/dz)^2 + (dy/dx)^2) dz) + flat of bottom + flat ends",
    source=Citation("girths by Simpson's rule with obliquity", "checked against the exact Wigley hull", "derived"),
    valid="moulded shell; on a smooth hull of 20 intervals within 0.01 % of the exact surface, on a "
    "ship-shaped one within about 1 % of a fine mesh",
    inputs={"offsets": OFFSETS, "draft": DRAFT, "trim": TRIM},
    outputs=(
        Symbol("wetted_surface", "wetted surface with flat ends", "area", "m2"),
        Symbol("ends", "flat ends (transom, square bow) included", "area", "m2"),
    ),
    kernel=wetted_surface_from_offsets,
    example={"offsets": EXAMPLE_OFFSETS, "draft": "2.5 m"},
    optional=frozenset({"trim"}),
    cautions=("Rudder, bilge keels, bar keel and other appendages are not included.",),
)
