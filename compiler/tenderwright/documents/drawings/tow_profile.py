"""The profile for the tow: waterline, towing points, and the openings to be closed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.tow import towed
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale, perpendiculars
from tenderwright.documents.drawings.framed import MARGIN, Framed, framed
from tenderwright.documents.drawings.hull_marks import extent, hull_ground, hull_lines
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.documents.not_calculated import not_drawn
from tenderwright.model.package import Package
from tenderwright.model.tow import Tow
from tenderwright.quantities.display import show

TITLE = "Profile for the tow"
CAUTION = (
    "For the tow. Planning figures: tow master, tug master, surveyor and insurer decide whether and how she sails."
)
_SIDE, _HEAD, _BELOW = 14.0, 6.0, FRAMES_HEIGHT + 5.0
"""Space beside the hull, over it and under it, mm."""
_ROW = 3.4
"""Height of a line of the list, mm."""


@dataclass(frozen=True)
class Marked:
    """Something that the drawing numbers."""

    x: float
    z: float
    kind: Literal["point", "closure", "opening", "under water"]
    name: str


def tow_profile(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the hull from the side with what matters to the tow, numbered, or say why not."""
    found, plan = calculated.outcome(hull_outline), package.tow
    if isinstance(found, Absent):
        return found
    if plan is None:
        return Lacking("it needs tow.yaml")
    form, position = found.form, calculated.found(towed)
    first, last = extent(package, form)
    under = outline.keel_underside(package.particulars)
    entries = _entries(package, plan, position)
    top = max([form.depth, *(one.z for one in entries)])

    def size(scale: int) -> tuple[float, float]:
        return (last - first) * 1000 / scale + 2 * _SIDE, (top - under) * 1000 / scale + _HEAD + _BELOW

    sheet = framed(package, "tow-profile", TITLE, found.drawn_from, CAUTION)
    room = Room(sheet.right - MARGIN, sheet.over - MARGIN)
    sheet = sheet.at(largest_scale(room, size))
    left = (sheet.frame.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    spare = max(0.0, room.height - size(sheet.scale)[1])
    over = min(outline.highest(package), top + spare * 0.6 * sheet.scale / 1000)
    view = View(sheet.scale, left, sheet.over - _BELOW - spare * 0.3 + sheet.mm(under))
    frames_at = view.y(under) + 3
    marks = [
        pen.strokes([(view.at(a), view.at(b)) for a, b in outline.superstructure(package, over)], colour=pen.FAINT),
        hull_ground(package, form, view),
        hull_lines(package, found, view),
        _waterline(position, view, (first, last), under),
        perpendiculars(view, form.length, view.y(form.depth) - 1.5, frames_at + 0.4),
        frame_scale(package.frames, view, frames_at) if package.frames else "",
        *_marks(entries, view),
        *_list(entries, sheet),
    ]
    caption = (
        "Triangles: towing points. Squares: openings of deck and house to be closed. Circles: "
        "openings of the shell, filled where "
        "they are under water as she is towed. Drafts to the underside of the keel. "
        f"Hull outline from {found.drawn_from}; "
        "what stands over the deck is cut off."
    ) + not_drawn(calculated.outcome(towed), "Waterline of the tow")
    told = "; ".join(f"{number} {one.name}" for number, one in enumerate(entries, start=1))
    words = f"Profile of the ship with the waterline of the tow and {len(entries)} numbered things: {told}."
    return sheet.figure(marks, caption, words)


def _entries(package: Package, plan: Tow, position: FloatingPosition | None) -> list[Marked]:
    """List what is marked, from aft."""
    found = [Marked(one.at.x, one.height.si, "point", f"{one.point} ({one.use})") for one in plan.points]
    found += [Marked(one.at.x, one.height.si, "closure", one.what) for one in plan.closures]
    for one in package.openings:
        under = position is not None and position.waterline_at(one.at.x) > one.height.si
        if one.kind != "docking plug":
            found.append(Marked(one.at.x, one.height.si, "under water" if under else "opening", one.name))
    return sorted(found, key=lambda one: (one.x, one.z))


def _waterline(position: FloatingPosition | None, view: View, ends: tuple[float, float], under: float) -> str:
    """Draw the waterline, with the drafts at the perpendiculars above the underside of the keel."""
    if position is None:
        return ""
    start, end = (view.at((x, position.waterline_at(x))) for x in ends)
    h = position.hydrostatics
    names = (
        (start[0] - 6.6, start[1], h.draft + h.trim / 2, "end"),
        (end[0] + 6.6, end[1], h.draft - h.trim / 2, "start"),
    )
    marks = [pen.line((start[0] - 6, start[1]), (end[0] + 6, end[1]), pen.MEDIUM, "", pen.BLUE)]
    for x, y, draft, anchor in names:
        marks.append(pen.label((x, y), show(draft - under, "draft"), pen.SMALL, anchor, kind="draft"))
    return "".join(marks)


def _marks(entries: Sequence[Marked], view: View) -> list[str]:
    marks, taken = [], list[tuple[float, float]]()
    for number, one in enumerate(entries, start=1):
        x, y = view.at((one.x, one.z))
        at = _free((x + 2.6, y - 2.2), taken)
        taken.append(at)
        if at[1] < y - 2.3:
            marks.append(pen.line((x, y), (at[0] - 1.2, at[1] + 0.6), pen.FINE))
        if one.kind == "point":
            marks.append(pen.polygon([(x, y - 1.6), (x - 1.4, y + 1.0), (x + 1.4, y + 1.0)], pen.MEDIUM, fill=pen.INK))
        elif one.kind == "closure":
            corners = [(x - 1, y - 1), (x + 1, y - 1), (x + 1, y + 1), (x - 1, y + 1)]
            marks.append(pen.polygon(corners, pen.MEDIUM, fill=pen.PAPER))
        else:
            marks.append(pen.circle((x, y), 0.9, pen.MEDIUM, pen.INK if one.kind == "under water" else pen.PAPER))
        marks.append(pen.label(at, f"{number}", pen.SMALL, bold=True, kind="mark"))
    return marks


def _free(wanted: tuple[float, float], taken: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Move a number up until it stands clear of those before."""
    x, y = wanted
    while any(abs(x - a) < 4.4 and abs(y - b) < 2.7 for a, b in taken):
        y -= 2.7
    return x, y


def _list(entries: Sequence[Marked], sheet: Framed) -> list[str]:
    """Set the list beside the title block, in as many columns as it takes."""
    top = sheet.over + 2.0
    columns = max(2, -(-len(entries) // max(1, int((sheet.foot - top) / _ROW))))
    rows, wide = -(-len(entries) // columns), (sheet.beside - MARGIN) / columns
    marks = [pen.line((MARGIN, sheet.over + 1), (sheet.beside, sheet.over + 1))]
    for index, one in enumerate(entries):
        column, row = divmod(index, rows)
        left, y = MARGIN + 1 + column * wide, top + (row + 0.8) * _ROW
        marks.append(pen.text((left, y), f"{index + 1}", pen.SMALL, bold=True))
        marks.append(pen.text((left + 5, y), pen.shortened(one.name, pen.SMALL, wide - 7), pen.SMALL, kind="named"))
    return marks
