"""The hull form: a table of offsets with keel and deck edge, and the curves drawn through it."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from functools import cached_property
from math import prod

import numpy as np
from msgspec import Struct
from numpy.typing import ArrayLike

from tenderwright.calculations.hydrostatics.sections import SectionCurves, section_curves
from tenderwright.calculations.hydrostatics.simpson import Floats, parabola_starts, weights
from tenderwright.calculations.method import OutOfRange
from tenderwright.quantities.display import show

NEAR = 1e-6
"""Heights closer than this [m] are one height."""
DRAFTS = 24
"""Drafts at which the volume displaced is known before a search."""
END_PARTS = 8
"""Parts into which an interval is cut where the keel rises in it: for a ship-shaped hull the volume then stands to
0.002 % and the centre of flotation to 3 mm. The end of a flat bottom is found to one part of the interval."""


class HullForm(Struct, frozen=True, eq=False, dict=True):
    """A moulded hull, symmetrical about the centreline, as a table of offsets. Build it with `hull_form`."""

    length: float
    """Between perpendiculars [m]; drafts and trim are measured at x = 0 (AP) and x = length (FP)."""
    stations: Floats
    """Positions x forward of AP [m], rising, shape (n,); spacing may be uneven."""
    waterlines: Floats
    """Heights z above the baseline [m], rising, shape (m,)."""
    half_breadths: Floats
    """Half-breadths y [m], shape (n, m); 0 at waterlines below a station's keel."""
    keel_heights: Floats
    """Height of the hull's lowest point at each station [m], shape (n,)."""
    deck_heights: Floats
    """Height of the deck edge at each station [m], shape (n,); waterlines at or above it are not used
    there."""
    deck_half_breadths: Floats
    """Half-breadth at the deck edge [m], shape (n,)."""
    half_sidings: Floats
    """Half-breadth at the keel [m], shape (n,), where the keel does not lie on a waterline."""

    @cached_property
    def curves(self) -> SectionCurves:
        """The section curves through keel, waterlines and deck edge."""
        return section_curves(self._points())

    @cached_property
    def weights(self) -> Floats:
        """Simpson weights of the stations [m], shape (n,)."""
        return weights(self.stations)

    @cached_property
    def sinkage(self) -> tuple[Floats, Floats]:
        """Drafts from the keel to the deck on an even keel [m], and the volume displaced at each [m3]."""
        drafts = np.linspace(float(self.keel_heights.min()), self.depth, DRAFTS)
        drawn = self.drawn
        return drafts, 2 * drawn.curves.half_area(drawn.heights(drafts)) @ drawn.weights

    @cached_property
    def drawn(self) -> HullForm:
        """The hull with stations drawn in wherever the keel rises from one station to the next, for integration.

        An end that comes out of the water between two stations is so followed as far as the water reaches. Where a
        waterline crosses the stations whose parabola Simpson's rule takes, it is that parabola; else it runs straight
        to the keel line, itself straight between stations, and ends there at the half siding. Derived.
        """
        rising = np.flatnonzero(np.abs(np.diff(self.keel_heights)) > NEAR).tolist()
        if not rising:
            return self
        x, z = self.stations, self.waterlines
        inner = np.arange(1, END_PARTS) / END_PARTS
        stations = np.concatenate([x, *(x[k] + inner * (x[k + 1] - x[k]) for k in rising)])
        rows = np.concatenate(
            [
                self.curves.half_breadth(*np.broadcast_arrays(z, np.arange(x.size)[:, None])),
                *(self._drawn_between(k, inner) for k in rising),
            ]
        )
        order = np.argsort(stations)
        stations = stations[order]
        keel = np.interp(stations, x, self.keel_heights)
        return HullForm(
            length=self.length,
            stations=stations,
            waterlines=z,
            half_breadths=np.where(z < keel[:, None] - NEAR, 0.0, rows[order]),
            keel_heights=keel,
            deck_heights=np.interp(stations, x, self.deck_heights),
            deck_half_breadths=np.interp(stations, x, self.deck_half_breadths),
            half_sidings=np.interp(stations, x, self.curves.a[:, 0]),
        )

    def as_input(self) -> dict[str, object]:
        """Give the table of offsets."""
        columns = (
            self.stations,
            self.half_breadths,
            self.keel_heights,
            self.deck_heights,
            self.deck_half_breadths,
            self.half_sidings,
        )
        names = ("x", "half_breadths", "keel", "deck", "deck_half_breadth", "half_siding")
        stations = [dict(zip(names, row, strict=True)) for row in zip(*(c.tolist() for c in columns), strict=True)]
        return {"length": self.length, "waterlines": self.waterlines.tolist(), "stations": stations}

    @property
    def depth(self) -> float:
        """Height of the highest deck edge [m]."""
        return float(self.deck_heights.max())

    def heights(self, draft: ArrayLike, trim: ArrayLike = 0.0) -> Floats:
        """Give the height of the waterline at each station [m] for drafts amidships and trims [m], shape
        (..., n)."""
        d, t = np.asarray(draft, dtype=np.float64), np.asarray(trim, dtype=np.float64)
        return d[..., None] + t[..., None] * (0.5 - self.stations / self.length)

    def half_breadth_at(self, x: float, z: ArrayLike) -> Floats:
        """Give the half-breadth [m] at position x [m] and heights z [m], by the parabolas that Simpson's rule
        draws."""
        heights = np.asarray(z, dtype=np.float64)
        index, share = self._neighbours(x)
        each = self.curves.half_breadth(heights, np.reshape(index, (-1, *(1 for _ in heights.shape))))
        y = sum((part * w for part, w in zip(each, share, strict=True)), np.zeros(heights.shape))
        within: Floats = np.minimum(np.maximum(y, 0.0), each.max(axis=0))
        return within

    def keel_at(self, x: float) -> float:
        """Give the keel height [m] at position x [m], straight between stations."""
        return float(np.interp(x, self.stations, self.keel_heights))

    def deck_at(self, x: float) -> float:
        """Give the height of the deck edge [m] at position x [m], straight between stations."""
        return float(np.interp(x, self.stations, self.deck_heights))

    def _drawn_between(self, k: int, shares: Floats) -> Floats:
        """Give the half-breadths [m] of the waterlines, by shares of the way from station k to the next; without
        meaning below the keel."""
        z, keel, siding = self.waterlines, self.keel_heights, self.curves.a[:, 0]
        low, high = sorted((k, k + 1), key=keel.__getitem__)
        along = (shares if low == k else 1 - shares)[:, None]
        y = self.curves.half_breadth(*np.broadcast_arrays(z, np.array([low, high])[:, None]))
        reach = np.clip((z - keel[low]) / (keel[high] - keel[low]), NEAR, 1.0)
        end = np.where(z < keel[high], siding[low] + reach * (siding[high] - siding[low]), y[1])
        straight = y[0] + np.minimum(along / reach, 1.0) * (end - y[0])
        curved = np.array([self.half_breadth_at(at, z) for at in self.stations[k] + shares * np.diff(self.stations)[k]])
        crossed = z >= keel[self._neighbours(self.stations[k])[0]].max() - NEAR
        return np.where(crossed, curved, straight)

    def _neighbours(self, x: float) -> tuple[list[int], list[float]]:
        s, starts = self._intervals
        if not s[0] - NEAR <= x <= s[-1] + NEAR:
            raise OutOfRange(
                f"x = {show(x, 'centre', more=1)} lies outside the stations, "
                f"{show(s[0], 'centre', more=1)} to {show(s[-1], 'centre', more=1)}"
            )
        k = min(max(bisect_right(s, x) - 1, 0), len(s) - 2)
        start = starts[k]
        nodes = [k, k + 1] if start < 0 else [start, start + 1, start + 2]
        return nodes, [prod((x - s[j]) / (s[i] - s[j]) for j in nodes if j != i) for i in nodes]

    @cached_property
    def _intervals(self) -> tuple[list[float], list[int]]:
        """Give the stations, and where the parabola over each interval between them starts."""
        return self.stations.tolist(), parabola_starts(self.stations).tolist()

    def _points(self) -> Iterator[tuple[Floats, Floats, bool]]:
        for i, (keel, deck) in enumerate(zip(self.keel_heights, self.deck_heights, strict=True)):
            used = (self.waterlines > keel - NEAR) & (self.waterlines < deck - NEAR)
            z, y = self.waterlines[used], self.half_breadths[i, used]
            if z.size == 0 or z[0] > keel + NEAR:
                z, y = np.append(keel, z), np.append(self.half_sidings[i], y)
            on_waterline = np.flatnonzero(np.abs(self.waterlines - deck) <= NEAR)
            top = self.half_breadths[i, on_waterline[0]] if on_waterline.size else self.deck_half_breadths[i]
            yield np.append(z, deck), np.append(y, top), not on_waterline.size


def hull_form(
    *,
    length: float,
    stations: ArrayLike,
    waterlines: ArrayLike,
    half_breadths: ArrayLike,
    keel_heights: ArrayLike = 0.0,
    deck_heights: ArrayLike | None = None,
    deck_half_breadths: ArrayLike | None = None,
    half_sidings: ArrayLike = 0.0,
) -> HullForm:
    """Make a checked hull form; all in metres.

    A single number stands for every station. Without a deck edge the top waterline is the deck edge. Where a
    deck edge lies on a waterline, the waterline's half-breadth is used.
    Raises OutOfRange where the table contradicts itself.
    """
    x, z = np.array(stations, dtype=np.float64), np.array(waterlines, dtype=np.float64)
    y = np.array(half_breadths, dtype=np.float64)
    if y.shape != (x.size, z.size):
        raise OutOfRange(f"half-breadths are {y.shape}, but there are {x.size} stations and {z.size} waterlines")

    def per_station(value: ArrayLike) -> Floats:
        return np.broadcast_to(np.asarray(value, dtype=np.float64), x.shape).copy()

    form = HullForm(
        length=float(length),
        stations=x,
        waterlines=z,
        half_breadths=y,
        keel_heights=per_station(keel_heights),
        deck_heights=per_station(z[-1] if deck_heights is None else deck_heights),
        deck_half_breadths=per_station(y[:, -1] if deck_half_breadths is None else deck_half_breadths),
        half_sidings=per_station(half_sidings),
    )
    _check(form)
    return form


def _check(form: HullForm) -> None:
    x, z, y = form.stations, form.waterlines, form.half_breadths
    everything = (x, z, y, form.keel_heights, form.deck_heights, form.deck_half_breadths, form.half_sidings)
    if not all(np.all(np.isfinite(v)) for v in everything):
        raise OutOfRange("every offset must be a finite number")
    if x.size < 3 or z.size < 2:
        raise OutOfRange("a hull form needs at least three stations and two waterlines")
    if np.any(np.diff(x) <= 0) or np.any(np.diff(z) <= NEAR):
        raise OutOfRange("stations must run forward and waterlines upward, each beyond the one before")
    if np.any(y < 0) or np.any(form.deck_half_breadths < 0) or np.any(form.half_sidings < 0):
        raise OutOfRange("half-breadths must not be negative")
    if form.length <= 0:
        raise OutOfRange("the length between perpendiculars must be positive")
    for i in np.flatnonzero(form.deck_heights <= form.keel_heights + NEAR):
        raise OutOfRange(f"at x = {show(x[i], 'centre', more=1)} the deck edge is not above the keel")
    below = (z[None, :] < form.keel_heights[:, None] - NEAR) & (y != 0)
    for i, j in np.argwhere(below):
        raise OutOfRange(
            f"at x = {show(x[i], 'centre', more=1)} the half-breadth at {show(z[j], 'centre', more=1)} is "
            "below the keel and must be 0"
        )
