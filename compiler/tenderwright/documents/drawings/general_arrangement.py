"""The tank arrangement: profile and plan with every tank numbered, hatched by its liquid, and listed."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.condition import arrival
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.tanks import observed_slope
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale, perpendiculars
from tenderwright.documents.drawings.framed import MARGIN, framed
from tenderwright.documents.drawings.hull_marks import extent
from tenderwright.documents.drawings.tank_list import liquid_key, tank_list, tank_list_height
from tenderwright.documents.drawings.tank_marks import (
    NO_TANKS,
    DrawnTank,
    boxes,
    cut_of,
    drawn_tanks,
    tanks_from_above,
    tanks_from_side,
)
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.documents.not_calculated import not_drawn
from tenderwright.model.package import Package
from tenderwright.quantities.display import show

TITLE = "Tanks, with contents on arrival"
_HEAD, _DRAFTS, _GAP, _KEY, _BEYOND = 4.5, 4.2, 4.5, 5.0, 1.8
"""Rows on the sheet, mm: numbers over the profile, drafts under it, space over the plan, key, a waterline past her."""


def tanks(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw profile and plan with the tanks, or say why not."""
    found = calculated.outcome(hull_outline)
    if isinstance(found, Absent):
        return found
    form = found.form
    drawn = drawn_tanks(package, calculated)
    if not drawn:
        return Lacking(NO_TANKS)
    first, last = extent(package, form)
    under, over, half = outline.keel_underside(package.particulars), form.depth, float(form.deck_half_breadths.max())
    sheet = framed(package, "tank-plan", TITLE, f"{found.drawn_from}; capacities of the tanks")
    foot = min(sheet.over, sheet.foot - tank_list_height(package) - _KEY - 1)
    fixed = _HEAD + _DRAFTS + FRAMES_HEIGHT + _GAP

    def size(scale: int) -> tuple[float, float]:
        metre = 1000.0 / scale
        return (last - first) * metre + 2 * _BEYOND, (over - under + 2 * half) * metre + fixed

    room = Room(sheet.right - MARGIN, foot - MARGIN)
    sheet = sheet.at(largest_scale(room, size))
    spare = max(0.0, room.height - size(sheet.scale)[1]) / 3
    left = (sheet.frame.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    profile = View(sheet.scale, left, MARGIN + _HEAD + spare + sheet.mm(over))
    drafts_at = profile.y(under) + 2.4
    scale_at = profile.y(under) + _DRAFTS
    plan = View(sheet.scale, left, scale_at + FRAMES_HEIGHT + _GAP + spare + sheet.mm(half))
    key_at = foot + 1 + _KEY / 2
    marks = [
        tanks_from_side(package, calculated, drawn, profile, profile.y(over) - _HEAD / 2, observed_slope(package)),
        perpendiculars(profile, form.length, profile.y(over) - 1.5, scale_at + 0.4),
        _waterline(calculated.found(arrival), profile, (first, last), drafts_at, sheet.right),
        frame_scale(package.frames, profile, scale_at) if package.frames else "",
        _plan(package, form, drawn, plan, sheet.right),
        pen.line((MARGIN, foot + 1), (sheet.beside, foot + 1)),
        liquid_key((tank.contents.liquid for tank in package.tanks), key_at),
        tank_list(package, calculated, key_at + _KEY / 2, sheet.beside),
    ]
    alternative = _alternative(package, drawn)
    caption = _caption(package, found.drawn_from) + boxes(calculated)
    caption += not_drawn(calculated.outcome(arrival), "Waterline on arrival")
    return sheet.figure(marks, caption, alternative)


def _plan(package: Package, form: HullForm, drawn: Sequence[DrawnTank], view: View, width: float) -> str:
    cut, half = cut_of(package, form), float(form.deck_half_breadths.max())
    liquids = {tank.tank: tank.contents.liquid for tank in package.tanks}
    top, bottom = view.y(half), view.y(-half)
    return "".join(
        [
            tanks_from_above(form, drawn, liquids, view, cut),
            pen.text((4, top + 2), f"Plan at {show(cut.height, 'height')}", pen.NORMAL, bold=True),
            pen.text((4, top + 5.2), "half depth", pen.SMALL),
            pen.text((width - 1, top + 2), "port", pen.SMALL, "end"),
            pen.text((width - 1, bottom - 0.4), "starboard", pen.SMALL, "end"),
        ]
    )


def _waterline(afloat: FloatingPosition | None, view: View, ends: tuple[float, float], row: float, width: float) -> str:
    if afloat is None:
        return ""
    reach = [
        (view.x(x) + out, view.y(afloat.waterline_at(x))) for x, out in zip(ends, (-_BEYOND, _BEYOND), strict=True)
    ]
    mark = [(reach[0][0] + dx, reach[0][1] + dy) for dx, dy in ((0.2, -2.4), (2.8, -2.4), (1.5, -0.1))]
    found = afloat.hydrostatics
    trim = f"trim {show(abs(found.trim), 'trim', digits=2)} by the {'stern' if found.trim >= 0 else 'head'}"
    mass = show(afloat.loading.mass, "weight", more=-1)
    middle = f"On arrival {mass} in water of {show(found.density, 'density')}, {trim}; drafts above the keel line"
    return "".join(
        [
            pen.line(reach[0], reach[1], pen.MEDIUM, colour=pen.BLUE),
            pen.polygon(mark, pen.FINE, colour=pen.BLUE),
            pen.label((4, row), f"Draft AP {show(found.draft_aft, 'draft')}", pen.SMALL, "start", True),
            pen.label((width / 2, row), pen.shortened(middle, pen.SMALL, width - 40), pen.SMALL),
            pen.label((width - 1, row), f"Draft FP {show(found.draft_forward, 'draft')}", pen.SMALL, "end", True),
        ]
    )


def _caption(package: Package, drawn_from: str) -> str:
    read = {tank.contents.read for tank in package.tanks if tank.contents.read}
    when = f" of {min(read).isoformat()}" if len(read) == 1 else ""
    return (
        f"Tanks from the side and from above. From the side each is hatched up to the level sounded{when}; from above "
        "each is hatched all over by what it holds, and those wholly below the cut are dashed. Dry tanks are white. "
        f"Hull outline from {drawn_from}; keel, rudder and stern frame by their extents only."
    )


def _alternative(package: Package, drawn: Sequence[DrawnTank]) -> str:
    named = "; ".join(
        f"{one.number} {one.tank.name}, {one.tank.bounds.from_} to {one.tank.bounds.to}"
        for one in drawn
        if one.tank.bounds
    )
    return f"Profile and plan of the ship with {len(drawn)} tanks: {named}."
