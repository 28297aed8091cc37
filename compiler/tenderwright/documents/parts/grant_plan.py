"""What an application says of people, time and risk: team, schedule, risks, maintenance, documents."""

from __future__ import annotations

from tenderwright.documents.desk import capital, joined
from tenderwright.documents.edition import Block, Bullets, Column, Facts, Heading, Inline, Paragraph, Row, Table, inline
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.documents.owner.photographs import published
from tenderwright.documents.parts.grant_work import BELOW, item_ref
from tenderwright.planning.approval_words import holds_up, in_state
from tenderwright.planning.approvals import Standing, register
from tenderwright.planning.grant_dates import PhaseDates, item_dates, milestones, phase_dates
from tenderwright.quantities.customs import day


def team(desk: ApplicationDesk) -> list[Block]:
    """Compose who answers for the work, who inspects it, and how the yard is chosen."""
    tender = desk.tender
    facts = [
        ("Owner", tender.owner.name),
        ("Represented by", capital(tender.owner.representative)),
        ("Contact", tender.owner.contact),
        ("Yard", f"chosen by tender {tender.tender.number}, bids closing on {day(tender.dates.closing)}"),
    ]
    blocks: list[Block] = [Facts(tuple((term, inline(words)) for term, words in facts if words))]
    seen: dict[str, list[str]] = {}
    for item in desk.items:
        for hold in item.holds:
            for person in hold.by:
                numbers = seen.setdefault(person, [])
                numbers += [item.number] if item.number not in numbers else []
    if seen:
        rows = [
            Row((inline(capital(person)), inline(", ".join(numbers))))
            for person, numbers in sorted(seen.items(), key=lambda pair: -len(pair[1]))
        ]
        columns = (Column("Who inspects", width=1.4), Column("Work of items", width=4))
        blocks += [Heading("Inspection"), Table(columns, tuple(rows))]
    return blocks


def schedule(desk: ApplicationDesk) -> list[Block]:
    """Compose milestones, and the days of each item."""
    applied = desk.applied
    rows = [Row((inline(day(one.date)), inline(one.what))) for one in milestones(desk.tender, applied.source)]
    blocks: list[Block] = [
        Heading("Milestones"),
        Table((Column("Day", width=1), Column("What", width=3)), tuple(rows)),
    ]
    dates = item_dates(applied.chosen, desk.schedule)
    blocks += _phases(desk, phase_dates(applied.grant, dates))
    if desk.schedule is None or not any(one.begins for one in dates):
        words = "The days of each item follow from the yard's programme, between docking and undocking."
        return [*blocks, Paragraph(inline(words))]
    items = [
        Row(
            (
                item_ref(desk, one.item),
                inline(day(one.begins)),
                inline(day(one.ends)),
                inline("yes" if one.critical else "–"),
            )
        )
        for one in dates
    ]
    columns = (
        Column("Item", width=3.4),
        Column("Begins", width=1.2),
        Column("Ends", width=1.2),
        Column("Holds undocking", width=1.4),
    )
    note = inline("By the owner's planning at likely durations; the yard's own programme comes with its bid.")
    return [*blocks, Heading("Items"), Table(columns, tuple(items), note=note)]


def _phases(desk: ApplicationDesk, dates: tuple[PhaseDates, ...]) -> list[Block]:
    numbers = {one.number for one in desk.items}
    rows = [
        Row(
            (
                inline(one.phase.title),
                inline(", ".join(item.name for item in one.phase.items if item.name in numbers)),
                inline(day(one.begins)),
                inline(day(one.ends)),
            )
        )
        for one in dates
    ]
    columns = (
        Column("Phase", width=2.6),
        Column("Items", width=2.6),
        Column("Begins", width=1.2),
        Column("Ends", width=1.2),
    )
    return [Heading("Phases"), Table(columns, tuple(rows))] if rows else []


def approvals(desk: ApplicationDesk) -> list[Block]:
    """Compose the consents that bear on the chosen items, with what each holds up and how far it is."""
    kept = register(desk.papers, desk.package, desk.schedule)
    rows = [
        Row(
            (
                inline(one.approval.title),
                inline(one.approval.given_by),
                inline(capital(holds_up(one))),
                inline(capital(in_state(one))),
            )
        )
        for one in (kept.standings if kept is not None else ())
        if _bears_on(desk, one)
    ]
    columns = (
        Column("Consent or permission", width=2.6),
        Column("Who gives it", width=2.2),
        Column("Needed before", width=2.4),
        Column("How far it is", width=2.2),
    )
    note = inline("As planned and recorded by the owner; whoever gives a consent decides.")
    return [Heading("Consents and permissions"), Table(columns, tuple(rows), note=note)] if rows else []


def _bears_on(desk: ApplicationDesk, one: Standing) -> bool:
    """Tell whether an approval is of the chosen items, or of the docking, and not the word of another funder."""
    source, asked = one.approval.source, desk.applied.source
    if source is not None and (asked is None or source.name != asked.source):
        return False
    items = {item.name for item in one.approval.items}
    return not items or bool(items & {item.number for item in desk.items})


def risks(desk: ApplicationDesk) -> list[Block]:
    """Compose what may go wrong with the chosen items, and what is done about it; in words, without likelihoods."""
    rows = []
    more: list[Block] = []
    for risk in desk.risks:
        item = desk.package.item_by_name.get(risk.item.name) if risk.item is not None else None
        answer = (desk.first_paragraph(risk.answer) or BELOW) if risk.answer is not None else inline("–")
        more += desk.after_first_paragraph(risk.answer) if risk.answer is not None else []
        where = item_ref(desk, item) if item is not None else inline("–")
        rows.append(Row((where, desk.first_sentence(risk.what), answer)))
    columns = (Column("Item", width=1.7), Column("What may happen", width=3), Column("What is done about it", width=3))
    return [Table(columns, tuple(rows)), *more] if rows else []


def maintenance(desk: ApplicationDesk) -> list[Block]:
    """Compose the records that the yard hands over, from which the work is looked after."""
    rows = [
        Row((item_ref(desk, item), inline(capital(report.report)), inline(day(report.due.on(desk.tender.events)))))
        for item in desk.items
        for report in item.reports
    ]
    if not rows:
        return []
    columns = (Column("Item", width=2), Column("Record", width=3), Column("Due", width=1.2))
    return [Heading("Records handed over"), Table(columns, tuple(rows))]


def documents(desk: ApplicationDesk) -> list[Block]:
    """Compose the list of documents that the items rest on, and of photographs."""
    used = {reference.name for item in desk.items for reference in item.references}
    found = [drawing for drawing in desk.package.drawings if drawing.drawing in used]
    rows = [
        Row(
            (
                inline(drawing.drawing.upper()),
                inline(drawing.title),
                inline(capital(drawing.kind)),
                inline(drawing.revision),
                inline(day(drawing.date)),
            )
        )
        for drawing in found
        if drawing.kind != "photograph set"
    ]
    columns = (
        Column("No.", width=0.7),
        Column("Document", width=3.4),
        Column("Kind", width=1),
        Column("Revision", width=1.3),
        Column("Date", width=1.3),
    )
    blocks: list[Block] = [Heading("Documents"), Table(columns, tuple(rows))] if rows else []
    listed = _photographs(desk)
    shown = published(desk, desk.papers, _MOST_SHOWN, [item.number for item in desk.items], large=True)
    if listed or shown is not None:
        blocks.append(Heading("Photographs"))
    blocks += [Bullets(tuple(listed))] if listed else []
    return [*blocks, *([shown] if shown is not None else [])]


_MOST_SHOWN = 4
"""Photographs that a paper for a funder shows, of those that may be published."""


def _photographs(desk: ApplicationDesk) -> list[Inline]:
    sets = [
        inline(f"{drawing.drawing.upper()} {drawing.title}, {day(drawing.date)}")
        for drawing in desk.package.drawings
        if drawing.kind == "photograph set"
    ]
    own = [inline(capital(words)) for words in desk.applied.grant.photographs]
    planned: list[Inline] = []
    for item in desk.items:
        listed = [entry for entry in item.photographs if not _names_a_document(desk, entry)]
        listed += [item.heritage.photographs] if item.heritage is not None and item.heritage.photographs else []
        if listed:
            planned.append((*item_ref(desk, item), *inline(f", taken during the work: {joined(listed)}")))
    return [*sets, *own, *planned]


def _names_a_document(desk: ApplicationDesk, entry: str) -> bool:
    return any(drawing.drawing == entry for drawing in desk.package.drawings)
