"""How she floats when she leaves the blocks: what has moved, the condition, and what is sounded before flooding."""

from __future__ import annotations

from tenderwright.calculations.ship.docking_condition import docking, docking_tank_states
from tenderwright.calculations.ship.tanks import tank_shape
from tenderwright.calculations.ship.undocking import undocking as undocking_step
from tenderwright.calculations.ship.undocking import undocking_tank_states
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import (
    Block,
    Column,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.in_words import in_words
from tenderwright.documents.not_calculated import absent_of, why_not
from tenderwright.documents.parts.docking_condition import condition_table
from tenderwright.quantities.display import head, in_column, show, unit_of

SHOWN = 0.005
"""Least volume that is told, m3."""
NO_TANK = inline("No tank is listed: none is sounded.")
SUBJECT = (
    "subject to soundings, weight log and drafts read before flooding, and to the naval architect's own calculation"
)


def undocking(desk: Desk) -> Part | None:
    """Compose the undocking condition; None where there is none."""
    found, docked = desk.calculated.found(undocking_step), desk.calculated.found(docking)
    if found is None or docked is None:
        return None
    columns = [("When docked", docked), ("When floated", found.position)]
    blocks: list[Block] = [
        Paragraph(
            inline(
                Span(verdict(desk), strong=True),
                " Options are counted as exercised. The yard's naval architect makes the calculation again from the "
                "weight log and the soundings, and that one governs.",
            )
        ),
        condition_table(desk, columns),
        Heading("Weights that move"),
        _moved(desk),
        Heading("Tanks, and what to sound before flooding"),
        *dockside_tanks(desk),
    ]
    return Part(
        "undocking", "", "Undocking condition", "data", "Docking data", tuple(blocks), caution=True, audience="yard"
    )


def verdict(desk: Desk) -> str:
    """Say whether she is calculated to float off level and stable, or why not, and what that is subject to."""
    found = desk.calculated.outcome(undocking_step)
    if isinstance(found, Absent):
        return f"Whether she floats off level and stable is not known: {in_words(found.why)}."
    if found.level and found.stable:
        gm = (
            f", {show(found.least_gm, 'metacentric height')} as the last block leaves her"
            if found.least_gm is not None
            else ""
        )
        return (
            "Calculated to float off level and stable, metacentric height "
            f"{show(found.position.gm_fluid, 'metacentric height')} afloat{gm}: {SUBJECT}."
        )
    return f"Calculated not to float off level and stable: {'; '.join(found.reasons)}. This is {SUBJECT}."


def _moved(desk: Desk) -> Table | Paragraph:
    plan = desk.package.docking_plan
    assert plan is not None
    if not plan.moved_while_dry:
        return Paragraph(inline("The docking plan names no weight that moves."))
    rows = []
    for one in plan.moved_while_dry:
        item: Inline = inline(desk.item_ref(one.item.name)) if one.item else inline("–")
        cells = (
            inline(one.what),
            item,
            inline(in_column(one.mass.si, "load of a tank")),
            inline(one.at.text),
            inline(in_column(one.height.si, "height")),
        )
        rows.append(Row(cells))
    total = sum(one.mass.si for one in plan.moved_while_dry)
    rows.append(Row(tuple(inline(cell) for cell in ("All", "", in_column(total, "load of a tank"), "", "")), "total"))
    columns = (
        Column("What", width=4),
        Column("Item", width=0.7),
        Column(head("Mass", "load of a tank"), "decimal", 1),
        Column("At", width=1),
        Column(head("Height", "height"), "decimal", 1),
    )
    note = inline(
        "Minus for what goes. What an item of the phase before docking moves is counted in the docking condition."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def dockside_tanks(desk: Desk, *, form: bool = False) -> list[Block]:
    """Give the tanks with anything in them, each with why it is sounded above all, and name those to be found dry.

    A form has a column for what is sounded before flooding.
    """
    if not desk.package.tanks:
        return [Paragraph(NO_TANK)]
    found = desk.calculated.found(undocking_step)
    why = dict(found.to_sound) if found else {}
    states = [desk.calculated.found(one) or {} for one in (docking_tank_states, undocking_tank_states)]
    empty = {
        tank.tank
        for tank in desk.package.tanks
        if all((state := one.get(tank.tank)) is not None and state.mass <= 0 for one in states)
    }
    full = tank_table(desk)
    blank: tuple[Inline, ...] = ((),) if form else ()
    rows = [
        Row((*row.cells, inline(why.get(tank.tank, "–")), *blank))
        for tank, row in zip(desk.package.tanks, full.rows, strict=True)
        if tank.tank not in empty
    ]
    dry = [tank.name for tank in desk.package.tanks if tank.tank in empty]
    note = "Sound every tank before flooding, above all those with a reason. Soundings at the trim of each condition."
    if dry:
        note += f" Empty in both, and to be found dry: {'; '.join(dry)}."
    note = f"{note} {unseen(desk)}".strip()
    columns = (*full.columns, Column("Why", width=0.9), *([Column("As sounded", width=1.1)] if form else []))
    return [Table(columns, tuple(rows), note=inline(note), small=True)]


def unseen(desk: Desk) -> str:
    """Say how much may lie in tanks whose pipe shows nothing, by the worse of both trims; nothing where none may."""
    states = [desk.calculated.found(one) or {} for one in (docking_tank_states, undocking_tank_states)]
    found = {
        tank.name: max((one[tank.tank].unseen for one in states if tank.tank in one), default=0.0)
        for tank in desk.package.tanks
    }
    listed = [f"{name} {in_column(volume, 'capacity')}" for name, volume in found.items() if volume >= SHOWN]
    if not listed:
        return ""
    return (
        f"Where the pipe shows nothing, as much as this may yet lie below its foot, {unit_of('capacity')}: "
        f"{'; '.join(listed)}."
    )


def tank_table(desk: Desk) -> Table:
    """Give every tank's contents and sounding on docking and when she is floated."""
    docked = desk.calculated.found(docking_tank_states) or {}
    floated = desk.calculated.found(undocking_tank_states) or {}
    rows = []
    for tank in desk.package.tanks:
        cells = [tank.name]
        for state in (docked.get(tank.tank), floated.get(tank.tank)):
            if state is None:
                why = absent_of(desk.calculated.outcome(tank_shape), tank.tank)
                cells += [why_not(why) if why else "Not calculated.", "", ""]
                continue
            sounding = "–" if tank.pipe is None else in_column(state.sounding or 0.0, "sounding")
            cells += [state.liquid, in_column(state.volume, "capacity"), sounding]
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Tank", width=2.4),
        Column("When docked", width=1.3),
        Column(unit_of("capacity"), "decimal", 0.8),
        Column(head("Sounding", "sounding"), "decimal", 0.9),
        Column("When floated", width=1.3),
        Column(unit_of("capacity"), "decimal", 0.8),
        Column(head("Sounding", "sounding"), "decimal", 0.9),
    )
    note = inline(f"Soundings at the trim of each condition. A dash: no pipe. {unseen(desk)}".strip())
    return Table(columns, tuple(rows), note=note, small=True)
