"""Tanks: what is in them on arrival, and a sounding table for each."""

from __future__ import annotations

from tenderwright.calculations.ship.tanks import SoundingTable, tank_contents, tank_shape, tank_sounding_table
from tenderwright.calculations.steps.outcome import Absent, Waiting
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Beside, Block, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.not_calculated import absent_of, not_calculated, not_calculated_of
from tenderwright.documents.parts.abreast import in_runs
from tenderwright.documents.parts.front import ANNEXES
from tenderwright.documents.parts.notes import notes_on
from tenderwright.documents.together import together
from tenderwright.model.tank import Tank
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import head, in_column, show


def tanks(desk: Desk) -> Part:
    """Compose the tanks and their soundings on arrival."""
    waits = desk.package.broken.awaits("tank")
    if not desk.package.tanks:
        none = Paragraph(inline("No tank is listed."))
        none = not_calculated(Waiting(waits)) if waits else none
        return Part(
            "tanks", "", "Tanks and their contents", "data", "Docking data", (none,), caution=True, audience="yard"
        )
    rows = []
    read = {tank.contents.read for tank in desk.package.tanks}
    once = read.pop() if len(read) == 1 else None
    for tank in desk.package.tanks:
        contents, name = tank.contents, f"tank.{tank.tank}"
        when = f" ({contents.read})" if contents.read and not once else ""
        told = contents.sounding or contents.ullage or contents.full or contents.mass
        sounding = desk.quantity(told, "–")
        rows.append(
            Row(
                (
                    inline(tank.name),
                    inline(capital(tank.use) + (", has held oil" if tank.held_oil else "")),
                    inline(_extent(tank)),
                    inline(desk.number(f"{name}.capacity", more=-1)),
                    inline(contents.liquid + when),
                    inline(sounding),
                    inline(_volume(desk, name)),
                    inline(desk.number(f"{name}.mass", "load of a tank")),
                    inline(desk.number(f"{name}.free-surface-moment")),
                ),
                anchor=desk.anchor("tank", tank.tank),
            )
        )
    held, shapes = desk.calculated.outcome(tank_contents), desk.calculated.outcome(tank_shape)
    without = {one.name: absent_of(held, one.tank) for one in desk.package.tanks}
    absent: dict[str, Absent | None] = {"Further tanks": Waiting(waits)} if waits else {}
    absent |= {one.name: without[one.name] or absent_of(shapes, one.tank) for one in desk.package.tanks}
    total = sum(one.liquid.volume for one in desk.calculated.each(tank_contents).values())
    mass = sum(desk.record.values[n].si for n in desk.record.values if n.startswith("tank.") and n.endswith(".mass"))
    moment = sum(
        desk.record.values[n].si
        for n in desk.record.values
        if n.startswith("tank.") and n.endswith(".free-surface-moment") and "longitudinal" not in n
    )
    label = "All tanks but those not calculated" if waits or any(without.values()) else "All tanks"
    cells = (
        label,
        "",
        "",
        "",
        "",
        "",
        in_column(total, "capacity"),
        in_column(mass, "load of a tank"),
        in_column(moment, "moment"),
    )
    rows.append(Row(tuple(inline(cell) for cell in cells), "total"))
    columns = (
        Column("Tank", width=2.1),
        Column("Use", width=1.7),
        Column("Bounds", width=1.4),
        Column(head("Capacity", "capacity"), "decimal", 1),
        Column("Contents" if once else "Contents, when sounded", width=1.4 if once else 2),
        Column("Sounding", "right", 0.95),
        Column(head("Volume", "capacity"), "decimal", 0.95),
        Column(head("Mass", "load of a tank"), "decimal", 0.8),
        Column(head("Free-surface moment", "moment"), "decimal", 1.2),
    )
    boxes = desk.calculated.each(tank_shape)
    by_plan = [one.name for one in desk.package.tanks if one.tank in boxes and boxes[one.tank].planned]
    note = inline(
        (f"As read on {day(once)}. " if once else "")
        + _CUT
        + (_BY_PLAN.format(", ".join(by_plan) if len(by_plan) < len(boxes) else "all of them") if by_plan else "")
    )
    table = Table(columns, tuple(rows), note=note, small=True)
    blocks: list[Block] = [
        table,
        *not_calculated_of(absent),
        *notes_on(desk, [(one.name, one.notes) for one in desk.package.tanks]),
    ]
    return Part(
        "tanks", "", "Tanks and their contents", "data", "Docking data", tuple(blocks), caution=True, audience="yard"
    )


_CUT = (
    "Volumes are cut from each tank by the liquid plane at the trim of the drafts last read. The yard sounds every "
    "tank again on the day of docking and before she is floated."
)

_BY_PLAN = (
    " From the capacity plan alone: {}. Of these the form is not known: part-filled, the liquid is taken to lie under "
    "the full tank's centre, as in a box; the free surface is as the plan states it, or the greatest that the tank's "
    "extent permits. What that leaves in doubt is in the uncertainty of how she floats."
)


def _extent(tank: Tank) -> str:
    """Give the frames between which a tank lies; about which it lies, where its plan gives no more."""
    bounds = tank.bounds or tank.plan
    if bounds is None:
        return "–"
    if bounds.from_ is not None and bounds.to is not None:
        return f"{bounds.from_} to {bounds.to}"
    return f"about {tank.plan.at}" if tank.plan else "–"


def _volume(desk: Desk, name: str) -> str:
    """Give the volume in a tank: a least and a greatest where the reading leaves it open."""
    ends = [f"{name}.least", f"{name}.greatest"]
    if all(one in desk.record.values for one in ends):
        return " to ".join(desk.number(one) for one in ends)
    return desk.number(f"{name}.volume")


def sounding_tables(desk: Desk) -> Part | None:
    """Compose the sounding tables, three abreast and those of tanks that are alike once; None without tanks."""
    outcome, tables = desk.calculated.outcome(tank_sounding_table), desk.calculated.each(tank_sounding_table)
    alike: dict[tuple[Table, ...], list[str]] = {}
    absent: dict[str, Absent | None] = {}
    for tank in desk.package.tanks:
        absent[tank.name] = absent_of(outcome, tank.tank)
        if absent[tank.name] is None:
            alike.setdefault(in_runs(_sounded(desk, tank, tables[tank.tank])), []).append(tank.name)
    if not desk.package.tanks:
        return None
    blocks: list[Block] = []
    if alike:
        stacks = tuple(
            (Heading(together(names) + ("" if run is runs[0] else ", continued"), 3), run)
            for runs, names in alike.items()
            for run in runs
        )
        blocks = [Paragraph(inline(_SOUNDED)), Beside(stacks, 3)]
    blocks += not_calculated_of(absent)
    return Part("sounding-tables", "", "Sounding tables", "data", ANNEXES, tuple(blocks), caution=True, audience="yard")


_SOUNDED = (
    "What each tank holds by its sounding and her trim. Tanks that are alike to the last figure share one table. "
    "Striking plates: heights above the keel line."
)


def _sounded(desk: Desk, tank: Tank, table: SoundingTable) -> Table:
    """Compose the sounding table of a tank."""
    trims = ["Even keel", *(f"{show(trim, 'trim', more=-1)} by the stern" for trim in table.trims[1:])]
    if tank.table and len(table.trims) == 1:
        trims = ["By the ship's own table"]
    columns = (
        Column(head(capital(table.by), "sounding"), "decimal"),
        *(Column(head(trim, "capacity"), "decimal") for trim in trims),
    )
    rows = tuple(
        Row(
            (
                inline(in_column(sounding, "sounding")),
                *(inline(in_column(volume, "capacity")) for volume in volumes),
            )
        )
        for sounding, volumes in zip(table.soundings, table.volumes, strict=True)
    )
    pipe = tank.pipe
    note = inline(f"Pipe at {pipe.at}, plate {desk.quantity(pipe.foot)} up.") if pipe else ()
    return Table(columns, rows, note=note, small=True)
