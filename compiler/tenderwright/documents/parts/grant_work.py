"""What an application says of the ship and of the work: significance, condition, need, work, standards, outputs."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.desk import capital
from tenderwright.documents.edition import (
    Block,
    Column,
    Facts,
    Heading,
    Inline,
    Paragraph,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.documents.parts.coatings import scheme_blocks
from tenderwright.documents.parts.item_tables import known_tables
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.item import Item
from tenderwright.planning.application import Alternative
from tenderwright.planning.grant_outputs import Output, outputs
from tenderwright.pricing.price import PricedLine
from tenderwright.pricing.quantity import written_number
from tenderwright.quantities.customs import day
from tenderwright.quantities.display import shown_unit

TREATMENTS = {
    "stabilise": "Stabilised: decay is held where it is, and nothing is made to look new",
    "preserve": "Preserved: what is there is kept and repaired",
    "rehabilitate": "Rehabilitated: made fit for her use, what is significant kept",
    "restore": "Restored: brought back to a documented earlier state",
    "replace in kind": "Replaced in kind: same material, form and method",
}

BELOW = inline("as described below")
"""Stands in a cell where a text begins with a table or a list, which follows."""


def significance(desk: ApplicationDesk) -> list[Block]:
    """Compose what the ship is and why she matters."""
    ship = desk.package.particulars
    if ship is None:
        return []
    size = ship.dimensions
    facts = [
        ("Ship", f"{ship.name}, {ship.type}, built {ship.built or TO_BE_WRITTEN}"),
        ("Builder", ship.builder),
        ("Size", f"{desk.quantity(size.length_overall)} over all, {desk.quantity(size.beam)} broad"),
        ("Lying at", desk.tender.owner.place),
    ]
    blocks: list[Block] = [Facts(tuple((term, inline(words)) for term, words in facts if words))]
    return [*blocks, desk.prose(ship.significance)] if ship.significance else blocks


def condition(desk: ApplicationDesk) -> list[Block]:
    """Compose the state that she is in, as the package says, and when she was last out of the water."""
    ship = desk.package.particulars
    blocks: list[Block] = [desk.prose(ship.status)] if ship is not None and ship.status is not None else []
    if desk.package.history:
        last = desk.package.history[0]
        where = ", ".join(word for word in (last.yard, last.place) if word)
        words = f"She was last out of the water from {day(last.docked)} to {day(last.undocked)}, at {where}."
        blocks.append(Paragraph(inline(words)))
    return blocks


def need(desk: ApplicationDesk) -> list[Block]:
    """Compose why each item is needed, and what follows if it is put off."""
    rows = [Row((item_ref(desk, item), _why(desk, item), _consequence(desk, item))) for item in desk.items]
    columns = (Column("Item", width=2.4), Column("Why it is needed", width=3.6), Column("If it is put off", width=3.4))
    blocks: list[Block] = [Heading("Need, item by item"), Table(columns, tuple(rows))]
    for item in desk.items:
        more = desk.after_first_paragraph(item.deferral) if item.deferral is not None else []
        blocks += [Heading(f"{item.number} {item.title}, if it is put off", 3), *more] if more else []
    return blocks


def _why(desk: ApplicationDesk, item: Item) -> Inline:
    worth = desk.worth(item)
    return (
        inline(worth.public) if worth is not None and worth.public else desk.first_sentence(item.scope) or inline("–")
    )


def _consequence(desk: ApplicationDesk, item: Item) -> Inline:
    return desk.first_paragraph(item.deferral) or BELOW if item.deferral is not None else inline("–")


def item_ref(desk: ApplicationDesk, item: Item) -> Inline:
    """Give an item as number and title, linked where it is described."""
    return inline(desk.item_ref(item.number, f"{item.number} {item.title}"))


def work(desk: ApplicationDesk) -> list[Block]:
    """Compose what is done, item by item, with its treatment and its quantities."""
    note = (
        f"Items keep the numbers that they have in the specification of tender {desk.tender.tender.number}, where they "
        "are described in full. Numbers of items that are not part of this application are given in words only."
    )
    blocks: list[Block] = [Paragraph(inline(note))]
    for item in desk.items:
        blocks += _item(desk, item, desk.applied.chosen.lines)
    for other in desk.applied.alternatives[1:]:
        blocks += _instead(desk, other)
    return blocks


def _instead(desk: ApplicationDesk, other: Alternative) -> list[Block]:
    """Compose what another alternative does that the first does not, and name what it leaves out."""
    its = [one.item for one in other.application.chosen.work]
    more = [item for item in its if item not in desk.items]
    less = [item for item in desk.items if item not in its]
    blocks: list[Block] = [Heading(f"Instead: {other.alternative.title}")]
    if less:
        left = _joined([item_ref(desk, item) for item in less])
        blocks.append(Paragraph((*inline("Without "), *left, *inline("."))))
    for item in more:
        blocks += _item(desk, item, other.application.chosen.lines)
    return blocks


def _item(desk: ApplicationDesk, item: Item, priced: Sequence[PricedLine]) -> list[Block]:
    blocks: list[Block] = [Heading(f"{item.number} {item.title}", 3, desk.anchor("item", item.number))]
    blocks += [desk.prose(item.scope), *known_tables(desk, item), *_heritage(desk, item), *_schemes(desk, item)]
    lines = [line for line in priced if line.item is item]
    return [*blocks, _quantities(lines)]


def _heritage(desk: ApplicationDesk, item: Item) -> list[Block]:
    heritage = item.heritage
    if heritage is None:
        return []
    facts = [("Significance", desk.first_paragraph(heritage.significance) or BELOW)]
    facts.append(("Treatment", inline(TREATMENTS[heritage.treatment])))
    if heritage.keep_fabric:
        facts.append(("Fabric", inline("What is taken out is tagged, listed and kept")))
    return [Facts(tuple(facts)), *desk.after_first_paragraph(heritage.significance)]


def _schemes(desk: ApplicationDesk, item: Item) -> list[Block]:
    """Compose the schemes that the item applies, each in full where the first of the items applies it."""
    blocks: list[Block] = []
    for reference in item.schemes:
        scheme = next(one for one in desk.package.schemes if one.scheme == reference.name)
        listing = [one for one in desk.items if any(other.name == reference.name for other in one.schemes)]
        first = listing[0] if listing else item
        if first is item:
            blocks += [block for block in scheme_blocks(desk, scheme) if not isinstance(block, Heading)]
        else:
            told = f" as printed with item {first.number}"
            blocks.append(Paragraph(inline(Span(scheme.name or scheme.scheme, strong=True), told)))
    return blocks


def _quantities(lines: list[PricedLine]) -> Table:
    rows = [
        Row((inline(line.number), _line_text(line), *quantity_cells(line), inline(line.quantity.basis or "–")))
        for line in lines
    ]
    columns = (
        Column("Line", width=0.8),
        Column("What is done", width=4.6),
        Column("Quantity", "decimal", 1.1),
        Column("Unit", width=0.9),
        Column("Basis", width=1.1),
    )
    return Table(columns, tuple(rows), small=True)


def _line_text(line: PricedLine) -> Inline:
    kind = line.item.kind_of(line.line)
    more = {"contingent": "; only where it is found and instructed", "option": "; option"}.get(kind, "")
    return inline(line.line.text + more)


def quantity_cells(line: PricedLine) -> tuple[Inline, Inline]:
    """Give quantity and unit of a line as cells."""
    if line.quantity.unit.startswith("lump"):
        return inline("1"), inline("sum")
    return inline(written_number(line.quantity.number)), inline(shown_unit(line.quantity.unit))


def standards(desk: ApplicationDesk) -> list[Block]:
    """Compose the treatment of each item that touches historic fabric, and the clauses that name the standards."""
    blocks: list[Block] = []
    named = {one.name for one in desk.applied.grant.standards}
    for clause in desk.package.clauses:
        if clause.clause in named:
            blocks += [Heading(f"From the contract: {clause.title}"), desk.prose(clause.text)]
    rows = []
    for treatment, words in TREATMENTS.items():
        items = [item for item in desk.items if item.heritage is not None and item.heritage.treatment == treatment]
        if items:
            numbers: list[Inline] = [item_ref(desk, item) for item in items]
            rows.append(Row((inline(words), _joined(numbers))))
    if rows:
        columns = (Column("Treatment", width=2), Column("Items", width=3))
        blocks += [Heading("Treatments"), Table(columns, tuple(rows))]
    return blocks


def _joined(pieces: list[Inline]) -> Inline:
    found: Inline = ()
    for place, piece in enumerate(pieces):
        found += (inline("; ") if place else ()) + piece
    return found


def measured_outputs(desk: ApplicationDesk) -> list[Block]:
    """Compose what will have been done that can be counted."""
    found = outputs(desk.applied.grant, desk.applied.chosen)
    named = [one for one in found if not one.line]
    lines = [one for one in found if one.line]
    blocks: list[Block] = []
    if named:
        blocks += [Heading("In short"), _outputs(named)]
    if lines:
        note = inline(
            "Quantities of the tender. What is contingent is done only where it is found and instructed in writing; it "
            "is counted here as tendered."
        )
        blocks += [Heading("Line by line"), _outputs(lines, note)]
    return blocks


def _outputs(found: list[Output], note: Inline = ()) -> Table:
    rows = [
        Row(
            (
                inline(capital(one.what)),
                inline(one.line or ("stated" if one.stated else "sum of lines")),
                inline(written_number(one.ordered) if one.ordered or not one.contingent else "–"),
                inline(written_number(one.contingent) if one.contingent else "–"),
                inline(shown_unit(one.unit)),
            )
        )
        for one in found
    ]
    columns = (
        Column("Output", width=4.6),
        Column("From", width=1.1),
        Column("Ordered", "decimal", 1.1),
        Column("Contingent", "decimal", 1.1),
        Column("Unit", width=0.8),
    )
    return Table(columns, tuple(rows), note=note)
