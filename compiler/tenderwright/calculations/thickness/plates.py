"""Readings gathered by plate: a plate is a length of a strake on one side, by its runs or by frame bays."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.cells import Ints
from tenderwright.calculations.thickness.columns import Floats
from tenderwright.calculations.thickness.diminution import RENEW, SUBSTANTIAL, Diminution
from tenderwright.quantities.display import plainly

OUTSIDE = -1
"""Plate of a reading that lies on no plate."""


class PlateGrid(Struct, frozen=True, eq=False):
    """Where plates meet: edges in x per strake, the same on both sides, and the plates numbered through."""

    edges: tuple[Floats, ...]
    """Per strake, the ends of its plates, m, rising."""
    sides: int = 2

    def __post_init__(self) -> None:
        for strake, edges in enumerate(self.edges):
            if edges.size < 2 or not (np.diff(edges) > 0.0).all():
                raise OutOfRange(f"strake {strake + 1}: the ends of its plates must rise from aft, two or more")
        if self.sides < 1:
            raise OutOfRange(f"a hull has at least one side, got {self.sides}")

    @property
    def count(self) -> int:
        """Give the number of plates of all sides."""
        return self.sides * int(self._first[-1])

    @property
    def _first(self) -> Ints:
        return np.concatenate([[0], np.cumsum([edges.size - 1 for edges in self.edges])]).astype(np.int64)

    def plate_of(self, strake: Ints, side: Ints, x: Floats) -> Ints:
        """Give the plate of each place; `OUTSIDE` where the strake has no plate there.

        A place just between two plates belongs to the forward one, the foremost end to the last plate.
        Cost is linear in the places (and in the logarithm of the plates of a strake).
        """
        if strake.size and (strake.min() < 0 or strake.max() >= len(self.edges)):
            raise OutOfRange("a reading names a strake that has no plates")
        if side.size and (side.min() < 0 or side.max() >= self.sides):
            raise OutOfRange(f"a reading names a side that is not one of {self.sides}")
        first = self._first
        plate = np.full(strake.size, OUTSIDE, np.int64)
        for code, edges in enumerate(self.edges):
            rows = np.flatnonzero(strake == code)
            bay = _space_of(edges, x[rows])
            inside = (bay >= 0) & (bay < edges.size - 1)
            plate[rows] = np.where(inside, side[rows] * first[-1] + first[code] + bay, OUTSIDE)
        return plate

    def place_of(self, plate: Ints) -> tuple[Ints, Ints, Floats, Floats]:
        """Give the strake, side, after end and forward end of plates, by their numbers."""
        first = self._first
        side, within = np.divmod(plate, first[-1])
        strake = np.searchsorted(first, within, side="right") - 1
        aft = np.concatenate([edges[:-1] for edges in self.edges])
        forward = np.concatenate([edges[1:] for edges in self.edges])
        return strake, side, aft[within], forward[within]


def bay_of(frames: Floats, x: Floats) -> Ints:
    """Give the frame space of each place, from 0; raises OutOfRange for a place beyond the frames."""
    if frames.size < 2 or not (np.diff(frames) > 0.0).all():
        raise OutOfRange("the frames must rise from aft, two or more")
    bay = _space_of(frames, x)
    beyond = (bay < 0) | (bay >= frames.size - 1)
    if beyond.any():
        raise OutOfRange(f"a reading at {plainly(float(x[beyond][0]), 'centre')} lies beyond the frames")
    return bay


def _space_of(ends: Floats, x: Floats) -> Ints:
    """Give the space between two ends that each place lies in, the foremost end in the last; -1 or more for beyond.

    As `numpy.searchsorted` finds it, which is slow for many places in no order: the ends are set out on an even
    scale first, and only places that the scale misses are searched for.
    """
    marks = np.linspace(ends[0], ends[-1], 16 * ends.size)
    share = (np.clip(x, ends[0], ends[-1]) - ends[0]) / (ends[-1] - ends[0])
    at = (share * (marks.size - 1)).astype(np.int64)
    space: Ints = (np.searchsorted(ends, marks, side="right") - 1)[at]
    around = np.concatenate([ends, [np.inf]])
    missed = np.flatnonzero((x < around[space]) | (x >= around[space + 1]))
    space[missed] = np.searchsorted(ends, x[missed], side="right") - 1
    space[np.flatnonzero(x == ends[-1])] -= 1
    return space


class PlateSummary(Struct, frozen=True, eq=False):
    """Readings by plate; one element per plate that has any."""

    plate: Ints
    count: Ints
    as_built: Floats
    """Mean of the thickness as built of its readings, m."""
    mean: Floats
    """Mean of the readings as measured, m."""
    least: Floats
    """Least reading, m."""
    mean_diminution: Floats
    """Mean of the diminutions, clamped at nothing for readings above nominal."""
    greatest_diminution: Floats
    share_renew: Floats
    """Share of the readings that are to be renewed."""
    share_substantial: Floats
    """Share of the readings whose corrosion is substantial or worse."""
    above_nominal: Ints
    """Readings above the thickness as built."""
    allowable: Floats
    """The strictest allowance among the readings of the plate."""


def summarise_plates(
    plate: Ints,
    plates: int,
    as_built: Floats,
    measured: Floats,
    found: Diminution,
    state: NDArray[np.int8],
    allowable: float | Floats,
) -> PlateSummary:
    """Gather readings by plate: count, mean, least, and the shares below the limits.

    Symbols: plate per reading, from 0 to plates - 1, or `OUTSIDE` and then left out; thicknesses in m; state as
    `classify` gives. Source: derived. Cost is linear in readings and plates.
    """
    rows = np.flatnonzero(plate >= 0)
    index = plate[rows]
    count = np.bincount(index, minlength=plates)
    kept = np.flatnonzero(count)

    def mean(values: Sequence[float] | NDArray[np.generic]) -> Floats:
        return np.bincount(index, np.asarray(values)[rows], plates)[kept] / count[kept]

    return PlateSummary(
        plate=kept,
        count=count[kept],
        as_built=mean(as_built),
        mean=mean(measured),
        least=least_by(index, measured[rows], plates)[kept],
        mean_diminution=mean(found.fraction),
        greatest_diminution=-least_by(index, -found.fraction[rows], plates)[kept],
        share_renew=mean(state == RENEW),
        share_substantial=mean(state >= SUBSTANTIAL),
        above_nominal=np.bincount(index[found.above_nominal[rows]], minlength=plates)[kept],
        allowable=least_by(index, np.broadcast_to(allowable, plate.shape)[rows], plates)[kept],
    )


def least_by(index: Ints, values: Floats, size: int) -> Floats:
    """Give the least value for each index, infinity where there is none."""
    least = np.full(size, np.inf)
    np.minimum.at(least, index, values)
    return least
