"""The forms for inside her: a walk-through by compartment, and the tanks with what must be true before entry."""

from __future__ import annotations

from tenderwright.calculations.ship.timber import of_wood
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Heading
from tenderwright.documents.parts.survey_form import blank, entered, form, padded
from tenderwright.model.tank import Tank

_OTHERS = 8
"""Rows for compartments that the package does not name."""


def walk_through(desk: Desk) -> list[Block]:
    """Compose the compartments, and the valves and closures as seen from inside."""
    columns = [
        ("compartment", 1.8),
        ("where", 1.2),
        ("water or oil in the bilge", 1.3),
        ("coating, rust", 1.6),
        (f"{_hull_of(desk)}, frames, {_joined_by(desk)}", 1.9),
        ("leaks: where, how much", 1.8),
        ("alarm and pump tried", 1.2),
        ("photograph", 1.1),
    ]
    known = [
        (tank.name, f"{tank.bounds.from_} – {tank.bounds.to}" if tank.bounds is not None else "")
        for tank in desk.package.tanks
        if not tank.confined
    ]
    rows = [padded(row, len(columns)) for row in known]
    note = (
        "Write in her compartments from aft forward: steering flat, shaft tunnel, engine and boiler room, holds, "
        "stores, accommodation, chain locker, decks. "
        + entered("vessel/condition.yaml (leaks) and owner/in-dock/ or a new item")
    )
    blocks: list[Block] = form(columns, [*rows, *blank(_OTHERS, len(columns))], note)
    fitted = [one for one in desk.package.openings if one.valve and one.kind != "docking plug"]
    if fitted:
        columns = [
            ("opening", 2.2),
            ("where", 1.1),
            ("side", 0.9),
            ("valve or closure", 2.2),
            ("state", 1.0),
            ("moves, shuts tight", 1.4),
            ("wasted, weeping", 1.6),
            ("photograph", 1.1),
        ]
        rows = [padded((one.name, str(one.at), one.side, one.valve), len(columns)) for one in fitted]
        blocks += [Heading("Valves and closures, from inside"), *form(columns, rows, entered("vessel/openings.yaml"))]
    return blocks


def tanks(desk: Desk) -> list[Block]:
    """Compose what must be true before entry, tank by tank, and what was found inside."""
    known = desk.package.tanks
    names = [tank.name for tank in known] or [""] * _OTHERS
    columns = [
        ("tank", 2.0),
        ("held oil", 0.7),
        ("certificate no.", 1.3),
        ("day, hour, until", 1.4),
        ("oxygen", 0.8),
        ("flammable", 0.9),
        ("toxic: which", 1.1),
        ("ventilated", 0.9),
        ("competent person", 1.5),
        ("watch at manhole", 1.4),
    ]
    oil = {tank.name: "yes" if tank.held_oil else "no" for tank in known}
    blocks: list[Block] = [
        Heading("Before entry"),
        *form(columns, [padded((name, oil.get(name, "")), len(columns)) for name in names]),
    ]
    columns = [
        ("tank", 1.9),
        ("use", 1.0),
        ("contents, last known", 1.4),
        ("sounding", 0.9),
        ("contents now", 1.0),
        ("coating sound, share", 1.0),
        ("planks: soft, borers" if of_wood(desk.package.particulars) else "plate: thinnest reading, deepest pit", 1.5),
        (f"frames, {_joined_by(desk)}", 1.6),
        ("pipes, valves, manhole joint", 1.6),
        ("photograph", 1.0),
    ]
    rows = [padded((tank.name, tank.use, _contents(desk, tank)), len(columns)) for tank in known]
    note = entered(
        "vessel/tanks.yaml (contents) and surveys/NAME.csv (tank, member, as_built, measured, date)",
        "a place that could not be reached is written down as such, never as sound",
    )
    return [*blocks, Heading("Inside"), *form(columns, rows or blank(_OTHERS, len(columns)), note)]


def _hull_of(desk: Desk) -> str:
    return "planks" if of_wood(desk.package.particulars) else "plate"


def _joined_by(desk: Desk) -> str:
    return "fastenings" if of_wood(desk.package.particulars) else "rivets, fastenings"


def _contents(desk: Desk, tank: Tank) -> str:
    """Say what was last known to be in a tank."""
    held = tank.contents
    told = desk.quantity(held.sounding or held.ullage or held.volume or held.full or held.mass)
    return ", ".join(word for word in (held.liquid if held.liquid != "none" else "empty", told) if word)
