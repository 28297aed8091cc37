"""Positions along the ship: frames such as `Fr 31 + 200 mm`, or distances from the after perpendicular."""

from __future__ import annotations

import re
from bisect import bisect_right
from dataclasses import dataclass, field

from tenderwright.notices.notice import Place
from tenderwright.quantities.quantity import NOWHERE, QuantityError, parse_quantity

_FRAME = re.compile(r"Fr\s*(-?[0-9]{1,6})(?:\s*([+-])\s*(\S.*))?")


@dataclass(frozen=True)
class Position:
    """A position as written and, once the frames are known, its distance forward of the after perpendicular, m."""

    text: str
    x: float
    at: Place = field(default=NOWHERE, compare=False)

    def __str__(self) -> str:
        """Give the position as written."""
        return self.text


class FrameTable:
    """Frames of a ship: number to distance and back, with uneven spacing."""

    def __init__(self, numbers: list[int], distances: list[float]) -> None:
        self.numbers = numbers
        """Frame numbers in order of growing distance forward."""
        self.distances = distances
        """Distance of each forward of the after perpendicular, m."""
        self._at = dict(zip(numbers, distances, strict=True))

    def x(self, frame: int) -> float:
        """Give the distance of a frame forward of the after perpendicular, m; raises KeyError."""
        return self._at[frame]

    def label(self, x: float) -> str:
        """Name a position by the frame at or abaft it, to 10 mm, such as `Fr 31 + 200 mm`."""
        index = min(max(bisect_right(self.distances, x + 0.005) - 1, 0), len(self.numbers) - 1)
        rest = round((x - self.distances[index]) * 100) * 10
        return f"Fr {self.numbers[index]}" + (f" {'+' if rest > 0 else '-'} {abs(rest)} mm" if rest else "")


def check_position(text: str) -> tuple[int, float] | float:
    """Read a position: a frame with its offset in m forward, or a distance in m; raises QuantityError."""
    match = _FRAME.fullmatch(text.strip())
    if not match:
        try:
            return _exact(text)
        except QuantityError as error:
            raise QuantityError(
                error.code,
                f"cannot read `{text}` as a position along the ship",
                ("write a frame as in `Fr 31 + 200 mm`, or a distance forward of the after perpendicular, `18.4 m`",),
            ) from error
    offset = _exact(match[3]) if match[3] else 0.0
    return int(match[1]), (-offset if match[2] == "-" else offset)


def _exact(text: str) -> float:
    read = parse_quantity(text, "length")
    if read.within is not None:
        raise QuantityError("bad-quantity", f"a position along the ship takes no ±: `{text}`")
    return read.si


def parse_position(text: str, frames: FrameTable, at: Place = NOWHERE) -> Position:
    """Resolve a position to metres forward of the after perpendicular; raises QuantityError."""
    read = check_position(text)
    if isinstance(read, float):
        return Position(text, read, at)
    frame, offset = read
    try:
        return Position(text, frames.x(frame) + offset, at)
    except KeyError:
        first, last = min(frames.numbers), max(frames.numbers)
        raise QuantityError(
            "bad-frame",
            f"frame {frame} does not exist on this ship",
            (f"her frames run from {first} to {last}",),
        ) from None
