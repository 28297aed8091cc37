"""The grid of strakes and frame bays that renewals are laid out on."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.thickness.plates import bay_of

Ints = NDArray[np.int64]
Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]


class ShellGrid(Struct, frozen=True, eq=False):
    """One side of the shell as cells: strake by frame bay."""

    frames: Floats
    """Places of the frames, m forward, rising; shape (bays + 1,)."""
    seams: Floats
    """Girths of the seams from the keel, m, rising; shape (strakes + 1,), or (strakes + 1, bays) where she narrows."""

    def __post_init__(self) -> None:
        if self.frames.ndim != 1 or self.frames.size < 2 or not (np.diff(self.frames) > 0.0).all():
            raise OutOfRange("the frames must rise from aft, two or more")
        if self.seams.ndim not in (1, 2) or self.seams.shape[0] < 2:
            raise OutOfRange("there must be a seam at either edge of each strake")
        if self.seams.ndim == 2 and self.seams.shape[1] != self.bays:
            raise OutOfRange("girths that change along the ship need one for each frame bay")
        if not (np.diff(self.seams, axis=0) > 0.0).all():
            raise OutOfRange("the seams must rise from the keel")

    @property
    def strakes(self) -> int:
        """Give the number of strakes."""
        return int(self.seams.shape[0]) - 1

    @property
    def bays(self) -> int:
        """Give the number of frame bays."""
        return int(self.frames.size) - 1

    def length(self, aft: int, forward: int) -> float:
        """Give the length from one frame to another, m."""
        return float(self.frames[forward] - self.frames[aft])

    def breadth(self, lower: int, upper: int, aft: int, forward: int) -> float:
        """Give the girth from one seam to another, m, the mean along the bays between two frames."""
        if self.seams.ndim == 1:
            return float(self.seams[upper] - self.seams[lower])
        step = np.diff(self.frames)[aft:forward]
        girth = (self.seams[upper] - self.seams[lower])[aft:forward]
        return float((girth * step).sum() / step.sum())

    def bay_of(self, x: Floats) -> Ints:
        """Give the bay of each place; raises OutOfRange for one beyond the frames."""
        return bay_of(self.frames, x)

    def cells(self, strake: Ints, x: Floats) -> Flags:
        """Mark the cells that hold any of some places; shape (strakes, bays)."""
        if strake.size and (strake.min() < 0 or strake.max() >= self.strakes):
            raise OutOfRange("a reading names a strake that is not on the grid")
        marked = np.zeros((self.strakes, self.bays), np.bool_)
        marked[strake, self.bay_of(x)] = True
        return marked
