"""Hydrostatic particulars of an upright hull at any draft and trim."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.buoyant import Buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.hull_form import NEAR
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS, OFFSETS, hull_from_offsets
from tenderwright.calculations.hydrostatics.particulars import Hydrostatics
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity
from tenderwright.quantities.display import show


def hydrostatic_table(form: Buoyant, drafts: ArrayLike, trim: ArrayLike, density: float) -> list[Hydrostatics]:
    """Compute hydrostatic particulars at many drafts.

    Formula: V = 2*S(A), LCB = S(x*A)/S(A), KB = S(M_z)/S(A), A_w = 2*S(y), LCF = S(x*y)/S(y), I_T =
    (2/3)*S(y^3), I_L = 2*S(x^2*y) - A_w*LCF^2; A, M_z and y of each half section up to the local waterline, S
    Simpson's rule.
    Symbols: drafts amidships d [m] shape (k,); trim t [m], positive by the stern, one or (k,); density
    [kg/m3].
    Source: Tupper, Introduction to Naval Architecture, p. 26. The waterplane is measured in the ship's own
    axes, so for a trim of tan(th) its area is short of the true one by th^2/2.
    Stations are drawn in where the keel rises between those of the table, so that an end out of the water is
    followed to the keel line.
    A hull known by its table of hydrostatics is read from that, corrected for trim (`HullCurves.corrected`).
    Range: hull in the water, no deck edge under it; a table is read between its drafts. Raises OutOfRange.
    """
    if isinstance(form, HullCurves):
        return form.table(drafts, trim, density)
    d = np.atleast_1d(np.asarray(drafts, dtype=np.float64))
    t = np.broadcast_to(np.asarray(trim, dtype=np.float64), d.shape)
    drawn = form.drawn
    z = drawn.heights(d, t)
    if (z > drawn.deck_heights + NEAR).any():
        raise OutOfRange(f"at a draft of {show(d.max(), 'centre', more=1)} the deck edge is under water")
    x, w = drawn.stations, drawn.weights
    area, moment, y = drawn.curves.half_section(z)
    half_volume, half_plane = area @ w, y @ w
    if (half_volume <= 0).any() or (half_plane <= 0).any():
        raise OutOfRange(f"at a draft of {show(d.min(), 'centre', more=1)} the hull displaces nothing")
    lcf = (y * x) @ w / half_plane
    columns = (
        d,
        t,
        2 * half_volume,
        (area * x) @ w / half_volume,
        moment @ w / half_volume,
        2 * half_plane,
        lcf,
        (y**3) @ w * 2 / 3,
        2 * ((y * x * x) @ w - half_plane * lcf**2),
    )
    return [
        Hydrostatics(form.length, row[0], row[1], density, *row[2:])
        for row in zip(*(column.tolist() for column in columns), strict=True)
    ]


def hydrostatics(form: Buoyant, draft: float, trim: float = 0.0, density: float = 1025.0) -> Hydrostatics:
    """Compute hydrostatic particulars at one draft amidships [m], trim [m] and density [kg/m3]; see the
    table."""
    return hydrostatic_table(form, [draft], trim, density)[0]


def carried(form: Buoyant, drafts: Floats, trim: Floats | float, density: float) -> tuple[Floats, Floats]:
    """Give the mass displaced [kg] and its moment about the baseline through the metacentre [kg m], by draft.

    Formula: rho V, and rho (V KB + I_T) = rho V KM; of offsets good also where nothing is displaced. Drafts amidships
    and trims as in the table. Raises OutOfRange.
    """
    if isinstance(form, HullCurves):
        found = form.at(drafts, trim)
        return density * found.volume, density * (found.up + found.inertia_transverse)
    drawn = form.drawn
    z = drawn.heights(drafts, np.broadcast_to(np.asarray(trim, dtype=np.float64), drafts.shape))
    w = drawn.weights
    area, moment, y = drawn.curves.half_section(z)
    return 2 * density * (area @ w), density * (2 * (moment @ w) + 2 / 3 * (y**3 @ w))


def least_draft(form: Buoyant, trim: float) -> float:
    """Give the draft amidships [m], at a trim [m], at which the hull leaves the water or its table ends."""
    if isinstance(form, HullCurves):
        return form.lowest(trim)
    return float((form.keel_heights - trim * (0.5 - form.stations / form.length)).min())


def greatest_draft(form: Buoyant) -> float:
    """Give the draft [m], on an even keel, at which water reaches the deck edge or the table ends."""
    return form.highest(0.0) if isinstance(form, HullCurves) else float(form.deck_heights.min())


def upright(
    offsets: Mapping[str, Any],
    draft: float,
    trim: float = 0.0,
    density: float = 1025.0,
    kg: float | None = None,
) -> dict[str, float]:
    """Compute the particulars from a table of offsets; draft amidships, trim and KG in m, density in
    kg/m3."""
    return outputs_of(hydrostatics(hull_from_offsets(offsets), draft, trim, density), kg)


def outputs_of(found: Hydrostatics, kg: float | None = None) -> dict[str, float]:
    """Give particulars as the outputs of the method; the moment to change trim needs KG [m] for GM_L."""
    return {
        "volume": found.volume,
        "displacement": found.displacement,
        "lcb": found.lcb,
        "kb": found.kb,
        "waterplane_area": found.waterplane_area,
        "lcf": found.lcf,
        "bm_transverse": found.bm_transverse,
        "bm_longitudinal": found.bm_longitudinal,
        "km_transverse": found.km_transverse,
        "km_longitudinal": found.km_longitudinal,
        "mass_per_immersion": found.mass_per_immersion,
        "moment_to_change_trim": found.moment_to_change_trim(kg),
    }


METHOD = Method(
    name="hydrostatics.upright",
    title="Hydrostatic particulars from offsets",
    formula="V = 2 S(A); LCB = S(x A)/S(A); KB = S(Mz)/S(A); Aw = 2 S(y); LCF = S(x y)/S(y); I_T = 2/3 S(y^3); "
    "I_L = 2 S(x^2 y) - Aw LCF^2; BM = I/V; TPC = rho Aw; MCTC = W GM_L/L",
    source=Citation("Tupper, Introduction to Naval Architecture", "p. 26"),
    valid="upright, no deck edge under water, small trim; moulded volume, without shell plating and appendages; "
    "an end out of the water is followed to the keel line, straight between stations",
    inputs={
        "offsets": OFFSETS,
        "draft": quantity("length", "Draft above the baseline, midway between perpendiculars."),
        "trim": quantity("length", "Draft aft less draft forward."),
        "density": quantity("density", "Density of the water."),
        "kg": quantity(
            "length", "Height of the centre of gravity, for the moment to change trim; BM_L stands for GM_L without it."
        ),
    },
    outputs=(
        Symbol("volume", "displaced volume", "volume", "m3"),
        Symbol("displacement", "displacement", "mass", "t"),
        Symbol("lcb", "centre of buoyancy forward of AP", "length", "m"),
        Symbol("kb", "centre of buoyancy above the baseline", "length", "m"),
        Symbol("waterplane_area", "waterplane area", "area", "m2"),
        Symbol("lcf", "centre of flotation forward of AP", "length", "m"),
        Symbol("bm_transverse", "transverse metacentric radius", "length", "m"),
        Symbol("bm_longitudinal", "longitudinal metacentric radius", "length", "m"),
        Symbol("km_transverse", "transverse metacentre above the baseline", "length", "m"),
        Symbol("km_longitudinal", "longitudinal metacentre above the baseline", "length", "m"),
        Symbol("mass_per_immersion", "mass per unit of immersion (TPC)", "line_load", "t/cm"),
        Symbol("moment_to_change_trim", "moment per unit of trim (MCTC)", "mass", "t*m/cm"),
    ),
    kernel=upright,
    example={"offsets": EXAMPLE_OFFSETS, "draft": "2.5 m", "trim": "0.2 m", "density": "1025 kg/m3"},
    optional=frozenset({"trim", "density", "kg"}),
    cautions=("Shell plating and appendages add about 0.5 to 1 % of displacement: common practice, no source.",),
)
