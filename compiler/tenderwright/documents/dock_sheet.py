"""The dock sheet: what a dockmaster takes to the dockside, on two to four pages."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.calculations.condition.floating import FloatingPosition
from tenderwright.calculations.ship.block_places import side_block_places
from tenderwright.calculations.ship.docking_condition import docking
from tenderwright.calculations.ship.how_sure import how_sure
from tenderwright.calculations.ship.keel_loads import keel_bearing, planned_keel_blocks
from tenderwright.calculations.ship.landing import landing, landing_stages
from tenderwright.calculations.ship.side_loads import planned_side_blocks
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import (
    Block,
    Column,
    Edition,
    Facts,
    Figure,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Table,
    inline,
)
from tenderwright.documents.floated_on import floated_on
from tenderwright.documents.parts.before_flooding import signed
from tenderwright.documents.parts.blocks import keel_columns, keel_table, one_out
from tenderwright.documents.parts.footprints import openings
from tenderwright.documents.parts.landing import landing_limits
from tenderwright.documents.parts.limits import judged
from tenderwright.documents.parts.side_blocks import places_table, side_limits, side_table
from tenderwright.documents.parts.stops import floating_off_stops, landing_stops
from tenderwright.documents.parts.undocking import dockside_tanks, verdict
from tenderwright.model.docking_plan import CitedLength
from tenderwright.model.particulars import DraftMarks, Particulars
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import head, in_column, plus_minus, show

GROUP = "Dock sheet"
PLAN = "docking-plan"
"""File stem of the drawing that the sheet takes where the edition has it."""


def dock_sheet(desk: Desk, edition: Edition) -> Edition | None:
    """Compose the dock sheet beside the yard edition; None without a docking plan and the landing on it."""
    ship, position = desk.package.particulars, desk.calculated.found(docking)
    if desk.calculated.found(landing) is None or ship is None or position is None:
        return None
    parts = [_landing(desk, ship, position), *_drawing(edition), _blocks(desk), _before_flooding(desk)]
    return replace(
        edition,
        title=f"Dock sheet, {desk.tender.ship}",
        subtitle="For the dockside; planning figures",
        parts=tuple(parts),
        facts=(),
    )


def _part(number: str, anchor: str, title: str, blocks: list[Block], *, landscape: bool = False) -> Part:
    return Part(anchor, number, title, "data", GROUP, tuple(blocks), landscape=landscape, caution=True, audience="yard")


def _landing(desk: Desk, ship: Particulars, position: FloatingPosition) -> Part:
    blocks: list[Block] = [
        Facts(tuple(_ship(desk, ship, position))),
        *floated_on(desk),
        Heading("Water and stability, in order"),
        _stages(desk),
        *_limits(desk),
        *landing_stops(desk),
        _read(ship, position),
        signed("Signed before the water falls"),
    ]
    return _part("DS1", "dock-sheet-landing", "Landing", blocks)


def _read(ship: Particulars, position: FloatingPosition) -> Table:
    """Give a form for what is read before she is landed, under what the marks are calculated to read."""
    marks = [(mark.name, _at_mark(mark, position)) for mark in ship.draft_marks]
    density = show(position.hydrostatics.density, "density")
    rows = (
        Row(tuple(inline(cell) for cell in ("As calculated", *(read for _, read in marks), "", density, "", ""))),
        Row(tuple(inline(cell) for cell in ("As read", *("" for _ in marks), "", "", "", ""))),
    )
    columns = (
        Column("Read on the day", width=1.4),
        *(Column(f"Draft {name}", width=1.3 if len(name) > 5 else 0.9) for name, _ in marks),
        Column("List"),
        Column("Density", width=1.2),
        Column("Hour", width=0.7),
        Column("By", width=1.3),
    )
    return Table(columns, rows, ruled=True)


def _ship(desk: Desk, ship: Particulars, position: FloatingPosition) -> list[tuple[str, Inline]]:
    size, keel, events = ship.dimensions, ship.keel, desk.tender.events
    h = position.hydrostatics
    end = "stern" if h.trim >= 0 else "head"
    known = desk.calculated.found(how_sure)

    def shown(si: float, purpose: str, of: str) -> str:
        u = known.u(of) if known is not None else None
        return plus_minus(si, u, purpose) if u else show(si, purpose)

    afloat = (
        f"{shown(position.loading.mass, 'weight', 'displacement')}, trim {shown(abs(h.trim), 'trim', 'trim')} by the "
        f"{end}, metacentric height {shown(position.gm_fluid, 'metacentric height', 'gm')} with free "
        f"surfaces, water of {show(h.density, 'density')}"
    )
    facts = [
        ("Ship", f"{ship.name}, {desk.quantity(size.length_overall)} over all, {desk.quantity(size.beam)} broad"),
        ("Docking and undocking", f"{day(events.get('docking'))} to {day(events.get('undocking'))}"),
        ("Keel", f"{keel.kind} keel, straight {keel.straight}, {desk.quantity(keel.width)} wide"),
        ("Afloat in the dock", afloat),
    ]
    return [(label, inline(text)) for label, text in facts if text]


def _at_mark(mark: DraftMarks, position: FloatingPosition) -> str:
    """Give what a draft mark reads in the docking condition."""
    return show(position.draft_at_marks(mark.at.x, mark.datum.si if mark.datum else 0.0), "draft mark")


def _stages(desk: Desk) -> Table:
    rows = []
    for stage in desk.calculated.found(landing_stages) or ():
        cells = (
            stage.name[0].upper() + stage.name[1:],
            in_column(stage.water, "water level"),
            in_column(stage.draft_aft, "draft"),
            in_column(stage.draft_forward, "draft"),
            in_column(stage.upthrust, "weight"),
            "–" if stage.gm is None else in_column(stage.gm, "metacentric height"),
        )
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("", width=2.6),
        Column(head("Water over blocks", "water level"), "decimal", 1.2),
        Column(head("Draft aft", "draft"), "decimal"),
        Column(head("Draft forward", "draft"), "decimal"),
        Column(head("Upthrust", "weight"), "decimal"),
        Column(head("GM", "metacentric height"), "decimal"),
    )
    note = inline(
        "Water over the block touched first. Drafts above the underside of the keel. GM is the lesser virtual "
        "metacentric height, without side blocks and shores."
    )
    return Table(columns, tuple(rows), note=note, small=True)


def _limits(desk: Desk) -> list[Block]:
    facts = [*landing_limits(desk), *_borne(desk)]
    words = [f"{desk.quantity(one.value)} {what}" for what, one in _clearances(desk) if one is not None]
    if words:
        facts.append(("Clearances", inline(", ".join(words))))
    return [Facts(tuple(facts))]


def _clearances(desk: Desk) -> list[tuple[str, CitedLength | None]]:
    plan = desk.package.docking_plan
    if plan is None:
        return []
    return [("under the keel", plan.under_keel), ("over the sill", plan.over_sill), ("beside", plan.beside)]


def _drawing(edition: Edition) -> list[Part]:
    """Take the docking plan from the edition's drawings, on a sheet of its own."""
    found = next((f for part in edition.parts for f in part.blocks if isinstance(f, Figure) and f.name == PLAN), None)
    if found is None:
        return []
    return [
        Part(
            "dock-sheet-plan",
            "DS2",
            "Docking plan",
            "drawing",
            GROUP,
            (replace(found, anchor=""),),
            landscape=True,
            caution=True,
            audience="yard",
        )
    ]


_IN_ONE_COLUMN = 36
"""Keel blocks that stand on one page below each other, over the side blocks."""


def _blocks(desk: Desk) -> Part:
    planned = desk.calculated.found(planned_keel_blocks) or ()
    blocks: list[Block] = [replace(keel_table(planned), note=())]
    if len(planned) > _IN_ONE_COLUMN:
        blocks = keel_columns(planned)
    if pairs := desk.calculated.found(planned_side_blocks):
        blocks += [Heading("Side blocks"), replace(side_table(pairs), note=())]
    elif desk.calculated.found(side_block_places):
        blocks += [Heading("Side blocks"), places_table(desk)]
    return _part("DS3", "dock-sheet-blocks", "Blocks", blocks)


def _borne(desk: Desk) -> list[tuple[str, Inline]]:
    """Say what the hardest keel blocks bear, landing, dry and with one out, and how the side blocks are judged."""
    facts: list[tuple[str, Inline]] = []
    first = desk.record.values.get("blocks.first.pressure")
    if first is not None:
        facts.append(("On the first block", inline(desk.figure(first, 3))))
    bearing, blocks = desk.calculated.found(keel_bearing), desk.calculated.found(planned_keel_blocks)
    if bearing is not None and blocks is not None:
        at = blocks[bearing.hardest].position
        facts.append(("Greatest on a keel block, dry", inline(f"at {at}, {judged(bearing.limit)}")))
    if (out := one_out(desk)) is not None:
        facts.append(("With one keel block out", inline(", ".join(out))))
    return facts + [("Side blocks", inline(text)) for _, text in side_limits(desk)[:1]]


def _before_flooding(desk: Desk) -> Part:
    blocks: list[Block] = [
        Heading("Openings and plugs by the nearest block"),
        *openings(desk),
        Heading("Before flooding"),
        Paragraph(inline(verdict(desk))),
        *dockside_tanks(desk, form=True),
        *floating_off_stops(desk),
        Paragraph(inline("Signed on the sheet “Before flooding” of the inspection plan.")),
    ]
    return _part("DS4", "dock-sheet-flooding", "Openings, and before flooding", blocks)
