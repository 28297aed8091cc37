"""Positions along the ship: frames such as `Fr 31 + 200 mm`, or distances from a perpendicular."""

from __future__ import annotations

import re
from bisect import bisect_right

from tenderwright.notices.notice import Place, Placed
from tenderwright.quantities.display import show
from tenderwright.quantities.quantity import NOWHERE, QuantityError, parse_quantity

_FRAME = re.compile(r"Fr\s*(-?[0-9]{1,6})(?:\s*([+-])\s*(\S.*))?")
_FROM = re.compile(
    r"(.*\S)\s+(?:(?P<forward>forward|fwd\.?|ahead)(?: of)?|(?P<aft>abaft|aft)(?: of)?|from)(?: the)?\s+"
    r"(?:AP|A\.P\.|after perpendicular|(?P<fp>FP|F\.P\.|(?:fore|forward) perpendicular)|Fr\s*(?P<frame>-?[0-9]{1,6}))"
)
AP, FP = "AP", "FP"
"""The after and the forward perpendicular, as places to count from."""


class Position(Placed, frozen=True, eq=False):
    """A position as written and, once the frames are known, its distance forward of the after perpendicular, m."""

    text: str
    x: float
    at: Place = NOWHERE

    def __str__(self) -> str:
        """Give the position as written."""
        return self.text


class FrameTable:
    """Frames of a ship: number to distance and back, with uneven spacing; none at all where only distances are used."""

    def __init__(self, numbers: list[int], distances: list[float], length: float | None = None) -> None:
        self.numbers = numbers
        """Frame numbers in order of growing distance forward."""
        self.distances = distances
        """Distance of each forward of the after perpendicular, m."""
        self.length = length
        """Length between perpendiculars, m, for distances from the forward one; None where it is not known."""
        self._at = dict(zip(numbers, distances, strict=True))

    def x(self, frame: int) -> float:
        """Give the distance of a frame forward of the after perpendicular, m; raises KeyError."""
        return self._at[frame]

    def label(self, x: float) -> str:
        """Name a position by the frame at or abaft it, to 10 mm, such as `Fr 31 + 200 mm`.

        Where there are no frames it is the distance forward of the after perpendicular.
        """
        if not self.numbers:
            return show(x, "distance")
        index = min(max(bisect_right(self.distances, x + 0.005) - 1, 0), len(self.numbers) - 1)
        rest = round((x - self.distances[index]) * 100) * 10
        away = show(abs(rest) / 1000, "frame offset") if rest else ""
        return f"Fr {self.numbers[index]}" + (f" {'+' if rest > 0 else '-'} {away}" if rest else "")

    def span(self) -> str:
        """Say which frames there are."""
        return f"her frames run from {min(self.numbers)} to {max(self.numbers)}"


def check_position(text: str) -> tuple[int | str, float]:
    """Read a position: what it counts from, a frame or `AP` or `FP`, and the distance in m forward of that.

    Raises QuantityError.
    """
    text = text.strip()
    if match := _FRAME.fullmatch(text):
        offset = _exact(match[3]) if match[3] else 0.0
        return int(match[1]), (-offset if match[2] == "-" else offset)
    match = _FROM.fullmatch(text)
    try:
        offset = _exact(match[1] if match else text)
    except QuantityError as error:
        raise QuantityError(
            error.code,
            f"cannot read `{text}` as a position along the ship",
            (
                "write a frame as in `Fr 31 + 200 mm`, or a distance forward of the after perpendicular, `18.4 m`, or "
                "from either perpendicular, `12 m abaft FP`",
            ),
        ) from error
    if match is None:
        return AP, offset
    # `from FP` counts aft: nothing of her lies before it but the overhang.
    aft = match["aft"] or (match["fp"] and not match["forward"])
    anchor = int(match["frame"]) if match["frame"] else FP if match["fp"] else AP
    return anchor, -offset if aft else offset


def _exact(text: str) -> float:
    read = parse_quantity(text, "length")
    if read.within is not None:
        raise QuantityError("bad-quantity", f"a position along the ship takes no ±: `{text}`")
    return read.si


def parse_position(text: str, frames: FrameTable, at: Place = NOWHERE) -> Position:
    """Resolve a position to metres forward of the after perpendicular; raises QuantityError."""
    anchor, offset = check_position(text)
    if anchor == AP:
        return Position(text, offset, at)
    if isinstance(anchor, str):
        if frames.length is None:
            raise QuantityError(
                "bad-frame",
                f"where `{text}` is cannot be told",
                ("give the length between perpendiculars in vessel/particulars.yaml",),
            )
        return Position(text, frames.length + offset, at)
    try:
        return Position(text, frames.x(anchor) + offset, at)
    except KeyError:
        hint = frames.span() if frames.numbers else "write vessel/frames.yaml, or a distance such as `12 m abaft FP`"
        raise QuantityError("bad-frame", f"frame {anchor} does not exist on this ship", (hint,)) from None
