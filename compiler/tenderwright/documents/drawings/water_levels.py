"""The water-level sequence: every level from the tide to dry, on the ship, and for the owner at each facility."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from tenderwright.calculations.hydrostatics.hull_form import HullForm
from tenderwright.calculations.ship.facilities import facility_fits
from tenderwright.calculations.ship.landing import Stage, landing, landing_stages
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.wanted import least_gm
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.calculations.verdict import Verdict
from tenderwright.documents.drawings import landing_curves as curves
from tenderwright.documents.drawings import outline, pen
from tenderwright.documents.drawings.block_marks import NOMINAL, TIMBER
from tenderwright.documents.drawings.framed import BLOCK, MARGIN, framed
from tenderwright.documents.drawings.plane import spread
from tenderwright.documents.drawings.sheet import PROPOSAL
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.facility import Facility
from tenderwright.model.package import Package
from tenderwright.quantities.customs import system
from tenderwright.quantities.display import in_column, show

TITLE = "Levels of the water as she lands"
AT_FACILITIES = "Levels of the water at each facility"
_NAMES, _COLUMN, _HEAD, _FOOT, _GAP = 48.5, 20.5, 10.5, 8.5, 1.5
"""Widths of the names of stages and of a facility (more where figures are told in two systems), space over and under,
and between, mm."""
_LINE, _APART = 3.2, 1.2
"""From line to line of what is said of a stage, and between stages, mm."""
_WATER = "water over the blocks"


def water_levels(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the levels of the water as she lands, or say why not."""
    return _drawn(package, calculated, "water-levels", TITLE, [])


def water_levels_there(
    package: Package, calculated: Calculated, aside: frozenset[str] = frozenset()
) -> Figure | Absent:
    """Draw the levels of the water as she lands beside those of the facilities, or say why not."""
    shown = _facilities(package, calculated.each(facility_fits), aside)
    return _drawn(package, calculated, "water-levels-at-facilities", AT_FACILITIES, shown)


def _drawn(
    package: Package, calculated: Calculated, name: str, title: str, shown: Sequence[Facility]
) -> Figure | Absent:
    found, landed, stages = (
        calculated.outcome(hull_outline),
        calculated.outcome(landing),
        calculated.outcome(landing_stages),
    )
    if isinstance(landed, Absent):
        return landed
    if isinstance(stages, Absent):
        return stages
    if isinstance(found, Absent):
        return found
    form, plan = found.form, package.docking_plan
    assert plan is not None
    least = least_gm(plan, package.lightship)
    fits = calculated.each(facility_fits)
    built = plan.block_height.si if plan.block_height else NOMINAL
    blocks = [max(built, one.limits.block_height.si if one.limits.block_height else 0.0) for one in shown]
    depth = max([built, *blocks])
    under = outline.keel_underside(package.particulars)
    there = [_water(fits.get(one.facility), one) for one in shown]
    x = form.length / 2
    highest = max([form.deck_at(x) - under, *(one.water for one in stages), *(w for w in there if w)])
    half = float(np.max(form.half_breadth_at(x, np.linspace(form.keel_at(x), form.deck_at(x), 40))))

    column = _COLUMN
    if system() == "both":
        column = max(column, pen.text_width(in_column(highest + depth, "water level") + " needed", pen.SMALL, True) + 9)
    gauges, over = max(1, len(shown)), _HEAD if shown else _HEAD - 3.2

    def size(scale: int) -> tuple[float, float]:
        wide = _NAMES + half * 1000 / scale + _starboard(scale) + gauges * column + _GAP
        said = sum(_LINE * len(_words(one)) + _APART for one in stages) + 2
        return wide, max((highest + depth) * 1000 / scale + over + _FOOT, said)

    sheet = framed(package, name, title, f"{found.drawn_from}; landing of the docking plan", PROPOSAL)
    room = Room(sheet.beside - MARGIN, sheet.foot - MARGIN)
    sheet = sheet.at(largest_scale(room, size))
    wide, high = size(sheet.scale)
    spare = max(0.0, room.width - wide) / 2
    head = MARGIN + over + max(0.0, room.height - high) / 2
    view = View(sheet.scale, MARGIN + _NAMES + spare + sheet.mm(half), head + sheet.mm(highest))
    start = view.left + _starboard(sheet.scale) + _GAP + spare / 2
    lines = [
        _facility((fits.get(one.facility), stages), one, block, water, view, (start + index * column, column))
        for index, (one, block, water) in enumerate(zip(shown, blocks, there, strict=True))
    ]
    levels = [(one.water, "", False) for one in stages]
    named = ("On the blocks of the plan", "over the dock floor")
    marks = [
        _ship(package, form, x, built, view),
        _stages(stages, view, start + gauges * column),
        *(lines or [_gauge(named, levels, built, view, (start, column))]),
        curves.landing_curves(
            landed,
            least.si if least else None,
            sheet.frame.width - BLOCK.width + 4,
            (BLOCK.width - 4 - MARGIN, MARGIN, sheet.over - 4),
        ),
    ]
    return sheet.figure(marks, _caption(landed.density, bool(shown)) + found.note, _alternative(stages, shown, there))


def _facilities(package: Package, fits: Mapping[str, Verdict], aside: frozenset[str]) -> list[Facility]:
    """Choose the facilities that fit her, or may and are meant for her; the first of all where there is none."""
    fitting = [
        one
        for one in package.facilities
        if (fit := fits.get(one.facility)) and (fit.met or (fit.met is None and one.facility not in aside))
    ]
    return fitting or list(package.facilities[:1])


def _limit(fit: Verdict | None) -> tuple[float | None, float | None]:
    """Give the water over the blocks needed and there, m."""
    found = next((one for one in fit.limits if one.name == _WATER), None) if fit else None
    return (found.demand, found.limit) if found else (None, None)


def _water(fit: Verdict | None, facility: Facility) -> float | None:
    there = _limit(fit)[1]
    return there if there is not None else facility.limits.blocks.si if facility.limits.blocks else None


def _starboard(scale: int) -> float:
    """Give the room to starboard of the centreline, mm: half a keel block and a little."""
    return max(8.0, 500.0 / scale + 1.0)


def _ship(package: Package, form: HullForm, x: float, built: float, view: View) -> str:
    """Draw her port half amidships as she stands dry on a block, over the dock floor."""
    under = outline.keel_underside(package.particulars)
    heights = np.linspace(form.keel_at(x), form.deck_at(x), 60)
    port = list(zip((-form.half_breadth_at(x, heights)).tolist(), (heights - under).tolist(), strict=True))
    shell = [(0.0, port[0][1]), *port, (0.0, port[-1][1])]
    block = view.all([(-0.5, 0.0), (0.5, 0.0), (0.5, -built), (-0.5, -built)])
    marks = [TIMBER.over([block]), pen.polygon(block, pen.MEDIUM), pen.curve(view.all(shell), pen.HEAVY)]
    keel = package.particulars.keel if package.particulars else None
    if keel is not None and keel.kind == "bar" and keel.depth is not None:
        wide = keel.width.si / 2
        bar = [(-wide, keel.depth.si), (wide, keel.depth.si), (wide, 0.0), (-wide, 0.0)]
        marks.append(pen.polygon(view.all(bar), pen.FINE, fill="#bbbbbb"))
    floor, half = view.y(-built), max(-y for y, _ in port)
    marks.append(pen.line((view.x(-half), floor), (view.left + _starboard(view.scale), floor), pen.HEAVY))
    marks.append(pen.line((view.left, view.y(max(z for _, z in port)) - 3), (view.left, floor), pen.FINE, pen.CHAIN))
    marks.append(pen.text((view.left, floor + 4.2), "port half, looking forward", pen.SMALL, "end"))
    return "".join(marks)


def _stages(stages: Sequence[Stage], view: View, end: float) -> str:
    """Draw the level of every stage across the ship, with its name and figures at the left."""
    said = [_words(one) for one in stages]
    levels = [view.y(one.water) for one in stages]
    heights = [_LINE * len(words) + _APART for words in said]
    middles = spread(levels, heights, MARGIN, max(view.y(0) + 6, MARGIN + sum(heights)), 0.0)
    marks, foot = [], MARGIN + _NAMES - 4.5
    for one, level, words, high, middle in zip(stages, levels, said, heights, middles, strict=True):
        top = middle - high / 2
        marks.append(
            pen.line((foot + 4, level), (end, level), pen.MEDIUM if one.water > 0 else pen.FINE, pen.LIMIT, pen.BLUE)
        )
        leader = [((foot - 1.5, top + 2.0), (foot, top + 2.0)), ((foot, top + 2.0), (foot + 4, level))]
        marks.append(pen.strokes(leader, pen.FINE))
        figures = next(row for row, line in enumerate(words) if line.startswith("water "))
        for row, line in enumerate(words):
            name = row < figures
            kind = "stage" if name else "stage-figures"
            marks.append(pen.text((4, top + 2.9 + row * _LINE), line, pen.SMALL, bold=name, kind=kind))
    return "".join(marks)


def _words(one: Stage) -> list[str]:
    """Say a stage in rows: its name, then water and upthrust, then drafts and metacentric height."""
    gm = f"GM {show(one.gm, 'metacentric height')}" if one.gm is not None else ""
    water, upthrust = f"water {show(one.water, 'water level')}", f"upthrust {show(one.upthrust, 'weight')}"
    drafts = f"drafts {in_column(one.draft_aft, 'draft')} / {show(one.draft_forward, 'draft')}"
    name = pen.wrapped(one.name, pen.SMALL, _NAMES - 8, 2, True)
    if system() == "both":
        return [*name, water, upthrust, drafts, *([gm] if gm else [])]
    return [*name, f"{water}, {upthrust}", f"{drafts}, {gm}" if gm else drafts]


def _facility(
    found: tuple[Verdict | None, Sequence[Stage]],
    facility: Facility,
    block: float,
    water: float | None,
    view: View,
    room: tuple[float, float],
) -> str:
    """Draw a facility as a gauge from its floor: blocks, sill, the water there and needed, and every stage."""
    fit, stages = found
    said = {True: "calculated to fit", False: "does not fit", None: "not known"}[fit.met if fit else None]
    needed = _limit(fit)[0]
    levels: list[tuple[float, str, bool]] = [(one.water, "", False) for one in stages]
    levels += [(needed, " needed", True)] if needed is not None else []
    levels += [(water, " there", True)] if water is not None else []
    if facility.limits.sill and facility.limits.blocks and facility.limits.block_height:
        over = facility.limits.blocks.si + facility.limits.block_height.si - facility.limits.sill.si
        levels.append((over - block, " sill", True))
    return _gauge((facility.name, said), levels, block, view, room)


def _gauge(
    named: tuple[str, str],
    levels: Sequence[tuple[float, str, bool]],
    block: float,
    view: View,
    room: tuple[float, float],
) -> str:
    """Draw levels as a gauge from the dock floor beside a block, with a name over it and words under it."""
    (name, under), (left, wide) = named, room
    floor, gauge = view.y(-block), left + 5.5
    timber = [(left, view.y(0)), (left + 4.0, view.y(0)), (left + 4.0, floor), (left, floor)]
    marks = [TIMBER.over([timber]), pen.polygon(timber, pen.FINE)]
    marks.append(pen.line((left - 1, floor), (left + wide - 2, floor), pen.HEAVY))
    for index, words in enumerate(pen.wrapped(name, pen.SMALL, wide - 1.5, 3, True)):
        marks.append(pen.text((left, MARGIN + 2.8 + index * 3.0), words, pen.SMALL, bold=True, kind="facility"))
    for index, words in enumerate(pen.wrapped(under, pen.SMALL, wide - 0.5, 2)):
        marks.append(pen.text((left, floor + 4.2 + index * 3.0), words, pen.SMALL, kind="fits"))
    marks.append(pen.line((gauge, view.y(max(level for level, _, _ in levels))), (gauge, floor), pen.MEDIUM))
    rows = spread([view.y(level) for level, _, _ in levels], [2.7] * len(levels), MARGIN + _HEAD - 1, floor + 1, 0.1)
    for (level, words, bold), row in zip(levels, rows, strict=True):
        y = view.y(level)
        marks.append(
            pen.strokes([((gauge - 0.9, y), (gauge + 0.9, y)), ((gauge + 0.9, y), (gauge + 2.2, row))], pen.FINE)
        )
        shown = in_column(level + block, "water level") + words
        marks.append(pen.label((gauge + 2.6, row), shown, pen.SMALL, "start", bold, kind="gauge"))
    return "".join(marks)


def _caption(density: float, there: bool) -> str:
    gauges = (
        " At each facility figures are metres over the dock floor, on blocks as high as the plan or the facility asks, "
        "the higher: the water there at its tide, the water needed with the clearance under the keel, and every stage."
    )
    return (
        "Levels of the water over the block touched first, from the tide to dry; drafts are above the underside of the "
        f"keel, aft and forward, GM is the lesser of both forms.{gauges if there else ''} At the right upthrust and GM "
        f"about settling, to a larger scale, all in water of {show(density, 'density')}. Dashed: the same with the "
        "hydrostatics held constant."
    )


def _alternative(stages: Sequence[Stage], shown: Sequence[Facility], there: Sequence[float | None]) -> str:
    said = [
        f"{one.name} with {show(one.water, 'water level')} over the blocks, upthrust {show(one.upthrust, 'weight')}"
        + (f", GM {show(one.gm, 'metacentric height')}" if one.gm is not None else "")
        for one in stages
    ]
    water = [
        f"{one.name}: {show(level, 'water level')} over the blocks"
        for one, level in zip(shown, there, strict=True)
        if level
    ]
    return "; ".join(said) + "." + (" Water there: " + "; ".join(water) + "." if water else "")
