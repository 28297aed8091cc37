"""Upthrust and metacentric height against the level of the water, from the first touch to the loss of stability."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from tenderwright.calculations.hydrostatics.simpson import Floats
from tenderwright.calculations.landing.curve import LandingCurve
from tenderwright.calculations.landing.landing import BothLandings
from tenderwright.calculations.landing.settling import Landing
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.chart import Field
from tenderwright.documents.drawings.pen import Point
from tenderwright.quantities.display import axis, axis_unit, in_column, show

_AXIS, _HEAD, _FOOT, _GAP = 9.0, 8.0, 5.0, 5.0
_SHOWN = 1.0
"""How far below settling the curves run at most, m."""


def landing_curves(landed: BothLandings, least_gm: float | None, left: float, room: tuple[float, float, float]) -> str:
    """Draw both curves side by side, their level of water shared, in a room of a width, from a top to a foot."""
    width, top, foot = room
    curve, landing = landed.curve, landed.exact
    force, depth, height_of = axis_unit("weight"), axis_unit("water level"), axis_unit("metacentric height")
    touch = float(curve.water[0]) / depth
    settled = float(curve.water[curve.settled]) / depth
    lost = touch - landing.instability.fall / depth
    last = min(settled, max(lost, settled - _SHOWN / depth))
    high, low = touch + 0.08 * (touch - last), last - 0.12 * (touch - last)
    wide = (width - _AXIS - _GAP) / 2
    edges = top + _HEAD, foot - _FOOT
    within = curve.water / depth >= low
    most = float(curve.upthrust[within].max()) / force
    gm = max(float(curve.gm[0]), least_gm or 0.0) / height_of
    upthrust = Field(left + _AXIS, left + _AXIS + wide, *edges, (0.0, most * 1.05), (low, high))
    stability = Field(upthrust.right + _GAP, upthrust.right + _GAP + wide, *edges, (0.0, gm * 1.5), (low, high))
    stages = (touch, settled) if landing.instability.at_least else (touch, settled, lost)
    levels = [level for level in stages if low <= level <= high]
    marks = [
        pen.text((left, top + 2.8), axis("Water over the first block", "water level"), pen.NORMAL, bold=True),
        _frame(upthrust, axis("upthrust", "weight"), levels),
        _frame(stability, axis("GM", "metacentric height"), levels),
        upthrust.beside(upthrust.step_up(5.0, 0.01)),
        _curve(curve, upthrust, lambda one: one.upthrust / force, pen.HEAVY, ""),
        _curve(curve, stability, lambda one: one.gm / height_of, pen.HEAVY, ""),
        _least(stability, least_gm),
        _values(landing, upthrust, stability),
        _curve(landed.held_curve, upthrust, lambda one: one.upthrust / force, pen.FINE, pen.HIDDEN),
        _curve(landed.held_curve, stability, lambda one: one.gm / height_of, pen.FINE, pen.HIDDEN),
    ]
    return "".join(marks)


def _frame(field: Field, title: str, levels: Sequence[float]) -> str:
    """Draw the field with its lower axis, and the stages across it."""
    marks = [
        field.box(),
        pen.text((field.left, field.top - 1.2), title, pen.SMALL, kind="axis-title"),
        field.below(field.step_across(8.5, 0.01)),
    ]
    across = [((field.left, field.y(level)), (field.right, field.y(level))) for level in levels]
    return "".join(marks) + pen.strokes(across, pen.FINE, pen.LIMIT, pen.BLUE)


def _curve(curve: LandingCurve, field: Field, values: Callable[[LandingCurve], Floats], width: float, dash: str) -> str:
    """Draw one curve within its field, cut off where it leaves it."""
    x, water, (_, greatest), (low, high) = values(curve), curve.water / axis_unit("water level"), field.across, field.up
    points: list[Point] = []
    for value, level in zip(x.tolist(), water.tolist(), strict=True):
        inside = low <= level <= high and -1e-3 * greatest <= value <= greatest
        if inside:
            points.append((field.x(value), field.y(level)))
        elif points:
            before = len(points) - 1
            points.append(_edge(field, (float(x[before]), float(water[before])), (value, level)))
            break
    return pen.curve(points, width, dash) if len(points) > 1 else ""


def _edge(field: Field, inside: Point, outside: Point) -> Point:
    """Give the place on paper where a line from inside leaves the field."""
    shares = [1.0]
    for (a, b), low, high in zip(
        zip(inside, outside, strict=True), (field.across[0], field.up[0]), (field.across[1], field.up[1]), strict=True
    ):
        limit = high if b > high else low if b < low else None
        if limit is not None and b != a:
            shares.append((limit - a) / (b - a))
    share = max(0.0, min(shares))
    value, level = (a + share * (b - a) for a, b in zip(inside, outside, strict=True))
    return field.x(value), field.y(level)


def _least(field: Field, least_gm: float | None) -> str:
    """Mark the least metacentric height that the plan asks for."""
    if least_gm is None or not 0 < least_gm <= field.across[1] * axis_unit("metacentric height"):
        return ""
    x = field.x(least_gm / axis_unit("metacentric height"))
    words = f"least {in_column(least_gm, 'metacentric height')}"
    return pen.line((x, field.top), (x, field.foot), pen.MEDIUM, pen.LIMIT, pen.RED) + pen.label(
        (x, field.foot - 2.0), words, pen.SMALL, kind="least"
    )


def _values(landing: Landing, upthrust: Field, stability: Field) -> str:
    """Write upthrust and metacentric height as she comes to lie on all the blocks beside the curves."""
    one = landing.settling
    y = upthrust.y((one.water_at_touch - one.fall) / axis_unit("water level"))
    gm = min(one.stability.gm_km_falls, one.stability.gm_kg_rises)
    load_at, gm_at = upthrust.x(one.upthrust / axis_unit("weight")), stability.x(gm / axis_unit("metacentric height"))
    marks = [pen.circle((load_at, y), 0.7, 0, pen.INK), pen.circle((gm_at, y), 0.7, 0, pen.INK)]
    marks.append(_beside((load_at, y - 2.4), show(one.upthrust, "weight"), upthrust))
    marks.append(_beside((gm_at, y + 2.4), show(gm, "metacentric height"), stability))
    return "".join(marks)


def _beside(at: Point, words: str, field: Field) -> str:
    """Write words to the right of a point, or to the left where they would leave the field."""
    if at[0] + 1.6 + pen.text_width(words, pen.SMALL, True) <= field.right + 1:
        return pen.label((at[0] + 1.6, at[1]), words, pen.SMALL, "start", True)
    return pen.label((at[0] - 1.6, at[1]), words, pen.SMALL, "end", True)
