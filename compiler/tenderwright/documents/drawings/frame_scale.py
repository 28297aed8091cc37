"""The frame scale: a tick for each frame, numbers at every tenth, and the perpendiculars; distances without frames."""

from __future__ import annotations

from math import ceil, floor

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.view import View
from tenderwright.quantities.customs import system
from tenderwright.quantities.display import factor_of
from tenderwright.quantities.position import FrameTable

HEIGHT = 6.0
"""Height that the scale takes on the sheet, mm."""
NAMED = 15.0
"""Least room between distances that are named, mm."""


def frame_scale(frames: FrameTable, view: View, top: float, ends: tuple[float, float] | None = None) -> str:
    """Draw the frame scale from `top` down, between two places along her or whole.

    A ship without a table of frames gets the distances forward of her after perpendicular.
    """
    unit, step = ("ft", 5) if system() == "us" else ("m", 1)
    places, every = dict(zip(frames.numbers, frames.distances, strict=True)), 10
    if not frames.numbers:
        low, high = ends or (0.0, frames.length or 0.0)
        each = step * factor_of(unit)
        every = next((number for number in (1, 2, 5) if view.mm(number * each) >= NAMED), 10)
        places = {number: number * each for number in range(ceil(low / each), floor(high / each) + 1)}
    shown = {n: view.x(x) for n, x in places.items() if ends is None or ends[0] <= x <= ends[1]}
    if not shown:
        return ""
    ticks = [((x, top), (x, top + (2.2 if n % 10 == 0 else 1.6 if n % 5 == 0 else 1.1))) for n, x in shown.items()]
    marks = [
        pen.line((min(shown.values()), top), (max(shown.values()), top), pen.FINE),
        pen.strokes(ticks, pen.FINE),
    ]
    edge = -1.0e9
    for n, x in sorted(shown.items(), key=lambda entry: entry[1]):
        named = f"{n * step} {unit}" if not frames.numbers else f"Fr {n}" if n == 0 else str(n)
        half = pen.text_width(named, pen.SMALL) / 2
        if n % every == 0 and x - half > edge + 0.8:
            marks.append(pen.text((x, top + 4.8), named, pen.SMALL, "middle", kind="frame"))
            edge = x + half
    return "".join(marks)


def perpendiculars(view: View, length: float, high: float, low: float) -> str:
    """Draw the after and fore perpendiculars as chain lines between two places on the sheet."""
    lines = [((view.x(x), high), (view.x(x), low)) for x in (0.0, length)]
    return pen.strokes(lines, pen.FINE, pen.CHAIN, pen.FAINT)
