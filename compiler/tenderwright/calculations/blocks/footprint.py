"""Rectangles on the bottom: footprints of blocks, and the openings and fittings that they must keep clear of."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schema import listed, quantity, record, text

CLEARANCE = 0.3
"""Between a block and an opening, m, where nothing is stated: common practice, no source."""
NEAR = 1e-9


class Footprint(Struct, frozen=True):
    """A rectangle along the ship: middle x forward of AP and y to port, length and width; m. A point has no size."""

    name: str
    x: float
    y: float
    length: float = 0.0
    width: float = 0.0

    @property
    def area(self) -> float:
        """Give its area, m2."""
        return self.length * self.width

    def as_input(self) -> dict[str, Any]:
        """Give what it was built from."""
        return {"name": self.name, "x": self.x, "y": self.y, "length": self.length, "width": self.width}

    def moved(self, along: float) -> Footprint:
        """Give it moved forward, m."""
        return Footprint(self.name, self.x + along, self.y, self.length, self.width)


def sizes(rectangles: Sequence[Footprint]) -> Floats:
    """Give x, y, half length and half width as rows, shape (n, 4). Raises OutOfRange for a negative size."""
    table = np.array([(r.x, r.y, r.length / 2, r.width / 2) for r in rectangles], dtype=np.float64).reshape(-1, 4)
    if not np.all(np.isfinite(table)) or np.any(table[:, 2:] < 0):
        raise OutOfRange("every rectangle needs finite places and no negative length or width")
    return table


def distances(first: Floats, second: Floats) -> Floats:
    """Give the distance from edge to edge of every pair, m, shape (n, m).

    Formula: with d = |difference of middles| - half sizes, the length of the positive parts of (dx, dy); where neither
        is positive the rectangles overlap and it is the greater (negative) one.
    Source: geometry (derived).
    """
    apart = np.abs(first[:, None, :2] - second[None, :, :2]) - first[:, None, 2:] - second[None, :, 2:]
    outside = np.hypot(np.maximum(apart[..., 0], 0.0), np.maximum(apart[..., 1], 0.0))
    found: Floats = np.where(np.all(apart < 0.0, axis=-1), apart.max(axis=-1), outside)
    return found


def too_near(distance: Floats, clearance: float) -> NDArray[np.bool_]:
    """Tell which distances are below a clearance, or are overlaps."""
    return (distance < clearance - NEAR) | (distance < -NEAR)


def footprints_from_input(data: Sequence[Mapping[str, Any]], word: str) -> list[Footprint]:
    """Make rectangles from converted input; one without a name is called by a word and its number."""
    return [
        Footprint(one.get("name", f"{word} {i}"), one["x"], one["y"], one.get("length", 0.0), one.get("width", 0.0))
        for i, one in enumerate(data, 1)
    ]


def rectangles(description: str, least: int = 0, **more: Mapping[str, Any]) -> dict[str, Any]:
    """Give the schema of a list of rectangles, each with keys of its own besides."""
    return listed(
        record(
            "A rectangle.",
            ("x", "y"),
            name=text("What it is."),
            x=quantity("length", "Middle, forward of AP.", "12 m"),
            y=quantity("length", "Middle, to port.", "0 m"),
            length=quantity("length", "Along the ship; none for a point.", "0.3 m"),
            width=quantity("length", "Across the ship; none for a point.", "1.0 m"),
            **more,
        ),
        description,
        least,
    )
