"""The lines: profile and waterlines over the body plan, sections aft on its left and forward ones on its right."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.hull import hull
from tenderwright.calculations.ship.sections import lofted
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import pen
from tenderwright.documents.drawings.framed import MARGIN, framed
from tenderwright.documents.drawings.lines_along import lines_along
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.plane import spread
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.quantities.display import axis, axis_unit, decimals, in_column, show

TITLE = "Lines and body plan"
_HEAD, _SIDE, _FOOT = 12.0, 14.0, 7.0
"""Space for station labels above, waterline heights beside, and breadths below, mm."""


def body_plan(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the body plan, or say why not."""
    found = calculated.outcome(hull)
    if isinstance(found, Absent):
        return found
    form = found.form
    half = float(max(form.half_breadths.max(), form.deck_half_breadths.max()))

    def size(scale: int) -> tuple[float, float]:
        return 2 * (half * 1000 / scale + _SIDE), form.depth * 1000 / scale + _HEAD + _FOOT

    sheet = framed(package, "body-plan", TITLE, found.drawn_from)
    along, foot = lines_along(form, Room(sheet.right - MARGIN, 0.45 * (sheet.foot - MARGIN)))
    room = Room(sheet.beside - MARGIN, sheet.foot - foot)
    sheet = sheet.at(largest_scale(room, size))
    top = foot + (room.height - size(sheet.scale)[1]) / 2
    view = View(sheet.scale, MARGIN + room.width / 2, top + _HEAD + sheet.mm(form.depth))
    marks = [along, _grid(form, half, view), _sections(package, form, half, view)]
    named = list(_named(package, form).values())
    alternative = (
        f"Profile, waterlines, and body plan with {len(named)} sections from {named[0]} aft to {named[-1]} forward and "
        f"{len(form.waterlines)} waterlines up to {show(float(form.waterlines[-1]), 'water level')} above "
        "the keel line."
    )
    read = "Offsets" if package.offsets else "Sections"
    caption = (
        f"Lines from {found.drawn_from}: profile, waterlines, and the body plan with moulded sections aft on the left, "
        f"forward on the right. {read} {found.source}.{_moved(calculated)}"
    )
    return sheet.figure(marks, caption, alternative)


def _grid(form: HullForm, half: float, view: View) -> str:
    """Draw waterlines with their heights, and buttocks at every metre or two feet."""
    heights = form.waterlines.tolist()
    edge = view.mm(half) + 2
    marks = [
        pen.strokes(
            [((view.left - edge, view.y(z)), (view.left + edge, view.y(z))) for z in heights], pen.FINE, "", pen.FAINT
        )
    ]
    last = 1.0e9
    for z in heights:
        if last - view.y(z) >= pen.SMALL * 1.05:
            last = view.y(z)
            for side, anchor in ((-1, "end"), (1, "start")):
                shown = in_column(z, "height")
                marks.append(
                    pen.text((view.left + side * (edge + 1), last + 0.85), shown, pen.SMALL, anchor, kind="waterline")
                )
    apart = 2 if axis_unit("distance") < 1 else 1
    last_one = int(half / axis_unit("distance") + 1e-6)
    breadths = [side * step for step in range(apart, last_one + 1, apart) for side in (-1, 1)]
    places = {y: view.x(y * axis_unit("distance")) for y in (0, *breadths)}
    upright = [((places[y], view.y(0)), (places[y], view.y(form.depth))) for y in breadths]
    marks.append(pen.strokes(upright, pen.FINE, pen.HIDDEN, pen.FAINT))
    marks.append(pen.line((view.left, view.y(0) + 2), (view.left, view.y(form.depth) - 2), pen.FINE, pen.CHAIN))
    for y, x in places.items():
        marks.append(pen.text((x, view.y(0) + 4.2), f"{abs(y)}", pen.SMALL, "middle"))
    marks.append(pen.text((view.x(0) + edge + 1, view.y(0) + 4.2), axis("", "distance").removeprefix(", "), pen.SMALL))
    return "".join(marks)


def _sections(package: Package, form: HullForm, half: float, view: View) -> str:
    names, middle = _named(package, form), form.length / 2
    marks: list[str] = []
    for side in (-1, 1):
        chosen = [i for i in names if (float(form.stations[i]) - middle) * side >= -1e-6]
        tops: list[Point] = []
        for i in chosen:
            curve = [(side * y, z) for y, z in _section(form, i)]
            amidships = abs(float(form.stations[i]) - middle) < 1e-6
            marks.append(pen.curve(view.all(curve), pen.HEAVY if amidships else pen.MEDIUM))
            tops.append(view.at(curve[-1]))
        marks.append(_names([names[i] for i in chosen], tops, side, (half, form.depth), view))
    return "".join(marks)


def _names(names: list[str], tops: list[Point], side: int, sizes: tuple[float, float], view: View) -> str:
    """Name the sections in a row over the sheet, with a line down to each deck edge."""
    half, depth = sizes
    low, high = sorted((view.left + side * 1.2, view.left + side * (view.mm(half) + _SIDE - 1)))
    widths = [pen.text_width(name, pen.SMALL) for name in names]
    row = view.y(depth) - _HEAD + 3.2
    marks = []
    for name, top, x in zip(names, tops, spread([x for x, _ in tops], widths, low, high, 1.8), strict=True):
        marks.append(pen.text((x, row), name, pen.SMALL, "middle", kind="station"))
        marks.append(pen.strokes([((x, row + 0.8), (x, row + 1.8)), ((x, row + 1.8), top)], pen.FINE))
    return "".join(marks)


def _section(form: HullForm, station: int) -> list[Point]:
    """Give a section as half-breadths and heights, from the keel to the deck edge."""
    keel, deck = float(form.keel_heights[station]), float(form.deck_heights[station])
    heights = np.unique(np.append(np.linspace(keel, deck, 60), np.clip(form.waterlines, keel, deck)))
    breadths = form.curves.half_breadth(heights, np.full(heights.shape, station))
    return [(0.0, keel), *zip(breadths.tolist(), heights.tolist(), strict=True)]


def _named(package: Package, form: HullForm) -> dict[int, str]:
    """Give the stations that are drawn with their names: those of the table, or the sections that were read."""
    stations = form.stations.tolist()
    if package.offsets is not None:
        given = [(i, station.station) for i, station in enumerate(package.offsets.stations)]
    else:
        read = package.sections.sections if package.sections is not None else ()
        given = [(int(np.abs(form.stations - one.at.x).argmin()), one.section or one.at.text) for one in read]
    return {i: _short(name) or decimals(stations[i], 1) for i, name in sorted(given)}


def _short(name: str) -> str:
    return name.replace(" 1/2", "½").replace("1/2", "½").replace(" 1/4", "¼").replace(" 3/4", "¾")


def _moved(calculated: Calculated) -> str:
    """Say how far the sections were faired, where the hull is lofted from them."""
    found = calculated.found(lofted)
    if found is None:
        return ""
    section, point = found.largest
    one = found.sections[section]
    off = abs(float(found.residuals[section][point]))
    return (
        f" Faired by {show(off, 'size')} at most, {show(one.x, 'distance')} forward of the after perpendicular and "
        f"{show(float(one.heights[point]), 'height')} up."
    )
