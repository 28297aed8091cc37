"""Inside the tanks: each gauged space hatched by the worst of its members, and the members listed with their loss."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from tenderwright.calculations.ship.members import MemberFound, members_found
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.tanks import tank_shape
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import outline, pen, table
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.framed import MARGIN, framed
from tenderwright.documents.drawings.hatch import Hatch
from tenderwright.documents.drawings.hull_marks import extent
from tenderwright.documents.drawings.numbers import Numbered, place_numbers
from tenderwright.documents.drawings.shell_expansion import BOUNDS, CLASSES, REPAIR
from tenderwright.documents.drawings.table import Column, Line
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.quantities.display import decimals

TITLE = "Inside the tanks: wastage of members"
DATA = "thickness readings inside the tanks"
_HEAD = 4.0


def tank_interiors(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the spaces gauged inside on the profile, or say why not."""
    found, members, condition = calculated.outcome(hull_outline), calculated.outcome(members_found), package.condition
    if isinstance(members, Absent):
        return members
    if isinstance(found, Absent):
        return found
    if condition is None or condition.members is None:
        return Lacking("it needs `members` in vessel/condition.yaml")
    if not members:
        return Lacking("it needs readings of a member inside a tank that can be judged")
    form = found.form
    limit = condition.members.allowable.si
    worst = {one.tank: one for one in reversed(members)}
    order = [tank.tank for tank in package.tanks if tank.tank in worst]
    lines = _lines(package, order, members, limit)
    first, last = extent(package, form)
    under = outline.keel_underside(package.particulars)
    sheet = framed(package, "tank-interiors", TITLE, DATA, REPAIR)
    listed = table.height(len(lines))
    foot = sheet.foot - listed - 2

    def size(scale: int) -> tuple[float, float]:
        return (last - first) * 1000 / scale + 3, (form.depth - under) * 1000 / scale + _HEAD + FRAMES_HEIGHT + 1

    room = Room(sheet.right - MARGIN, min(foot, sheet.over) - MARGIN)
    sheet = sheet.at(largest_scale(room, size))
    left = (sheet.frame.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    spare = (room.height - size(sheet.scale)[1]) / 2
    view = View(sheet.scale, left, MARGIN + _HEAD + spare + sheet.mm(form.depth))
    scale_at = view.y(under) + 1
    marks = [
        pen.polygon(view.all(outline.profile(form)), pen.MEDIUM, fill=pen.PAPER),
        *_spaces(calculated, view, worst, order, (limit, view.y(form.depth) - 2.0)),
        frame_scale(package.frames, view, scale_at) if package.frames else "",
        table.table(_columns(sheet.beside), lines, 4, foot, "member"),
    ]
    words = _words(package, members)
    caption = (
        "Spaces gauged inside, from the side, hatched by the worst reading of their members as a share of what they "
        "may lose, and numbered as listed; where a port and a starboard space lie one behind the other the worse is "
        f"seen. Limit {100 * limit:.0f} %: {condition.members.source}.{found.note}"
    )
    return sheet.figure(marks, caption, words)


def _words(package: Package, members: Sequence[MemberFound]) -> str:
    names = {tank.tank: tank.name for tank in package.tanks}
    told = "; ".join(f"{names[m.tank]}, {m.member}: {100 * m.found.greatest_loss:.0f} % at the worst" for m in members)
    return f"Profile with the tanks whose members were gauged. {told}."


def hatch_of(share: float) -> Hatch | None:
    """Choose the hatching for a loss as a share of the limit; None where it is less than half."""
    for bound, (_, hatch) in zip(reversed(BOUNDS), reversed(CLASSES), strict=True):
        if share > bound + 1e-9:
            return hatch
    return None


def _spaces(
    calculated: Calculated, view: View, worst: Mapping[str, MemberFound], order: Sequence[str], at: tuple[float, float]
) -> list[str]:
    """Draw the spaces, the worst over the others, each place numbered with all that lie there."""
    shapes, (limit, row) = calculated.each(tank_shape), at
    drawn = sorted((name for name in order if name in shapes), key=lambda name: worst[name].found.greatest_loss)
    marks: list[str] = []
    places: dict[tuple[tuple[float, float], ...], list[int]] = {}
    for name in drawn:
        shape = view.all(outline.from_side(shapes[name].body))
        key = tuple((round(x, 1), round(y, 1)) for x, y in shape)
        places.setdefault(key, []).append(order.index(name) + 1)
        hatch = hatch_of(worst[name].found.greatest_loss / limit)
        marks.append(pen.polygon(shape, 0, fill=pen.PAPER) + (hatch.over([shape]) if hatch else ""))
        marks.append(pen.polygon(shape, pen.FINE))
    numbered = [Numbered(", ".join(map(str, sorted(numbers))), list(key)) for key, numbers in places.items()]
    ends = (view.x(0.0) - 4, max(x for key in places for x, _ in key) + 8) if places else (0.0, 0.0)
    return [*marks, place_numbers(numbered, row, ends, "number")]


def _columns(width: float) -> tuple[Column, ...]:
    spare = width - 4 - 6 - 9 - 14 - 24 - 15 - 21
    return (
        Column("", 6.0),
        Column("", 9.0),
        Column("Space", spare * 0.42),
        Column("Member", spare * 0.58),
        Column("Readings", 14.0, "right"),
        Column("Least of as built", 24.0, "right"),
        Column("Greatest", 15.0, "right"),
        Column("Rate, mm a year", 21.0, "right"),
    )


def _lines(package: Package, order: Sequence[str], members: Sequence[MemberFound], limit: float) -> list[Line]:
    names = {tank.tank: tank.name for tank in package.tanks}
    lines = []
    for number, tank in enumerate(order, start=1):
        for one in (member for member in members if member.tank == tank):
            cells = (
                str(number),
                "",
                names[tank],
                one.member,
                str(one.found.readings),
                f"{decimals(1e3 * one.found.least, 1)} of {decimals(1e3 * one.found.as_built, 1)}",
                f"{decimals(100 * one.found.greatest_loss, 0)} %",
                "–" if math.isnan(one.found.rate) else decimals(1e3 * one.found.rate, 3),
            )
            share = one.found.greatest_loss / limit
            lines.append(Line(cells, hatch_of(share), strong=share > 1.0))
    return lines
