"""The tank plan twice: what every tank holds when she is docked, and what it holds when she is floated."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import degrees

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.ship.docking_condition import TankState, docking, docking_tank_states
from tenderwright.calculations.ship.how_sure import how_sure
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.undocking import undocked, undocking, undocking_tank_states
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import outline, pen, table
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.framed import MARGIN, framed
from tenderwright.documents.drawings.hatch import liquid_hatch
from tenderwright.documents.drawings.hull_marks import extent
from tenderwright.documents.drawings.sheet import PROPOSAL
from tenderwright.documents.drawings.table import Column, Line
from tenderwright.documents.drawings.tank_list import liquid_key
from tenderwright.documents.drawings.tank_marks import NO_TANKS, boxes, cut_of, drawn_tanks, tanks_from_above
from tenderwright.documents.drawings.view import Room, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.model.tank import Tank
from tenderwright.quantities.display import decimals, in_column, no_finer, show, unit_of

TITLE = "Tanks on docking and at undocking"
_HEAD, _SIDE, _GAP, _KEY = 4.4, 33.5, 2.5, 5.0
"""Numbers over each plan, space aft of it for what she floats at, between lists, and for a key, mm."""
_PLAN = 26.0
"""Least height of each plan, mm: what is said beside it of how she floats."""
_WORDS = ("docked", "floated")
"""Heads of the two readings in the list."""


@dataclass(frozen=True)
class _State:
    """One of the two conditions: its name, what the tanks hold, and how she floats."""

    name: str
    tanks: Mapping[str, TankState]
    position: FloatingPosition | None


def tank_states(package: Package, calculated: Calculated) -> Figure | Absent:
    """Draw the tanks on docking over those at undocking, or say why not."""
    found = calculated.outcome(hull_outline)
    if isinstance(found, Absent):
        return found
    form = found.form
    docked, floated = calculated.outcome(docking_tank_states), calculated.outcome(undocking_tank_states)
    if isinstance(docked, Absent):
        return docked
    if isinstance(floated, Absent):
        return floated
    drawn = drawn_tanks(package, calculated)
    if not drawn or not docked or not floated:
        return Lacking(NO_TANKS)
    states = (
        _State("On docking", docked, calculated.found(docking)),
        _State("At undocking", floated, calculated.found(undocked)),
    )
    known = calculated.found(how_sure)
    u = known.u("displacement") if known is not None else None
    first, last = extent(package, form)
    half = float(form.deck_half_breadths.max())
    cut = cut_of(package, form)
    fixed = 2 * _HEAD + 2 * FRAMES_HEIGHT
    sheet = framed(package, "tank-states", TITLE, f"{found.drawn_from}; capacities of the tanks", PROPOSAL)
    listing = _listing(package, calculated, states, sheet.beside - 4)
    foot = min(sheet.over, sheet.foot - table.height(listing.rows) - _KEY - 4.5)

    def size(scale: int) -> tuple[float, float]:
        metre = 1000 / scale
        return (last - first) * metre + _SIDE + 3, 2 * max(2 * half * metre, _PLAN) + fixed

    whole = Room(sheet.right - MARGIN, foot - MARGIN)
    sheet = sheet.at(largest_scale(whole, size))
    wide, high = size(sheet.scale)
    left = MARGIN + _SIDE + max(0.0, whole.width - wide) / 2 - sheet.mm(first)
    spare = max(0.0, whole.height - high) / 2
    marks, top = [], MARGIN + spare / 2
    for state in states:
        room = max(sheet.mm(half), _PLAN / 2)
        view = View(sheet.scale, left, top + _HEAD + room)
        liquids = {name: one.liquid for name, one in state.tanks.items() if one.volume > 0}
        marks.append(tanks_from_above(form, drawn, liquids, view, cut))
        marks.append(_floating(state, outline.keel_underside(package.particulars), top + _HEAD + 2, u))
        marks.append(_sides(view, half, sheet.right))
        top = view.base + room
        if package.frames:
            marks.append(frame_scale(package.frames, view, top + 0.5))
        top += FRAMES_HEIGHT + spare
    marks.append(pen.line((MARGIN, foot + 1), (sheet.beside, foot + 1)))
    marks.append(liquid_key(_liquids(states), foot + 1 + _KEY / 2))
    marks.append(_list(listing, foot + 1 + _KEY, sheet.beside - 4))
    alternative = _alternative(package, states)
    caption = _CAPTION + boxes(calculated) + found.note
    return sheet.figure(marks, caption, alternative)


def _floating(state: _State, under: float, top: float, u: float | None) -> str:
    """Write beside a plan how she floats in that condition, drafts from the underside of the keel."""
    lines = []
    if state.position is not None:
        found, heel = state.position.hydrostatics, state.position.heel
        mass = state.position.loading.mass
        lines = [
            no_finer(mass, u, "weight") if u else show(mass, "weight"),
            f"draft aft {show(found.draft_aft - under, 'draft')}",
            f"draft forward {show(found.draft_forward - under, 'draft')}",
            f"trim {show(abs(found.trim), 'trim')} by the {'stern' if found.trim >= 0 else 'head'}",
            f"GM {show(state.position.gm_fluid, 'metacentric height')} fluid",
        ]
        if heel is not None and abs(degrees(heel)) >= 0.05:
            lines.append(f"list {decimals(abs(degrees(heel)), 1)}° to {'starboard' if heel > 0 else 'port'}")
    marks = [pen.text((4, top), state.name, pen.NORMAL, bold=True, kind="state")]
    marks += [
        pen.text((4, top + 3.8 + 3.3 * row), words, pen.SMALL, kind="floating") for row, words in enumerate(lines)
    ]
    return "".join(marks)


def _sides(view: View, half: float, width: float) -> str:
    """Name the sides at the right of a plan."""
    return pen.text((width - 1, view.y(half) + 2), "port", pen.SMALL, "end") + pen.text(
        (width - 1, view.y(-half) - 0.4), "starboard", pen.SMALL, "end"
    )


def _liquids(states: tuple[_State, _State]) -> Iterable[str]:
    return (_liquid(one) for state in states for one in state.tanks.values())


def _liquid(state: TankState | None) -> str:
    return state.liquid if state is not None and state.volume > 0 else "none"


@dataclass(frozen=True)
class _Listing:
    """The list of tanks: its rows, columns as wide as what stands in them, and how many parts stand side by side."""

    lines: list[Line]
    columns: list[Column]
    abreast: int

    @property
    def rows(self) -> int:
        return -(-len(self.lines) // self.abreast)


def _listing(package: Package, calculated: Calculated, states: tuple[_State, _State], width: float) -> _Listing:
    judged = calculated.found(undocking)
    sounded = judged.sound_before_flooding if judged else ()
    lines = [_line(n, tank, states, tank.tank in sounded) for n, tank in enumerate(package.tanks, 1)]
    figures = (unit_of("sounding"), unit_of("capacity"))
    heads = ("", "", "Tank", *figures, *figures, "")
    columns = []
    for at, title in enumerate(heads):
        cells = [pen.text_width(one.cells[at], pen.SMALL, one.strong) for one in lines]
        wide = max([*cells, pen.text_width(title, pen.SMALL)]) + 0.05
        left = at < 3
        columns.append(Column(title, 5.5 if at == 1 else wide + 1.4, "left" if left else "right"))
    total = sum(column.width for column in columns)
    return _Listing(lines, columns, 2 if 2 * total + _GAP <= width else 1)


def _list(listing: _Listing, top: float, width: float) -> str:
    """List every tank with its liquid, sounding and volume in both conditions; in bold where they differ."""
    columns, marks = listing.columns, []
    each = (width + _GAP) / listing.abreast
    for part in range(listing.abreast):
        lines = listing.lines[part * listing.rows : (part + 1) * listing.rows]
        left = 4 + part * each
        marks.append(table.table(columns, lines, left, top + 3.5, "tank-list"))
        for word, last in zip(_WORDS, (5, 7), strict=True):
            at = left + sum(one.width for one in columns[:last]) - 1.4
            marks.append(pen.text((at, top + 3.0), word, pen.SMALL, "end", colour=pen.FAINT, kind="state-head"))
    return "".join(marks)


def _line(number: int, tank: Tank, states: tuple[_State, _State], sounded: bool) -> Line:
    readings = [_reading(state.tanks.get(tank.tank)) for state in states]
    differ = readings[0] != readings[1]
    held = [one for one in (_liquid(state.tanks.get(tank.tank)) for state in states) if one != "none"]
    cells = (str(number), "", tank.name, *readings[0], *readings[1], "S" if sounded else "")
    return Line(cells, liquid_hatch(held[0] if held else "none"), strong=differ)


def _reading(state: TankState | None) -> tuple[str, str]:
    if state is None:
        return "–", "–"
    if state.volume <= 0:
        return "dry", "–"
    return in_column(state.sounding, "sounding") if state.sounding is not None else "–", in_column(
        state.volume, "capacity"
    )


_CAPTION = (
    "Tanks from above, cut at half depth, hatched by what they hold on docking and when she is floated; tanks wholly "
    "below the cut are dashed, dry tanks are white. Tanks whose contents differ are listed in bold; S marks those "
    "to be sounded before the dock is flooded. Soundings are at the trim of that condition, drafts above the underside "
    "of the keel. No tank is filled, emptied or moved between the two without the dockmaster's word."
)


def _alternative(package: Package, states: tuple[_State, _State]) -> str:
    said = []
    for number, tank in enumerate(package.tanks, 1):
        first, second = (_said(state.tanks.get(tank.tank)) for state in states)
        if first != second:
            said.append(f"{number} {tank.name}: {first} on docking, {second} at undocking")
    return "Plan of the tanks on docking and at undocking. They differ: " + ("; ".join(said) or "nowhere") + "."


def _said(state: TankState | None) -> str:
    if state is None or state.volume <= 0:
        return _reading(state)[0]
    volume = show(state.volume, "capacity")
    return f"{volume}, sounding {show(state.sounding, 'sounding')}" if state.sounding is not None else volume
