"""Tanks as drawings show them: from the side filled to their levels, and from above hatched by what they hold."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.tanks import tank_contents, tank_shape
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.hatch import liquid_hatch
from tenderwright.documents.drawings.hull_marks import hull_ground, hull_lines
from tenderwright.documents.drawings.numbers import Numbered, place_numbers
from tenderwright.documents.drawings.pen import Point
from tenderwright.documents.drawings.plane import below
from tenderwright.documents.drawings.view import View
from tenderwright.model.package import Package
from tenderwright.model.tank import Tank

NO_TANKS = "it needs the bounds or the plan of a tank or more in vessel/tanks.yaml"


@dataclass(frozen=True)
class DrawnTank:
    """A tank that can be drawn: its number, outlines in metres, and the height of its top, m."""

    number: int
    tank: Tank
    side: list[Point]
    above: list[list[Point]]
    top: float


def drawn_tanks(package: Package, calculated: Calculated) -> list[DrawnTank]:
    """Give every tank that has a shape, numbered in the order of the package."""
    drawn, shapes = [], calculated.each(tank_shape)
    for number, tank in enumerate(package.tanks, 1):
        shape = shapes.get(tank.tank)
        if shape is not None:
            inboard = tank.bounds.inboard.si if tank.bounds and tank.side not in ("port", "starboard") else 0.0
            views = outline.from_side(shape.body), outline.from_above(shape.body, inboard)
            drawn.append(DrawnTank(number, tank, *views, shape.body.top))
    return drawn


def boxes(calculated: Calculated) -> str:
    """Say, to follow a caption, that tanks are drawn as boxes; nothing where the shape of each is known."""
    planned = any(shape.planned for shape in calculated.each(tank_shape).values())
    return " Tanks known by the capacity plan alone are drawn as boxes." if planned else ""


def tanks_from_side(
    package: Package, calculated: Calculated, drawn: Sequence[DrawnTank], view: View, row: float, slope: float
) -> str:
    """Draw the hull with her tanks filled to their levels on arrival at a slope of trim; their numbers in a row."""
    found, contents = calculated.found(hull_outline), calculated.each(tank_contents)
    assert found is not None
    form = found.form
    marks = [hull_ground(package, form, view)]
    for one in drawn:
        held = contents.get(one.tank.tank)
        if held is not None and held.liquid.volume > 0:
            wet = view.all(below(one.side, held.liquid.level, slope))
            marks.append(liquid_hatch(one.tank.contents.liquid).over([wet]))
            if len(wet) > 2:
                marks.append(pen.polygon(wet, pen.FINE))
        marks.append(pen.polygon(view.all(one.side), pen.FINE))
    marks.append(hull_lines(package, found, view))
    numbered = []
    for _, same in groupby(sorted(drawn, key=_place), key=_place):
        pair = list(same)
        numbered.append(Numbered(", ".join(str(one.number) for one in pair), view.all(pair[0].side)))
    marks.append(place_numbers(numbered, row, _ends(form, view), "profile-number"))
    return "".join(marks)


@dataclass(frozen=True)
class Cut:
    """The hull cut at a height for a plan of tanks: the height, m, and her outline there."""

    height: float
    waterline: list[Point]


def cut_of(package: Package, form: HullForm) -> Cut:
    """Cut the hull at half her depth."""
    height = (package.particulars.dimensions.depth.si if package.particulars else form.depth) / 2
    return Cut(height, outline.waterline_plan(form, height))


def tanks_from_above(
    form: HullForm, drawn: Sequence[DrawnTank], liquids: Mapping[str, str], view: View, cut: Cut
) -> str:
    """Draw the hull from above, cut at a height, with her tanks hatched by liquid and numbered; lower ones hidden."""
    marks = [pen.polygon(view.all(outline.deck_plan(form)), pen.FINE, fill=pen.PAPER)]
    upward = sorted(drawn, key=lambda one: (one.top, one.number))
    hidden: list[str] = []
    numbered: list[Numbered] = []
    for index, one in enumerate(upward):
        covers = [view.all(shape) for higher in upward[index + 1 :] for shape in higher.above]
        shapes = [view.all(shape) for shape in one.above]
        marks += [pen.polygon(shape, 0, fill=pen.PAPER) for shape in shapes]
        marks.append(liquid_hatch(liquids.get(one.tank.tank, "none")).over(shapes))
        drawing = [pen.polygon(shape, pen.FINE, "" if one.top > cut.height else pen.HIDDEN) for shape in shapes]
        (marks if one.top > cut.height else hidden).extend(drawing)
        numbered.append(Numbered(str(one.number), shapes[0], covers))
    waterline = cut.waterline
    marks += [*hidden, pen.polygon(view.all(waterline), pen.HEAVY) if len(waterline) > 2 else ""]
    ends = _ends(form, view)
    marks.append(pen.line((ends[0] - 2, view.base), (ends[1] + 2, view.base), pen.FINE, pen.CHAIN, pen.FAINT))
    row = view.y(float(form.deck_half_breadths.max())) - 2.2
    numbered.sort(key=lambda one: int(one.shown))
    marks.append(place_numbers(numbered, row, ends, "plan-number", [view.all(waterline)] if waterline else []))
    return "".join(marks)


def _place(one: DrawnTank) -> tuple[float, ...]:
    xs, zs = [x for x, _ in one.side], [z for _, z in one.side]
    return tuple(round(v, 2) for v in (min(xs), max(xs), min(zs), max(zs)))


def _ends(form: HullForm, view: View) -> tuple[float, float]:
    return view.x(float(form.stations[0])), view.x(float(form.stations[-1]))
