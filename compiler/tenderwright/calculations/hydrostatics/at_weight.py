"""Hydrostatic particulars of an upright hull of a weight, at a trim."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from tenderwright.calculations.hydrostatics.buoyant import HULL, buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.equilibrium import float_at_trim
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS
from tenderwright.calculations.hydrostatics.particulars import Hydrostatics
from tenderwright.calculations.hydrostatics.upright import METHOD as UPRIGHT
from tenderwright.calculations.hydrostatics.upright import outputs_of as particulars_of
from tenderwright.calculations.method import Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length, quantity


class AtWeight(Struct, frozen=True):
    """Particulars at a weight and trim, with the height of the centre of gravity that the moment to trim rests on."""

    hydrostatics: Hydrostatics
    kg: float | None

    @property
    def moment_to_change_trim(self) -> float:
        """Moment per metre of trim [kg m / m]."""
        return self.hydrostatics.moment_to_change_trim(self.kg)


def at_weight(
    displacement: float,
    trim: float = 0.0,
    density: float = 1025.0,
    kg: float | None = None,
    offsets: Mapping[str, Any] | HullForm | None = None,
    curves: Mapping[str, Any] | HullCurves | None = None,
) -> AtWeight:
    """Find the particulars at a weight [kg] and trim [m]; see `float_at_trim`. Raises OutOfRange."""
    form = buoyant(offsets, curves)
    if displacement <= 0 or density <= 0:
        raise OutOfRange("displacement and density must be positive")
    return AtWeight(float_at_trim(form, displacement / density, trim, density), kg)


def outputs_of(found: AtWeight) -> dict[str, float]:
    """Give the particulars as outputs."""
    h = found.hydrostatics
    return {"draft_aft": h.draft_aft, "draft_forward": h.draft_forward, **particulars_of(h, found.kg)}


METHOD = Method(
    name="hydrostatics.at-weight",
    title="Hydrostatic particulars at a weight and trim",
    formula=f"d' = d + (W/ρ − V(d))/Aw(d) until V = W/ρ; then {UPRIGHT.formula}",
    source=UPRIGHT.source,
    valid=UPRIGHT.valid,
    inputs={
        **HULL,
        "displacement": quantity("mass", "Weight of the ship."),
        "trim": length("Draft aft less draft forward."),
        "density": quantity("density", "Density of the water."),
        "kg": UPRIGHT.inputs["kg"],
    },
    outputs=(
        Symbol("draft_aft", "draft at the after perpendicular", "length", "m"),
        Symbol("draft_forward", "draft at the forward perpendicular", "length", "m"),
        *UPRIGHT.outputs,
    ),
    kernel=at_weight,
    figures=outputs_of,
    example={"offsets": EXAMPLE_OFFSETS, "displacement": "480 t", "trim": "0.3 m", "density": "1025 kg/m3"},
    optional=frozenset({"offsets", "curves", "trim", "density", "kg"}),
    cautions=UPRIGHT.cautions,
)
