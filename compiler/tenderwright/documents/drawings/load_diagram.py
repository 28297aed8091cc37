"""The line load diagram: load per metre along the keel, the greatest on each car, and the limit."""

from __future__ import annotations

from tenderwright.calculations.cradle.line_load import LineLoad
from tenderwright.calculations.cradle.train import CarLoad, Train
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.chart import Field
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.view import View
from tenderwright.quantities.display import axis, axis_unit, in_column

_KEY = (
    "heavy line: rigid hull on an unbroken line of blocks; bars: greatest on each car, raised for the gaps between cars"
)
LEAST = 27.0
"""Least height that the diagram takes on the sheet, mm."""
_OVER = 4.5
"""Space over its field for the key, mm."""
WITHIN = Hatch((135,), 1.6, pen.FINE, "", pen.FAINT)
BEYOND = Hatch((45, 135), 1.3, pen.FINE, "", pen.RED)


def load_diagram(
    train: Train, limit: float | None, view: View, ends: tuple[float, float], room: tuple[float, float]
) -> str:
    """Draw the diagram between two ends of the sheet and two heights; limit in kg/m."""
    top, foot = room
    load = train.load
    named = axis("Keel line load", "line load")
    title = pen.text((4, top + 2.6), named, pen.NORMAL, bold=True)
    if load is None:
        why = "The centre of gravity does not lie over the cars: she cannot stand on them, and no load can be found."
        return title + pen.text((view.x(train.keel_aft), (top + foot) / 2), why, pen.NORMAL)
    title += pen.label(
        (max(34, pen.text_width(named, pen.NORMAL, True) + 7), top + 1.7), _KEY, pen.SMALL, "start", kind="key"
    )
    greatest = max([load.peak, limit or 0.0, *(car.peak for car in train.cars)]) / axis_unit("line load")
    base = foot - 1.0
    per = (base - top - _OVER) / (greatest * 1.04)
    left = min(ends[0] - 3, view.x(load.contact_aft) - 15)
    right = max(ends[1] + 3, view.x(load.contact_forward) + 15)
    marks = [title, _axis(greatest, left, right, base, per)]
    marks += [_bar(car, i, train, limit, view, base, per) for i, car in enumerate(train.cars) if car.contact > 0]
    marks.append(_line(load, view, base, per))
    if limit is not None:
        y = base - limit / axis_unit("line load") * per
        marks.append(pen.line((left, y), (right, y), pen.HEAVY, pen.LIMIT, pen.RED))
        marks.append(
            pen.label((right - 2.0, y), f"limit {in_column(limit, 'line load')}", pen.SMALL, "end", True, kind="limit")
        )
    marks.append(_ends(load, view, base, per))
    return "".join(marks)


def _axis(greatest: float, left: float, right: float, base: float, per: float) -> str:
    field = Field(left, right, base - greatest * 1.04 * per, base, (0.0, 1.0), (0.0, greatest * 1.04))
    edges = pen.line((left, base), (left, field.top), pen.FINE) + pen.line((left, base), (right, base), pen.MEDIUM)
    return edges + field.beside(field.step_up(5.0, 1.0))


def _bar(car: CarLoad, index: int, train: Train, limit: float | None, view: View, base: float, per: float) -> str:
    a, b = view.x(max(car.start, train.keel_aft)), view.x(min(car.end, train.keel_forward))
    high = base - car.peak / axis_unit("line load") * per
    box = [(a, base), (b, base), (b, high), (a, high)]
    beyond = limit is not None and car.peak > limit
    shown = in_column(car.peak, "line load")
    crowded = pen.text_width(shown, pen.SMALL, True) + 1.4 > b - a
    at = ((a + b) / 2, base - 2.6 - (3.0 if crowded and index % 2 else 0.0))
    hatching = (BEYOND if beyond else WITHIN).over([box])
    return hatching + pen.polygon(box, pen.FINE) + pen.label(at, shown, pen.SMALL, "middle", beyond, kind="peak")


def _line(load: LineLoad, view: View, base: float, per: float) -> str:
    aft, forward = view.x(load.contact_aft), view.x(load.contact_forward)
    points = [
        (aft, base),
        (aft, base - load.load_aft / axis_unit("line load") * per),
        (forward, base - load.load_forward / axis_unit("line load") * per),
        (forward, base),
    ]
    return pen.curve(points, pen.HEAVY, colour=pen.BLUE)


def _ends(load: LineLoad, view: View, base: float, per: float) -> str:
    marks = []
    for x, value, out, anchor in (
        (load.contact_aft, load.load_aft, -1.2, "end"),
        (load.contact_forward, load.load_forward, 1.2, "start"),
    ):
        at = (view.x(x) + out, min(base - value / axis_unit("line load") * per, base - 1.6))
        marks.append(pen.label(at, in_column(value, "line load"), pen.SMALL, anchor, True, pen.BLUE, "ordinate"))
    return "".join(marks)
