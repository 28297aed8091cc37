"""The cradle: the hull over a train of rail cars, the load on each, the line load under the keel, and every limit."""

from __future__ import annotations

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.cradle.cars import Cradle
from tenderwright.calculations.ship.condition import arrival
from tenderwright.calculations.ship.cradle import cradles
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.steps.outcome import Absent, NotAsked
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.verdict import Limit, Verdict
from tenderwright.documents.drawings import load_diagram, outline, pen, table
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.framed import MARGIN, Framed, framed
from tenderwright.documents.drawings.hull_marks import extent, hull_ground, hull_lines
from tenderwright.documents.drawings.table import Column, Line
from tenderwright.documents.drawings.train_marks import CAR, WHEEL, blocks_height, dimensions, train_marks
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.facility import Facility
from tenderwright.model.package import Package
from tenderwright.quantities.display import decimals, show, unit_of

_HEAD, _SIDE, _DIMENSIONS, _VERDICT = 4.5, 15.0, 8.5, 5.0
"""Space over the hull, beside it, for the dimensions and for the verdict, mm."""


def title_of(facility: Facility) -> str:
    """Name the drawing of a facility's cradle."""
    return f"Cradle at {facility.name}"


def cradle(package: Package, facility: Facility, calculated: Calculated) -> Figure | Absent:
    """Draw the cradle of a facility, or say why not."""
    if facility.cars is None:
        return NotAsked("it has no cars")
    each, hull_found = calculated.outcome(cradles), calculated.outcome(hull_outline)
    if isinstance(each, Absent):
        return each
    found = each.outcomes[facility.facility]
    if isinstance(found, Absent):
        return found
    if isinstance(hull_found, Absent):
        return hull_found
    form, fit, train = hull_found.form, found.verdict, found.train
    ends = extent(package, form)
    first, last = min(ends[0], train.start), max(ends[1], train.end)
    under = outline.keel_underside(package.particulars)
    fixed = _HEAD + CAR + 2 * WHEEL + 1 + FRAMES_HEIGHT + _DIMENSIONS + load_diagram.LEAST + 1

    def size(scale: int) -> tuple[float, float]:
        metre = 1000 / scale
        return (last - first) * metre + 2 * _SIDE, (form.depth - under) * metre + blocks_height(facility, scale) + fixed

    data = f"{hull_found.drawn_from}; limits of the facility"
    sheet = framed(package, f"cradle-{facility.facility}", title_of(facility), data)
    listed_at = min(sheet.over + 1, sheet.foot - _VERDICT - table.height(len(fit.limits)))
    sheet = sheet.at(largest_scale(Room(sheet.right - MARGIN, listed_at - MARGIN), size))
    left = (sheet.frame.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    view = View(sheet.scale, left, MARGIN + _HEAD + sheet.mm(form.depth))
    blocks, keel = blocks_height(facility, sheet.scale), view.y(under)
    rail = keel + blocks + CAR + 2 * WHEEL
    diagram = rail + 1 + FRAMES_HEIGHT + _DIMENSIONS
    limit = facility.cars.line_limit
    bounds = view.x(first), view.x(last)
    marks = [
        hull_ground(package, form, view),
        hull_lines(package, hull_found, view),
        _centre_of_gravity(package, calculated.found(arrival), train.lcg, view, listed_at - 3),
        train_marks(train, facility, view, keel, blocks),
        frame_scale(package.frames, view, rail + 1) if package.frames else "",
        dimensions(train, package.frames, view, rail + 1 + FRAMES_HEIGHT, sheet.right),
        load_diagram.load_diagram(train, limit.si if limit else None, view, bounds, (diagram, listed_at - 2)),
        pen.line((MARGIN, listed_at), (sheet.beside, listed_at)),
        _limits(fit, sheet, listed_at),
    ]
    alternative = _alternative(package, facility, found)
    caption = _caption(facility, found) + hull_found.note
    return sheet.figure(marks, caption, alternative)


def _centre_of_gravity(package: Package, afloat: FloatingPosition | None, lcg: float, view: View, base: float) -> str:
    """Mark the centre of gravity on arrival, and carry it down to the line load."""
    x = view.x(lcg)
    place = f" ({package.frames.label(lcg)})" if package.frames else ""
    marks = [
        pen.line((x, MARGIN + _HEAD - 0.6), (x, base), pen.FINE, pen.CHAIN),
        pen.label(
            (x, MARGIN + _HEAD / 2), f"centre of gravity {show(lcg, 'centre')}{place}", pen.SMALL, kind="gravity"
        ),
    ]
    if afloat is not None:
        y = view.y(afloat.loading.vcg)
        marks.append(pen.circle((x, y), 1.2, pen.MEDIUM, pen.PAPER))
        marks.append(pen.strokes([((x - 1.9, y), (x + 1.9, y)), ((x, y - 1.9), (x, y + 1.9))], pen.FINE))
    return "".join(marks)


def verdict(facility: Facility, fit: Verdict, cars: int) -> str:
    """Say whether she is calculated to fit, and if not, or if it cannot be said, why."""
    if fit.met:
        most = f"the one used most is “{fit.governs.name}”"
        return f"Calculated to fit, subject to certificate and dockmaster: every limit is met; {most}."
    if fit.met is None:
        return f"It cannot be said whether she fits: {fit.why_unknown}."
    reasons = [f"{one.name} {_shown(one.demand, one)} against {_shown(one.limit, one)}" for one in fit.passed]
    there = facility.cars.number if facility.cars else cars
    lacking = "; cars drawn dashed are not at the yard" if cars > there else ""
    return f"Calculated not to fit: {'; '.join(reasons)}{lacking}."


def _limits(fit: Verdict, sheet: Framed, top: float) -> str:
    """Set out every limit with what is asked, what is allowed, and whether it is met."""
    words = {True: "Calculated to fit", False: "Calculated not to fit", None: "It cannot be said whether she fits"}
    said = words[fit.met]
    figures = (Column("Asked", 25, "right"), Column("Allowed", 25, "right"), Column("", 28, "right"))
    lines = [
        Line((one.name, _shown(one.demand, one), _shown(one.limit, one), _use(one)), strong=one.met is False)
        for one in fit.limits
    ]
    name = Column("Limit", sheet.beside - 4 - sum(column.width for column in figures))
    return pen.text((4, top + 4.2), f"{said}: limits of cars and keel", pen.NORMAL, bold=True, kind="verdict") + (
        table.table((name, *figures), lines, 4, top + _VERDICT, "limits")
    )


def _use(one: Limit) -> str:
    if one.met is None:
        return "not known"
    share = f"{decimals(one.use * 100, 0)} %" if one.use is not None and one.use < 1e6 else ""
    return f"exceeded, {share}".rstrip(", ") if one.met is False else f"met, {share}"


def _shown(value: float | None, one: Limit) -> str:
    if value is None:
        return "not known"
    return show(value, one.purpose)


def _caption(facility: Facility, found: Cradle) -> str:
    return (
        f"{facility.name}: cradle under the straight keel, cars counted from aft, loads "
        f"({unit_of('weight')}) for her weight on arrival. The "
        "heavy line is the load per metre of a rigid hull on an unbroken line of blocks; the bars are the greatest on "
        "each car, raised for the gaps between cars. Height of cars not to scale. "
        f"{verdict(facility, found.verdict, len(found.train.cars))}"
    )


def _alternative(package: Package, facility: Facility, found: Cradle) -> str:
    train = found.train
    loads = ", ".join(f"{show(car.load, 'weight')}" for car in train.cars)
    held = f"Loads from aft: {loads}. " if train.load else ""
    said = verdict(facility, found.verdict, len(train.cars))
    return f"Profile of the ship on {len(train.cars)} cars at {facility.name}. {held}{said}"
