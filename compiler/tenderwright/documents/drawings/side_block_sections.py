"""Sections at the side blocks: hull, keel block and side block of every pair, with the sizes they are built to."""

from __future__ import annotations

from collections.abc import Sequence
from math import degrees

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.block_places import KeelBlockResult, SideBlockResult
from tenderwright.calculations.ship.hull import Hull, hull
from tenderwright.calculations.ship.keel_loads import planned_keel_blocks
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.block_marks import NOMINAL, TIMBER, letter
from tenderwright.documents.drawings.framed import framed
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.sheet import PROPOSAL
from tenderwright.documents.drawings.view import View, scales
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.quantities.display import decimals, in_column, show, unit_of

TITLE = "Docking plan: sections at side blocks"
_MOST = 12
"""Sections on a sheet at most."""
_HEAD, _BELOW, _GAP = 5.0, 17.0, 3.0
"""Space over a section for its name, below it for sizes, and between sections, mm."""
_BEYOND = 0.56
"""How far a section is drawn beyond the centreline, m."""
_OUTBOARD = 0.7
"""How far beyond the side blocks sections are broken off, m."""


def side_block_sections(package: Package, calculated: Calculated) -> list[Figure] | Absent:
    """Draw the section at every pair of side blocks, or say why not."""
    found, pairs = calculated.outcome(hull), calculated.outcome(planned_side_blocks)
    if isinstance(pairs, Absent):
        return pairs
    if isinstance(found, Absent):
        return found
    if not pairs:
        return NotAsked("the docking plan has no side blocks")
    blocks = calculated.found(planned_keel_blocks) or ()
    sheets = [pairs[start : start + _MOST] for start in range(0, len(pairs), _MOST)]
    return [_sheet(package, blocks, found, part, number) for number, part in enumerate(sheets, 1)]


def _sheet(
    package: Package,
    blocks: Sequence[KeelBlockResult],
    found: Hull,
    pairs: Sequence[SideBlockResult],
    number: int,
) -> Figure:
    form = found.form
    depth = package.particulars.dimensions.depth.si if package.particulars else form.depth
    under = outline.keel_underside(package.particulars)
    raised = _raised(pairs, under)
    half = max(one.off_centre + one.width / 2 for one in pairs) + _OUTBOARD
    top = max(_height_at(form, one.x, half, depth) for one in pairs)
    longest = max(pen.text_width(words, pen.SMALL) for pair in pairs for words in _words(pair)) + _GAP

    def cell(scale: int) -> tuple[float, float]:
        metre = 1000 / scale
        return max((half + _BEYOND) * metre + _GAP, longest), (top - under + raised) * metre + _HEAD + _BELOW

    name = "docking-sections" if number == 1 else f"docking-sections-{number}"
    sheet = framed(package, name, TITLE, found.drawn_from, PROPOSAL)
    fitting = (one for one in scales() if len(sheet.cells(*cell(one))) >= len(pairs))
    sheet = sheet.at(next(fitting, scales()[-1]))
    marks = []
    for pair, place in zip(pairs, sheet.cells(*cell(sheet.scale)), strict=False):
        view = View(sheet.scale, place.left + _GAP / 2 + sheet.mm(half), place.top + _HEAD + sheet.mm(top))
        marks.append(_section(package, blocks, form, pair, view, (half, top)))
    alternative = " ".join(_said(one) for one in pairs)
    return sheet.figure(marks, _CAPTION, alternative)


def _height_at(form: HullForm, x: float, half: float, depth: float) -> float:
    """Give how high the shell lies so far off the centreline: at the depth where she is nowhere so broad."""
    heights = np.linspace(form.keel_at(x), depth, 200)
    reached = np.flatnonzero(form.half_breadth_at(x, heights) >= half)
    return float(heights[reached[0]]) if reached.size else depth


def _raised(pairs: Sequence[SideBlockResult], under: float) -> float:
    """Give how far the underside of the keel is over the dock floor, m: a nominal height where it is not given."""
    return max((one.height - one.shell + under for one in pairs if one.height is not None), default=NOMINAL)


def _section(
    package: Package,
    blocks: Sequence[KeelBlockResult],
    form: HullForm,
    pair: SideBlockResult,
    view: View,
    reach: tuple[float, float],
) -> str:
    """Draw one section, port half with the keel block, seen looking forward: port is on the left."""
    under = outline.keel_underside(package.particulars)
    floor = under - _raised([pair], under)
    half, top = reach
    edge = view.x(-half), view.x(_BEYOND)
    marks = [
        pen.text((edge[0], view.y(top) - 1.4), letter(pair.number), pen.TITLE, bold=True, kind="pair"),
        pen.text((edge[0] + 5, view.y(top) - 1.4), f"{pair.position}, {show(pair.x, 'distance')}", pen.NORMAL),
        _keel_block(blocks, pair, view, under, floor),
        _side_block(pair, view, floor),
        _hull(package, form, pair.x, view, reach),
        pen.line((edge[0], view.y(floor)), (edge[1], view.y(floor)), pen.HEAVY),
        pen.line((view.left, view.y(top)), (view.left, view.y(floor) + 4.5), pen.FINE, pen.CHAIN),
        _sizes(pair, view, floor, edge[0]),
    ]
    return "".join(marks)


def _hull(package: Package, form: HullForm, x: float, view: View, reach: tuple[float, float]) -> str:
    """Draw the shell from the keel to where the section is broken off, and a bar keel under it."""
    half, top = reach
    heights = np.linspace(form.keel_at(x), min(top, _height_at(form, x, half, top)), 60)
    port = list(zip((-form.half_breadth_at(x, heights)).tolist(), heights.tolist(), strict=True))
    starboard = [*((-y, z) for y, z in port if -y < _BEYOND), (_BEYOND, _height_at(form, x, _BEYOND, top))]
    marks = [pen.curve(view.all([(0.0, heights[0]), *port]), pen.HEAVY)]
    marks.append(pen.curve(view.all([(0.0, heights[0]), *starboard]), pen.HEAVY))
    keel = package.particulars.keel if package.particulars else None
    if keel is not None and keel.kind == "bar" and keel.depth is not None:
        wide, deep = keel.width.si / 2, keel.depth.si
        bar = [(-wide, 0.0), (wide, 0.0), (wide, -deep), (-wide, -deep)]
        marks.append(pen.polygon(view.all(bar), pen.FINE, fill="#bbbbbb"))
    return "".join(marks)


def _keel_block(
    blocks: Sequence[KeelBlockResult], pair: SideBlockResult, view: View, under: float, floor: float
) -> str:
    """Draw the nearest keel block, dashed where it does not stand at this place."""
    if not blocks:
        return ""
    near = min(blocks, key=lambda one: abs(one.x - pair.x))
    here = abs(near.x - pair.x) <= (near.length + pair.length) / 2
    wide = near.width / 2
    shape = view.all([(-wide, under), (wide, under), (wide, floor), (-wide, floor)])
    return (TIMBER.over([shape]) if here else "") + pen.polygon(shape, pen.MEDIUM, "" if here else pen.HIDDEN)


def _corners(pair: SideBlockResult, view: View, floor: float) -> list[Point]:
    inner, outer = pair.off_centre - pair.width / 2, pair.off_centre + pair.width / 2
    return view.all([(-inner, floor), (-outer, floor), (-outer, pair.shell_outer), (-inner, pair.shell_inner)])


def _side_block(pair: SideBlockResult, view: View, floor: float) -> str:
    shape = _corners(pair, view, floor)
    return pen.polygon(shape, 0, fill=pen.PAPER) + TIMBER.over([shape]) + pen.polygon(shape, pen.MEDIUM)


def _sizes(pair: SideBlockResult, view: View, floor: float, left: float) -> str:
    """Dimension height, bevel and distance off the centreline, and say the rest below."""
    foot, middle = view.y(floor), view.x(-pair.off_centre)
    outer = view.x(-pair.off_centre - pair.width / 2)
    marks = [_across(middle, view.left, foot + 2.8, show(pair.off_centre, "distance"))]
    if pair.height is not None:
        marks.append(_upright(outer - 2.2, foot, view.y(pair.shell), middle, show(pair.height, "height")))
    cap = view.at((-pair.off_centre, pair.shell))
    bevel = (cap[0] + 1.0, cap[1] - 5.0)
    marks.append(pen.line((bevel[0], bevel[1] + 1.2), cap, pen.FINE))
    marks.append(pen.label(bevel, f"{decimals(degrees(pair.bevel), 1)}°", pen.NORMAL, bold=True, kind="bevel"))
    for row, words in enumerate(_words(pair)):
        marks.append(pen.text((left, foot + 7.4 + row * 3.2), words, pen.SMALL, kind="sizes"))
    return "".join(marks)


def _words(pair: SideBlockResult) -> list[str]:
    cap = f"cap {in_column(pair.length, 'distance')} by {in_column(pair.width, 'distance')} {unit_of('distance')}"
    along = degrees(pair.fore_and_aft)
    slope = (
        f"{decimals(abs(along), 1)}° up {'forward' if along > 0 else 'aft'}" if abs(along) >= 0.05 else "level along"
    )
    words = [f"{cap}, {slope}", "height not given"]
    if pair.height is not None:
        raised = pair.height - pair.shell
        inner, outer = show(pair.shell_inner + raised, "height"), show(pair.shell_outer + raised, "height")
        words[1] = f"inner edge {inner}, outer {outer}"
    loads = [
        f"{name} {in_column(load, 'weight')}"
        for name, load in (("wind", pair.wind), ("earthquake", pair.earthquake))
        if load is not None
    ]
    return [*words, f"lee block: {', '.join(loads)} {unit_of('weight')}"] if loads else words


def _across(a: float, b: float, y: float, words: str) -> str:
    ends = [((x, y - 1), (x, y + 1)) for x in (a, b)]
    slants = [((x - 0.6, y + 0.6), (x + 0.6, y - 0.6)) for x in (a, b)]
    shown = pen.label(((a + b) / 2, y), words, pen.SMALL, kind="off-centre")
    return pen.line((a, y), (b, y), pen.FINE) + pen.strokes(ends, pen.FINE) + pen.strokes(slants, pen.MEDIUM) + shown


def _upright(x: float, low: float, high: float, to: float, words: str) -> str:
    """Dimension a height beside the block, with a line in to the middle of its cap."""
    slants = [((x - 0.6, y + 0.6), (x + 0.6, y - 0.6)) for y in (low, high)]
    return (
        pen.line((x, low), (x, high), pen.FINE)
        + pen.line((x - 1, high), (to, high), pen.FINE)
        + pen.strokes(slants, pen.MEDIUM)
        + pen.label((x - 0.8, (low + high) / 2), words, pen.NORMAL, "end", True, kind="height")
    )


_CAPTION = (
    "Section at every pair of side blocks, looking forward: the port half, starboard alike. Heights are over the dock "
    "floor to the moulded shell, at the middle of the cap and at its edges; the angle is the bevel of the cap, rising "
    "outboard. A keel block that does not stand at the same place is dashed. Before soft caps are cut, every height is "
    "for the dockmaster to prove by templates or soundings."
)


def _said(pair: SideBlockResult) -> str:
    height = f"{show(pair.height, 'height')} high" if pair.height is not None else "height not given"
    return (
        f"{letter(pair.number)} at {pair.position}: {show(pair.off_centre, 'distance')} off the centreline, {height}, "
        f"bevel {decimals(degrees(pair.bevel), 1)}°."
    )
