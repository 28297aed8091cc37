"""A work item, which starts a page and is numbered within itself."""

from __future__ import annotations

import re

from tenderwright.documents.desk import Desk, capital, joined, set_units
from tenderwright.documents.edition import (
    Block,
    Bullets,
    Column,
    Facts,
    Heading,
    Inline,
    Paragraph,
    Part,
    Row,
    Span,
    Step,
    Steps,
    Table,
    inline,
)
from tenderwright.documents.parts.coatings import scheme_blocks
from tenderwright.documents.parts.item_lines import item_lines
from tenderwright.documents.parts.item_tables import item_tables
from tenderwright.documents.parts.questions import answered
from tenderwright.documents.precautions import PRECAUTIONS
from tenderwright.model.item import Item
from tenderwright.quantities.customs import day

KINDS = {
    "definite": "Definite: fully described, one price",
    "measured": "Measured: rates, measured again when done",
    "contingent": "Contingent: only on written instruction",
    "option": "Option: taken up or not by the owner",
    "provisional": "Provisional sum, set by the owner",
    "credit": "Credit to the owner",
    "owner": "Owner's work, not priced",
    "information": "Information: nothing to price",
}
_PHASES = {
    "before docking": "Afloat, before docking",
    "dry": "In dock, dry",
    "after undocking": "Afloat, after undocking",
    "any": "At any time",
}


def item_part(desk: Desk, item: Item) -> Part:
    """Compose one item in the order that yards expect."""
    blocks: list[Block] = [Paragraph(inline("This item is withdrawn. Its number stays taken."))]
    if not item.withdrawn:
        blocks = [Facts(tuple(_head(desk, item))), *_body(desk, item)]
    revision = f"Revision {item.revision}" if item.revision else ""
    return Part(
        desk.anchor("item", item.number),
        item.number,
        item.title,
        "item",
        _group(desk, item),
        tuple(blocks),
        caution=_touches_safety(item),
        revision=revision,
        audience="yard",
    )


def _touches_safety(item: Item) -> bool:
    return bool(item.hazards) or item.precautions is not None or item.safety or item.phase == "dry"


def _group(desk: Desk, item: Item) -> str:
    for section in desk.tender.sections:
        if section.from_ <= item.item <= section.to:
            return f"Work items: {section.title}"
    return "Work items"


def _body(desk: Desk, item: Item) -> list[Block]:
    blocks: list[Block] = [Heading("Scope"), desk.prose(item.scope)]
    blocks += _references(desk, item)
    blocks += _requirements(desk, item)
    blocks += _decision(desk, item)
    blocks += _access(desk, item)
    if item.schemes:
        blocks.append(Heading("Coating scheme" if len(item.schemes) == 1 else "Coating schemes"))
    for reference in item.schemes:
        scheme = next((s for s in desk.package.schemes if s.scheme == reference.name), None)
        if scheme is not None:
            blocks += scheme_blocks(desk, scheme)
    blocks += _furnished(desk, item)
    blocks += _precautions(desk, item)
    blocks += _heritage(desk, item)
    blocks += _tests(desk, item)
    blocks += _holds(desk, item)
    blocks += _reports(desk, item)
    blocks += item_tables(desk, item)
    blocks += item_lines(desk, item)
    blocks += _referred(desk, item)
    return blocks


def _head(desk: Desk, item: Item) -> list[tuple[str, Inline]]:
    where, kind = item.where, KINDS[item.kind]
    facts: list[tuple[str, Inline]] = [("Kind", inline(kind)), ("When", inline(_when(item)))]
    for label, on in (("Begins", item.begins_on), ("Done by", item.ends_on)):
        if on is not None:
            facts.append((label, inline(f"{on} ({day(on.on(desk.tender.events))})")))
    if item.duration is not None:
        facts.append(("Likely takes", inline(desk.quantity(item.duration))))
    place: list[str | Span] = []
    if where.extent:
        place.append(str(where.extent))
    if where.side:
        place.append((", " if place else "") + {"both": "both sides"}.get(where.side, where.side))
    for references in (where.zones, where.tanks, where.openings, where.strakes):
        for reference in references:
            place += [", " if place else "", desk.ref(reference)]
    if place:
        facts.append(("Where", inline(*place)))
    if where.boundary_of:
        facts.append(("On the boundary of", desk.refs(where.boundary_of)))
    if item.depends_on:
        facts.append(("After", desk.refs(item.depends_on)))
    if item.option_until:
        date = day(item.option_until.on(desk.tender.events))
        facts.append(("Taken up by", inline(f"{item.option_until} ({date})")))
    if item.safety:
        facts.append(("Standing", inline("Needed for safety or to keep her afloat")))
    return facts


def _when(item: Item) -> str:
    begins, ends = _PHASES[item.phase], _PHASES[item.last_phase]
    return begins if begins == ends else f"From {begins[0].lower()}{begins[1:]} to {ends[0].lower()}{ends[1:]}"


def _references(desk: Desk, item: Item) -> list[Block]:
    known = {drawing.drawing: drawing for drawing in desk.package.drawings}
    entries: list[Inline] = []
    for reference in item.references:
        drawing = known.get(reference.name)
        if drawing:
            verified = "not verified as fitted" if drawing.verified == "none" else f"verified {drawing.verified}"
            entries.append(inline(desk.ref(reference), f" {drawing.title}, revision {drawing.revision}, {verified}"))
    return [Heading("References"), Bullets(tuple(entries))] if entries else []


def _requirements(desk: Desk, item: Item) -> list[Block]:
    where = desk.prose(item.where.text) if item.where.text else None
    blocks: list[Block] = [Heading("Where in detail", 3), where] if where else []
    if not item.requirements:
        return blocks
    marks = _hold_marks(item)
    steps = tuple(
        Step(f"{item.number}.{n}", f"item-{item.number}-{n}", desk.prose(text), marks.get(n, ""))
        for n, text in enumerate(item.requirements, start=1)
    )
    return [*blocks, Heading("Requirements"), Steps(steps)]


def _hold_marks(item: Item) -> dict[int, str]:
    """Give the mark of each hold point at the first requirement that names it."""
    marks: dict[int, str] = {}
    for hold in item.holds:
        for number, text in enumerate(item.requirements, start=1):
            if re.search(rf"\b{hold.hold}\b", text.text):
                before = f"{marks[number]}, {hold.hold}" if number in marks else f"{hold.kind.upper()} {hold.hold}"
                marks[number] = before
                break
    return marks


def _decision(desk: Desk, item: Item) -> list[Block]:
    gate = item.decision
    if gate is None:
        return []
    facts = (("Who decides", inline(capital(gate.who))), ("Within", inline(desk.quantity(gate.within))))
    return [Heading("Decision"), Facts(facts), desk.prose(gate.on)]


def _access(desk: Desk, item: Item) -> list[Block]:
    access = item.access
    if access is None:
        return []
    blocks: list[Block] = [Heading("Access")]
    if access.staging:
        blocks += [Heading("Staging", 3), desk.prose(access.staging)]
    if access.interference:
        blocks += [Heading("In the way", 3), desk.prose(access.interference)]
    return blocks


def _furnished(desk: Desk, item: Item) -> list[Block]:
    blocks: list[Block] = []
    if item.owner_furnished:
        rows = tuple(
            Row(
                (
                    inline(entry.what),
                    inline(desk.quantity(entry.quantity)),
                    inline(day(entry.delivered.on(desk.tender.events)) if entry.delivered else "–"),
                    inline(entry.where or "–"),
                )
            )
            for entry in item.owner_furnished
        )
        columns = (
            Column("What", width=4),
            Column("Quantity", "right"),
            Column("At the yard by", width=1.5),
            Column("Where", width=1.6),
        )
        blocks += [Heading("Furnished by the owner"), Table(columns, rows)]
    if item.yard_furnished:
        rows = tuple(
            Row((inline(entry.what), inline(desk.quantity(entry.quantity, "–")), inline(entry.standard or "–")))
            for entry in item.yard_furnished
        )
        three = (Column("What", width=4), Column("Quantity", "right"), Column("Standard", width=3))
        blocks += [Heading("Furnished by the yard"), Table(three, rows)]
    return blocks


def _precautions(desk: Desk, item: Item) -> list[Block]:
    if not item.hazards and item.precautions is None:
        return []
    names = {clause.clause for clause in desk.package.clauses}
    entries: list[Inline] = []
    for hazard in item.hazards:
        text, clause = PRECAUTIONS[hazard]
        pieces: list[str | Span] = [Span(capital(hazard) + ". ", strong=True), text]
        if clause in names:
            pieces += [" See ", Span(desk.label("clause", clause), desk.anchor("clause", clause)), "."]
        entries.append(inline(*pieces))
    blocks: list[Block] = [Heading("Precautions")]
    if entries:
        blocks.append(Bullets(tuple(entries)))
    if item.precautions:
        blocks.append(desk.prose(item.precautions))
    return blocks


def _heritage(desk: Desk, item: Item) -> list[Block]:
    heritage = item.heritage
    if heritage is None:
        return []
    facts: list[tuple[str, Inline]] = [("Treatment", inline(capital(heritage.treatment)))]
    kept = (
        "Removed fabric is tagged and returned to the owner"
        if heritage.keep_fabric
        else "Removed fabric need not be kept"
    )
    facts.append(("Fabric", inline(kept)))
    if heritage.photographs:
        facts.append(("Photographs", inline(capital(heritage.photographs))))
    return [Heading("Heritage"), desk.prose(heritage.significance), Facts(tuple(facts))]


def _tests(desk: Desk, item: Item) -> list[Block]:
    rows = tuple(
        Row((inline(set_units(capital(test.test))), inline(capital(test.when) or "–"), desk.words(test.accept)))
        for test in item.tests
    )
    columns = (Column("Test", width=3), Column("When", width=2), Column("Passes", width=4))
    return [Heading("Tests"), Table(columns, rows)] if rows else []


def _holds(desk: Desk, item: Item) -> list[Block]:
    blocks: list[Block] = []
    for hold in item.holds:
        facts: list[tuple[str, Inline]] = [
            ("Kind and notice", inline(f"{capital(hold.kind)} point, {desk.quantity(hold.notice)} notice")),
            ("Who attends", inline(capital(joined(list(hold.by))))),
            ("Passes", desk.words(hold.accept)),
        ]
        if hold.record:
            facts.append(("Record", inline(capital(hold.record))))
        blocks += [
            Heading(f"{hold.hold}  {set_units(capital(hold.at))}", 3, f"item-{item.number}-{hold.hold.lower()}"),
            Facts(tuple(facts)),
        ]
    return [Heading("Hold and witness points"), *blocks] if blocks else []


def _reports(desk: Desk, item: Item) -> list[Block]:
    rows = tuple(
        Row(
            (
                inline(capital(r.report)),
                inline(f"{r.due} ({day(r.due.on(desk.tender.events))})"),
                inline(r.copies or "–"),
            )
        )
        for r in item.reports
    )
    columns = (Column("Report", width=4), Column("Due", width=2.6), Column("Form", width=2))
    return [Heading("Reports"), Table(columns, rows)] if rows else []


def _referred(desk: Desk, item: Item) -> list[Block]:
    spans: list[Span] = []
    seen: set[str] = set()
    for use in desk.links.referred_to_by("item", item.number):
        kind, name = use.by
        if kind in ("package", "owner", "") or (kind == "question" and not answered(desk, name)):
            continue
        if kind == "item" and desk.package.item_by_name[name].withdrawn:
            continue  # its page says that it is withdrawn, and has no requirements to link to
        target = desk.anchor(kind, name) + (f"-{use.paragraph}" if use.paragraph else "")
        label = desk.label(kind, name) + (f".{use.paragraph}" if use.paragraph else "")
        if label not in seen:
            seen.add(label)
            spans += ([Span("; ")] if spans else []) + [Span(label, target)]
    return [Heading("Referred to by"), Paragraph(tuple(spans))] if spans else []
