"""Hydrostatics estimated from main dimensions and one displacement, where there are no lines and no curves of form."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from msgspec import Struct

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import quantity

BLOCK_COEFFICIENTS = (0.35, 0.85)
"""Within which the formulas are taken to hold (common practice, no source)."""
REACH = (0.5, 1.3)
"""Drafts over which the table is made, by the draft that is stated."""
DRAFTS = 9
FULLEST = 0.98
"""Waterplane coefficient at which the table ends."""


class Estimate(Struct, frozen=True):
    """An estimated hull, and the coefficients by which it was made."""

    hull: HullCurves
    block_coefficient: float
    waterplane_coefficient: float
    draft: float


def from_dimensions(
    length: float, beam: float, draft: float, displacement: float, depth: float, density: float = 1025.0
) -> Estimate:
    """Estimate the hydrostatics on an even keel from half the draft to 1.3 times it, at most to the depth.

    Formula: C_B = V/(L B T); C_W = (1 + 2 C_B)/3; n = C_W/C_B, V(d) = V (d/T)^n and A_w(d) = dV/dd, so that
        KB = d C_W/(C_W + C_B) (Posdunine); I_T = (0.1216 C_W - 0.0410) L B^3 and I_L = (0.350 C_W^2 - 0.405 C_W +
        0.146) B L^3 (D'Arcangelo) with C_W at that draft; LCB = LCF = 20 (C_B - 0.675) % of L forward of amidships.
    Symbols: L, B, T, depth [m]; displacement [kg] at T in water of the density [kg/m3]; V = W/rho.
    Source: Schneekluth and Bertram, Ship Design for Efficiency and Economy (C_W); Posdunine; D'Arcangelo, Ship Design
        and Construction, 1969; Watson and Gilfillan, RINA 1977 (LCB): all from memory. For the Wigley hull and two
        ships of the tests KM came out 3 to 14 % too low, A_w up to 10 % and I_L up to 25 % too small, LCB within 2 % L
        of a ship.
    Range: C_B 0.35 to 0.85; ordinary hulls with one deck edge. Raises OutOfRange.
    """
    if min(length, beam, draft, displacement, depth, density) <= 0:
        raise OutOfRange("dimensions, displacement and density must be positive")
    volume = displacement / density
    block = volume / (length * beam * draft)
    low, high = BLOCK_COEFFICIENTS
    if not low <= block <= high:
        raise OutOfRange(
            f"displacement, length, beam and draft give a block coefficient of {block:.3f}, outside {low} to {high}"
        )
    plane = (1 + 2 * block) / 3
    power = plane / block
    fullest = draft * (FULLEST / plane) ** (1 / (power - 1))
    drafts = np.linspace(REACH[0] * draft, min(REACH[1] * draft, depth, fullest), DRAFTS)
    volumes = volume * (drafts / draft) ** power
    planes = power * volumes / drafts
    coefficients = planes / (length * beam)
    kb = drafts * power / (power + 1)
    across = (0.1216 * coefficients - 0.0410) * length * beam**3
    along = (0.350 * coefficients**2 - 0.405 * coefficients + 0.146) * beam * length**3
    centre = np.full(DRAFTS, length * (0.5 + 0.20 * (block - 0.675)))
    hull = HullCurves(
        length=length,
        density=density,
        drafts=drafts,
        displacement=volumes * density,
        lcb=centre,
        km=kb + across / volumes,
        kb=kb,
        lcf=centre,
        immersion=planes * density,
        bm_longitudinal=along / volumes,
    )
    return Estimate(hull, block, plane, draft)


def outputs_of(found: Estimate) -> Mapping[str, float]:
    """Give the coefficients, and the particulars at the draft that is stated."""
    h = hydrostatics(found.hull, found.draft, 0.0, found.hull.density)
    return {
        "block_coefficient": found.block_coefficient,
        "waterplane_coefficient": found.waterplane_coefficient,
        "lcb": h.lcb,
        "kb": h.kb,
        "bm_transverse": h.bm_transverse,
        "km_transverse": h.km_transverse,
        "bm_longitudinal": h.bm_longitudinal,
        "mass_per_immersion": h.mass_per_immersion,
        "moment_to_change_trim": h.moment_to_change_trim(),
    }


METHOD = Method(
    name="hydrostatics.from-dimensions",
    title="Hydrostatics estimated from main dimensions",
    formula="CB = V/(L B T); CW = (1 + 2 CB)/3; V(d) = V (d/T)^(CW/CB); KB = d CW/(CW + CB); "
    "I_T = (0.1216 CW − 0.0410) L B³; I_L = (0.350 CW² − 0.405 CW + 0.146) B L³; "
    "LCB = LCF = 20 (CB − 0.675) % L forward of amidships",
    source=Citation(
        "Schneekluth and Bertram, Ship Design for Efficiency and Economy; Posdunine; D'Arcangelo, Ship Design and "
        "Construction, 1969; Watson and Gilfillan, RINA 1977",
        "",
        "from memory",
    ),
    valid="block coefficient 0.35 to 0.85, ordinary hulls; half to 1.3 times the draft; a first answer only",
    inputs={
        "length": _length("Length between perpendiculars."),
        "beam": _length("Moulded breadth."),
        "draft": _length("Draft above the baseline at which the displacement is stated."),
        "displacement": quantity("mass", "Displacement at that draft."),
        "depth": _length("Moulded depth, above which no draft is estimated."),
        "density": quantity("density", "Density of the water for which the displacement is stated."),
    },
    outputs=(
        Symbol("block_coefficient", "block coefficient", "fraction", "%"),
        Symbol("waterplane_coefficient", "waterplane coefficient, estimated", "fraction", "%"),
        Symbol("lcb", "centre of buoyancy forward of AP, estimated", "length", "m"),
        Symbol("kb", "centre of buoyancy above the baseline, estimated", "length", "m"),
        Symbol("bm_transverse", "transverse metacentric radius, estimated", "length", "m"),
        Symbol("km_transverse", "transverse metacentre above the baseline, estimated", "length", "m"),
        Symbol("bm_longitudinal", "longitudinal metacentric radius, estimated", "length", "m"),
        Symbol("mass_per_immersion", "mass per unit of immersion (TPC), estimated", "line_load", "t/cm"),
        Symbol("moment_to_change_trim", "moment per unit of trim (MCTC), estimated", "mass", "t*m/cm"),
    ),
    kernel=from_dimensions,
    figures=outputs_of,
    example={"length": "48 m", "beam": "9.1 m", "draft": "3.2 m", "displacement": "758 t", "depth": "4.6 m"},
    optional=frozenset({"density"}),
    cautions=(
        "A first answer: no basis for a docking. Lines or curves of form take its place as soon as there are any.",
    ),
)
