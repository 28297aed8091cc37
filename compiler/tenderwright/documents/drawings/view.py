"""Scales and views: from metres on the ship to millimetres on paper."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from tenderwright.documents.drawings.pen import Point
from tenderwright.quantities.customs import system

SCALES = (20, 25, 40, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000)
"""Scales a drawing may have, one to so many."""
CUSTOMARY = {
    16: "3/4 in = 1 ft", 24: "1/2 in = 1 ft", 32: "3/8 in = 1 ft", 48: "1/4 in = 1 ft", 64: "3/16 in = 1 ft",
    96: "1/8 in = 1 ft", 120: "1 in = 10 ft", 128: "3/32 in = 1 ft", 192: "1/16 in = 1 ft", 240: "1 in = 20 ft",
    256: "3/64 in = 1 ft", 360: "1 in = 30 ft", 384: "1/32 in = 1 ft", 480: "1 in = 40 ft", 600: "1 in = 50 ft",
    768: "1/64 in = 1 ft", 1200: "1 in = 100 ft",
}  # fmt: skip
"""The same where figures are told in customary units, each as it is named."""


@dataclass(frozen=True)
class Room:
    """The largest a drawing may be on its page, mm."""

    width: float
    height: float


LANDSCAPE = Room(239.0, 125.0)
"""What is left of a page on its side, A4 or Letter, beside its head and a caption."""
PORTRAIT = Room(165.0, 182.0)
"""What is left of an upright page, A4 or Letter."""


def scales() -> tuple[int, ...]:
    """Give the scales a drawing may have in the units that figures are told in, the largest first."""
    return tuple(CUSTOMARY) if system() == "us" else SCALES


def largest_scale(room: Room, size: Callable[[int], tuple[float, float]]) -> int:
    """Choose the largest scale at which a drawing of `size` (mm, by scale) fits; the smallest where none does."""
    for scale in scales():
        width, height = size(scale)
        if width <= room.width and height <= room.height:
            return scale
    return scales()[-1]


@dataclass(frozen=True)
class View:
    """A view of the ship on paper: where its zero lies, at which scale."""

    scale: int
    left: float
    """Where x = 0 lies, mm from the left of the sheet."""
    base: float
    """Where height (or breadth) 0 lies, mm from the top of the sheet."""

    def mm(self, metres: float) -> float:
        """Give a length on the ship as a length on paper."""
        return metres * 1000.0 / self.scale

    def x(self, metres: float) -> float:
        """Give where a position along the ship lies across the sheet."""
        return self.left + self.mm(metres)

    def y(self, metres: float) -> float:
        """Give where a height above the keel line (or a breadth to port) lies down the sheet."""
        return self.base - self.mm(metres)

    def at(self, point: Point) -> Point:
        """Give the place on paper of a point in metres."""
        return self.x(point[0]), self.y(point[1])

    def all(self, points: Iterable[Point]) -> list[Point]:
        """Give the places on paper of many points."""
        return [self.at(point) for point in points]
