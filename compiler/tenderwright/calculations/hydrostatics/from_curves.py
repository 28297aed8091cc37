"""Hydrostatic particulars at a draft and trim from a table of hydrostatics or curves of form."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.hydrostatics.curves import MOST_TRIM, HullCurves
from tenderwright.calculations.hydrostatics.curves_input import CURVES, EXAMPLE_CURVES, curves_from_input
from tenderwright.calculations.hydrostatics.upright import METHOD as UPRIGHT
from tenderwright.calculations.hydrostatics.upright import hydrostatics, outputs_of
from tenderwright.calculations.method import Citation, Method


def from_curves(
    curves: Mapping[str, Any] | HullCurves,
    draft: float,
    trim: float = 0.0,
    density: float = 1025.0,
    kg: float | None = None,
) -> dict[str, float]:
    """Read the particulars from a table, corrected for trim; draft amidships, trim and KG in m, density in kg/m3.

    Formula, source and range: see `HullCurves.corrected`. Raises OutOfRange.
    """
    return outputs_of(hydrostatics(curves_from_input(curves), draft, trim, density), kg)


METHOD = Method(
    name="hydrostatics.from-curves",
    title="Hydrostatic particulars from curves of form or a table",
    formula="monotone cubics in draft, at the draft d_F at the centre of flotation (first correction for trim); "
    "V = V(d_F) + s² I_L'/2 (second), s = t/L, ' by draft; LCB V less s I_L; LCF less s I_L'/Aw; I_T, I_L as at d_F",
    source=Citation(
        "UN/ECE, Code of Uniform Standards and Procedures for the Performance of Draught Surveys, 1992",
        "first and second correction for trim; the others by the same expansion (derived)",
    ),
    valid=f"drafts within the table, trim to {MOST_TRIM:.0%} of length; at 1 % a hull known by its offsets gave "
    "displacement within 0.02 %, trim within 2 % and KM within 1 %, at 2 % within 0.1 %, 4 % and 1.5 %",
    inputs={"curves": CURVES} | {name: UPRIGHT.inputs[name] for name in ("draft", "trim", "density", "kg")},
    outputs=UPRIGHT.outputs,
    kernel=from_curves,
    example={"curves": EXAMPLE_CURVES, "draft": "2.5 m", "trim": "0.2 m", "density": "1025 kg/m3"},
    optional=frozenset({"trim", "density", "kg"}),
    cautions=("The table's own accuracy, and whether shell and appendages are in it, are as its source says.",),
)
