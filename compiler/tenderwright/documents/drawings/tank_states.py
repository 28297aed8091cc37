"""The tank plan twice: what every tank holds when she is docked, and what it holds when she is floated."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import degrees

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.ship.docking_condition import TankState, docking, docking_tank_states
from tenderwright.calculations.ship.outline import hull_outline
from tenderwright.calculations.ship.undocking import undocked, undocking, undocking_tank_states
from tenderwright.calculations.steps.outcome import Absent, Lacking
from tenderwright.calculations.steps.runner import Calculated
from tenderwright.documents.drawings import outline, pen, table
from tenderwright.documents.drawings.frame_scale import HEIGHT as FRAMES_HEIGHT
from tenderwright.documents.drawings.frame_scale import frame_scale
from tenderwright.documents.drawings.hatch import liquid_hatch
from tenderwright.documents.drawings.hull_marks import extent
from tenderwright.documents.drawings.sheet import PROPOSAL, TITLE_HEIGHT, sheet_of
from tenderwright.documents.drawings.table import Column, Line
from tenderwright.documents.drawings.tank_marks import NO_TANKS, boxes, cut_of, drawn_tanks, tanks_from_above
from tenderwright.documents.drawings.view import LANDSCAPE, View, largest_scale
from tenderwright.documents.edition import Figure
from tenderwright.model.package import Package
from tenderwright.model.tank import Tank
from tenderwright.quantities.display import decimals, head, in_column, show, unit_of

TITLE = "Tanks on docking and at undocking"
_HEAD, _SIDE, _ABREAST, _GAP = 4.4, 33.5, 2, 4.0
"""Numbers over each plan, space beside it for what she floats at, lists side by side and the space between, mm."""
_PLAN = 26.0
"""Least height of each plan, mm: what is said beside it of how she floats."""
_WORDS, _READING = ("docked", "floated"), 32.0
"""Heads of the two readings in the list, and the width of each, mm."""


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
    first, last = extent(package, form)
    half = float(form.deck_half_breadths.max())
    cut = cut_of(package, form)
    rows = -(-len(package.tanks) // _ABREAST)
    fixed = 2 * _HEAD + FRAMES_HEIGHT + table.height(rows) + 2.5 + TITLE_HEIGHT

    def size(scale: int) -> tuple[float, float]:
        metre = 1000 / scale
        return (last - first) * metre + 2 * _SIDE, 2 * max(2 * half * metre, _PLAN) + fixed

    scale = largest_scale(LANDSCAPE, size)
    wide, high = size(scale)
    sheet = sheet_of(package, "tank-states", TITLE, scale, max(wide, LANDSCAPE.width), high, PROPOSAL)
    left = (sheet.width - sheet.mm(last - first)) / 2 - sheet.mm(first)
    marks, top = [], 0.0
    for index, state in enumerate(states):
        room = max(sheet.mm(half), _PLAN / 2)
        view = View(scale, left, top + _HEAD + room)
        liquids = {name: one.liquid for name, one in state.tanks.items() if one.volume > 0}
        marks.append(tanks_from_above(form, drawn, liquids, view, cut))
        marks.append(_floating(state, outline.keel_underside(package.particulars), top + _HEAD + 2))
        marks.append(_sides(view, half, sheet.width) if index else _key(states, top + _HEAD + 2, sheet.width - 28))
        top = view.base + room
        if index == 0 and package.frames:
            marks.append(frame_scale(package.frames, view, top + 0.5))
            top += FRAMES_HEIGHT
    marks.append(_list(package, calculated, states, top + 2, sheet.width))
    alternative = _alternative(package, states)
    caption = _CAPTION + boxes(calculated) + found.note
    return Figure(sheet.name, sheet.svg(marks, alternative), caption, alternative, title=sheet.title)


def _floating(state: _State, under: float, top: float) -> str:
    """Write beside a plan how she floats in that condition, drafts from the underside of the keel."""
    lines = []
    if state.position is not None:
        found, heel = state.position.hydrostatics, state.position.heel
        lines = [
            f"{show(state.position.loading.mass, 'weight')}",
            f"draft aft {show(found.draft_aft - under, 'draft')}",
            f"draft forward {show(found.draft_forward - under, 'draft')}",
            f"trim {show(abs(found.trim), 'trim')} by the {'stern' if found.trim >= 0 else 'head'}",
            f"GM {show(state.position.gm_fluid, 'metacentric height')} fluid",
        ]
        if heel is not None and abs(degrees(heel)) >= 0.05:
            lines.append(f"list {decimals(abs(degrees(heel)), 1)}° to {'starboard' if heel > 0 else 'port'}")
    marks = [pen.text((1, top), state.name, pen.NORMAL, bold=True, kind="state")]
    marks += [
        pen.text((1, top + 3.8 + 3.3 * row), words, pen.SMALL, kind="floating") for row, words in enumerate(lines)
    ]
    return "".join(marks)


def _sides(view: View, half: float, width: float) -> str:
    """Name the sides at the right of a plan."""
    return pen.text((width - 1, view.y(half) + 2), "port", pen.SMALL, "end") + pen.text(
        (width - 1, view.y(-half) - 0.4), "starboard", pen.SMALL, "end"
    )


def _key(states: tuple[_State, _State], top: float, left: float) -> str:
    """Explain the hatchings, one under the other."""
    marks = []
    for row, liquid in enumerate(_liquids(states)):
        y = top + 3.6 * row
        marks.append(liquid_hatch(liquid).swatch(left, y))
        marks.append(pen.text((left + 8.5, y + 0.9), "dry" if liquid == "none" else liquid, pen.SMALL, kind="key"))
    return "".join(marks)


def _liquids(states: tuple[_State, _State]) -> list[str]:
    held = [_liquid(one) for state in states for one in state.tanks.values()]
    return sorted(dict.fromkeys(held), key=lambda one: one == "none")


def _liquid(state: TankState | None) -> str:
    return state.liquid if state is not None and state.volume > 0 else "none"


def _list(package: Package, calculated: Calculated, states: tuple[_State, _State], top: float, width: float) -> str:
    """List every tank with its liquid, sounding and volume in both conditions; in bold where they differ."""
    each = (width - 2 - _GAP * (_ABREAST - 1)) / _ABREAST
    reading = [
        (Column("", 7.0), Column(head(word, "sounding"), 14.0, "right"), Column(unit_of("capacity"), 11.0, "right"))
        for word in _WORDS
    ]
    columns = (
        Column("", 5.5),
        Column("Tank", each - 5.5 - 2 * _READING - 4.0),
        *reading[0],
        *reading[1],
        Column("", 4.0),
    )
    rows = -(-len(package.tanks) // _ABREAST)
    judged = calculated.found(undocking)
    sounded = judged.sound_before_flooding if judged else ()
    marks = []
    for start in range(0, len(package.tanks), rows):
        left = 1 + start // rows * (each + _GAP)
        part = list(enumerate(package.tanks[start : start + rows], start + 1))
        lines = [_line(number, tank, states, tank.tank in sounded) for number, tank in part]
        marks.append(table.table(columns, lines, left, top, "tank-list"))
        for row, (_, tank) in enumerate(part):
            middle = top + table.ROW * (row + 1) + 2.1
            for index, state in enumerate(states):
                at = left + columns[0].width + columns[1].width + index * _READING
                marks.append(liquid_hatch(_liquid(state.tanks.get(tank.tank))).swatch(at + 0.5, middle, 6.0))
    return "".join(marks)


def _line(number: int, tank: Tank, states: tuple[_State, _State], sounded: bool) -> Line:
    readings = [_reading(state.tanks.get(tank.tank)) for state in states]
    differ = readings[0] != readings[1]
    cells = [("", *reading) for reading in readings]
    return Line((str(number), tank.name, *cells[0], *cells[1], "S" if sounded else ""), strong=differ)


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
