"""Where the photographs were taken: the ship from the side, with numbers above for port and below for starboard."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.frame_scale import HEIGHT, frame_scale
from tenderwright.documents.drawings.plane import uncrossed
from tenderwright.documents.drawings.view import View
from tenderwright.documents.edition import Figure
from tenderwright.documents.photograph_list import Numbered
from tenderwright.model.package import Package

WIDTH = 165.0
_SIDE, _ROW, _TALL = 4.0, 9.0, 30.0
_WITHOUT_FORM = 8.0
"""Height of the band that stands for her where her form is not known, mm."""


def photograph_strip(package: Package, form: HullForm | None, shown: Sequence[Numbered]) -> Figure | None:
    """Draw where photographs were taken; None where no place along her is told, or the strip cannot hold them."""
    placed = [one for one in shown if one.x is not None]
    ends = _ends(package, form)
    rows = [[one for one in placed if (one.side == "starboard") is below] for below in (False, True)]
    room = WIDTH - 2 * _SIDE
    if not placed or ends is None or any(sum(map(_wide, row)) > room for row in rows):
        return None
    aft, forward = ends
    deck, keel = (max(form.deck_heights), min(form.keel_heights)) if form is not None else (0.0, 0.0)
    scale = max(1, round(1000 * max((forward - aft) / room, (deck - keel) / _TALL)))
    high = (deck - keel) * 1000 / scale if form is not None else _WITHOUT_FORM
    view = View(scale, (WIDTH - (forward - aft) * 1000 / scale) / 2 - aft * 1000 / scale, _ROW + deck * 1000 / scale)
    marks = _ship(form, view, (aft, forward), high)
    middle = _ROW + 0.5 * high
    for row, y, foot in ((rows[0], 3.0, middle - 0.12 * high), (rows[1], _ROW + high + 6.0, middle + 0.12 * high)):
        feet = [(view.x(one.x), foot) for one in row if one.x is not None]
        places = uncrossed(feet, [_wide(one) for one in row], y, (_SIDE, WIDTH - _SIDE))
        for one, at, x in zip(row, feet, places, strict=True):
            marks.append(pen.line((x, y), at))
            marks.append(pen.circle(at, 0.6, 0.0, pen.INK))
            marks.append(pen.label((x, y), one.number, pen.SMALL, bold=True, kind="photograph"))
    foot = _ROW + high + (10.0 if rows[1] else 3.0)
    if package.frames is not None:
        marks.append(frame_scale(package.frames, view, foot, (aft, forward)))
    told = ", ".join(f"{one.number} {one.place}" for one in placed)
    words = f"The ship from the side with the places of {len(placed)} photographs: {told}."
    left = len(shown) - len(placed)
    note = f" {left} more {'has' if left == 1 else 'have'} no place along her." if left else ""
    caption = f"Where they were taken: port and middle above, starboard below; forward is to the right.{note}"
    svg = pen.picture(WIDTH, foot + HEIGHT + 0.5, words, marks)
    return Figure("photograph-places", svg, caption, words, title="Places of the photographs", audience="yard")


def _ends(package: Package, form: HullForm | None) -> tuple[float, float] | None:
    if form is not None:
        return float(form.stations[0]), float(form.stations[-1])
    frames = package.frames
    if frames is not None and frames.numbers:
        return min(frames.distances), max(frames.distances)
    return (0.0, frames.length) if frames is not None and frames.length else None


def _wide(one: Numbered) -> float:
    return pen.text_width(one.number, pen.SMALL, True) + 1.6


def _ship(form: HullForm | None, view: View, ends: tuple[float, float], high: float) -> list[str]:
    if form is not None:
        return [pen.polygon(view.all(outline.profile(form)), pen.MEDIUM)]
    left, right = view.x(ends[0]), view.x(ends[1])
    return [pen.polygon([(left, _ROW), (right, _ROW), (right, _ROW + high), (left, _ROW + high)], pen.MEDIUM)]
