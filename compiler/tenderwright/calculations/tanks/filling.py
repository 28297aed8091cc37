"""Filling: the liquid plane that holds a given volume in each of several tanks."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec.structs import replace
from numpy.typing import ArrayLike, NDArray

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.tanks.liquid import Liquid, cut, surfaces
from tenderwright.calculations.tanks.polyhedron import Polyhedron
from tenderwright.quantities.display import show

FULL = 1e-9
"""A tank within this part of its volume of empty or full is taken as empty or full."""
CLOSE = 1e-12
"""A volume is found to this part of the tank's own."""
STEPS = 80


def fill(
    bodies: Sequence[Polyhedron],
    volumes: ArrayLike,
    trim_slope: float = 0.0,
    heel_slope: float = 0.0,
    near: ArrayLike | None = None,
) -> list[Liquid]:
    """Find the liquid plane that holds each volume [m3] in each body, by Newton's method in brackets.

    A tank empty or pressed full has no free surface. `near` gives levels to start from [m].
    Source: derived; see `cut` for the plane. Range: volumes from 0 to each body's own. Raises OutOfRange.
    """
    if not bodies:
        return []
    wanted = np.atleast_1d(np.asarray(volumes, dtype=np.float64))
    whole = np.array([b.volume for b in bodies])
    for i in np.flatnonzero((wanted < -FULL * whole) | (wanted > whole * (1 + FULL))):
        raise OutOfRange(
            f"a tank of {show(whole[i], 'capacity', more=1)} cannot hold {show(wanted[i], 'capacity', more=1)}"
        )
    low, high = _extent(bodies, trim_slope, heel_slope)
    share = wanted / whole
    guess = low + (high - low) * share if near is None else np.clip(np.asarray(near, dtype=np.float64), low, high)
    slack = (share > FULL) & (share < 1 - FULL)
    level = np.where(slack, guess, np.where(share < 0.5, low, high))
    found = _newton(bodies, wanted, slack, (low, level, high), (trim_slope, heel_slope))
    return [body if part else _still(body) for body, part in zip(found, slack.tolist(), strict=True)]


def _extent(bodies: Sequence[Polyhedron], trim_slope: float, heel_slope: float) -> tuple[Floats, Floats]:
    over = [b.vertices @ np.array([trim_slope, heel_slope, 1.0]) for b in bodies]
    return np.array([v.min() for v in over]), np.array([v.max() for v in over])


def _newton(
    bodies: Sequence[Polyhedron],
    wanted: Floats,
    slack: NDArray[np.bool_],
    levels: tuple[Floats, Floats, Floats],
    slopes: tuple[float, float],
) -> list[Liquid]:
    low, level, high = levels
    close = CLOSE * np.array([b.volume for b in bodies])
    result: list[Liquid | None] = [None] * len(bodies)
    open_, ready = np.arange(len(bodies)), surfaces(bodies, *slopes)
    for _ in range(STEPS):
        found = cut(ready, level[open_])
        error = found.volume - wanted[open_]
        off = slack[open_] & (np.abs(error) > close[open_])
        for i, liquid, is_off in zip(open_.tolist(), found.liquids(), off.tolist(), strict=True):
            if not is_off:
                result[i] = liquid
        if not off.any():
            return [liquid for liquid in result if liquid is not None]
        if not off.all():
            ready = ready.only(off)
        open_, error, area = open_[off], error[off], found.surface_area[off]
        at = level[open_]
        low[open_] = np.where(error < 0, at, low[open_])
        high[open_] = np.where(error > 0, at, high[open_])
        guess = at - np.divide(error, area, out=np.zeros_like(error), where=area > 0)
        inside = (guess > low[open_]) & (guess < high[open_])
        level[open_] = np.where(inside, guess, (low[open_] + high[open_]) / 2)
    raise OutOfRange("no level was found that holds the volume asked for")


def _still(body: Liquid) -> Liquid:
    return replace(body, surface_area=0.0, surface_transverse=0.0, surface_longitudinal=0.0)
