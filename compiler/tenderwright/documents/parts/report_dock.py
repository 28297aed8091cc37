"""The docking itself in a docking report: days, drafts, soundings, blocks as used by frame, bare places, plugs."""

from __future__ import annotations

from tenderwright.calculations.ship.bare_places import bare_area
from tenderwright.documents.closing_desk import ClosedDocking
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import (
    Block,
    Column,
    Facts,
    Heading,
    Paragraph,
    Part,
    Row,
    Table,
    inline,
    plain,
)
from tenderwright.documents.parts.found import DASH, not_painted_table, plugs_table, soundings_table
from tenderwright.documents.parts.report_summary import GROUP
from tenderwright.model.findings import Condition
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import head, in_column, show


def docking(desk: Desk, closed: ClosedDocking) -> Part:
    """Compose the part on dock, blocks and plugs."""
    findings, dates = closed.findings, closed.findings.dates
    facts = [
        ("Yard and dock", f"{findings.yard}, {findings.dock_type}"),
        ("Place", findings.place),
        ("Dock of this tender", desk.ref(findings.facility).text if findings.facility else ""),
        ("Dockmaster", findings.dockmaster),
        *((name, day(when) if when else "") for name, when in (
            ("Arrived", dates.arrived),
            ("Docked", dates.docked),
            ("Dry", dates.dry),
            ("Undocked", dates.undocked),
            ("Departed", dates.departed),
        )),
        ("On docking", _condition(desk, findings.on_docking)),
        ("On undocking", _condition(desk, findings.on_undocking)),
        ("Docking plan used", desk.ref(findings.blocks.plan).text if findings.blocks.plan else ""),
    ]  # fmt: skip
    shown = tuple((name, inline(text)) for name, text in facts if text)
    blocks: list[Block] = [Facts(tuple(fact for fact in shown if plain(fact[1])))]
    if findings.weather:
        blocks.append(desk.prose(findings.weather))
    blocks += soundings_table(desk, findings.on_docking.soundings, findings.on_undocking.soundings)
    blocks += _blocks(desk, closed)
    blocks += not_painted_table(desk, findings.not_painted)
    blocks += plugs_table(desk, findings.plugs)
    return Part("docking", "2", "Dock, blocks and plugs", "data", GROUP, tuple(blocks), caution=True, audience="yard")


def _condition(desk: Desk, condition: Condition) -> str:
    drafts = condition.drafts
    found = [
        f"{desk.quantity(drafts.aft)} aft, {desk.quantity(drafts.forward)} forward" if drafts else "",
        f"list {desk.quantity(condition.list_)}" if condition.list_ else "",
        f"displacement {desk.quantity(condition.displacement)}" if condition.displacement else "",
        f"water {desk.quantity(condition.density)}" if condition.density else "",
    ]
    return "; ".join(words for words in found if words)


def _blocks(desk: Desk, closed: ClosedDocking) -> list[Block]:
    places = list(closed.places)
    if not places:
        return []
    rows = tuple(
        Row(
            (
                inline(place.kind),
                inline(place.position),
                inline(place.side),
                inline(in_column(place.off_centre, "distance") if place.off_centre else DASH),
                inline(_size(place.length, place.width)),
                inline(in_column(place.area, "small area") if place.area is not None else DASH),
                inline("painted, block moved" if place.painted else "bare"),
            )
        )
        for place in places
    )
    columns = (
        Column("Block", width=0.8),
        Column("Place", width=1.8),
        Column("Side", width=1.2),
        Column(head("Off centre", "distance"), "decimal", 1),
        Column(head("Touched", "size"), "right", 1.5),
        Column(head("Area", "small area"), "decimal", 0.9),
        Column("Shell under it", width=1.6),
    )
    bare = show(bare_area(places), "area")
    note = f"A keel block touches no more than the keel is wide. Bare: {bare}, blocks without a size not counted."
    found: list[Block] = [
        Heading("Blocks as used, by frame"),
        Paragraph(inline("The next docking shifts its blocks off the places that are bare here.")),
        Table(columns, rows, caption="Blocks as used, and the shell under them", small=True, note=inline(note)),
    ]
    return found + ([desk.prose(closed.findings.blocks.notes)] if closed.findings.blocks.notes else [])


def _size(length: float | None, width: float | None) -> str:
    if length is None or width is None:
        return DASH
    return f"{in_column(length, 'size')} × {in_column(width, 'size')}"
