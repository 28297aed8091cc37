"""Earlier dockings: what was found, done and put off."""

from __future__ import annotations

from datetime import date

from tenderwright.calculations.ship.survey_readings import survey_readings
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import (
    Block,
    Bullets,
    Column,
    Heading,
    Inline,
    Part,
    Row,
    Table,
    inline,
    plain,
)
from tenderwright.documents.not_calculated import not_calculated
from tenderwright.documents.parts.abreast import abreast, facts_abreast
from tenderwright.documents.parts.found import (
    anodes_table,
    clearances_table,
    filled_tables,
    not_painted_table,
    plugs_table,
    rivets_table,
    soundings_table,
    steel_table,
    tests_table,
    timber_table,
    valves_table,
    words,
)
from tenderwright.model.found import Deferred, UsedBlock
from tenderwright.model.history import CoatingApplied, EarlierDocking
from tenderwright.quantities.customs import day


def history(desk: Desk) -> Part:
    """Compose the earlier dockings, the latest first."""
    blocks: list[Block] = []
    for docking in desk.package.history:
        blocks += _docking(desk.of_tender(docking.tender), docking)
    if desk.package.surveys:
        blocks += _surveys(desk)
    return Part(
        "history", "", "Earlier dockings and surveys", "data", "The ship", tuple(blocks), caution=True, audience="yard"
    )


def _docking(desk: Desk, docking: EarlierDocking) -> list[Block]:
    blocks: list[Block] = [
        Heading(f"Docking of {docking.docked.year}", 2, desk.anchor("docking", docking.docking)),
        *facts_abreast(_facts(desk, docking)),
    ]
    if docking.findings:
        rows = tuple(
            Row(
                (
                    inline(f.where),
                    desk.words(f.found),
                    desk.words(f.done) if f.done else inline("–"),
                    inline(f.extent or "–"),
                )
            )
            for f in docking.findings
        )
        columns = (
            Column("Where", width=1.8),
            Column("Found", width=3.2),
            Column("Done", width=3),
            Column("How much", width=1.3),
        )
        blocks.append(Table(columns, rows, caption="Findings", small=True))
    blocks += _record(desk, docking)
    blocks += [*_blocks(desk, docking), *_coatings(desk, docking)]
    lines = [_put_off(one) for one in docking.deferred]
    put_off = (Heading("Put off", 3), Bullets(tuple(inline(line) for line in lines))) if lines else ()
    lessons = (Heading("What to do otherwise", 3), desk.prose(docking.lessons)) if docking.lessons else ()
    blocks += abreast((put_off, lessons))
    if docking.left_open:
        listed = tuple(inline(capital(one)) for one in docking.left_open)
        blocks += [Heading("Left open in the inspection plan", 3), Bullets(listed, abreast=True)]
    if docking.photographs:
        pictures = (words(p.what, p.where, p.when, p.file) for p in docking.photographs)
        blocks += [Heading("Photographs", 3), Bullets(tuple(inline(one) for one in pictures))]
    return blocks


def _put_off(one: Deferred) -> str:
    why = f": {one.why}" if one.why else ""
    return words(one.what, one.where, one.condition) + why + (f"; due: {one.by}" if one.by else "")


def _record(desk: Desk, docking: EarlierDocking) -> list[Block]:
    """Compose what a closed docking holds beyond its findings."""
    return [
        *soundings_table(desk, docking.soundings, docking.undocking_soundings),
        *steel_table(desk, docking.renewed),
        *rivets_table(desk, docking.rivets),
        *timber_table(desk, docking.timber),
        *valves_table(desk, docking.valves),
        *clearances_table(desk, docking.clearances),
        *tests_table(desk, docking.tank_tests),
        *filled_tables(docking.tables),
        *anodes_table(desk, [one for one in docking.anodes if one.anode]),
        *plugs_table(desk, docking.plugs),
        *not_painted_table(desk, docking.not_painted),
    ]


def _facts(desk: Desk, docking: EarlierDocking) -> list[tuple[str, Inline]]:
    facts: list[tuple[str, Inline]] = [
        ("Tender", inline(docking.tender)),
        ("Dock", inline(docking.dock_type)),
        ("Docked", inline(f"{day(docking.docked)} to {day(docking.undocked)}" + _days(docking))),
    ]
    if docking.drafts:
        facts.append(
            (
                "Drafts on docking",
                inline(f"{desk.quantity(docking.drafts.aft)} aft, {desk.quantity(docking.drafts.forward)} forward"),
            )
        )
    if docking.undocking_drafts:
        drafts = docking.undocking_drafts
        facts.append(
            ("Drafts on undocking", inline(f"{desk.quantity(drafts.aft)} aft, {desk.quantity(drafts.forward)} forward"))
        )
    if docking.days_lost:
        lost = [f"{one.days} d, {one.cause}" + (f" ({one.what})" if one.what else "") for one in docking.days_lost]
        facts.append(("Days lost", inline("; ".join(lost))))
    if docking.hours_used:
        used = [
            f"{one.work} {desk.quantity(one.used)}" + (f" of {desk.quantity(one.offered)}" if one.offered else "")
            for one in docking.hours_used
        ]
        facts.append(("Hours of the pool", inline("; ".join(used))))
    if docking.guarantee_until:
        facts.append(("Guarantee until", inline(day(docking.guarantee_until))))
    for entry in (one for one in docking.anodes if not one.anode):
        left = f", {desk.quantity(entry.left)} left" if entry.left else ""
        renewed = f", {entry.renewed} renewed" if entry.renewed is not None else ""
        facts.append(("Anodes", inline(f"{entry.what}{left}{renewed}")))
    return [fact for fact in facts if plain(fact[1])]


def _days(docking: EarlierDocking) -> str:
    return f", {docking.days} days on blocks" if docking.days else ""


def _blocks(desk: Desk, docking: EarlierDocking) -> list[Block]:
    rows = tuple(
        Row(
            (
                inline(name),
                inline(_where(desk, block)),
                inline(desk.quantity(block.pitch, "–")),
                inline(_size(desk, block)),
            )
        )
        for name, blocks in (("Keel", docking.blocks.keel), ("Side", docking.blocks.sides))
        for block in blocks
    )
    columns = (
        Column("Blocks"),
        Column("Where", width=3),
        Column("Pitch", "right"),
        Column("Cap, length by width; height", width=2),
    )
    found: list[Block] = [Table(columns, rows, caption="Blocks as used", small=True)] if rows else []
    return found + ([desk.prose(docking.blocks.notes)] if docking.blocks.notes else [])


def _where(desk: Desk, block: UsedBlock) -> str:
    row = f"{block.at}" + (f" to {block.to}" if block.to else "")
    off = f", {desk.quantity(block.off_centre)} off the centreline" if block.off_centre and block.off_centre.si else ""
    side = f", {block.side}" if block.side not in ("centreline", "") else ""
    return row + off + side + (", painted under" if block.painted else "")


def _size(desk: Desk, block: UsedBlock) -> str:
    cap = " × ".join(desk.quantity(size) for size in (block.length, block.width) if size)
    return words(cap, f"{desk.quantity(block.height)} high" if block.height else "") or "–"


def _coatings(desk: Desk, docking: EarlierDocking) -> list[Block]:
    rows = tuple(
        Row(
            (
                inline(desk.ref(c.zone)),
                inline(c.system),
                inline(words(c.preparation, *_measured(desk, c), between="; ") or "–"),
                inline(desk.quantity(c.area, "–")),
            )
        )
        for c in docking.coatings
    )
    columns = (
        Column("Zone", width=1.6),
        Column("Coats", width=3.4),
        Column("Preparation", width=2.2),
        Column("Area", "right"),
    )
    return [Table(columns, rows, caption="Coatings applied", small=True)] if rows else []


def _measured(desk: Desk, coating: CoatingApplied) -> list[str]:
    found = ((coating.profile, "profile"), (coating.salts, "salts"))
    told = [f"{what} {desk.quantity(quantity)}" for quantity, what in found if quantity]
    return told + ([f"dust class {coating.dust}"] if coating.dust is not None else [])


def _surveys(desk: Desk) -> list[Block]:
    rows = []
    found = desk.calculated.outcome(survey_readings)
    if isinstance(found, Absent):
        return [Heading("Thickness surveys"), not_calculated(found)] if desk.package.surveys else []
    for survey in found.counts:
        first, last = day(date.fromisoformat(survey.first)), day(date.fromisoformat(survey.last))
        cells = (
            first if first == last else f"{first} to {last}",
            ", ".join(survey.stages) or "–",
            str(survey.readings),
            str(survey.pits) if survey.pits else "–",
            f"{100 * survey.greatest_loss:.0f} %",
        )
        rows.append(Row(tuple(inline(cell) for cell in cells)))
    columns = (
        Column("Survey", width=2.6),
        Column("Stage", width=1.6),
        Column("Readings", "right"),
        Column("Pits", "right", 0.8),
        Column("Greatest loss of thickness", "right", 1.6),
    )
    note = inline("Loss is counted against the thickness as built; a reading above it counts as none.")
    return [Heading("Thickness surveys"), Table(columns, tuple(rows), note=note, small=True)] if rows else []
