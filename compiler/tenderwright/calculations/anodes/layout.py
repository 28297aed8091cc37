"""Places for anodes along a strip of shell, clear of blocks and openings."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from tenderwright.calculations.method import OutOfRange

CLEARANCE = 0.3
"""Clear distance from the edge of a block or opening to an anode, m (common practice, no source)."""

_ROUND_OFF = 1e-9


@dataclass(frozen=True)
class Taken:
    """A stretch of the strip that something else takes, m from the after perpendicular."""

    start: float
    end: float
    what: str

    def __post_init__(self) -> None:
        if not (math.isfinite(self.start) and math.isfinite(self.end) and self.start <= self.end):
            raise OutOfRange(f"{self.what} must start before it ends")


@dataclass(frozen=True)
class Layout:
    """Where anodes go along a strip."""

    centres: tuple[float, ...]
    """Middles of the anodes, m from the after perpendicular, from aft."""
    moved: tuple[bool, ...]
    """Whether each stands off its even place."""
    missing: int
    """Anodes for which there was no room."""


def anode_layout(
    start: float,
    end: float,
    number: int,
    length: float,
    taken: Sequence[Taken] = (),
    clearance: float = CLEARANCE,
    least_gap: float = 0.0,
) -> Layout:
    """Place anodes evenly along a strip, each moved no further than it must be.

    Method: the strip is cut into as many equal parts as there are anodes; from aft each anode takes the free place
    nearest the middle of its part that is clear of what is taken and of the anode before it, and that leaves room for
    those still to come. Symbols: strip from start to end, length of an anode, clearance and least gap between anodes
    in m. Source: derived; the clearance is common practice. Raises OutOfRange.
    """
    if not (math.isfinite(start) and math.isfinite(end) and start < end):
        raise OutOfRange("a strip of shell must start before it ends")
    if number < 0:
        raise OutOfRange(f"the number of anodes cannot be less than nothing, got {number}")
    if not (length > 0.0 and clearance >= 0.0 and least_gap >= 0.0):
        raise OutOfRange("an anode has a length, and clearances are not less than nothing")
    free = _free_centres(start, end, length, taken, clearance)
    pitch = length + least_gap
    latest = _latest_centres(free, pitch, number)
    part = (end - start) / max(number, 1)
    placed: list[float] = []
    moved: list[bool] = []
    for index in range(number - len(latest), number):
        wanted = start + (index + 0.5) * part
        earliest = placed[-1] + pitch if placed else -math.inf
        bound = latest[index - (number - len(latest))]
        choices = [
            min(max(wanted, low, earliest), high, bound)
            for low, high in free
            if max(low, earliest) <= min(high, bound) + _ROUND_OFF
        ]
        best = min(choices, key=lambda centre: (abs(centre - wanted), centre))
        placed.append(best)
        moved.append(abs(best - wanted) > 1e-6)
    return Layout(tuple(placed), tuple(moved), number - len(placed))


def _free_centres(
    start: float, end: float, length: float, taken: Sequence[Taken], clearance: float
) -> list[tuple[float, float]]:
    """Give the stretches where the middle of an anode may lie."""
    free, at = [], start + 0.5 * length
    reach = clearance + 0.5 * length
    for block in sorted(taken, key=lambda block: block.start):
        if block.start - reach >= at:
            free.append((at, min(block.start - reach, end - 0.5 * length)))
        at = max(at, block.end + reach)
    free.append((at, end - 0.5 * length))
    return [(low, high) for low, high in free if low <= high + _ROUND_OFF]


def _latest_centres(free: list[tuple[float, float]], pitch: float, number: int) -> list[float]:
    """Give, from aft, the foremost place of each of the last anodes that leaves room for all ahead of it."""
    latest: list[float] = []
    bound = math.inf
    for low, high in reversed(free):
        while len(latest) < number and min(high, bound) >= low - _ROUND_OFF:
            latest.append(min(high, bound))
            bound = latest[-1] - pitch
    return latest[::-1]
