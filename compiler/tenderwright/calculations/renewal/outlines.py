"""Outlines of inserts round the cells of bad readings, cut at frames and seams."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from tenderwright.calculations.method import Citation, OutOfRange
from tenderwright.calculations.renewal.shell_grid import Flags, Ints, ShellGrid

LEAST_BAYS = 1
"""Least frame spaces that an insert spans."""
LEAST_BAYS_SOURCE = Citation("USCG NVIC 7-68 (TB 55-1900-201-45/1)", "inserts; cuts on existing seams")

LEAST_SIZE = 0.300
"""Least length and breadth of an insert, m."""
LEAST_SIZE_SOURCE = Citation("IACS Recommendation 47", "Part B", standing="from memory")

WASTE = 0.25
"""Sound plate that may be renewed to make one insert of two, of their area (common practice, no source)."""

_ROUND_OFF = 1e-9


class Outline(Struct, frozen=True, order=True):
    """An insert as the seams and frames it is cut at: from one to another, by their numbers from 0."""

    lower: int
    upper: int
    aft: int
    forward: int

    def __post_init__(self) -> None:
        if not (0 <= self.lower < self.upper and 0 <= self.aft < self.forward):
            raise OutOfRange("an insert runs from a lower to an upper seam and from an after to a forward frame")

    @property
    def strakes(self) -> range:
        """Give the strakes it crosses."""
        return range(self.lower, self.upper)

    @property
    def bays(self) -> range:
        """Give the frame bays it spans."""
        return range(self.aft, self.forward)

    def joined(self, other: Outline) -> Outline:
        """Give the least outline that holds both."""
        return Outline(
            min(self.lower, other.lower),
            max(self.upper, other.upper),
            min(self.aft, other.aft),
            max(self.forward, other.forward),
        )


class OutlineRules(Struct, frozen=True):
    """The least sizes of inserts, and when two become one."""

    least_bays: int = LEAST_BAYS
    least_size: float = LEAST_SIZE
    waste: float = WASTE

    def __post_init__(self) -> None:
        if self.least_bays < 1 or self.least_size < 0.0 or self.waste < 0.0:
            raise OutOfRange("an insert spans at least one frame space, and no least size or waste is below nothing")


def insert_outlines(grid: ShellGrid, bad: Flags, rules: OutlineRules | None = None) -> tuple[Outline, ...]:
    """Lay out inserts over the bad cells of one side.

    Method: runs of bad cells along each strake become outlines of a whole strake's breadth (cuts lie on existing
    seams and at frames); each grows to the least size; two are made one where they share plate, or where they touch
    or nearly touch (one bay apart) and the outline round both renews no more sound plate than `waste` of their area.
    Symbols: bad of shape (strakes, bays). Every bad cell is in just one outline, and no two outlines share plate.
    Source: `LEAST_BAYS_SOURCE`, `LEAST_SIZE_SOURCE`; the joining is derived. Raises OutOfRange.
    """
    rules = rules or OutlineRules()
    if bad.shape != (grid.strakes, grid.bays):
        raise OutOfRange(f"the cells must be {grid.strakes} strakes by {grid.bays} bays, got {bad.shape}")
    waiting = [_grown(grid, outline, rules) for outline in _runs(bad)][::-1]
    done: list[Outline] = []
    while waiting:
        outline = waiting.pop()
        at = _to_join(grid, outline, done, rules.waste)
        if at is None:
            done.append(outline)
        else:
            waiting.append(outline.joined(done.pop(at)))
    return tuple(sorted(done))


def _runs(bad: Flags) -> list[Outline]:
    padded = np.pad(bad, ((0, 0), (1, 1))).astype(np.int8)
    step = np.diff(padded, axis=1)
    strake, aft = np.nonzero(step == 1)
    _, forward = np.nonzero(step == -1)
    ends = zip(strake.tolist(), aft.tolist(), forward.tolist(), strict=True)
    return [Outline(s, s + 1, a, f) for s, a, f in ends]


def _grown(grid: ShellGrid, outline: Outline, rules: OutlineRules) -> Outline:
    """Grow an outline to the least size, by bays fore and aft in turn and then by strakes upward and downward."""
    aft, forward = outline.aft, outline.forward
    while forward - aft < rules.least_bays or grid.length(aft, forward) < rules.least_size - _ROUND_OFF:
        if forward - aft == grid.bays:
            raise OutOfRange("the whole length of the shell is shorter than the least insert")
        ahead = (forward - aft - (outline.forward - outline.aft)) % 2 == 0
        if (ahead and forward < grid.bays) or aft == 0:
            forward += 1
        else:
            aft -= 1
    lower, upper = outline.lower, outline.upper
    while grid.breadth(lower, upper, aft, forward) < rules.least_size - _ROUND_OFF:
        if upper - lower == grid.strakes:
            raise OutOfRange("the whole girth of the shell is less than the least insert")
        if upper < grid.strakes:
            upper += 1
        else:
            lower -= 1
    return Outline(lower, upper, aft, forward)


def _to_join(grid: ShellGrid, outline: Outline, done: list[Outline], waste: float) -> int | None:
    """Find an outline, among those done, to make one with this."""
    if not done:
        return None
    edges: Ints = np.array([(o.lower, o.upper, o.aft, o.forward) for o in done])
    apart_up = np.maximum(edges[:, 0] - outline.upper, outline.lower - edges[:, 1])
    apart_along = np.maximum(edges[:, 2] - outline.forward, outline.aft - edges[:, 3])
    near = np.flatnonzero((apart_up <= 0) & (apart_along <= 1) & ~((apart_up == 0) & (apart_along >= 0)))
    for at in near.tolist():
        other = done[at]
        if apart_up[at] < 0 and apart_along[at] < 0:
            return int(at)
        area = outline_area(grid, outline) + outline_area(grid, other)
        if outline_area(grid, outline.joined(other)) <= area * (1.0 + waste) + _ROUND_OFF:
            return int(at)
    return None


def outline_area(grid: ShellGrid, outline: Outline) -> float:
    """Give the area inside an outline, corners square, m²: length by breadth (derived)."""
    lower, upper, aft, forward = outline.lower, outline.upper, outline.aft, outline.forward
    return grid.length(aft, forward) * grid.breadth(lower, upper, aft, forward)
