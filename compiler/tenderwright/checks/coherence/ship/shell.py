"""The shell as coherence looks at it: sections at any place along the ship, and how far a point lies from them."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.steps.runner import Calculated

Floats = NDArray[np.float64]
_HEIGHTS = 49


class Shell:
    """The hull's sections, straight between stations: near enough to tell what stands off it."""

    def __init__(self, form: HullForm, beam: float) -> None:
        """Take the sections of the stations at even steps of their own depth."""
        self.form = form
        share = np.linspace(0.0, 1.0, _HEIGHTS)[:, None]
        self._z = form.keel_heights + share * (form.deck_heights - form.keel_heights)
        self._y = form.curves.half_breadth(self._z)
        self.aft, self.forward = float(form.stations[0]), float(form.stations[-1])
        self.length, self.beam = form.length, 2 * _widest(form, beam / 2)
        self.depth = float(np.interp(form.length / 2, form.stations, form.deck_heights))

    def within(self, x: float, over: float = 0.0) -> bool:
        """Tell whether a place lies between the ends of the hull."""
        return self.aft - over <= x <= self.forward + over

    def section(self, x: float) -> tuple[Floats, Floats]:
        """Give heights from keel to deck edge and half-breadths of the section at a place."""
        s = self.form.stations
        k = int(np.clip(np.searchsorted(s, x, side="right") - 1, 0, len(s) - 2))
        share = min(max((x - s[k]) / (s[k + 1] - s[k]), 0.0), 1.0)
        z: Floats = self._z[:, k] * (1 - share) + self._z[:, k + 1] * share
        y: Floats = self._y[:, k] * (1 - share) + self._y[:, k + 1] * share
        return z, y

    def keel(self, x: float) -> float:
        """Give the height of the lowest point of the section at a place."""
        return self.form.keel_at(x)

    def deck(self, x: float) -> float:
        """Give the height of the deck edge at a place."""
        return self.form.deck_at(x)

    def half_breadth(self, x: float, z: float) -> float:
        """Give the half-breadth at a place and height; nothing below the keel."""
        heights, breadths = self.section(x)
        return float(np.interp(z, heights, breadths, left=0.0))

    def bottom(self, x: float, y: float) -> float | None:
        """Give the least height at which the shell is this far out; None where it never is."""
        heights, breadths = self.section(x)
        wide = np.flatnonzero(breadths >= y)
        if wide.size == 0:
            return None
        k = int(wide[0])
        if k == 0 or breadths[k] <= breadths[k - 1]:
            return float(heights[k])
        share = (y - breadths[k - 1]) / (breadths[k] - breadths[k - 1])
        return float(heights[k - 1] + share * (heights[k] - heights[k - 1]))

    def distance(self, x: float, y: float, z: float) -> float:
        """Give how far a point at the side lies from the line of the shell in its section."""
        heights, breadths = self.section(x)
        ys, zs = np.append(0.0, breadths), np.append(heights[0], heights)
        dy, dz = np.diff(ys), np.diff(zs)
        square = np.maximum(dy**2 + dz**2, 1e-12)
        along = np.clip(((y - ys[:-1]) * dy + (z - zs[:-1]) * dz) / square, 0.0, 1.0)
        return float(np.hypot(ys[:-1] + along * dy - y, zs[:-1] + along * dz - z).min())

    def girth(self, x: float) -> float:
        """Give the girth from the centreline to the deck edge at a place."""
        heights, breadths = self.section(x)
        return float(breadths[0] + np.hypot(np.diff(breadths), np.diff(heights)).sum())


def _widest(form: HullForm, stated: float) -> float:
    """Give the greatest half-breadth; where it stands far out, that or the next, whichever is nearer to her beam."""
    breadths = np.sort(np.maximum(form.half_breadths.max(axis=1), form.deck_half_breadths))
    most, next_ = float(breadths[-1]), float(breadths[-2])
    return next_ if most > 1.08 * next_ and abs(next_ - stated) < abs(most - stated) else most


def shell_of(calculated: Calculated, beam: float) -> Shell | None:
    """Give the shell of the ship; None where she has no lines that can be used."""
    found = calculated.found(hull)
    return Shell(found.form, beam) if found is not None else None
