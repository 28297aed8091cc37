"""The scale of a drawing: its name, and its bar in the unit of distances."""

from __future__ import annotations

from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.view import CUSTOMARY
from tenderwright.quantities.customs import system
from tenderwright.quantities.display import axis, axis_unit

_BAR_LENGTHS = (1.0, 2.5, 5.0, 10.0, 25.0, 50.0, 100.0, 250.0)


def scale_bar(scale: int, right: float, top: float) -> list[str]:
    """Draw the bar of a scale so that it ends at the right: in the unit of distances, as long as stays in 42 mm."""
    length, wide = _bar(scale)
    left, marks = right - wide, []
    for part in range(5):
        a, b = left + wide * part / 5, left + wide * (part + 1) / 5
        box = [(a, top), (b, top), (b, top + 1.4), (a, top + 1.4)]
        marks.append(pen.polygon(box, pen.FINE, fill=pen.INK if part % 2 == 0 else pen.PAPER))
    for part in range(6):
        share = part / 5
        shown = f"{length * share:g}"
        marks.append(pen.text((left + wide * share, top + 4.6), shown, pen.SMALL, "middle", kind="bar"))
    marks.append(pen.text((right + 3, top + 4.6), axis("", "distance").removeprefix(", "), pen.SMALL, kind="bar"))
    return marks


def _bar(scale: int) -> tuple[float, float]:
    """Choose the length of the scale bar, in the unit of distances and in mm."""
    unit = axis_unit("distance") * 1000.0 / scale
    length = max((length for length in _BAR_LENGTHS if length * unit <= 42), default=1.0)
    return length, length * unit


def scale_name(scale: int) -> str:
    """Name a scale, such as `Scale 1:100` or `Scale 1/8 in = 1 ft`."""
    return f"Scale {CUSTOMARY[scale]}" if system() == "us" and scale in CUSTOMARY else f"Scale 1:{scale}"
