"""The anodes on the shell: where they stand, what was left of each, and the openings and blocks beside them."""

from __future__ import annotations

import math
from collections.abc import Sequence

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.anode_need import further_anodes
from tenderwright.calculations.ship.footprints import plan_footprints
from tenderwright.calculations.ship.outline import Outline, hull_outline
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.framed import MARGIN, Framed, framed
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.hull_marks import extent, hull_ground, hull_lines
from tenderwright.documents.drawings.plane import uncrossed
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.model.vessel import Anode
from tenderwright.quantities.display import show
from tenderwright.quantities.retold import retold

TITLE = "Anodes"
_HEAD, _ROW, _MARK = 3.0, 7.5, 8.0
_COLUMNS = 3
"""Columns of the list of anodes."""
BLOCK = Hatch((135,), 0.7, pen.FINE, "", pen.FAINT)
PROPOSED = "1.2 0.6"


def anode_plan(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the anodes on both sides, or say why not."""
    if not package.anodes:
        return NotAsked("the package has no anodes")
    found = calculated.outcome(hull_outline)
    if isinstance(found, Absent):
        return found
    form = found.form
    first, last = extent(package, form)
    under = outline.keel_underside(package.particulars)

    def size(scale: int) -> tuple[float, float]:
        side = _HEAD + (form.depth - under) * 1000 / scale + _ROW + FRAMES_HEIGHT
        return (last - first) * 1000 / scale + 2 * _MARK, 2 * side

    sheet = framed(package, "anode-plan", TITLE, found.drawn_from)
    room = Room(sheet.right - MARGIN, sheet.over - MARGIN)
    sheet = sheet.at(largest_scale(room, size))
    left = (sheet.frame.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    spare = (room.height - size(sheet.scale)[1]) / 4
    marks, top = [], MARGIN + spare
    for side in ("port", "starboard"):
        view = View(sheet.scale, left, top + _HEAD + sheet.mm(form.depth))
        marks += _side(package, calculated, found, view, side, sheet.right)
        top = view.y(under) + _ROW
        marks.append(frame_scale(package.frames, view, top) if package.frames else "")
        top += FRAMES_HEIGHT + 2 * spare
    marks += _list(package, sheet)
    seen = [anode for anode in package.anodes if anode.left is not None]
    words = (
        f"Both sides of the ship from outside, seen as from port, with {len(package.anodes)} anodes, of which "
        f"{len(seen)} have been looked at: {', '.join(f'{a.anode} {a.left}' for a in seen)}."
    )
    caption = retold(
        "Anodes on both sides, drawn to length by position and height, each with its number and what was left of it "
        "when last seen; starboard is drawn as though seen through the ship. Circles are openings; hatched boxes are "
        "the side blocks of the plan. An anode stands 300 mm or more clear of either (common practice, no source)."
    )
    caption += found.note
    if package.anode_families:
        caption += " Anodes of a family are drawn evenly spread, since where each of them stands is not written."
    return sheet.figure(marks, caption, words)


def _side(package: Package, calculated: Calculated, found: Outline, view: View, side: str, width: float) -> list[str]:
    form = found.form
    anodes = [anode for anode in package.anodes if anode.side in (side, "both", "centreline")]
    under = outline.keel_underside(package.particulars)
    marks = [
        hull_ground(package, form, view),
        *_blocks(calculated, form, view, side),
        hull_lines(package, found, view),
        *_openings(package, view, side),
        *(_anode(anode, view) for anode in anodes),
        *_further(package, calculated, view),
        pen.text((4, view.y(form.depth) + 1.0), side.capitalize(), pen.NORMAL, bold=True, kind="side"),
        *_labels(anodes, view, view.y(under) + 4.2, width),
    ]
    return marks


def _blocks(calculated: Calculated, form: HullForm, view: View, side: str) -> list[str]:
    """Draw the side blocks up to the shell that they touch."""
    marks = []
    for block in calculated.found(plan_footprints) or ():
        if block.kind == "side" and block.side == side:
            a, b = view.x(block.aft), view.x(block.forward)
            low = view.y(form.keel_at(block.x))
            box = [(a, low), (b, low), (b, low - 3.0), (a, low - 3.0)]
            marks.append(BLOCK.over([box]) + pen.polygon(box, pen.FINE, "", pen.FAINT))
    return marks


def _openings(package: Package, view: View, side: str) -> list[str]:
    marks = []
    for opening in package.openings:
        if opening.side in (side, "centreline"):
            radius = max(0.5, view.mm(0.5 * opening.bore.si) if opening.bore else 0.5)
            marks.append(pen.circle(view.at((opening.at.x, opening.height.si)), radius, pen.FINE, pen.PAPER))
    return marks


def _anode(anode: Anode, view: View) -> str:
    """Draw an anode to length, black as far as it was left."""
    half = 0.5 * max(view.mm(anode.length.si) if anode.length else 0.0, 2.2)
    x, y = view.at((anode.at.x, anode.height.si))
    box = [(x - half, y - 0.8), (x + half, y - 0.8), (x + half, y + 0.8), (x - half, y + 0.8)]
    left = anode.left.si if anode.left else 1.0
    edge = x - half + 2 * half * left
    full = [(x - half, y - 0.8), (edge, y - 0.8), (edge, y + 0.8), (x - half, y + 0.8)]
    return pen.polygon(box, 0, fill=pen.PAPER) + pen.polygon(full, 0, fill=pen.INK) + pen.polygon(box, pen.FINE)


def _further(package: Package, calculated: Calculated, view: View) -> list[str]:
    """Draw the places of further anodes, where more are needed than are fitted."""
    layout, condition = calculated.found(further_anodes), package.condition
    strip = condition.anodes.strip if condition is not None and condition.anodes is not None else None
    if layout is None or strip is None:
        return []
    marks = []
    for x in layout.centres:
        a, b = view.x(x - 0.2), view.x(x + 0.2)
        y = view.y(strip.height.si)
        marks.append(pen.polygon([(a, y - 0.9), (b, y - 0.9), (b, y + 0.9), (a, y + 0.9)], pen.MEDIUM, PROPOSED))
    return marks


def _labels(anodes: Sequence[Anode], view: View, row: float, width: float) -> list[str]:
    words = [f"{a.anode.upper()} {a.left}" if a.left else a.anode.upper() for a in anodes]
    feet = [view.at((a.at.x, a.height.si)) for a in anodes]
    sizes = [pen.text_width(word, pen.SMALL) + 0.8 for word in words]
    places = uncrossed([(x, y + 0.8) for x, y in feet], sizes, row - 1.4, (MARGIN, width))
    marks = []
    for word, (x, y), place in zip(words, feet, places, strict=True):
        marks.append(pen.line((x, y + 0.8), (place, row - 1.4), pen.FINE))
        marks.append(pen.label((place, row), word, pen.SMALL, kind="anode"))
    return marks


def _list(package: Package, sheet: Framed) -> list[str]:
    """Explain the marks and list the anodes beside the title block, with their masses where there is room."""
    top = sheet.over + 3.2
    box = [(4.0, top - 0.8), (10.0, top - 0.8), (10.0, top + 0.8), (4.0, top + 0.8)]
    full = [(4.0, top - 0.8), (6.4, top - 0.8), (6.4, top + 0.8), (4.0, top + 0.8)]
    words = "black: left when last seen (here 40 %); whole outline: as fitted new; circle: opening; hatched: side block"
    marks = [
        pen.line((MARGIN, sheet.over + 1), (sheet.beside, sheet.over + 1)),
        pen.polygon(full, 0, fill=pen.INK) + pen.polygon(box, pen.FINE),
        pen.text((11.5, top + 0.9), words, pen.SMALL, kind="legend"),
    ]
    rows = math.ceil(len(package.anodes) / _COLUMNS)
    apart = min(4.2, (sheet.foot - top - 2) / rows)
    if apart < pen.SMALL * 1.15:
        return [*marks, pen.text((4.0, top + 5.0), "Where each stands is in the list of anodes.", kind="legend")]
    each = (sheet.beside - 4) / _COLUMNS
    named = max(pen.text_width(one.anode.upper(), pen.SMALL, True) for one in package.anodes) + 1.4
    told = [f"{one.at.text}, {show(one.height.si, 'centre')} up" for one in package.anodes]
    weighed = [f"{words}, {show(one.mass.si, 'small part')}" for words, one in zip(told, package.anodes, strict=True)]
    if all(pen.text_width(words, pen.SMALL) <= each - named - 1 for words in weighed):
        told = weighed
    for index, one in enumerate(package.anodes):
        left, y = 4 + (index // rows) * each, top + 2 + (index % rows + 0.75) * apart
        marks.append(pen.text((left, y), one.anode.upper(), bold=True))
        marks.append(
            pen.text((left + named, y), pen.shortened(told[index], pen.SMALL, each - named - 1), kind="anode-list")
        )
    return marks
