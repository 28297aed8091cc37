"""A work item, which starts a page and is numbered within itself."""

from __future__ import annotations

import re

from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Heading, Inline, Paragraph, Part, Span, Step, Steps, inline
from tenderwright.documents.parts.coatings import prints, scheme_blocks, scheme_line
from tenderwright.documents.parts.item_head import item_head
from tenderwright.documents.parts.item_lines import item_lines
from tenderwright.documents.parts.item_pictures import item_pictures
from tenderwright.documents.parts.item_points import item_points
from tenderwright.documents.parts.item_tables import item_tables
from tenderwright.documents.parts.questions import answered
from tenderwright.documents.photograph_list import shown_of
from tenderwright.documents.precautions import PRECAUTIONS, anchor_of, named
from tenderwright.linking.prose import parse_prose
from tenderwright.model.build import Prose
from tenderwright.model.item import Item
from tenderwright.model.tender import Drawing
from tenderwright.quantities.customs import day


def item_part(desk: Desk, item: Item) -> Part:
    """Compose one item: what it is, its lines to price, what is asked, and what is held, tested and handed over.

    An item that is withdrawn has a page only among replacement pages, in the place of the one issued before.
    """
    blocks: list[Block] = [Paragraph(inline("This item is withdrawn. Its number stays taken."))]
    if not item.withdrawn:
        blocks = [*item_head(desk, item), *_body(desk, item)]
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
        on_screen=() if item.withdrawn else tuple(_referred(desk, item)),
    )


def _touches_safety(item: Item) -> bool:
    return bool(item.hazards) or item.precautions is not None or item.safety or item.phase == "dry"


def _group(desk: Desk, item: Item) -> str:
    for section in desk.tender.sections:
        if section.from_ <= item.item <= section.to:
            return f"Work items: {section.title}"
    return "Work items"


def _body(desk: Desk, item: Item) -> list[Block]:
    return [
        *_told(desk, "Scope", item.scope),
        *_told(desk, "Where", item.where.text),
        *item_lines(desk, item),
        *_requirements(desk, item),
        *_decision(desk, item),
        *_access(desk, item),
        *_furnished(desk, item),
        *_schemes(desk, item),
        *_precautions(desk, item),
        *_heritage(desk, item),
        *item_points(desk, item),
        *item_pictures(desk, item),
        *_references(desk, item),
        *item_tables(desk, item),
    ]


def _label(text: str) -> Heading:
    return Heading(text, 3, in_margin=True)


def _told(desk: Desk, label: str, text: Prose | None) -> list[Block]:
    """Give a text of its own with its label in the margin."""
    return [_label(label), desk.prose(text)] if text is not None else []


def _requirements(desk: Desk, item: Item) -> list[Block]:
    if not item.requirements:
        return []
    marks = _hold_marks(item)
    steps = tuple(
        Step(f"{item.number}.{n}", f"item-{item.number}-{n}", desk.prose(text), marks.get(n, ""))
        for n, text in enumerate(item.requirements, start=1)
    )
    return [Heading("Requirements", 3), Steps(steps)]


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
    decides = inline(f"{capital(gate.who)}, within {desk.quantity(gate.within)}")
    return [_label("Decision"), *_after_words(desk, decides, gate.on)]


def _access(desk: Desk, item: Item) -> list[Block]:
    access = item.access
    if access is None:
        return []
    return [*_told(desk, "Staging", access.staging), *_told(desk, "In the way", access.interference)]


def _furnished(desk: Desk, item: Item) -> list[Block]:
    blocks: list[Block] = []
    if item.owner_furnished:
        entries = []
        for given in item.owner_furnished:
            by = f"at the yard by {day(given.delivered.on(desk.tender.events))}" if given.delivered else ""
            more = ", ".join(filter(None, (desk.quantity(given.quantity), by, given.where)))
            entries.append(f"{given.what} ({more})" if more else given.what)
        blocks += [_label("Owner brings"), Paragraph(inline(f"{'; '.join(entries)}."))]
    if item.yard_furnished:
        entries = []
        for asked in item.yard_furnished:
            more = ", ".join(filter(None, (desk.quantity(asked.quantity), asked.standard)))
            entries.append(f"{asked.what} ({more})" if more else asked.what)
        blocks += [_label("Yard brings"), Paragraph(inline(f"{'; '.join(entries)}."))]
    return blocks


def _schemes(desk: Desk, item: Item) -> list[Block]:
    blocks: list[Block] = []
    for reference in item.schemes:
        scheme = next((s for s in desk.package.schemes if s.scheme == reference.name), None)
        if scheme is not None:
            blocks += scheme_line(desk, scheme) if prints(desk, scheme) is None else scheme_blocks(desk, scheme)
    return blocks


def _precautions(desk: Desk, item: Item) -> list[Block]:
    """Name the hazards with the clauses that hold their precautions, and say in words what is special here."""
    if not item.hazards and item.precautions is None:
        return []
    spans: list[Span] = []
    for hazard in item.hazards:
        spans += [Span(" · ")] if spans else []
        spans.append(Span(named(hazard), anchor_of(hazard), strong=True))
        _, clause = PRECAUTIONS[hazard]
        if number := desk.clause_number(clause):
            spans += [Span(" ("), Span(number, desk.anchor("clause", clause)), Span(")")]
    return [_label("Precautions"), *_after_words(desk, tuple(spans), item.precautions)]


def _after_words(desk: Desk, words: Inline, text: Prose | None) -> list[Block]:
    """Give words and the text that follows them, in one paragraph where the text is no more than one."""
    if text is None:
        return [Paragraph(words)]
    if _is_one_paragraph(text):
        return [Paragraph((*words, *([Span(". ")] if words else []), *desk.words(text)))]
    return [*([Paragraph(words)] if words else []), desk.prose(text)]


def _is_one_paragraph(text: Prose) -> bool:
    return [token.type for token in parse_prose(text.text)] == ["paragraph_open", "inline", "paragraph_close"]


def _heritage(desk: Desk, item: Item) -> list[Block]:
    heritage = item.heritage
    if heritage is None:
        return []
    kept = "is tagged and returned to the owner" if heritage.keep_fabric else "need not be kept"
    told = f"Treatment: {heritage.treatment}. Removed fabric {kept}."
    if heritage.photographs:
        told += f" Photographs: {heritage.photographs}."
    if _is_one_paragraph(heritage.significance):
        return [_label("Heritage"), Paragraph((*desk.words(heritage.significance), Span(f" {told}")))]
    return [_label("Heritage"), desk.prose(heritage.significance), Paragraph(inline(told))]


def _references(desk: Desk, item: Item) -> list[Block]:
    """Name in one line the documents with their revision, the items that go before, and the photographs."""
    known = {drawing.drawing: drawing for drawing in desk.package.drawings}
    spans: list[Span] = []
    for reference in item.references:
        drawing = known.get(reference.name)
        if drawing is not None:
            unsure = ", not verified as fitted" if drawing.verified == "none" else ""
            spans += [Span("; ")] if spans else []
            file = desk.carried(drawing.file)
            spans += [desk.ref(reference), Span(f" {_revision(drawing)}{unsure}")]
            spans += [Span(", "), file] if file is not None else []
    if item.depends_on:
        after = _after(desk, item)
        spans += [Span(" · after "), *after] if spans else [Span("After "), *after]
    if shown := shown_of(desk, item):
        photographs = f"{'P' if not spans else 'p'}hotograph{'s' if len(shown) > 1 else ''} {', '.join(shown)} in "
        spans += [Span(" · ")] if spans else []
        spans += [Span(photographs), Span("photographs.pdf", file="photographs.pdf")]
    return [_label("References"), Paragraph(tuple(spans), anchor=f"references-{item.number}")] if spans else []


def _revision(drawing: Drawing) -> str:
    """Give the revision of a drawing as it stands after its number; one that is a number is named as what it is."""
    return f"rev. {drawing.revision}" if drawing.revision[:1].isdigit() else drawing.revision


def _after(desk: Desk, item: Item) -> Inline:
    spans: list[Span] = [Span("item " if len(item.depends_on) == 1 else "items ")]
    for index, reference in enumerate(item.depends_on):
        spans += [Span(", ")] if index else []
        spans.append(desk.item_ref(reference.name))
    return tuple(spans)


def _referred(desk: Desk, item: Item) -> list[Block]:
    spans: list[Span] = []
    seen: set[str] = set()
    for use in desk.links.referred_to_by("item", item.number):
        kind, name = use.by
        if kind in ("package", "owner", "") or (kind == "question" and not answered(desk, name)):
            continue
        if kind == "item" and desk.package.item_by_name[name].withdrawn:
            continue  # it has no page, and no requirements to link to
        target = desk.anchor(kind, name) + (f"-{use.paragraph}" if use.paragraph else "")
        label = desk.label(kind, name) + (f".{use.paragraph}" if use.paragraph else "")
        if label not in seen:
            seen.add(label)
            spans += ([Span("; ")] if spans else []) + [Span(label, target)]
    return [Heading("Referred to by", 3), Paragraph(tuple(spans))] if spans else []
