"""Sections and the profile of stem and stern as an input: their shape, and what is made of them."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property
from typing import Any

import numpy as np
from msgspec import Struct

from tenderwright.calculations.hydrostatics.hull_form import NEAR
from tenderwright.calculations.hydrostatics.monotone import monotone
from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.method import OutOfRange
from tenderwright.calculations.schema import length as _length
from tenderwright.calculations.schema import listed, record, text
from tenderwright.quantities.display import show

CLOSE = 0.004
"""Part of her length below which two stations are one."""
LEAST = 3
"""Sections, and points of a section, below which nothing is lofted."""
ALONG = 400
"""Points by which a section curve is drawn."""


class Section(Struct, frozen=True, eq=False, dict=True):
    """A section from keel to deck edge: position forward of AP, heights above the baseline and half-breadths [m]."""

    x: float
    heights: Floats
    half_breadths: Floats

    def at(self, height: float) -> float:
        """Give the half-breadth [m] at a height [m]; above the deck edge that of the deck edge."""
        return float(np.interp(height, *self._curve))

    @cached_property
    def _curve(self) -> tuple[Floats, Floats]:
        """Draw the section as a monotone cubic over the length of the chords between its points."""
        points = np.column_stack([self.heights, self.half_breadths])
        girth = np.append(0.0, np.cumsum(np.hypot(*np.diff(points, axis=0).T)))
        z, y = monotone(girth, points).at(np.linspace(0.0, girth[-1], ALONG))[0].T
        return np.maximum.accumulate(z), y


class End(Struct, frozen=True, eq=False):
    """The profile of stem or stern, from the keel up to the deck [m]."""

    x: Floats
    heights: Floats
    half_breadth: float
    """Of the stem or post itself."""
    deck_half_breadth: float
    """At the end of the deck."""


def section_of(one: Mapping[str, Any]) -> Section:
    """Make a section from its converted input (metres). Raises OutOfRange."""
    heights, breadths = np.array(one["heights"], dtype=np.float64), np.array(one["half_breadths"], dtype=np.float64)
    where = f"the section at {show(one['x'], 'centre')}"
    if heights.size != breadths.size:
        raise OutOfRange(f"{where} has {breadths.size} half-breadths for {heights.size} heights")
    if heights.size < LEAST:
        raise OutOfRange(f"{where} needs at least {LEAST} heights, from its keel to the deck edge")
    if np.any(np.diff(heights) < 0) or heights[-1] <= heights[0] + NEAR:
        raise OutOfRange(f"the heights of {where} must rise from the keel to the deck edge")
    if np.any(np.hypot(np.diff(heights), np.diff(breadths)) < NEAR):
        raise OutOfRange(f"{where} has one point twice")
    if np.any(breadths < 0):
        raise OutOfRange(f"{where} has a half-breadth below nothing")
    return Section(float(one["x"]), heights, breadths)


def end_of(one: Mapping[str, Any] | None, length: float, outward: int) -> End | None:
    """Make the profile of an end from its converted input (metres), outward forward (1) or aft (-1). Raises OutOfRange.

    An upright part below an overhang is given the least rake, so that her keel line has one height at each place.
    """
    if one is None:
        return None
    name = "stem" if outward > 0 else "stern"
    x, z = outward * np.array(one["x"], dtype=np.float64), np.array(one["heights"], dtype=np.float64)
    if x.size != z.size:
        raise OutOfRange(f"the profile of the {name} has {x.size} places for {z.size} heights")
    if x.size < 2 or np.any(np.diff(z) < 0) or z[-1] <= z[0] + NEAR:
        raise OutOfRange(f"the profile of the {name} must rise from the keel to the deck")
    if np.any(np.diff(x) < 0):
        raise OutOfRange(f"the profile of the {name} must not run back as it rises")
    for i in range(1, x.size):
        if x[i] - x[i - 1] < NEAR and x[-1] > x[i] + 2 * CLOSE * length:
            x[i] += CLOSE * length
    return End(outward * np.maximum.accumulate(x), z, one.get("half_breadth", 0.0), one.get("deck_half_breadth", 0.0))


def _lengths(description: str) -> dict[str, Any]:
    return {"type": "array", "items": {"type": "string", "quantity": "length"}, "description": description}


def _end_input(name: str) -> dict[str, Any]:
    return record(
        f"Profile of the {name}, from the keel up to the deck; without it the hull ends flat at the outermost section.",
        ("x", "heights"),
        x=_lengths("Places forward of the after perpendicular."),
        heights=_lengths("Their heights above the baseline."),
        half_breadth=_length("Half the siding of the bar or post; nothing where left out."),
        deck_half_breadth=_length("Half-breadth at the end of the deck; nothing where left out."),
    )


SECTIONS_INPUT: Mapping[str, Mapping[str, Any]] = {
    "length": _length("Between perpendiculars."),
    "sections": listed(
        record(
            "A section, from its keel up to the deck edge.",
            ("x", "heights", "half_breadths"),
            name=text("Its name."),
            x=_length("Forward of the after perpendicular."),
            heights=_lengths("Heights above the baseline, rising."),
            half_breadths=_lengths("Half-breadth at each."),
        ),
        "The sections.",
        0,
    ),
    "reading": _length("Standard uncertainty of a half-breadth, at the size of the ship."),
    "stern": _end_input("stern"),
    "stem": _end_input("stem"),
}


def _row(x: str, heights: str, half_breadths: str) -> dict[str, Any]:
    columns = ([f"{one} m" for one in row.split()] for row in (heights, half_breadths))
    return {"x": x, **dict(zip(("heights", "half_breadths"), columns, strict=True))}


SECTIONS_EXAMPLE: Mapping[str, Any] = {
    "length": "40 m",
    "sections": [
        _row("3 m", "0.2 1 2 3 4 5.1", "0.1 0.7 1.7 2.8 3.4 3.5"),
        _row("10 m", "0 0.4 1 2 3 4.8", "0.3 2.0 2.9 3.7 4.0 4.1"),
        _row("20 m", "0 0.3 1 2 3 4.7", "0.5 3.0 3.6 4.2 4.2 4.2"),
        _row("30 m", "0 0.4 1 2 3 5", "0.3 1.6 2.5 3.2 3.6 4.0"),
        _row("36 m", "0 1 2 3 5.3", "0.1 1.0 1.5 1.9 2.8"),
    ],
    "reading": "50 mm",
    "stern": {"x": ["1 m", "0 m", "-1 m"], "heights": ["0 m", "2.6 m", "5.2 m"], "deck_half_breadth": "1.2 m"},
    "stem": {"x": ["39 m", "40 m", "41 m"], "heights": ["0 m", "3 m", "5.7 m"]},
}
