"""Upthrust and metacentric height against the level of the water, from the first touch to the loss of stability."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.landing.curve import LandingCurve
from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.landing.settling import Landing
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.pen import Point
from tenderwright.quantities.display import decimals

WIDTH = 69.0
"""Width that both curves take on the sheet, mm."""
_AXIS, _HEAD, _FOOT, _GAP = 9.0, 8.0, 5.0, 5.0
_SHOWN = 1.0
"""How far below settling the curves run at most, m."""
_STEPS = (0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0)


@dataclass(frozen=True)
class _Field:
    """The field of one curve: its box on paper, and the figures at its edges."""

    left: float
    right: float
    top: float
    foot: float
    greatest: float
    """At its right edge; the left edge is nothing."""
    high: float
    """Water at its top, m."""
    low: float

    def x(self, value: float) -> float:
        return self.left + (self.right - self.left) * value / self.greatest

    def y(self, water: float) -> float:
        return self.top + (self.foot - self.top) * (self.high - water) / (self.high - self.low)


def landing_curves(landed: BothLandings, least_gm: float | None, left: float, top: float, height: float) -> str:
    """Draw both curves side by side from a corner, their level of water shared."""
    curve, landing = landed.curve, landed.exact
    touch = float(curve.water[0])
    settled = float(curve.water[curve.settled])
    lost = touch - landing.instability.fall
    last = min(settled, max(lost, settled - _SHOWN))
    high, low = touch + 0.08 * (touch - last), last - 0.12 * (touch - last)
    wide = (WIDTH - _AXIS - _GAP) / 2
    edges = top + _HEAD, top + height - _FOOT
    within = curve.water >= low
    most = float(curve.upthrust[within].max()) / 1000
    gm = max(float(curve.gm[0]), least_gm or 0.0)
    upthrust = _Field(left + _AXIS, left + _AXIS + wide, *edges, most * 1.05, high, low)
    stability = _Field(upthrust.right + _GAP, upthrust.right + _GAP + wide, *edges, gm * 1.5, high, low)
    levels = [level for level in (touch, settled, lost) if low <= level <= high]
    marks = [
        pen.text((left, top + 2.8), "Water over the first block, m", pen.NORMAL, bold=True),
        _frame(upthrust, "upthrust, t", levels, 0),
        _frame(stability, "GM, m", levels, 2),
        _levels(upthrust),
        _curve(curve, upthrust, lambda one: one.upthrust / 1000, pen.HEAVY, ""),
        _curve(curve, stability, lambda one: one.gm, pen.HEAVY, ""),
        _least(stability, least_gm),
        _values(landing, upthrust, stability),
        _curve(landed.held_curve, upthrust, lambda one: one.upthrust / 1000, pen.FINE, pen.HIDDEN),
        _curve(landed.held_curve, stability, lambda one: one.gm, pen.FINE, pen.HIDDEN),
    ]
    return "".join(marks)


def _frame(field: _Field, title: str, levels: Sequence[float], places: int) -> str:
    """Draw the field with its lower axis, and the stages across it."""
    corners = [(field.left, field.top), (field.right, field.top), (field.right, field.foot), (field.left, field.foot)]
    step = next((s for s in _STEPS if s / field.greatest * (field.right - field.left) >= 8.5), _STEPS[-1])
    marks = [
        pen.polygon(corners, pen.FINE),
        pen.text((field.left, field.top - 1.2), title, pen.SMALL, kind="axis-title"),
    ]
    for count in range(int(field.greatest / step + 1e-9) + 1):
        x = field.x(count * step)
        marks.append(pen.line((x, field.foot), (x, field.foot + 0.9), pen.FINE))
        shown = decimals(count * step, 0 if step >= 1 else 1 if step >= 0.1 else places)
        marks.append(pen.text((x, field.foot + 3.8), shown, pen.SMALL, "middle", kind="axis"))
    across = [((field.left, field.y(level)), (field.right, field.y(level))) for level in levels]
    return "".join(marks) + pen.strokes(across, pen.THIN, pen.LIMIT, pen.BLUE)


def _levels(field: _Field) -> str:
    """Mark levels of water at round figures on the left edge."""
    step = next((s for s in _STEPS if field.y(field.low) - field.y(field.low + s) >= 5.0), _STEPS[-1])
    marks = []
    for count in range(int(np.ceil(field.low / step - 1e-9)), int(np.floor(field.high / step + 1e-9)) + 1):
        y = field.y(count * step)
        marks.append(pen.line((field.left - 1, y), (field.left, y), pen.FINE))
        places = 2 if step < 0.1 else 1
        marks.append(
            pen.text((field.left - 1.5, y + 0.9), decimals(count * step, places), pen.SMALL, "end", kind="axis")
        )
    return "".join(marks)


def _curve(
    curve: LandingCurve, field: _Field, values: Callable[[LandingCurve], Floats], width: float, dash: str
) -> str:
    """Draw one curve within its field, cut off where it leaves it."""
    x, water = values(curve), curve.water
    points: list[Point] = []
    for value, level in zip(x.tolist(), water.tolist(), strict=True):
        inside = field.low <= level <= field.high and -1e-3 * field.greatest <= value <= field.greatest
        if inside:
            points.append((field.x(value), field.y(level)))
        elif points:
            before = len(points) - 1
            points.append(_edge(field, (float(x[before]), float(water[before])), (value, level)))
            break
    return pen.curve(points, width, dash) if len(points) > 1 else ""


def _edge(field: _Field, inside: Point, outside: Point) -> Point:
    """Give the place on paper where a line from inside leaves the field."""
    shares = [1.0]
    for (a, b), low, high in zip(
        zip(inside, outside, strict=True), (0.0, field.low), (field.greatest, field.high), strict=True
    ):
        limit = high if b > high else low if b < low else None
        if limit is not None and b != a:
            shares.append((limit - a) / (b - a))
    share = max(0.0, min(shares))
    value, level = (a + share * (b - a) for a, b in zip(inside, outside, strict=True))
    return field.x(value), field.y(level)


def _least(field: _Field, least_gm: float | None) -> str:
    """Mark the least metacentric height that the plan asks for."""
    if least_gm is None or not 0 < least_gm <= field.greatest:
        return ""
    x = field.x(least_gm)
    words = f"least {decimals(least_gm, 2)}"
    return pen.line((x, field.top), (x, field.foot), pen.MEDIUM, pen.LIMIT, pen.RED) + pen.label(
        (x, field.foot - 2.0), words, pen.SMALL, kind="least"
    )


def _values(landing: Landing, upthrust: _Field, stability: _Field) -> str:
    """Write upthrust and metacentric height as she comes to lie on all the blocks beside the curves."""
    one = landing.settling
    y = upthrust.y(one.water_at_touch - one.fall)
    load, gm = one.upthrust / 1000, min(one.stability.gm_km_falls, one.stability.gm_kg_rises)
    marks = [pen.circle((upthrust.x(load), y), 0.7, 0, pen.INK), pen.circle((stability.x(gm), y), 0.7, 0, pen.INK)]
    marks.append(pen.label((upthrust.x(load) + 1.6, y - 2.4), f"{decimals(load, 1)} t", pen.SMALL, "start", True))
    marks.append(pen.label((stability.x(gm) + 1.6, y + 2.4), f"{decimals(gm, 2)} m", pen.SMALL, "start", True))
    return "".join(marks)
