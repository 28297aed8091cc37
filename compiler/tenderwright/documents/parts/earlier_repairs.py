"""What earlier dockings left in the shell: inserts, doublers, and rivets that are not as built."""

from __future__ import annotations

from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Column, Heading, Row, Table, inline
from tenderwright.model.shell_condition import Doubler, KnownRivets, Renewed
from tenderwright.quantities.customs import day

_NOTE = (
    "Readings of plate renewed since are left out of what is said above; a doubler hides the plate under it from a "
    "gauge outside. Ring-welding is temporary, and bolts are for an emergency (USCG NVIC 7-68, E-37 and E-38); rivets "
    "driven cold are sounded one by one (common practice, no source)."
)


def earlier_repairs(desk: Desk) -> list[Block]:
    """Compose the repairs of earlier dockings; nothing where none is known."""
    written = desk.package.condition
    if written is None or not (written.renewed or written.doublers or written.rivets):
        return []
    plates: tuple[Renewed | Doubler, ...] = (*written.renewed, *written.doublers)
    rows = [_row(desk, one.what, _fastened(desk, one), one) for one in plates]
    rows += [_row(desk, f"{one.number} rivets", one.how, one) for one in written.rivets]
    columns = (
        Column("What", width=2.2),
        Column("How", width=1.4),
        Column("Strake", width=1.3),
        Column("Place", width=1.6),
        Column("Done", width=1.2),
        Column("Item", width=1),
        Column("Known from", width=2.6),
    )
    return [Heading("Earlier repairs"), Table(columns, tuple(rows), note=inline(_NOTE), small=True)]


def _fastened(desk: Desk, one: Renewed | Doubler) -> str:
    thick = desk.quantity(one.thickness) if one.thickness is not None else ""
    return ", ".join(part for part in (thick, one.edges) if part) or "–"


def _row(desk: Desk, what: str, how: str, one: Renewed | Doubler | KnownRivets) -> Row:
    strakes = ", ".join(map(str, one.strakes)) if isinstance(one, KnownRivets) else str(one.strake)
    item = None if isinstance(one, Renewed) else one.item
    return Row(
        (
            inline(capital(what)),
            inline(how),
            inline(f"{strakes}, {one.side}" if one.side else strakes),
            inline(f"{one.from_} to {one.to}"),
            inline(day(one.on)),
            inline(desk.item_ref(item.name, f"item {item}")) if item else inline("–"),
            inline(one.source),
        )
    )
