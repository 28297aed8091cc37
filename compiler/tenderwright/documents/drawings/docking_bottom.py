"""The docking plan from above: the bottom in two sheets, with all that stands on it, in it or stood on it before."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.ship.block_places import side_block_places
from tenderwright.calculations.ship.footprints import (
    Footprint,
    block_clearances,
    clearance_of,
    covered_strips,
    earlier_footprints,
    not_placed,
    obstacles,
    plan_footprints,
)
from tenderwright.calculations.ship.keel_loads import planned_keel_blocks
from tenderwright.calculations.ship.outline import Outline, hull_outline
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.calculations.ship.works import blocks_over_work
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import bottom_marks as bottom
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.block_ends import Mark, block_ends, seen_marks
from tenderwright.documents.drawings.block_marks import SPACING, block_spacing
from tenderwright.documents.drawings.bottom_marks import BEFORE, LAST, Bottom, Thing
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.framed import MARGIN, Framed, framed
from tenderwright.documents.drawings.sheet import PROPOSAL
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.quantities.display import head, show

TITLE = "Docking plan: bottom from above"
_HEAD, _SIDE, _ABREAST, _LINE = 2.0, 6.0, 2, 3.9
_OVERLAP = 0.6
"""By how much each half runs past the middle, m."""
_LOW = 0.25
"""Height of the low waterline as a share of the depth, unless side blocks stand higher."""
_HIGHER = 0.3
"""How far above the low waterline openings and anodes are still drawn, m."""


def docking_bottom(package: Package, calculated: Calculated) -> list[Figure] | Absent:
    """Draw the bottom, after half and forward half, or say why not."""
    found, footprints = calculated.outcome(hull_outline), calculated.outcome(plan_footprints)
    if isinstance(footprints, Absent):
        return footprints
    if isinstance(found, Absent):
        return found
    if not footprints:
        return Lacking("it needs blocks in vessel/docking-plan.yaml")
    form, docking = found.form, _bottom(footprints, calculated)
    low = max([_LOW * form.depth, *(one.shell_outer for one in docking.side_blocks)])
    shape = outline.waterline_plan(form, low)
    things = _things(package, calculated, low + _HIGHER)
    every = [one for prints in docking.earlier.values() for one in prints] + list(docking.footprints)
    reach = [x for x, _ in shape] + [one.aft for one in every] + [one.forward for one in every]
    first, last = min(reach) - 0.3, max(reach) + 0.3
    half = max([abs(y) for _, y in shape] + [abs(one.rectangle.y) + one.rectangle.width / 2 for one in things]) + 0.05
    middle = (first + last) / 2
    left = calculated.found(not_placed) or ()
    caption = _caption(low, found) + (
        f" Not drawn, since the package does not say where they lie: {', '.join(left)}." if left else ""
    )
    told = caption, found.drawn_from, seen_marks(package, form.length)
    halves = (("aft", "after half", first, middle + _OVERLAP), ("forward", "forward half", middle - _OVERLAP, last))
    return [
        _sheet(package, docking, things, shape, (name, words, (start, end)), half, told)
        for name, words, start, end in halves
    ]


def _bottom(footprints: Sequence[Footprint], calculated: Calculated) -> Bottom:
    clear = calculated.found(block_clearances)
    return Bottom(
        footprints,
        calculated.found(planned_keel_blocks) or (),
        calculated.found(planned_side_blocks) or (),
        calculated.found(side_block_places) or (),
        calculated.found(earlier_footprints) or {},
        calculated.found(covered_strips) or (),
        clear.conflicts if clear else (),
        calculated.found(blocks_over_work) or (),
    )


def _sheet(
    package: Package,
    docking: Bottom,
    things: Sequence[Thing],
    shape: Sequence[pen.Point],
    part: tuple[str, str, tuple[float, float]],
    half: float,
    told: tuple[str, str, tuple[Mark, Mark]],
) -> Figure:
    (name, words, ends), (caption, data, marked) = part, told
    named = [one for one in things if one.kind not in ("anode", "bilge keel") and ends[0] <= one.rectangle.x <= ends[1]]
    fixed = _HEAD + FRAMES_HEIGHT + 2 * SPACING

    def size(scale: int) -> tuple[float, float]:
        return (ends[1] - ends[0]) * 1000 / scale + 2 * _SIDE, 2 * half * 1000 / scale + fixed

    sheet = framed(package, f"docking-bottom-{name}", f"{TITLE}, {words}", data, PROPOSAL)
    room = Room(sheet.right - MARGIN, sheet.over - MARGIN)
    sheet = sheet.at(largest_scale(room, size))
    left = (sheet.frame.width - sheet.mm(ends[1] - ends[0])) / 2 - sheet.mm(ends[0])
    spare = (room.height - size(sheet.scale)[1]) / 2
    view = View(sheet.scale, left, MARGIN + _HEAD + spare + sheet.mm(half))
    frames_at = view.y(-half)
    spacing_at = frames_at + FRAMES_HEIGHT
    near, anchor = (4.0, "start") if name == "aft" else (sheet.right - 1.0, "end")
    blocks = [one for one in docking.keel_blocks if ends[0] <= one.x <= ends[1]]
    marks = [
        _hull(package, shape, view, ends),
        bottom.earlier_marks(docking, view, ends),
        bottom.strip_marks(docking.strips, view, ends),
        bottom.thing_marks(things, clearance_of(package.docking_plan).si or 0.0, view, ends),
        bottom.plan_marks(docking, things, view, ends),
        bottom.conflict_marks(docking, view, ends),
        bottom.thing_names(docking, things, view, ends),
        frame_scale(package.frames, view, frames_at, ends) if package.frames else "",
        block_spacing(blocks, view, spacing_at),
        pen.text((4, frames_at + 4.8), "frame" if package.frames and package.frames.numbers else "forward of AP"),
        pen.text((4, spacing_at + 3.1), head("spacing", "distance")),
        block_ends(docking.keel_blocks, marked, view, spacing_at + 1.5 * SPACING, ends),
        pen.text((near, MARGIN + 3), "port: earlier dockings", pen.NORMAL, anchor, bold=True, kind="side"),
        pen.text((near, frames_at - 1), "starboard: this plan", pen.NORMAL, anchor, bold=True, kind="side"),
        pen.line((MARGIN, sheet.over + 1), (sheet.beside, sheet.over + 1)),
        *_beside(package, docking, things, named, sheet),
    ]
    alternative = _alternative(package, docking, words, ends)
    return sheet.figure(marks, caption, alternative)


def _hull(package: Package, shape: Sequence[pen.Point], view: View, ends: tuple[float, float]) -> str:
    """Draw the low waterline, the keel's sides and the centreline, cut off at the ends of the sheet."""
    marks = []
    for side in (1, -1):
        run = [point for point in shape if point[1] * side >= 0 and ends[0] <= point[0] <= ends[1]]
        marks.append(pen.curve(view.all(run), pen.HEAVY) if len(run) > 1 else "")
    if package.particulars is not None:
        keel = package.particulars.keel
        aft, forward = max(keel.straight.from_.x, ends[0]), min(keel.straight.to.x, ends[1])
        sides = [
            ((view.x(aft), view.y(y)), (view.x(forward), view.y(y))) for y in (keel.width.si / 2, -keel.width.si / 2)
        ]
        marks.append(pen.strokes(sides, pen.FINE))
    marks.append(pen.line((view.x(ends[0]), view.base), (view.x(ends[1]), view.base), pen.FINE, pen.CHAIN, pen.FAINT))
    return "".join(marks)


def _things(package: Package, calculated: Calculated, highest: float) -> list[Thing]:
    """Give what blocks keep clear of, up to a height: openings numbered in the order of the package, anodes by name."""
    numbers = {one.opening: str(number) for number, one in enumerate(package.openings, 1)}
    things = []
    for one in calculated.found(obstacles) or ():
        if one.lowest <= highest:
            shown = "" if one.kind == "bilge keel" else numbers.get(one.place.name, one.place.name)
            things.append(Thing(one.kind, one.place, shown))
    return things


def _beside(
    package: Package, docking: Bottom, things: Sequence[Thing], named: Sequence[Thing], sheet: Framed
) -> list[str]:
    """Explain what is drawn and list the openings of the sheet, beside the title block."""
    key = _key(package, docking, things)
    rows = len(key) + -(-len(named) // _ABREAST)
    apart = min(_LINE, (sheet.foot - sheet.over - 3) / max(rows, 1))
    top = sheet.over + 2.5 + apart / 2
    marks = []
    for index, (kind, words) in enumerate(key):
        y = top + index * apart
        marks.append(_sample(kind, 4, y))
        shown = pen.shortened(words, pen.SMALL, sheet.beside - 14)
        marks.append(pen.text((12.5, y + 0.9), shown, pen.SMALL, kind="key"))
    return [*marks, *_names(package, named, top + len(key) * apart, sheet.beside, apart)]


def _key(package: Package, docking: Bottom, things: Sequence[Thing]) -> list[tuple[str, str]]:
    years = {one.docking: f"docking of {one.docked.year}" for one in package.history}
    earlier = list(docking.earlier)[-2:]
    clear = show(clearance_of(package.docking_plan).si or 0.0, "clearance")
    rows = [("plan", "block of this plan, drawn to starboard of the line; port alike")]
    if earlier:
        rows.append(("last", f"{years.get(earlier[-1], earlier[-1])}, the last, drawn to port of the line"))
    if len(earlier) > 1:
        year = years.get(earlier[0], earlier[0])
        rows.append(("before", f"{year}, the one before, its keel blocks in a row of their own"))
    if docking.strips:
        again = sum(one.dockings[-1] == "plan" for one in docking.strips)
        ringed = f", of which {again} by this plan too, ringed" if again else "; none again by this plan"
        rows.append(("strip", f"covered at two dockings running or more: {len(docking.strips)} strips{ringed}"))
    rows.append(("opening", f"opening, with {clear} kept clear round it"))
    if package.anodes:
        rows.append(("anode", "anode"))
    if any(one.kind == "bilge keel" for one in things):
        rows.append(("hidden", "bilge keel"))
    if docking.conflicts or docking.works:
        rows.append(("ring", "block too near to something, or on shell to be worked"))
    return rows


def _sample(kind: str, left: float, y: float) -> str:
    shape = [(left, y - 1.3), (left + 7, y - 1.3), (left + 7, y + 1.3), (left, y + 1.3)]
    middle = (left + 3.5, y)
    if kind in ("last", "before"):
        return (LAST if kind == "last" else BEFORE).swatch(left, y)
    if kind == "opening":
        cross = [((left + 2.5, y), (left + 4.5, y)), ((left + 3.5, y - 1), (left + 3.5, y + 1))]
        return pen.circle(middle, 1.0, pen.MEDIUM, pen.PAPER) + pen.strokes(cross, pen.FINE)
    if kind == "hidden":
        return pen.line((left, y), (left + 7, y), pen.FINE, pen.HIDDEN)
    if kind == "ring":
        return pen.circle(middle, 1.6, pen.HEAVY, colour=pen.RED)
    fill = {"plan": pen.PAPER, "strip": pen.INK, "anode": "#bbbbbb"}[kind]
    return pen.polygon(shape, pen.HEAVY if kind == "plan" else pen.FINE, fill=fill)


def _names(package: Package, named: Sequence[Thing], top: float, width: float, apart: float) -> list[str]:
    """List the openings of the sheet by their numbers, side by side."""
    by_name = {one.opening: one for one in package.openings}
    rows, each = -(-len(named) // _ABREAST), (width - 4) / _ABREAST
    marks = []
    for index, one in enumerate(named):
        opening = by_name[one.rectangle.name]
        left, y = 4 + (index // rows) * each, top + (index % rows) * apart + 0.9
        side = "" if opening.side in opening.name else f", {opening.side}"
        words = f"{opening.name}, {opening.at}{side}"
        marks.append(pen.text((left, y), one.shown, pen.SMALL, bold=True))
        marks.append(
            pen.text((left + 5.5, y), pen.shortened(words, pen.SMALL, each - 7), pen.SMALL, kind="opening-list")
        )
    return marks


def _caption(low: float, found: Outline) -> str:
    line = "her waterline" if found.known else "an outline by her beam, which is not her form,"
    return (
        f"Owner's docking plan for tender, seen from above through the ship, forward to the right: {line} "
        f"{show(low, 'centre')} above the keel line, keel blocks numbered and side blocks lettered from aft, with all "
        "that they keep clear of and where blocks stood before. What they touch under the keel is as wide as the keel. "
        "The smallest openings are drawn larger than they are." + found.note
    )


def _alternative(package: Package, docking: Bottom, words: str, ends: tuple[float, float]) -> str:
    keel = [one.number for one in docking.keel_blocks if ends[0] <= one.x <= ends[1]]
    sides = [one.position for one in docking.pairs if ends[0] <= one.x <= ends[1]]
    strips = [one for one in docking.strips if bottom.within(ends, one.aft, one.forward)]
    frames = package.frames
    where = ", ".join(frames.label((one.aft + one.forward) / 2) for one in strips) if frames else ""
    said = f"Bottom from above, {words}: "
    said += f"keel blocks {keel[0]} to {keel[-1]}. " if keel else "no keel blocks. "
    said += f"Side blocks at {', '.join(sides)}. " if sides else ""
    if docking.earlier:
        said += "Earlier dockings are drawn to port of the centreline, this plan to starboard. "
    if strips:
        places = f", at {where}" if where else ""
        said += f"Covered at two dockings running or more: {len(strips)} strips{places}."
    return said.strip()
