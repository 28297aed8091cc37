"""The tank arrangement: profile and plan with every tank numbered, hatched by its liquid, and listed."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.results import Results
from tenderwright.calculations.ship.tanks import observed_slope
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale, perpendiculars
from tenderwright.documents.drawings.hatch import liquid_hatch
from tenderwright.documents.drawings.hull_marks import extent, hull_ground, hull_lines
from tenderwright.documents.drawings.numbers import Numbered, place_numbers
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.plane import below
from tenderwright.documents.drawings.sheet import TITLE_HEIGHT, sheet_of
from tenderwright.documents.drawings.tank_list import liquid_key, tank_list, tank_list_height
from tenderwright.documents.drawings.view import LANDSCAPE, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.model.vessel import Tank
from tenderwright.quantities.display import decimals, show

_HEAD, _DRAFTS, _GAP, _KEY = 4.5, 4.2, 4.5, 4.0
"""Rows on the sheet, mm: numbers over the profile, drafts under it, space over the plan, key of hatchings."""


@dataclass(frozen=True)
class _Drawn:
    """A tank that can be drawn: its number, outlines in metres, and the height of its top, m."""

    number: int
    tank: Tank
    side: list[Point]
    above: list[list[Point]]
    top: float


def tanks(package: Package, results: Results) -> Figure | None:
    """Draw profile and plan with the tanks; None without a hull form or tanks that can be drawn."""
    form, drawn = results.form, _drawn(package, results)
    if form is None or not drawn:
        return None
    first, last = extent(package, form)
    under, over, half = outline.keel_underside(package.particulars), form.depth, float(form.deck_half_breadths.max())
    fixed = _HEAD + _DRAFTS + FRAMES_HEIGHT + _GAP + 2 + _KEY + tank_list_height(package) + TITLE_HEIGHT

    def size(scale: int) -> tuple[float, float]:
        metre = 1000.0 / scale
        return (last - first) * metre + 3, (over - under + 2 * half) * metre + fixed

    scale = largest_scale(LANDSCAPE, size)
    wide, high = size(scale)
    sheet = sheet_of(package, "tank-plan", "Tanks, with contents on arrival", scale, max(wide, LANDSCAPE.width), high)
    left = (sheet.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    profile = View(scale, left, _HEAD + sheet.mm(over))
    drafts_at = profile.y(under) + 2.4
    scale_at = profile.y(under) + _DRAFTS
    plan = View(scale, left, scale_at + FRAMES_HEIGHT + _GAP + sheet.mm(half))
    key_at = plan.y(-half) + 2 + _KEY / 2
    marks = [
        *_profile(package, results, form, drawn, profile),
        perpendiculars(profile, form.length, profile.y(over) - 1.5, scale_at + 0.4),
        _waterline(results, profile, (first, last), drafts_at, sheet.width),
        frame_scale(package.frames, profile, scale_at) if package.frames else "",
        *_plan(package, form, drawn, plan, sheet.width),
        liquid_key(package, key_at),
        tank_list(package, results, key_at + _KEY / 2, sheet.width),
    ]
    alternative = _alternative(package, drawn)
    return Figure(sheet.name, sheet.svg(marks, alternative), _caption(package), alternative, title=sheet.title)


def _drawn(package: Package, results: Results) -> list[_Drawn]:
    drawn = []
    for number, tank in enumerate(package.tanks, 1):
        shape = results.tanks.get(tank.tank)
        if shape is not None:
            inboard = tank.bounds.inboard.si if tank.bounds and tank.side not in ("port", "starboard") else 0.0
            views = outline.from_side(shape.body), outline.from_above(shape.body, inboard)
            drawn.append(_Drawn(number, tank, *views, shape.body.top))
    return drawn


def _profile(package: Package, results: Results, form: HullForm, drawn: list[_Drawn], view: View) -> list[str]:
    marks = [hull_ground(package, form, view)]
    slope = observed_slope(package)
    for one in drawn:
        liquid = results.contents.get(one.tank.tank)
        if liquid is not None and liquid.volume > 0:
            wet = view.all(below(one.side, liquid.level, slope))
            marks.append(liquid_hatch(one.tank.contents.liquid).over([wet]))
            if len(wet) > 2:
                marks.append(pen.polygon(wet, pen.THIN))
        marks.append(pen.polygon(view.all(one.side), 0.25))
    marks.append(hull_lines(package, form, view))
    numbered = []
    for _, same in groupby(sorted(drawn, key=_place), key=_place):
        pair = list(same)
        numbered.append(Numbered(", ".join(str(one.number) for one in pair), view.all(pair[0].side)))
    ends = view.x(float(form.stations[0])), view.x(float(form.stations[-1]))
    marks.append(place_numbers(numbered, _HEAD / 2, ends, "profile-number"))
    return marks


def _place(one: _Drawn) -> tuple[float, ...]:
    xs, zs = [x for x, _ in one.side], [z for _, z in one.side]
    return tuple(round(v, 2) for v in (min(xs), max(xs), min(zs), max(zs)))


def _plan(package: Package, form: HullForm, drawn: list[_Drawn], view: View, width: float) -> list[str]:
    depth = package.particulars.dimensions.depth.si if package.particulars else form.depth
    cut = depth / 2
    marks = [pen.polygon(view.all(outline.deck_plan(form)), pen.FINE, fill=pen.PAPER)]
    upward = sorted(drawn, key=lambda one: (one.top, one.number))
    hidden: list[str] = []
    numbered: list[Numbered] = []
    for index, one in enumerate(upward):
        covers = [view.all(shape) for higher in upward[index + 1 :] for shape in higher.above]
        shapes = [view.all(shape) for shape in one.above]
        marks += [pen.polygon(shape, 0, fill=pen.PAPER) for shape in shapes]
        marks.append(liquid_hatch(one.tank.contents.liquid).over(shapes))
        drawing = [pen.polygon(shape, 0.25, "" if one.top > cut else pen.HIDDEN) for shape in shapes]
        (marks if one.top > cut else hidden).extend(drawing)
        numbered.append(Numbered(str(one.number), shapes[0], covers))
    waterline = outline.waterline_plan(form, cut)
    marks += [*hidden, pen.polygon(view.all(waterline), pen.HEAVY) if len(waterline) > 2 else ""]
    ends = view.x(float(form.stations[0])), view.x(float(form.stations[-1]))
    marks.append(pen.line((ends[0] - 2, view.base), (ends[1] + 2, view.base), pen.THIN, pen.CHAIN, pen.FAINT))
    top, bottom = view.y(float(form.deck_half_breadths.max())), view.y(-float(form.deck_half_breadths.max()))
    numbered.sort(key=lambda one: int(one.shown))
    marks.append(place_numbers(numbered, top - 2.2, ends, "plan-number", [view.all(waterline)] if waterline else []))
    marks.append(pen.text((1, top + 2), f"Plan at {decimals(cut, 2)} m", pen.NORMAL, bold=True))
    marks.append(pen.text((1, top + 5.2), "half depth", pen.SMALL))
    marks.append(pen.text((width - 1, top + 2), "port", pen.SMALL, "end"))
    marks.append(pen.text((width - 1, bottom - 0.4), "starboard", pen.SMALL, "end"))
    return marks


def _waterline(results: Results, view: View, ends: tuple[float, float], row: float, width: float) -> str:
    arrival = results.arrival
    if arrival is None:
        return ""
    reach = [(view.x(x) + out, view.y(arrival.waterline_at(x))) for x, out in zip(ends, (-6.0, 6.0), strict=True)]
    mark = [(reach[0][0] + dx, reach[0][1] + dy) for dx, dy in ((0.2, -2.4), (2.8, -2.4), (1.5, -0.1))]
    found = arrival.hydrostatics
    trim = f"trim {show(abs(found.trim), 'm', digits=2)} by the {'stern' if found.trim >= 0 else 'head'}"
    mass = decimals(arrival.loading.mass / 1000, 0)
    middle = (
        f"On arrival {mass} t in water of {decimals(found.density / 1000, 3)} t/m³, {trim}; drafts above the keel line"
    )
    return "".join(
        [
            pen.line(reach[0], reach[1], 0.3, colour=pen.BLUE),
            pen.polygon(mark, pen.FINE, colour=pen.BLUE),
            pen.label((1, row), f"Draft AP {decimals(found.draft_aft, 2)} m", pen.SMALL, "start", True),
            pen.label((width / 2, row), pen.shortened(middle, pen.SMALL, width - 40), pen.SMALL),
            pen.label((width - 1, row), f"Draft FP {decimals(found.draft_forward, 2)} m", pen.SMALL, "end", True),
        ]
    )


def _caption(package: Package) -> str:
    read = {tank.contents.read for tank in package.tanks if tank.contents.read}
    when = f" of {min(read).isoformat()}" if len(read) == 1 else ""
    return (
        f"Tanks from the side and from above. From the side each is hatched up to the level sounded{when}; from above "
        "each is hatched all over by what it holds, and those wholly below the cut are dashed. Dry tanks are white. "
        "Hull outline from the table of offsets; keel, rudder and stern frame by their extents only."
    )


def _alternative(package: Package, drawn: list[_Drawn]) -> str:
    named = "; ".join(
        f"{one.number} {one.tank.name}, {one.tank.bounds.from_} to {one.tank.bounds.to}"
        for one in drawn
        if one.tank.bounds
    )
    return f"Profile and plan of the ship with {len(drawn)} tanks: {named}."
