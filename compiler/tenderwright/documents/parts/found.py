"""Tables of what a docking found and did, for the history of the specification and for the docking report."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Inline, Row, Table, inline
from tenderwright.model.build import Reference
from tenderwright.model.found import (
    ClearanceTaken,
    Deferred,
    FilledRow,
    NotPainted,
    PlugDrawn,
    RivetsRenewed,
    SoundingTaken,
    SteelRenewed,
    TankTested,
    TimberFound,
    ValveFound,
)
from tenderwright.model.history import AnodesFound
from tenderwright.quantities.customs import day
from tenderwright.quantities.position import Position

DASH = "–"


def words(*pieces: str, between: str = ", ") -> str:
    """Join what there is."""
    return between.join(piece for piece in pieces if piece)


def stretch(from_: Position | None, to: Position | None, side: str = "") -> str:
    """Write a stretch along the ship with its side."""
    along = f"{from_} to {to}" if from_ and to else str(from_ or to or "")
    return words(along, side)


def _ref(desk: Desk, reference: Reference | None) -> str:
    return desk.ref(reference).text if reference else ""


def _table(caption: str, columns: Sequence[Column], rows: Sequence[Sequence[str | Inline]]) -> list[Block]:
    if not rows:
        return []
    made = tuple(Row(tuple(inline(cell or DASH) if isinstance(cell, str) else cell for cell in row)) for row in rows)
    return [Table(tuple(columns), made, caption=caption, small=True)]


def deferred_table(desk: Desk, deferred: Sequence[Deferred]) -> list[Block]:
    """Set out the work put off: what, in which condition, why, and by when."""
    rows = [
        (words(one.what, one.where), one.condition, one.why, one.by, one.item.name if one.item else "")
        for one in deferred
    ]
    columns = (
        Column("What was put off", width=3),
        Column("Condition it was left in", width=2.2),
        Column("Why", width=2.4),
        Column("By when", width=1.3),
        Column("Item", width=0.7),
    )
    return _table("Work put off", columns, rows)


def not_painted_table(desk: Desk, places: Sequence[NotPainted]) -> list[Block]:
    """Set out the places left without coating."""
    rows = [
        (_ref(desk, one.zone), words(one.where, stretch(one.from_, one.to, one.side)), desk.quantity(one.area), one.why)
        for one in places
    ]
    columns = (Column("Zone", width=1.6), Column("Where", width=3), Column("Area", "right"), Column("Why", width=2.4))
    return _table("Places left without coating", columns, rows)


def plugs_table(desk: Desk, plugs: Sequence[PlugDrawn]) -> list[Block]:
    """Set out the plug register."""
    rows = [
        (_ref(desk, one.plug), day(one.drawn), day(one.refitted), words(one.state, one.done, between="; "), one.witness)
        for one in plugs
    ]
    columns = (
        Column("Plug", width=2.6),
        Column("Drawn", width=1.3),
        Column("Refitted", width=1.3),
        Column("State and work", width=2.6),
        Column("Witness", width=1.4),
    )
    return _table("Plug register", columns, rows)


def steel_table(desk: Desk, renewed: Sequence[SteelRenewed]) -> list[Block]:
    """Set out the steel renewed."""
    rows = [
        (
            one.what,
            words(_ref(desk, one.strake), _ref(desk, one.tank), stretch(one.from_, one.to, one.side)),
            desk.quantity(one.thickness),
            desk.quantity(one.mass),
            words(one.how, one.material, _ref(desk, one.drawing), between="; "),
            words(one.test, one.why, _ref(desk, one.item), between="; "),
        )
        for one in renewed
    ]
    columns = (
        Column("What", width=0.9),
        Column("Where", width=2.4),
        Column("Thickness", "right", 1.1),
        Column("Mass", "right", 0.9),
        Column("How held, material, drawing", width=2.4),
        Column("Test; why renewed; item", width=2.2),
    )
    return _table("Steel renewed", columns, rows)


def rivets_table(desk: Desk, rivets: Sequence[RivetsRenewed]) -> list[Block]:
    """Set out the rivets renewed or mended."""
    rows = [
        (
            str(one.number),
            one.how,
            words(_ref(desk, one.strake), one.seam, stretch(one.from_, one.to, one.side)),
            desk.quantity(one.diameter),
            words(one.why, _ref(desk, one.item), between="; "),
        )
        for one in rivets
    ]
    columns = (
        Column("Number", "right", 0.8),
        Column("Done", width=1.2),
        Column("Where", width=3.4),
        Column("Diameter", "right", 1),
        Column("Why; item", width=2.6),
    )
    return _table("Rivets", columns, rows)


def timber_table(desk: Desk, timber: Sequence[TimberFound]) -> list[Block]:
    """Set out what was found and done on a hull of wood."""
    rows = [
        (
            one.component,
            words(one.what, stretch(one.from_, one.to, one.side)),
            words(str(one.number) if one.number else "", desk.quantity(one.length)),
            one.found,
            words(one.done, one.material, _ref(desk, one.item), between="; "),
        )
        for one in timber
    ]
    columns = (
        Column("Part", width=1),
        Column("Which", width=2.4),
        Column("How much", width=1.1),
        Column("Found", width=2.4),
        Column("Done, with what; item", width=2.8),
    )
    return _table("Timber and fastenings", columns, rows)


def valves_table(desk: Desk, valves: Sequence[ValveFound]) -> list[Block]:
    """Set out the sea valves and other closures."""
    rows: list[Sequence[str | Inline]] = [
        (
            _ref(desk, one.opening),
            desk.words(one.found),
            desk.words(one.done),
            words(one.test, desk.quantity(one.pressure), _tight(one.tight), one.witness),
        )
        for one in valves
    ]
    columns = (
        Column("Opening", width=1.6),
        Column("Found", width=2.8),
        Column("Done", width=2.6),
        Column("Test", width=2.4),
    )
    return _table("Sea valves and closures", columns, rows)


def filled_tables(filled: Sequence[FilledRow]) -> list[Block]:
    """Set out the tables of the tender as the yard filled them, one below the other."""
    blocks: list[Block] = []
    for title in dict.fromkeys(one.table for one in filled):
        inside = [one for one in filled if one.table == title]
        headings = list(dict.fromkeys(heading for one in inside for heading in one.cells))
        rows = [(one.row, *(one.cells.get(heading, "") for heading in headings)) for one in inside]
        blocks += _table(title, (Column("Row", width=2), *(Column(heading) for heading in headings)), rows)
    return blocks


def _tight(tight: bool | None) -> str:
    return "" if tight is None else "tight" if tight else "NOT TIGHT"


def clearances_table(desk: Desk, clearances: Sequence[ClearanceTaken]) -> list[Block]:
    """Set out clearances of shaft and rudder with their limits; nobody judges them here."""
    rows = [
        (
            words(one.of, one.where),
            desk.quantity(one.found),
            desk.quantity(one.limit),
            one.limit_source,
            desk.quantity(one.left),
            one.done,
        )
        for one in clearances
    ]
    columns = (
        Column("Where", width=2.4),
        Column("Found", "right", 0.9),
        Column("Limit taken", "right", 0.9),
        Column("Source of the limit", width=1.9),
        Column("As left", "right", 0.9),
        Column("Done", width=2),
    )
    return _table("Clearances", columns, rows)


def tests_table(desk: Desk, tests: Sequence[TankTested]) -> list[Block]:
    """Set out the tests of tanks and spaces."""
    rows = [
        (
            _ref(desk, one.tank),
            words(one.test, desk.quantity(one.head), desk.quantity(one.pressure), desk.quantity(one.held)),
            _tight(one.tight),
            words(day(one.day) if one.day else "", one.witness),
            one.note,
        )
        for one in tests
    ]
    columns = (
        Column("Tank or space", width=2.2),
        Column("Test", width=2.2),
        Column("Result", width=0.9),
        Column("Day and witness", width=2),
        Column("Note", width=2),
    )
    return _table("Tests of tanks and spaces", columns, rows)


def anodes_table(desk: Desk, anodes: Sequence[AnodesFound]) -> list[Block]:
    """Set out what was left of each anode and what was fitted."""
    rows = [
        (
            _ref(desk, one.anode),
            desk.quantity(one.left),
            desk.quantity(one.left_mass),
            words(desk.quantity(one.fitted), one.alloy),
        )
        for one in anodes
    ]
    columns = (Column("Anode"), Column("Left", "right"), Column("Mass left", "right"), Column("Fitted", width=2))
    return _table("Anodes", columns, rows)


def soundings_table(
    desk: Desk, on_docking: Sequence[SoundingTaken], on_undocking: Sequence[SoundingTaken]
) -> list[Block]:
    """Set out what was in the tanks on docking and on undocking."""
    names = dict.fromkeys(one.tank.name for one in [*on_docking, *on_undocking])
    before, after = ({one.tank.name: one for one in taken} for taken in (on_docking, on_undocking))
    rows = [(desk.label("tank", name), _taken(desk, before.get(name)), _taken(desk, after.get(name))) for name in names]
    columns = (Column("Tank", width=2), Column("On docking", width=2), Column("On undocking", width=2))
    return _table("Soundings", columns, rows)


def _taken(desk: Desk, taken: SoundingTaken | None) -> str:
    if taken is None:
        return ""
    ullage = f"ullage {desk.quantity(taken.ullage)}" if taken.ullage else ""
    sounding = f"sounding {desk.quantity(taken.sounding)}" if taken.sounding else ""
    return words(taken.liquid, sounding, ullage, desk.quantity(taken.volume))
