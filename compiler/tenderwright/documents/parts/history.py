"""Earlier dockings: what was found, done, paid and put off."""

from __future__ import annotations

from tenderwright.documents.desk import Desk, day
from tenderwright.documents.edition import (
    Block,
    Bullets,
    Column,
    Facts,
    Heading,
    Inline,
    Part,
    Row,
    Table,
    inline,
    plain,
)
from tenderwright.model.history import EarlierDocking, UsedBlock
from tenderwright.pricing.money import written


def history(desk: Desk) -> Part:
    """Compose the earlier dockings, the latest first."""
    blocks: list[Block] = []
    for docking in desk.package.history:
        blocks += _docking(desk, docking)
    if desk.package.surveys:
        blocks += _surveys(desk)
    return Part("history", "6", "Earlier dockings and surveys", "data", "The ship", tuple(blocks))


def _docking(desk: Desk, docking: EarlierDocking) -> list[Block]:
    blocks: list[Block] = [
        Heading(f"Docking of {docking.docked.year}", 2, desk.anchor("docking", docking.docking)),
        Facts(tuple(_facts(desk, docking))),
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
    blocks += [*_blocks(desk, docking), *_coatings(desk, docking), *_prices(desk, docking)]
    if docking.deferred:
        blocks += [
            Heading("Put off", 3),
            Bullets(tuple(inline(". ".join(w for w in (d.what, d.why, d.by) if w)) for d in docking.deferred)),
        ]
    if docking.lessons:
        blocks += [Heading("What to do otherwise", 3), desk.prose(docking.lessons)]
    return blocks


def _facts(desk: Desk, docking: EarlierDocking) -> list[tuple[str, Inline]]:
    facts: list[tuple[str, Inline]] = [
        ("Yard", inline(", ".join(word for word in (docking.yard, docking.place) if word))),
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
    for entry in docking.anodes:
        left = f", {desk.quantity(entry.left)} left" if entry.left else ""
        renewed = f", {entry.renewed} renewed" if entry.renewed is not None else ""
        facts.append(("Anodes", inline(f"{entry.what}{left}{renewed}")))
    return [fact for fact in facts if plain(fact[1])]


def _days(docking: EarlierDocking) -> str:
    return f", {docking.days} days on blocks" if docking.days else ""


def _blocks(desk: Desk, docking: EarlierDocking) -> list[Block]:
    rows = tuple(
        Row((inline(name), inline(_where(block)), inline(desk.quantity(block.pitch, "–")), inline(_size(desk, block))))
        for name, blocks in (("Keel", docking.blocks.keel), ("Side", docking.blocks.sides))
        for block in blocks
    )
    columns = (
        Column("Blocks"),
        Column("Where", width=3),
        Column("Pitch", "right"),
        Column("Cap, length by width", width=2),
    )
    found: list[Block] = [Table(columns, rows, caption="Blocks as used", small=True)] if rows else []
    return found + ([desk.prose(docking.blocks.notes)] if docking.blocks.notes else [])


def _where(block: UsedBlock) -> str:
    row = f"{block.at}" + (f" to {block.to}" if block.to else "")
    off = f", {block.off_centre} off the centreline" if block.off_centre and block.off_centre.si else ""
    side = f", {block.side}" if block.side not in ("centreline", "") else ""
    return row + off + side


def _size(desk: Desk, block: UsedBlock) -> str:
    sizes = [desk.quantity(size) for size in (block.length, block.width) if size]
    return " × ".join(sizes) or "–"


def _coatings(desk: Desk, docking: EarlierDocking) -> list[Block]:
    rows = tuple(
        Row(
            (
                inline(desk.ref(c.zone)),
                inline(c.system),
                inline(c.preparation or "–"),
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


def _prices(desk: Desk, docking: EarlierDocking) -> list[Block]:
    rows = tuple(
        Row(
            (
                inline(p.work),
                inline(desk.ref(p.item)) if p.item else inline("–"),
                inline(p.quantity or "–"),
                inline(written(p.amount)),
                inline(written(p.growth) if p.growth is not None else "–"),
            )
        )
        for p in docking.prices
    )
    columns = (
        Column("Work", width=3.6),
        Column("Compare", width=1.1),
        Column("Quantity", width=1.8),
        Column(f"Paid, {docking.currency}", "decimal", 1.4),
        Column("Of which growth", "decimal", 1.4),
    )
    return [Table(columns, rows, caption="Prices paid", small=True)] if rows else []


def _surveys(desk: Desk) -> list[Block]:
    rows = []
    for survey in desk.package.surveys:
        losses = [max(0.0, 1 - r.measured / r.as_built) for r in survey.readings]
        if losses:
            first, last = min(r.date for r in survey.readings), max(r.date for r in survey.readings)
            span = day(first) if first == last else f"{day(first)} to {day(last)}"
            rows.append(
                Row((inline(survey.name), inline(span), inline(str(len(losses))), inline(f"{max(losses):.0%}")))
            )
    columns = (
        Column("Survey", width=2),
        Column("Dates", width=3),
        Column("Readings", "right"),
        Column("Greatest loss of thickness", "right", 2),
    )
    note = inline("Loss is counted against the thickness as built; a reading above it counts as none.")
    return [Heading("Thickness surveys"), Table(columns, tuple(rows), note=note)] if rows else []
