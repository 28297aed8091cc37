"""Hulls known by full tables of offsets, read off at a few sections as from a docking plan."""

from __future__ import annotations

from typing import Any

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.hydrostatics.simpson import Floats

SHARES = np.array([0.0, 0.03, 0.1, 0.2, 0.35, 0.5, 0.7, 0.85, 1.0])
"""Where a section is read, as shares of its height from the keel to the deck edge."""


def spread(form: HullForm, count: int) -> Floats:
    """Give places for so many sections, one near each end."""
    places: Floats = form.length * np.linspace(0.06, 0.94, count)
    return places


def sectioned(form: HullForm, places: Floats, out: float = 0.0, seed: int = 1934) -> dict[str, Any]:
    """Give the inputs of `lofting`, with readings that are out by so much [m]."""
    rng = np.random.default_rng(seed)
    sections = []
    for x in places.tolist():
        keel, deck = form.keel_at(x), form.deck_at(x)
        heights = keel + (deck - keel) * SHARES
        y = form.half_breadth_at(x, np.minimum(heights, deck - 1e-9))
        y[1:] = np.maximum(y[1:] + out * rng.standard_normal(y.size - 1), 0.0)
        sections.append({"x": x, "heights": heights.tolist(), "half_breadths": y.tolist()})
    low = np.flatnonzero(form.keel_heights < form.keel_heights.min() + 1e-6)
    aft, fore = range(low[0], -1, -1), range(low[-1], form.stations.size)
    return {
        "length": form.length,
        "sections": sections,
        "reading": out,
        "stern": _end(form, list(aft)),
        "stem": _end(form, list(fore)),
    }


def _end(form: HullForm, stations: list[int]) -> dict[str, Any]:
    last = stations[-1]
    return {
        "x": [*form.stations[stations].tolist(), float(form.stations[last])],
        "heights": [*form.keel_heights[stations].tolist(), float(form.deck_heights[last])],
        "deck_half_breadth": float(form.deck_half_breadths[last]),
    }
