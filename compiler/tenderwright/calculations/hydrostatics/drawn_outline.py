"""A stand-in for the hull form, for drawings of a ship of which only main dimensions are known. It never floats."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.simpson import Floats

STATIONS = 41
ROUNDED = 0.2
"""Height of the turn of bilge, as a share of the depth."""
LOWEST_END = 0.85
"""Share of the depth up to which stem and stern rise from the keel."""


def drawn_outline(
    length: float, ends: tuple[float, float], beam: float, depth: float, straight: tuple[float, float]
) -> HullForm:
    """Draw a hull by her dimensions.

    Formula: the keel line lies on the base line along the straight keel, and rises by a parabola to both ends; the
        deck edge is level at the depth; half-breadths are B/2 (1 - s^4), s from 0 in the middle of a waterline to 1
        where the keel line crosses it, rounded by a quarter of an ellipse at the bilge.
    Symbols: length between perpendiculars, ends aft and forward, beam, depth, ends of the straight keel [m].
    Source: none; an outline to draw on, not the form of any ship (derived).
    """
    aft, forward = ends
    keel_aft, keel_forward = max(straight[0], aft), min(straight[1], forward)
    x = np.unique(np.concatenate([np.linspace(aft, forward, STATIONS), [keel_aft, keel_forward]]))
    rise = np.zeros_like(x)
    for end, start in ((aft, keel_aft), (forward, keel_forward)):
        if abs(end - start) > 1e-6:
            beyond = np.clip((x - start) / (end - start), 0.0, 1.0)
            rise = np.maximum(rise, beyond**2)
    keel, waterlines = rise * LOWEST_END * depth, np.linspace(0.0, depth, 21)[1:-1]
    risen = np.sqrt(np.clip(waterlines / (LOWEST_END * depth), 0.0, 1.0))
    first, last = keel_aft + risen * (aft - keel_aft), keel_forward + risen * (forward - keel_forward)
    bilge = np.sqrt(1 - (1 - np.clip(waterlines / (ROUNDED * depth), 0.0, 1.0)) ** 2)
    half_breadths = beam / 2 * _plan(x[:, None], first, last) * bilge
    deck, level = beam / 2 * _plan(x, aft, forward), np.full_like(x, depth)
    return HullForm(length, x, waterlines, half_breadths, keel, level, deck, np.zeros_like(x))


def _plan(x: Floats, first: Floats | float, last: Floats | float) -> Floats:
    """Give the share of the half-breadth at places along a waterline between its ends."""
    along = np.abs(2 * (x - first) / (last - first) - 1)
    return np.asarray(1 - np.minimum(along, 1.0) ** 4, dtype=np.float64)
