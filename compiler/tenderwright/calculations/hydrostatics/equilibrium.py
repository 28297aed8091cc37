"""Floating position: the draft and trim at which a hull carries a given mass and centre of gravity."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.hydrostatics.buoyant import Buoyant
from tenderwright.calculations.hydrostatics.curves import HullCurves
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.particulars import Hydrostatics
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.hydrostatics.upright import hydrostatics
from tenderwright.calculations.method import OutOfRange
from tenderwright.quantities.display import show

STEPS = 50


def float_at(form: Buoyant, mass: float, lcg: float, vcg: float, density: float) -> Hydrostatics:
    """Find the draft and trim at which the hull floats, by Newton's method on volume and longitudinal moment.

    Formula: rho*V = W and LCG - LCB = tan(th)*(VCG - KB), tan(th) = t/L: weight equals buoyancy, and the
    centres stand on one line square to the water.
    Symbols: mass W [kg]; lcg forward of AP, vcg above the baseline [m]; density of the water rho [kg/m3].
    Source: Archimedes' principle and the statics of a floating body (derived).
    Range: upright, deck edge clear of the water. Raises OutOfRange where no such position exists.
    """
    if mass <= 0 or density <= 0:
        raise OutOfRange("mass and density must be positive")
    if isinstance(form, HullCurves):
        return form.float_at(mass, lcg, vcg, density)
    wanted = mass / density
    at_ap, slope = _first_draft(form, wanted), 0.0
    largest = 0.25 * float((form.deck_heights - form.keel_heights).max())
    reach = float(np.abs(form.stations).max())
    for _ in range(STEPS):
        volume, moment, z_moment, plane = _integrals(form.drawn, at_ap - slope * form.drawn.stations)
        arm = vcg * volume - z_moment
        missing = np.array([wanted - volume, lcg * volume - slope * arm - moment])
        zeroth, first, second = plane
        rows = (zeroth, -first), (first - lcg * zeroth, lcg * first - second + arm)
        if zeroth <= 0 or abs(rows[0][0] * rows[1][1] - rows[0][1] * rows[1][0]) < 1e-12 * wanted:
            break
        step = np.linalg.solve(np.array(rows), missing)
        size = max(abs(step[0]), abs(step[1]) * reach)
        step = step * min(1.0, largest / size) if size > 0 else step
        at_ap, slope = at_ap + float(step[0]), slope + float(step[1])
        if size < 1e-10:
            trim = slope * form.length
            return hydrostatics(form, at_ap - trim / 2, trim, density)
    raise OutOfRange(
        f"no floating position was found for {show(mass, 'weight')} with its centre {show(lcg, 'centre')} forward of AP"
    )


def float_at_trim(form: Buoyant, volume: float, trim: float, density: float) -> Hydrostatics:
    """Find the draft at which the hull displaces a volume [m3] at a given trim [m], by Newton's method.

    Formula: d' = d + (V - V(d))/A_w(d). Source: derived. Range: deck edge clear. Raises OutOfRange.
    """
    if isinstance(form, HullCurves):
        return form.float_at_trim(volume, trim, density)
    draft = _first_draft(form, volume)
    for _ in range(STEPS):
        found = hydrostatics(form, draft, trim, density)
        step = (volume - found.volume) / found.waterplane_area
        if abs(step) < 1e-11:
            return found
        draft += step
    raise OutOfRange(
        f"no draft was found at which the hull displaces {show(volume, 'capacity', more=-1)} with a trim "
        f"of {show(trim, 'trim')}"
    )


def _first_draft(form: HullForm, volume: float) -> float:
    drafts, volumes = form.sinkage
    if volume >= volumes[-1]:
        raise OutOfRange(
            f"the hull up to its deck edge displaces {show(volumes[-1], 'capacity', more=-1)}, less than "
            f"{show(volume, 'capacity', more=-1)}"
        )
    return float(np.interp(volume, volumes, drafts))


def _integrals(form: HullForm, z: Floats) -> tuple[float, float, float, Floats]:
    """Give volume, its moments about x = 0 and z = 0, and the waterplane's zeroth to second moments about x =
    0."""
    x, w = form.stations, form.weights
    area, moment, y = form.curves.half_section(z)
    plane = 2 * np.array([y @ w, (y * x) @ w, (y * x * x) @ w])
    return (
        float(2 * area @ w),
        float(2 * (area * x) @ w),
        float(2 * moment @ w),
        plane,
    )
