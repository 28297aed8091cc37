"""Tables of hydrostatics of hulls whose form is known."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.upright import hydrostatic_table


def curves_of(form: HullForm, drafts: Sequence[float], density: float = 1025.0, *, printed: bool = False) -> HullCurves:
    """Give the table of a hull at some drafts; `printed` rounds it as a printed table is rounded."""
    rows = hydrostatic_table(form, drafts, 0.0, density)

    def column(figures: list[float], unit: float, places: int) -> np.ndarray:
        return np.array([round(one / unit, places) * unit if printed else one for one in figures])

    return HullCurves(
        length=form.length,
        density=density,
        drafts=np.array(drafts, dtype=np.float64),
        displacement=column([h.displacement for h in rows], 1000.0, 1),
        lcb=column([h.lcb for h in rows], 1.0, 2),
        km=column([h.km_transverse for h in rows], 1.0, 2),
        kb=column([h.kb for h in rows], 1.0, 2),
        lcf=column([h.lcf for h in rows], 1.0, 2),
        immersion=column([h.mass_per_immersion for h in rows], 1e5, 2),
        moment=column([h.moment_to_change_trim() for h in rows], 1e5, 2),
    )
