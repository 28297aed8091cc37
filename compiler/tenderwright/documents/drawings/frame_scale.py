"""The frame scale: a tick for each frame, numbers at every tenth, and the perpendiculars."""

from __future__ import annotations

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.view import View
from tenderwright.quantities.position import FrameTable

HEIGHT = 6.0
"""Height that the scale takes on the sheet, mm."""


def frame_scale(frames: FrameTable, view: View, top: float) -> str:
    """Draw the frame scale from `top` down."""
    places = dict(zip(frames.numbers, (view.x(x) for x in frames.distances), strict=True))
    ticks = [((x, top), (x, top + (2.2 if n % 10 == 0 else 1.6 if n % 5 == 0 else 1.1))) for n, x in places.items()]
    marks = [
        pen.line((min(places.values()), top), (max(places.values()), top), pen.FINE),
        pen.strokes(ticks, pen.THIN),
    ]
    edge = -1.0e9
    for n, x in sorted(places.items(), key=lambda entry: entry[1]):
        shown = f"Fr {n}" if n == 0 else str(n)
        half = pen.text_width(shown, pen.SMALL) / 2
        if n % 10 == 0 and x - half > edge + 0.8:
            marks.append(pen.text((x, top + 4.8), shown, pen.SMALL, "middle", kind="frame"))
            edge = x + half
    return "".join(marks)


def perpendiculars(view: View, length: float, high: float, low: float) -> str:
    """Draw the after and fore perpendiculars as chain lines between two places on the sheet."""
    lines = [((view.x(x), high), (view.x(x), low)) for x in (0.0, length)]
    return pen.strokes(lines, pen.THIN, pen.CHAIN, pen.FAINT)
