"""Hydrostatic particulars of an upright hull at any draft and trim."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.hull_form import NEAR, HullForm
from tenderwright.calculations.hydrostatics.offsets import EXAMPLE_OFFSETS, OFFSETS, hull_from_offsets
from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import quantity


class Hydrostatics(Struct, frozen=True):
    """Particulars at one draft, trim and water density; SI units, x from AP, z from the baseline."""

    length: float
    draft: float
    """Amidships between perpendiculars [m]."""
    trim: float
    """Draft aft less draft forward [m]."""
    density: float
    volume: float
    lcb: float
    kb: float
    waterplane_area: float
    lcf: float
    inertia_transverse: float
    """Second moment of the waterplane about the centreline [m4]."""
    inertia_longitudinal: float
    """Second moment of the waterplane about the LCF [m4]."""

    @property
    def displacement(self) -> float:
        """Mass of water displaced [kg]."""
        return self.volume * self.density

    @property
    def draft_aft(self) -> float:
        """Draft at the after perpendicular [m]."""
        return self.draft + self.trim / 2

    @property
    def draft_forward(self) -> float:
        """Draft at the forward perpendicular [m]."""
        return self.draft - self.trim / 2

    @property
    def draft_at_lcf(self) -> float:
        """True mean draft, at the centre of flotation [m]."""
        return self.draft + self.trim * (0.5 - self.lcf / self.length)

    @property
    def bm_transverse(self) -> float:
        """Transverse metacentric radius [m]."""
        return self.inertia_transverse / self.volume

    @property
    def bm_longitudinal(self) -> float:
        """Longitudinal metacentric radius [m]."""
        return self.inertia_longitudinal / self.volume

    @property
    def km_transverse(self) -> float:
        """Height of the transverse metacentre above the baseline [m]."""
        return self.kb + self.bm_transverse

    @property
    def km_longitudinal(self) -> float:
        """Height of the longitudinal metacentre above the baseline [m]."""
        return self.kb + self.bm_longitudinal

    @property
    def mass_per_immersion(self) -> float:
        """Mass per metre of parallel sinkage [kg/m]; TPC when shown in t/cm."""
        return self.waterplane_area * self.density

    def moment_to_change_trim(self, kg: float | None = None) -> float:
        """Give the moment per metre of trim [kg m / m]; MCTC when shown in t m/cm. Without KG, GM_L is taken
        as BM_L."""
        gm = self.bm_longitudinal if kg is None else self.km_longitudinal - kg
        return self.displacement * gm / self.length


def hydrostatic_table(form: HullForm, drafts: ArrayLike, trim: ArrayLike, density: float) -> list[Hydrostatics]:
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
    Range: hull in the water, no deck edge under it. Raises OutOfRange.
    """
    d = np.atleast_1d(np.asarray(drafts, dtype=np.float64))
    t = np.broadcast_to(np.asarray(trim, dtype=np.float64), d.shape)
    drawn = form.drawn
    z = drawn.heights(d, t)
    if (z > drawn.deck_heights + NEAR).any():
        raise OutOfRange(f"at a draft of {d.max():.3f} m the deck edge is under water")
    x, w = drawn.stations, drawn.weights
    area, moment, y = drawn.curves.half_section(z)
    half_volume, half_plane = area @ w, y @ w
    if (half_volume <= 0).any() or (half_plane <= 0).any():
        raise OutOfRange(f"at a draft of {d.min():.3f} m the hull displaces nothing")
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


def hydrostatics(form: HullForm, draft: float, trim: float = 0.0, density: float = 1025.0) -> Hydrostatics:
    """Compute hydrostatic particulars at one draft amidships [m], trim [m] and density [kg/m3]; see the
    table."""
    return hydrostatic_table(form, [draft], trim, density)[0]


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
