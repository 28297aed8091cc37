"""Hydrostatic particulars: what a hull displaces at one draft and trim, and where."""

from __future__ import annotations

from msgspec import Struct


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
