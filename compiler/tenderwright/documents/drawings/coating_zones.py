"""The coating zones: the profile in bands, each hatched and listed with its area and the schemes that coat it."""

from __future__ import annotations

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.value import Record
from tenderwright.documents.drawings import outline, pen, table
from tenderwright.documents.drawings.bands import Band, bands, edges
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale, perpendiculars
from tenderwright.documents.drawings.framed import MARGIN, Framed, framed
from tenderwright.documents.drawings.hull_marks import extent, hull_ground, hull_lines
from tenderwright.documents.drawings.plane import above, below, spread
from tenderwright.documents.drawings.scale_bar import scale_name
from tenderwright.documents.drawings.table import Column, Line
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.appliers import appliers
from tenderwright.model.coating import Scheme
from tenderwright.model.package import Package
from tenderwright.quantities.display import show

TITLE = "Coating zones"
_HEAD, _MARK = 4.0, 14.0
"""Space over the profile, and beside the hull for the heights of the zones' edges, mm."""
_GAP, _NAMED = 5.0, 5.0
"""Space between profile, list and section, and under the list for the words over the section, mm."""


def zones(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the coating zones on the profile, or say why not."""
    found = calculated.outcome(hull_outline)
    if isinstance(found, Absent):
        return found
    form = found.form
    made, record = bands(package, form), calculated.record
    if not any(band.zone.surface == "shell band" for band in made):
        return Lacking("it needs a zone with `surface: shell band` in vessel/zones.yaml")
    lines = _lines(package, record, made)
    first, last = extent(package, form)
    under = outline.keel_underside(package.particulars)
    sheet = framed(package, "coating-zones", TITLE, f"{found.drawn_from}; areas of the zones")
    lowest = sheet.over - table.height(len(lines)) - 1.5

    def size(scale: int) -> tuple[float, float]:
        high = (form.depth - under) * 1000 / scale + _HEAD + 2 + FRAMES_HEIGHT
        return (last - first) * 1000 / scale + 2 * _MARK + 2, high

    sheet = sheet.at(largest_scale(Room(sheet.right - MARGIN, lowest - MARGIN), size))
    left = (sheet.frame.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    top = MARGIN + min(_GAP, (lowest - MARGIN - size(sheet.scale)[1]) / 2)
    listed_at = min(top + size(sheet.scale)[1] + _GAP, lowest)
    view = View(sheet.scale, left, top + _HEAD + sheet.mm(form.depth))
    scale_at = view.y(under) + 2
    marks = [
        hull_ground(package, form, view),
        *(band.hatch.over([view.all(shape) for shape in band.shapes]) for band in made if band.hatch),
        _edges(made, form, view, (view.x(first), view.x(last))),
        *(pen.polygon(view.all(shape), pen.FINE) for band in made for shape in band.shapes),
        hull_lines(package, found, view),
        *(_name(band, record, form, view) for band in made),
        perpendiculars(view, form.length, view.y(form.depth) - 1, scale_at + 0.4),
        frame_scale(package.frames, view, scale_at) if package.frames else "",
        table.table(_columns(sheet.right), lines, 4, listed_at, "zone-list"),
        *_section(made, form, sheet, listed_at + table.height(len(lines)) + _GAP),
    ]
    alternative = _alternative(made, record)
    return sheet.figure(marks, _CAPTION + found.note, alternative)


_CAPTION = (
    "Coating zones of the outside from the side, each hatched as in the list; areas count both sides and what is "
    "added or taken away there. Zones inside tanks are listed and not drawn. Heights are above the keel line; rudder "
    "and stern frame are drawn by their extents only."
)


def _section(made: list[Band], form: HullForm, sheet: Framed, top: float) -> list[str]:
    """Draw the section amidships in the same hatchings under the list, with the heights of the edges."""
    x = form.length / 2
    heights = np.linspace(form.keel_at(x), form.deck_at(x), 60)
    side = list(zip(form.half_breadth_at(x, heights).tolist(), heights.tolist(), strict=True))
    shape = [*((-y, z) for y, z in reversed(side)), *side]
    wide, high = 2 * max(y for y, _ in side), side[-1][1] - side[0][1]
    room = Room(sheet.beside - 2 * MARGIN - 2 * _MARK, sheet.foot - 1.0 - top - _NAMED)
    scale = largest_scale(room, lambda one: (wide * 1e3 / one, high * 1e3 / one))
    middle = (MARGIN + sheet.beside) / 2
    spare = (room.height - high * 1e3 / scale) / 2
    view = View(scale, middle, sheet.foot - 1.0 - max(spare, 0.0) + side[0][1] * 1e3 / scale)
    marks = []
    for band in made:
        if band.zone.surface == "shell band" and band.hatch:
            part = above(shape, band.lower) if band.lower is not None else shape
            part = below(part, band.upper) if band.upper is not None else part
            marks += [band.hatch.over([view.all(part)]), pen.polygon(view.all(part), pen.FINE)] if len(part) > 2 else []
    marks.append(pen.polygon(view.all(shape), pen.HEAVY))
    words = f"Section amidships, {scale_name(scale).removeprefix('Scale ')}, heights above the keel line"
    marks.append(pen.text((4, top + 3.0), words, kind="section"))
    out = view.mm(wide / 2)
    down = [view.y(height) for height in edges(made)]
    for height, y, place in zip(edges(made), down, spread(down, [2.8] * len(down), top, sheet.foot), strict=True):
        marks.append(pen.strokes([((middle + out, y), (middle + out + 3.0, place))]))
        marks.append(pen.text((middle + out + 3.6, place + 0.9), show(height, "centre"), kind="section-height"))
    return marks


def _edges(made: list[Band], form: HullForm, view: View, ends: tuple[float, float]) -> str:
    """Draw the edges between bands across the ship, with their heights at both ends."""
    heights = edges(made)
    down = [view.y(height) for height in heights]
    places = spread(down, [pen.SMALL * 1.1] * len(down), 0.0, view.y(0.0), 0.2)
    marks = []
    for height, y, place in zip(heights, down, places, strict=True):
        shown = show(height, "centre")
        marks.append(pen.line((ends[0] - 2, y), (ends[1] + 2, y), pen.MEDIUM, pen.LIMIT))
        for end, out, anchor in ((ends[0], -1, "end"), (ends[1], 1, "start")):
            marks.append(pen.line((end + 2 * out, y), (end + 3.6 * out, place), pen.FINE))
            marks.append(pen.label((end + 4.2 * out, place), shown, pen.SMALL, anchor, True, kind="height"))
    return "".join(marks)


def _name(band: Band, record: Record, form: HullForm, view: View) -> str:
    """Write name and area of a band of shell on it amidships, where it is high enough."""
    middle = form.length / 2
    low = max(form.keel_at(middle), band.lower if band.lower is not None else -1.0e9)
    high = min(form.deck_at(middle), band.upper if band.upper is not None else 1.0e9)
    if band.zone.surface != "shell band" or view.mm(high - low) < pen.SMALL:
        return ""
    shown = f"{band.zone.name.split(',')[0]} · {_zone(record, band)}"
    return pen.label(view.at((middle, (low + high) / 2)), shown, pen.SMALL, bold=True, kind="zone")


def _columns(width: float) -> tuple[Column, ...]:
    spare = width - 4 - 9 - 24 - 20 - 14
    return (
        Column("", 9.0),
        Column("Zone", spare * 0.46),
        Column("Area", 24.0, "right", 6.0),
        Column("Scheme", spare * 0.54),
        Column("Covers", 20.0, "right"),
        Column("Item", 14.0, "right"),
    )


def _lines(package: Package, record: Record, made: list[Band]) -> list[Line]:
    """List every zone with its schemes: drawn ones first, those inside after them."""
    lines: list[Line] = []
    for band in sorted(made, key=lambda one: one.hatch is None):
        name = band.zone.name if band.hatch else f"{band.zone.name} (not drawn)"
        area = _zone(record, band)
        schemes = [scheme for scheme in package.schemes if scheme.zone.name == band.zone.zone]
        cells = [_scheme(package, scheme, record) for scheme in schemes] or [("–", "–", "–")]
        lines.append(Line(("", name, area, *cells[0]), band.hatch))
        lines += [Line(("", "", "", *more)) for more in cells[1:]]
    return lines


def _scheme(package: Package, scheme: Scheme, record: Record) -> tuple[str, str, str]:
    covered = _area(record, f"coating.{scheme.scheme}.area")
    items = ", ".join(item.number for item in appliers(package, scheme))
    return scheme.name or scheme.scheme, covered, items or "–"


def _zone(record: Record, band: Band) -> str:
    return _area(record, f"zone.{band.zone.zone}.area")


def _area(record: Record, name: str) -> str:
    value = record.values.get(name)
    return f"{show(value.si, 'area')}" if value else "not calculated"


def _alternative(made: list[Band], record: Record) -> str:
    seen = [band for band in made if band.hatch]
    named = "; ".join(f"{band.zone.name}, {_zone(record, band)}" for band in seen)
    return f"Profile of the ship with {len(seen)} coating zones: {named}."
