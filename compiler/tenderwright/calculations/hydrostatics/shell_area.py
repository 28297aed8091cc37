"""Area of the shell between two waterlines, by girths corrected for the slope of the hull along the ship."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.hydrostatics.hull_form import NEAR, HullForm
from tenderwright.calculations.hydrostatics.sections import NODE_WEIGHTS
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.quantities.display import show


def shell_area(form: HullForm, lower: float | None = None, upper: float | None = None, trim: float = 0.0) -> float:
    """Compute the area of shell, both sides, between two waterlines [m2]; flat ends are not in it.

    Formula: 2*S(integral of sqrt(1 + (dy/dz)^2 + (dy/dx)^2) dz), S Simpson's rule over stations, plus the
    flat of bottom y0*sqrt(1 + (dz_keel/dx)^2) where `lower` is None.
    Symbols: lower, upper drafts amidships of the two waterlines [m]; None stands for the keel below and the
    deck edge above; trim of both waterlines [m], positive by the stern.
    Source: girths by Simpson's rule with obliquity (derived); see the tests for its agreement with exact
    surfaces.
    Range: lower not above upper; a waterline above a station's deck edge stops at that deck edge.
    Raises OutOfRange.
    """
    if lower is not None and upper is not None and lower > upper:
        raise OutOfRange(
            f"the lower waterline, {show(lower, 'centre', more=1)}, is above the upper, {show(upper, 'centre', more=1)}"
        )
    top = form.deck_heights if upper is None else form.heights(upper, trim)
    girth = oblique_half_girths(form, top)
    if lower is not None:
        girth = girth - oblique_half_girths(form, np.minimum(form.heights(lower, trim), top))
    return float(2 * form.weights @ girth)


def end_area(form: HullForm, lower: float | None = None, upper: float | None = None, trim: float = 0.0) -> float:
    """Compute the area of the flat ends (a transom, a square bow) between two waterlines [m2]."""
    top = form.deck_heights if upper is None else form.heights(upper, trim)
    area = form.curves.half_area(top)
    if lower is not None:
        area = area - form.curves.half_area(np.minimum(form.heights(lower, trim), top))
    return float(2 * (area[0] + area[-1]))


def oblique_half_girths(form: HullForm, z: Floats) -> Floats:
    """Give each station's half girth up to heights z [m], each element multiplied by the secant of its slope
    along x."""
    curves = form.curves
    u, du = curves.pieces_up_to(z)
    index, share = _gradient(form.stations)
    at = curves.knots[:, :-1, None] + u
    neighbours = curves.half_breadth(at[:, None], index[:, :, None, None])
    along = np.einsum("sj,sj...->s...", share, neighbours)
    up = curves.b[..., None] + 2 * u * curves.c[..., None]
    arc = np.sum(np.sqrt(1 + up**2 + along**2) * NODE_WEIGHTS * du[..., None], axis=(-1, -2))
    keel_slope = np.einsum("sj,sj->s", share, form.keel_heights[index])
    bottom = curves.a[:, 0] * np.sqrt(1 + keel_slope**2)
    return np.where(z < curves.knots[:, 0] - NEAR, 0.0, bottom + arc)


def _gradient(x: Floats) -> tuple[NDArray[np.intp], Floats]:
    """Give for each station three neighbouring stations and the weights that make the slope there, each (n,
    3)."""
    first = np.clip(np.arange(x.size) - 1, 0, x.size - 3)
    index = first[:, None] + np.arange(3)
    a, b, c = x[index].T
    share = np.stack(
        [
            ((x - b) + (x - c)) / ((a - b) * (a - c)),
            ((x - a) + (x - c)) / ((b - a) * (b - c)),
            ((x - a) + (x - b)) / ((c - a) * (c - b)),
        ],
        axis=1,
    )
    return index, share
