"""The shell laid flat: strakes by frame spaces on paper, port above the keel and starboard below it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from tenderwright.calculations.renewal.shell_grid import ShellGrid
from tenderwright.calculations.renewal.shell_plan import ShellPlan
from tenderwright.calculations.renewal.shell_renewal import PlannedRenewal
from tenderwright.calculations.thickness.columns import Flags, Floats
from tenderwright.calculations.thickness.shell_forecast import ShellCondition
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.view import View

SIGNS = (1.0, -1.0)
"""Up the sheet for port, down for starboard."""


@dataclass(frozen=True, eq=False)
class Expansion:
    """One view of the shell laid flat."""

    plan: ShellPlan
    view: View

    @property
    def edges(self) -> Floats:
        """Give the girths of the seams at every frame, m, shape (strakes + 1, frames): the mean of both spaces."""
        grid = self.plan.grid
        seams = grid.seams if grid.seams.ndim == 2 else np.repeat(grid.seams[:, None], grid.bays, axis=1)
        padded = np.concatenate([seams[:, :1], seams, seams[:, -1:]], axis=1)
        edges: Floats = 0.5 * (padded[:, :-1] + padded[:, 1:])
        return edges

    def strip(self, strake: int, side: int, aft: int, forward: int, edges: Floats) -> list[Point]:
        """Outline a strake, or strakes upward from it, between two frames."""
        return self.strips(strake, strake + 1, side, aft, forward, edges)

    def strips(self, lower: int, upper: int, side: int, aft: int, forward: int, edges: Floats) -> list[Point]:
        """Outline the strakes from one seam to another between two frames."""
        frames, sign = self.plan.grid.frames, SIGNS[side]
        span = range(aft, forward + 1)
        low = [self.view.at((float(frames[i]), sign * float(edges[lower, i]))) for i in span]
        high = [self.view.at((float(frames[i]), sign * float(edges[upper, i]))) for i in reversed(span)]
        return [*low, *high]

    def renewal(self, one: PlannedRenewal, edges: Floats) -> list[Point]:
        """Outline an insert."""
        outline, side = one.made.outline, ("port", "starboard").index(one.side)
        return self.strips(outline.lower, outline.upper, side, outline.aft, outline.forward, edges)


def worst_by_cell(shell: ShellCondition, grid: ShellGrid) -> tuple[Floats, Flags]:
    """Give the greatest loss of each frame space as a share of what it may lose, and where any was gauged.

    Arrays of shape (2, strakes, frame spaces), port first. Cost is linear in the readings.
    """
    readings, found = shell.readings, shell.analysis
    rows = np.flatnonzero(found.latest)
    key = (readings.side[rows] * grid.strakes + readings.strake[rows]) * grid.bays + grid.bay_of(readings.x[rows])
    size = 2 * grid.strakes * grid.bays
    worst = np.zeros(size)
    np.maximum.at(worst, key, found.found.fraction[rows] / shell.allowable[rows])
    shape = (2, grid.strakes, grid.bays)
    return worst.reshape(shape), (np.bincount(key, minlength=size) > 0).reshape(shape)


def runs(mask: Flags) -> Iterator[tuple[int, int]]:
    """Yield the runs of a row of flags, from one place up to another."""
    step = np.diff(np.concatenate([[0], mask.astype(np.int8), [0]]))
    yield from zip(np.flatnonzero(step == 1).tolist(), np.flatnonzero(step == -1).tolist(), strict=True)
