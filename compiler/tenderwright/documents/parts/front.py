"""Cover, contents, revision record and the consolidated lists."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from datetime import date

from tenderwright.documents.award_rule import BEGINS, afterwards, parts_counted
from tenderwright.documents.desk import Desk, capital, joined
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
    Table,
    inline,
)
from tenderwright.documents.parts.contract import contract_terms
from tenderwright.documents.parts.to_be_written import to_be_written
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.item import Item
from tenderwright.model.kinds import SERVICES
from tenderwright.model.services import service_answers
from tenderwright.model.tender import Drawing, ServiceAnswer
from tenderwright.planning.due import deliveries_due
from tenderwright.planning.inspection.points import points_of
from tenderwright.quantities.customs import day

FRONT = "Front matter"
RULES = "Rules and prices"
ANNEXES = "Annexes"


def cover(desk: Desk) -> Part:
    """Compose the cover; the writer sets title, facts and stamp, which belong to the edition."""
    return Part("cover", "", desk.tender.tender.title, "cover", FRONT, (), audience="yard")


def contents() -> Part:
    """Compose the contents, which the writer fills once the pages are counted."""
    return Part("contents", "", "Contents", "contents", FRONT, (), audience="yard")


def cover_facts(desk: Desk) -> tuple[tuple[str, str], ...]:
    """Give what the cover lists."""
    tender = desk.tender
    dates, plan = tender.dates, tender.programme
    visit = dates.site_visit
    facts = [
        ("Ship", tender.ship),
        ("Owner", ", ".join(filter(None, (tender.owner.name, tender.owner.address)))),
        ("Lying at", tender.owner.place),
        ("Tender", tender.tender.number),
        ("Issued", _open(dates.issued)),
    ]
    if visit:
        facts.append(("Site visit", day(visit.date) + (", mandatory" if visit.mandatory else "")))
        if visit.where:
            facts.append(("Visitors meet", visit.where))
    if dates.questions_until:
        facts.append(("Questions until", day(dates.questions_until)))
    facts.append(("Closing", _open(dates.closing)))
    if dates.valid:
        facts.append(("Bids stay open", desk.quantity(dates.valid).replace(" d", " days")))
    if plan is not None:
        facts.append(("Docking", f"{day(plan.docking)} to {day(plan.undocking)}"))
    return tuple(facts)


def _open(when: date | None) -> str:
    return day(when) if when is not None else TO_BE_WRITTEN


def revision_record(desk: Desk) -> Part:
    """Compose the revision record, the addenda, and how the tender is read and judged."""
    tender = desk.tender
    rows = [Row((inline("0"), inline(_open(tender.dates.issued)), inline("First issue")))]
    rows += [Row((inline(str(a.number)), inline(day(a.date)), inline(a.summary))) for a in tender.addenda]
    blocks: list[Block] = [
        *to_be_written(desk.package.todos),
        Table((Column("Revision", width=1), Column("Date", width=1.6), Column("What it does", width=6)), tuple(rows)),
        *_revised_items(desk),
        Heading("How to read this specification"),
        Paragraph(
            inline(
                "Every item starts a page and keeps its number for the life of the tender; gaps are left on purpose. "
                "Requirements are numbered within the item, and references go to item and paragraph. Standing text is "
                "given once, in ",
                desk.part("general-requirements"),
                ". A price is asked only for the lines that an item lists as lines to price; ",
                desk.part("schedule"),
                " and the price form hold them under the same numbers.",
            )
        ),
        Heading("Questions"),
        Paragraph(inline(_ask(desk), *_answers(desk))),
        Heading("Rule of the evaluated price"),
        *rule_of_award(desk),
        Paragraph(inline(f"Where extension and rate disagree: {tender.award.arithmetic}.")),
    ]
    if tender.award.criteria:
        blocks += [
            Heading("What passes or fails before price"),
            Bullets(tuple(inline(entry) for entry in tender.award.criteria)),
        ]
    blocks += contract_terms(desk)
    return Part(
        "revision-record",
        "",
        "Revision record and rules of this tender",
        "front",
        RULES,
        tuple(blocks),
        audience="yard",
    )


def rule_of_award(desk: Desk) -> list[Block]:
    """Give the rule of the evaluated price: the sentences written from what is counted, then the owner's own words."""
    return [
        Paragraph(inline(BEGINS)),
        Bullets(tuple(inline(words) for words in parts_counted(desk))),
        Paragraph(inline(" ".join(afterwards(desk)))),
        desk.prose(desk.tender.award.evaluated),
    ]


def _ask(desk: Desk) -> str:
    """Say to whom bidders put questions, and until when."""
    owner, until = desk.tender.owner, desk.tender.dates.questions_until
    where = f", {owner.contact}" if owner.contact else ""
    last = f", until {day(until)}" if until else ""
    return (
        f"Questions go in writing to the {owner.representative[:1].lower()}{owner.representative[1:]}{where}{last}. "
        "Every answer is given to all yards alike, and who asked is not told; what it changes is changed in the item "
        "or clause itself, by an addendum."
    )


def _answers(desk: Desk) -> Inline:
    if not any(one.answer is not None for one in desk.package.questions):
        return ()
    return inline(" What was answered so far stands in ", desk.part("questions"), ".")


def _revised_items(desk: Desk) -> list[Block]:
    """Name the items that were revised, by their revision, and those withdrawn, in a line each."""
    by_revision: dict[int, list[Item]] = {}
    for item in desk.package.items:
        if item.revision and not item.withdrawn:
            by_revision.setdefault(item.revision, []).append(item)
    facts = tuple((f"Revision {number}", _named(desk, items)) for number, items in sorted(by_revision.items()))
    blocks: list[Block] = [Facts(facts)] if facts else []
    for item in desk.package.items:
        if item.withdrawn:
            words = inline(f"Withdrawn: {item.number} {item.title}.")
            blocks.append(Paragraph(words, anchor=desk.anchor("item", item.number)))
    return [Heading("Items revised and withdrawn"), *blocks] if blocks else []


def _named(desk: Desk, items: list[Item]) -> Inline:
    spans: list[Span] = []
    for item in items:
        spans += ([Span("; ")] if spans else []) + list(desk_item(desk, item))
    return tuple(spans)


def desk_item(desk: Desk, item: Item) -> Inline:
    """Give an item as a linked number and title."""
    return inline(desk.item_ref(item.number, f"{item.number} {item.title}"))


def consolidated_lists(desk: Desk) -> Part:
    """Compose the lists that gather what stands in the items, each for whoever answers for one thing in all of them."""
    blocks = [*_drawings(desk), *_deliveries(desk), *_inspections(desk), *_fabric(desk), *_services(desk)]
    return Part("lists", "", "Consolidated lists", "front", ANNEXES, tuple(blocks), audience="yard")


def _drawings(desk: Desk) -> list[Block]:
    rows, shared = [], _seen_by_most(desk.package.drawings)
    for drawing in desk.package.drawings:
        verified = "not verified" if drawing.verified == "none" else drawing.verified
        used = [use.by[1] for use in desk.links.referred_to_by("drawing", drawing.drawing) if use.by[0] == "item"]
        rows.append(
            Row(
                (
                    inline(drawing.drawing.upper()),
                    inline(drawing.title),
                    inline(drawing.revision),
                    inline(verified),
                    _kept_at(desk, drawing, shared),
                    _item_list(desk, used),
                ),
                anchor=desk.anchor("drawing", drawing.drawing),
            )
        )
    columns = (
        Column("No.", width=0.6),
        Column("Document", width=3.1),
        Column("Revision", width=1.1),
        Column("Verified as fitted", width=1.0),
        Column("File, or where it is seen", width=2.6),
        Column("Items", width=3.2),
    )
    note = inline("A document not verified as fitted is a guide only; what it shows is confirmed on board.")
    if shared:
        first = next(one.seen for one in desk.package.drawings if one.seen is not None and one.seen.text == shared)
        note = (*note, *inline(" Where they can be seen: "), *desk.words(first), *inline("."))
    return [Heading("Reference documents"), Table(columns, tuple(rows), note=note), _photographs(desk)]


def _photographs(desk: Desk) -> Paragraph:
    """Say which photographs go along."""
    many = len(desk.package.photographs)
    if not many:
        return Paragraph(inline("No photographs go along with this tender."))
    told = f"{many} photograph{'s' if many > 1 else ''}, with place, day and what each shows: "
    return Paragraph(inline(told, Span("photographs.pdf", file="photographs.pdf"), "."))


def _seen_by_most(drawings: Sequence[Drawing]) -> str:
    """Give where most documents can be seen, where that is the same of several: it is said once."""
    told = Counter(one.seen.text for one in drawings if not one.file and one.seen is not None)
    return next((text for text, times in told.most_common(1) if times > 2), "")


def _kept_at(desk: Desk, drawing: Drawing, shared: str) -> Inline:
    """Say which file goes along with the tender, or where and when the document can be seen, and who holds it."""
    held = f"held by {drawing.holder}" if drawing.holder else ""
    if (file := desk.carried(drawing.file)) is not None:
        return inline("references/", file, f"; {held}" if held else "")
    if drawing.seen is not None and drawing.seen.text == shared:
        return inline("seen as said below", f"; {held}" if held else "")
    if drawing.seen is not None:
        return (*desk.words(drawing.seen), *inline(f"; {held}" if held else ""))
    return inline(held or "–")


def _item_list(desk: Desk, numbers: list[str]) -> Inline:
    spans: list[Span] = []
    for number in sorted(dict.fromkeys(numbers), key=int):
        spans += ([Span(", ")] if spans else []) + [desk.item_ref(number)]
    return tuple(spans) or inline("–")


def _deliveries(desk: Desk) -> list[Block]:
    rows = tuple(
        Row((inline(desk.item_ref(d.item.number)), inline(d.what), inline(d.more), inline(day(d.date))))
        for d in deliveries_due(desk.package)
    )
    columns = (
        Column("Item", width=0.7),
        Column("What", width=4),
        Column("Quantity and place", width=3),
        Column("At the yard by", width=1.7),
    )
    return [Heading("Furnished by the owner"), Table(columns, rows)] if rows else []


def _inspections(desk: Desk) -> list[Block]:
    """Say where hold points, tests and reports are gathered."""
    words = "They are gathered in the inspection plan beside this specification, with the register of openings."
    if not points_of(desk.package):
        words = "No item asks for a hold or witness point, a test or a report, so there is no inspection plan."
    return [Heading("Hold points, tests and reports"), Paragraph(inline(words))]


def _fabric(desk: Desk) -> list[Block]:
    """List the fabric that matters, how it is treated and what becomes of what is taken out."""
    rows = tuple(
        Row(
            (
                inline(desk.item_ref(item.number)),
                desk.words(item.heritage.significance),
                inline(item.heritage.treatment),
                inline("returned, tagged" if item.heritage.keep_fabric else "not kept"),
                inline(item.heritage.photographs or "–"),
            )
        )
        for item in desk.package.items
        if item.heritage is not None and not item.withdrawn
    )
    columns = (
        Column("Item", width=0.7),
        Column("Fabric that matters", width=4.4),
        Column("Treatment", width=1.5),
        Column("What is removed", width=1.5),
        Column("Photographs", width=2.5),
    )
    return [Heading("Fabric and its treatment"), Table(columns, rows)] if rows else []


def _services(desk: Desk) -> list[Block]:
    """Say for each item which services of the checklist it holds, and which are left out, and why."""
    answers = service_answers(desk.package)
    held: dict[str, list[str]] = {}
    left: list[tuple[str, ServiceAnswer]] = []
    for name, answer in sorted(answers.items(), key=lambda one: SERVICES.words.index(one[0])):
        words = name.replace("-", " ")
        if answer.item is not None and not answer.why:
            held.setdefault(answer.item.name, []).append(words)
        else:
            left.append((words, answer))
    rows = [Row((_item(desk, number), inline(capital(joined(words))))) for number, words in sorted(held.items())]
    rows += [Row((_held_by(desk, one), inline(f"{capital(words)}: {one.why or '–'}"))) for words, one in left]
    columns = (Column("Where it is", width=3), Column("Service, and why where it is left out", width=6))
    note = inline("A service that is not in this tender is not to be priced.")
    return [Heading("Services, and where they are"), Table(columns, tuple(rows), note=note)] if rows else []


def _item(desk: Desk, number: str) -> Inline:
    item = desk.package.item_by_name.get(number)
    return desk_item(desk, item) if item is not None else inline(desk.item_ref(number))


def _held_by(desk: Desk, answer: ServiceAnswer) -> Inline:
    if answer.item is None:
        return inline({"no": "not in this tender"}.get(answer.answer, answer.answer))
    return _item(desk, answer.item.name)
