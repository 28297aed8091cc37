"""A hull known by a table of hydrostatics or curves of form alone, and what it displaces at any draft and trim."""

from __future__ import annotations

from functools import cached_property

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.monotone import Monotone, monotone
from tenderwright.calculations.hydrostatics.particulars import Hydrostatics
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.quantities.display import show

MOST_TRIM = 0.02
"""Trim by length up to which the corrections are used; the tests hold them against hulls known by their offsets."""
STEPS = 50
FOUND = 1e-11
"""A draft that changes by less than this [m] is found."""


class Corrected(Struct, frozen=True, eq=False):
    """Columns by draft at the centre of flotation, corrected for trim; each an array in step."""

    draft: Floats
    """Amidships between perpendiculars [m]."""
    volume: Floats
    along: Floats
    """Moment of the volume about the after perpendicular [m4]; `up` likewise, about the baseline."""
    up: Floats
    waterplane_area: Floats
    lcf: Floats
    inertia_transverse: Floats
    inertia_longitudinal: Floats


class HullCurves(Struct, frozen=True, eq=False, dict=True):
    """A hull by its hydrostatics on an even keel. Arrays have one entry a draft, rising."""

    length: float
    """Between perpendiculars [m]."""
    density: float
    """Of the water that the table is for [kg/m3]."""
    drafts: Floats
    """Above the baseline [m]."""
    displacement: Floats
    """In that water [kg]."""
    lcb: Floats
    """Forward of AP [m]."""
    km: Floats
    """Transverse metacentre above the baseline [m]."""
    kb: Floats | None = None
    lcf: Floats | None = None
    immersion: Floats | None = None
    """Mass per metre of immersion [kg/m]."""
    bm_longitudinal: Floats | None = None
    moment: Floats | None = None
    """Moment per metre of trim [kg m / m]."""
    moment_kg: float | None = None
    """KG with which the moments were worked [m]; None where BM_L stood for GM_L."""
    wetted_surface: Floats | None = None

    def __post_init__(self) -> None:
        """Check the table. Raises OutOfRange where it contradicts itself."""
        _check(self)

    @cached_property
    def volume(self) -> Floats:
        """Give the volume displaced [m3]."""
        return self.displacement / self.density

    @cached_property
    def curves(self) -> Monotone:
        """Draw volume, LCB, KB, waterplane area, LCF and its second moments across and along her over the draft.

        Where the table has no TPC, A_w = dV/dd; no LCF, d(V LCB)/dV; no KB, d - (d/2 + V/A_w)/3 (Morrish).
        I_T = V (KM - KB); I_L = V BM_L, or MCT L/rho, and V (KG - KB) more where a KG was taken for it.
        """
        volume = self.volume
        steep = monotone(self.drafts, np.stack([volume, volume * self.lcb], axis=1)).slopes
        plane = steep[:, 0] if self.immersion is None else self.immersion / self.density
        lcf = steep[:, 1] / steep[:, 0] if self.lcf is None else self.lcf
        kb = self.drafts - (self.drafts / 2 + volume / plane) / 3 if self.kb is None else self.kb
        columns = (volume, self.lcb, kb, plane, lcf, volume * (self.km - kb), self._along(kb))
        return monotone(self.drafts, np.stack(columns, axis=1))

    def _along(self, kb: Floats) -> Floats:
        if self.bm_longitudinal is not None:
            return self.volume * self.bm_longitudinal
        assert self.moment is not None  # one of the two is asked for
        along: Floats = self.moment * self.length / self.density
        return along if self.moment_kg is None else along + self.volume * (self.moment_kg - kb)

    @property
    def derived(self) -> tuple[str, ...]:
        """Name what the table lacks and is derived from the rest."""
        lacking = (
            (self.kb, "KB by Morrish's formula"),
            (self.lcf, "LCF from the moment of the displacement"),
            (self.immersion, "TPC from the rise of the displacement"),
        )
        return tuple(words for column, words in lacking if column is None)

    def as_input(self) -> dict[str, object]:
        """Give the table."""
        columns = {name: getattr(self, name) for name in ("drafts", *COLUMNS)}
        given = {name: column.tolist() for name, column in columns.items() if column is not None}
        names = ["draft", *list(given)[1:]]
        rows = [dict(zip(names, row, strict=True)) for row in zip(*given.values(), strict=True)]
        kg = {} if self.moment_kg is None else {"moment_kg": self.moment_kg}
        return {"length": self.length, "density": self.density, "rows": rows} | kg

    def corrected(self, at_lcf: Floats, slope: Floats) -> Corrected:
        """Correct the table for trim, by drafts at the centre of flotation [m] and slopes s = trim/L.

        Formula: with F the centre of flotation, d_F the draft there and ' for the change with draft, V + s^2 I_L'/2;
        V LCB + (s^2 I_L'/2) LCF - s I_L; V KB + (s^2 I_L'/2) d_F + s^2 I_L/2; A_w (1 - s LCF'); LCF - s I_L'/A_w.
        Second moments are those at d_F.
        Source: the draft at F is the first correction, s^2 I_L'/2 the second, as in UN/ECE, Code of Uniform Standards
        and Procedures for the Performance of Draught Surveys (1992), there as 50 t^2 (dMTC/dZ)/LBP; the rest by the
        same expansion (derived).
        """
        columns, rises = self.curves.at(at_lcf)
        volume, lcb, kb, plane, lcf, across, along = columns.T
        lcf_rise, along_rise = rises[:, 4], rises[:, 6]
        more = slope**2 / 2 * along_rise
        return Corrected(
            at_lcf - slope * (self.length / 2 - lcf),
            volume + more,
            volume * lcb + more * lcf - slope * along,
            volume * kb + more * at_lcf + slope**2 / 2 * along,
            plane * (1 - slope * lcf_rise),
            lcf - slope * along_rise / plane,
            across,
            along,
        )

    def at(self, drafts: ArrayLike, trim: ArrayLike) -> Corrected:
        """Correct the table for trim, by drafts amidships and trims [m]. Raises OutOfRange off the table."""
        middle = np.atleast_1d(np.asarray(drafts, dtype=np.float64))
        slope = np.broadcast_to(np.asarray(trim, dtype=np.float64) / self.length, middle.shape)
        if np.abs(slope).max() > MOST_TRIM:
            self._trimmed_too_far(float(np.abs(slope).max()))
        at_lcf = middle
        for _ in range(STEPS):
            found = middle + slope * (self.length / 2 - self.curves.at(at_lcf)[0][:, 4])
            change, at_lcf = float(np.abs(found - at_lcf).max()), found
            if change < FOUND:
                break
        low, high = float(self.drafts[0]), float(self.drafts[-1])
        if at_lcf.min() < low - FOUND or at_lcf.max() > high + FOUND:
            off = float(at_lcf.min()) if at_lcf.min() < low - FOUND else float(at_lcf.max())
            raise OutOfRange(
                f"the table of hydrostatics runs from a draft of {show(low, 'centre', more=1)} to one of "
                f"{show(high, 'centre', more=1)}; it takes rows on to {show(off, 'centre', more=1)}"
            )
        return self.corrected(at_lcf, slope)

    def table(self, drafts: ArrayLike, trim: ArrayLike, density: float) -> list[Hydrostatics]:
        """Give the particulars at drafts amidships and trims [m], in water of a density [kg/m3]. Raises OutOfRange."""
        c = self.at(drafts, trim)
        trims = np.broadcast_to(np.asarray(trim, dtype=np.float64), c.draft.shape)
        columns = (
            np.atleast_1d(np.asarray(drafts, dtype=np.float64)),
            trims,
            c.volume,
            c.along / c.volume,
            c.up / c.volume,
            c.waterplane_area,
            c.lcf,
            c.inertia_transverse,
            c.inertia_longitudinal,
        )
        return [
            Hydrostatics(self.length, row[0], row[1], density, *row[2:])
            for row in zip(*(column.tolist() for column in columns), strict=True)
        ]

    def lowest(self, trim: float) -> float:
        """Give the least draft amidships [m] that the table reaches at a trim [m]."""
        return self._end(0, trim)

    def highest(self, trim: float) -> float:
        """Give the greatest draft amidships [m] that the table reaches at a trim [m]."""
        return self._end(-1, trim)

    def _end(self, row: int, trim: float) -> float:
        return float(self.drafts[row] - trim * (0.5 - self.curves.values[row, 4] / self.length))

    def float_at(self, mass: float, lcg: float, vcg: float, density: float) -> Hydrostatics:
        """Find the draft and trim at which she carries a mass [kg] with its centre at lcg and vcg [m].

        Formula: V(d_F, s) = W/rho; s = (V LCB at s with its term in I_L left out - V LCG)/(I_L + V KB - V VCG), by
        turns. Source: as `corrected` and `float_at` of the equilibrium (derived). Raises OutOfRange.
        """
        wanted, slope = mass / density, 0.0
        for _ in range(STEPS):
            at_lcf = self._draft_for(wanted, slope, density)
            c = self.corrected(np.array([at_lcf]), np.array([slope]))
            along = float(c.inertia_longitudinal[0])
            stiffness = along + float(c.up[0]) - wanted * vcg
            if stiffness <= 0:
                break
            found = (float(c.along[0]) + slope * along - wanted * lcg) / stiffness
            change, slope = abs(found - slope), found
            if change * self.length < FOUND:
                return self._found(at_lcf, slope, density)
        raise OutOfRange(
            f"no floating position was found for {show(mass, 'weight')} with its centre "
            f"{show(lcg, 'centre')} forward of AP"
        )

    def float_at_trim(self, volume: float, trim: float, density: float) -> Hydrostatics:
        """Find the draft at which she displaces a volume [m3] at a trim [m]. Raises OutOfRange."""
        slope = trim / self.length
        return self._found(self._draft_for(volume, slope, density), slope, density)

    def _found(self, at_lcf: float, slope: float, density: float) -> Hydrostatics:
        if abs(slope) > MOST_TRIM:
            self._trimmed_too_far(abs(slope))
        draft = float(self.corrected(np.array([at_lcf]), np.array([slope])).draft[0])
        return self.table([draft], slope * self.length, density)[0]

    def _draft_for(self, volume: float, slope: float, density: float) -> float:
        """Find the draft at the centre of flotation [m] for a volume [m3], by Newton's method held to the table."""
        low, high = float(self.drafts[0]), float(self.drafts[-1])
        draft = float(np.interp(volume, self.volume, self.drafts))
        for _ in range(STEPS):
            columns, rises = self.curves.at(draft)
            missing = volume - float(columns[0, 0]) - slope**2 / 2 * float(rises[0, 6])
            step = missing / float(rises[0, 0])
            if abs(step) < FOUND:
                return draft
            if (draft == low and step < 0) or (draft == high and step > 0):
                break
            draft = min(max(draft + step, low), high)
        least, most = (float(v) * density for v in (self.volume[0], self.volume[-1]))
        raise OutOfRange(
            f"the table of hydrostatics runs from {show(least, 'weight')} to {show(most, 'weight')} in "
            f"this water; it takes rows on to {show(volume * density, 'weight')}"
        )

    def _trimmed_too_far(self, slope: float) -> None:
        raise OutOfRange(
            f"a trim of {show(slope * self.length, 'centre')} is more than {MOST_TRIM:.0%} of her length, "
            "up to which a table for an even keel is corrected: it takes the offsets"
        )


COLUMNS = (
    "displacement", "lcb", "km", "kb", "lcf", "immersion", "bm_longitudinal", "moment", "wetted_surface",
)  # fmt: skip
"""The columns of a table beside the draft."""


def _check(hull: HullCurves) -> None:
    columns = {name: column for name in ("drafts", *COLUMNS) if (column := getattr(hull, name)) is not None}
    if hull.drafts.size < 3:
        raise OutOfRange("a table of hydrostatics needs at least three drafts")
    if any(column.shape != hull.drafts.shape or not np.isfinite(column).all() for column in columns.values()):
        raise OutOfRange("each column of a table of hydrostatics needs a finite number at every draft")
    if hull.length <= 0 or hull.density <= 0:
        raise OutOfRange("length and density must be positive")
    if np.any(np.diff(hull.drafts) <= 0):
        raise OutOfRange("the drafts of a table of hydrostatics must rise, each above the one before")
    if hull.drafts[0] <= 0 or hull.displacement[0] <= 0 or np.any(np.diff(hull.displacement) <= 0):
        raise OutOfRange("the displacement must be more than nothing and rise with the draft")
    if hull.bm_longitudinal is None and hull.moment is None:
        raise OutOfRange("a table of hydrostatics needs the moment to change trim or BM along the ship")
    centres = (hull.lcb,) if hull.lcf is None else (hull.lcb, hull.lcf)
    if any(np.any((one < 0) | (one > hull.length)) for one in centres):
        raise OutOfRange("the centres of buoyancy and flotation must lie between the perpendiculars")
    if hull.immersion is not None and np.any(hull.immersion <= 0):
        raise OutOfRange("the mass per immersion must be more than nothing")
    names = ("waterplane area", "second moment of the waterplane across", "second moment of the waterplane along")
    for name, column in zip(names, hull.curves.values.T[[3, 5, 6]], strict=True):
        for k in np.flatnonzero(column <= 0):
            raise OutOfRange(
                f"at a draft of {show(hull.drafts[k], 'draft', more=1)} the {name} is not more than nothing"
            )
