"""Places for anodes along a strip of shell, clear of blocks and openings."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from msgspec import Struct

from tenderwright.calculations.method import Citation, Method, OutOfRange, Symbol
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import listed, record, text

CLEARANCE = 0.3
"""Clear distance from the edge of a block or opening to an anode, m (common practice, no source)."""

_ROUND_OFF = 1e-9


class Taken(Struct, frozen=True):
    """A stretch of the strip that something else takes, m from the after perpendicular."""

    start: float
    end: float
    what: str

    def __post_init__(self) -> None:
        if not (math.isfinite(self.start) and math.isfinite(self.end) and self.start <= self.end):
            raise OutOfRange(f"{self.what} must start before it ends")


class Layout(Struct, frozen=True):
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


def _kernel(
    start: float,
    end: float,
    number: int,
    length: float,
    taken: Sequence[Mapping[str, Any]] = (),
    clearance: float = CLEARANCE,
    least_gap: float = 0.0,
) -> Layout:
    return anode_layout(start, end, number, length, [Taken(**stretch) for stretch in taken], clearance, least_gap)


def outputs_of(found: Layout) -> Mapping[str, Any]:
    """Give the outputs of the method from a layout."""
    return {"centres": list(found.centres), "missing": float(found.missing)}


METHOD = Method(
    name="anode.layout",
    title="Places for anodes along a strip of shell",
    formula="as many equal parts as anodes; in each, the free place nearest its middle",
    source=Citation("Even spacing with the least moves", standing="derived"),
    valid="a strip of shell at one height; places are from the after perpendicular",
    inputs={
        "start": _length("After end of the strip."),
        "end": _length("Forward end of the strip."),
        "number": {"type": "integer", "minimum": 0, "description": "Anodes to place."},
        "length": _length("Length of an anode."),
        "taken": listed(
            record(
                "",
                ("start", "end", "what"),
                start=_length("After end."),
                end=_length("Forward end."),
                what=text("What takes it."),
            ),
            "Stretches that something else takes, such as openings, blocks and anodes fitted.",
            0,
        ),
        "clearance": _length("Clear distance from what is taken; 300 mm unless given.", "300 mm"),
        "least_gap": _length("Least gap between anodes; none unless given.", "100 mm"),
    },
    outputs=(
        Symbol("centres", "middles of the anodes, from the after perpendicular", "length", "m"),
        Symbol("missing", "anodes for which there was no room", "each", "each"),
    ),
    kernel=_kernel,
    example={
        "start": "6 m",
        "end": "42 m",
        "number": 4,
        "length": "400 mm",
        "taken": [{"start": "14.0 m", "end": "15.2 m", "what": "sea chest"}],
    },
    optional=frozenset({"taken", "clearance", "least_gap"}),
    cautions=("the clearance from blocks and openings is common practice, no source",),
    figures=outputs_of,
)
