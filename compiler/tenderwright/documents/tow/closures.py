"""The closure list: every opening of shell, tanks and deck by space, to prove and sign four times."""

from __future__ import annotations

from tenderwright.calculations.ship.tow_closures import ToClose, slack, tow_closures
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Paragraph, Row, Table, inline
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.model.tank import Tank
from tenderwright.model.tow import Closure, Compartment
from tenderwright.model.vessel import Opening
from tenderwright.quantities.display import head, in_column

ELSEWHERE = "In no compartment that is listed"
_SHELL = {
    "sea chest": ("valve shut, wired and tagged; grid seen", "wheel tried; drain shows no flow"),
    "suction": ("valve shut, wired and tagged", "wheel tried; drain shows no flow"),
    "discharge": ("valve shut and tagged, or flap held", "wheel tried; drain shows no flow"),
    "scupper": ("flap free and tight, or plugged from outside", "hose from outside, or seen to drain"),
    "docking plug": ("in, hard up and capped", "space over it dry, or diver's look"),
    "stern tube": ("gland hove up, shaft locked", "drops counted for 15 min"),
    "echo sounder": ("cover on and tight", "seen dry inside"),
    "sonar or log trunk": ("valve or cover shut", "seen dry inside"),
    "hawse pipe": ("cloth and cement, or plated", "hose"),
    "other": ("shut", "seen and tried"),
}
"""By kind of opening, its state at sea and how that is proved (common practice, no source)."""
_DOUBTED = {
    "seized": "blank bolted on: it cannot be proved shut",
    "unknown": "blank bolted on: nobody knows if it is shut",
    "blanked afloat": "blank tight",
}


def closure_list(desk: Desk) -> list[Block]:
    """Give the list, as a form, with its count; say which tanks are slack."""
    found = desk.calculated.outcome(tow_closures)
    if isinstance(found, Absent):
        return [not_calculated(found)]
    under = sum(1 for one in found if isinstance(one.thing, Opening) and (one.under or 0.0) > 0)
    shell = sum(1 for one in found if isinstance(one.thing, Opening))
    slack_ = sum(1 for _ in slack(found))
    words = (
        f"{len(found)} rows, of all openings, tanks and spaces of the package, none left out: "
        f"{shell} openings of the shell, "
        f"{under} of them under water as she is towed; {slack_} tanks slack, "
        "to be pressed up or emptied where they can be. "
        "Each row is closed and proved by whoever prepares her, and seen again by the surveyor, on sailing, "
        "and by anybody who "
        "boards. She does not sail with an open row, but for a risk that the tug master states in writing."
    )
    rows: list[Row] = []
    space: str | None = None
    for one in found:
        if one.compartment != space:
            space = one.compartment
            rows.append(Row((inline(space or ELSEWHERE),), "group"))
        rows.append(_row(one))
    columns = (
        Column("What", width=2.4),
        Column("Where", width=1.6),
        Column(head("Over water", "clearance"), "decimal", 0.9),
        Column("State at sea", width=3.1),
        Column("Proved by", width=2.1),
        *(Column(when, width=0.7) for when in ("Prepared", "Surveyed", "Sailing", "Boarded")),
    )
    note = inline(
        "A tank is closed when its manholes are bolted, its sluices shut and its air pipes socked, "
        "never plugged. What is put "
        "on is tagged, numbered and counted off again. Ways of closing and proving: common practice, no source."
    )
    return [Paragraph(inline(words)), Table(columns, tuple(rows), note=note, small=True)]


def _row(one: ToClose) -> Row:
    thing = one.thing
    if isinstance(thing, Opening):
        told = _opening(thing, one.under)
    elif isinstance(thing, Tank):
        told = _tank(thing, one.filling)
    elif isinstance(thing, Closure):
        told = _closure(thing, one.under)
    else:
        told = _space(thing)
    return Row(tuple(inline(cell) for cell in (*told, "", "", "", "")))


def _opening(thing: Opening, under: float | None) -> tuple[str, ...]:
    state, proved = _SHELL.get(thing.kind, _SHELL["other"])
    doubted = _DOUBTED.get(thing.state)
    side = {"port": ", port", "starboard": ", stbd"}.get(thing.side, "")
    return thing.name, f"{thing.at}{side}", _over(under), capital(doubted or state), capital(proved)


def _tank(thing: Tank, filling: str) -> tuple[str, ...]:
    where = f"{thing.bounds.from_} to {thing.bounds.to}" if thing.bounds is not None else "–"
    held = "; held oil: gas-free before entry" if thing.held_oil else ""
    return thing.name, where, "–", f"{capital(filling)}; closed{held}", "Sounded, written down"


def _closure(thing: Closure, under: float | None) -> tuple[str, ...]:
    state = f"{capital(thing.closed_by)}: {thing.tight}"
    return thing.what, f"{thing.at}", _over(under), state, "Hose, or seen and tried"


def _space(thing: Compartment) -> tuple[str, ...]:
    doors = thing.doors or "doors dogged; cable and pipe holes plugged"
    return "The space itself", f"{thing.from_} to {thing.to}", "–", f"Dry; {doors}", "Entered and seen; alarm rung"


def _over(under: float | None) -> str:
    return "–" if under is None else in_column(-under, "clearance")
