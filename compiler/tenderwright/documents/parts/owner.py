"""The owner's own parts: prices by item with shared services apportioned, and what the trade checks found."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.checks.context import Unjudged
from tenderwright.documents.desk import Desk, OwnerDesk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.by_section import by_section
from tenderwright.documents.parts.front import desk_item
from tenderwright.documents.parts.to_be_written import to_be_written
from tenderwright.notices import Notice
from tenderwright.notices.codes import CHECK_CODES, CODES, OWNER_CHECK_CODES
from tenderwright.pricing.money import total, written
from tenderwright.pricing.price import PricedItem
from tenderwright.shapes.todos import Todo

OWNER = "Owner's papers"


def prices_by_item(desk: OwnerDesk) -> Part:
    """Compose the price of each item with its part of the shared services."""
    estimate = desk.estimate
    rows: list[Row] = []
    for title, inside in by_section(desk, estimate.items, lambda one: one.item.item):
        rows += [Row((inline(title),), "group")] if title else []
        rows += [_priced_row(desk, one) for one in inside]
        rows += [_sum_row("Section", inside, "subtotal")] if title else []
    rows.append(_sum_row("All items", estimate.items, "total"))
    columns = (
        Column("Item", width=4.4),
        Column("Own lines", "decimal", 1.4),
        Column("Shared services", "decimal", 1.4),
        Column("With its share", "decimal", 1.4),
    )
    note = inline(
        f"{desk.tender.currency}, prices of {estimate.base_month}, options, contingent quantities and provisional sums "
        f"counted. Shared services are spread {estimate.shared_rule}; both columns of totals agree to the cent."
    )
    blocks: list[Block] = [Table(columns, tuple(rows), note=note), *_deferrals(desk)]
    return Part("prices", "12", "Prices by item", "schedule", OWNER, tuple(blocks))


def _priced_row(desk: Desk, one: PricedItem) -> Row:
    shared = "shared" if one.is_shared else written(one.shared)
    loaded = "–" if one.is_shared else written(one.loaded)
    return Row((desk_item(desk, one.item), inline(written(one.direct)), inline(shared), inline(loaded)))


def _sum_row(title: str, items: Sequence[PricedItem], weight: str) -> Row:
    direct = total([one.direct for one in items])
    shared = total([one.shared for one in items])
    loaded = total([one.loaded for one in items])
    cells = (inline(title), inline(written(direct)), inline(written(shared)), inline(written(loaded)))
    return Row(cells, "total" if weight == "total" else "subtotal")


def _deferrals(desk: Desk) -> list[Block]:
    blocks: list[Block] = []
    for item in desk.package.items:
        if item.deferral and not item.withdrawn:
            blocks += [Heading(f"{item.number} {item.title}", 3), desk.prose(item.deferral)]
    return [Heading("What follows if work is put off"), *blocks] if blocks else []


def trade_checks(notices: Sequence[Notice], unjudged: Sequence[Unjudged]) -> Part:
    """Compose the trade checks that were run, what they found, and what they could not judge."""
    rows = []
    for title, codes in (("The tender", CHECK_CODES), ("The owner's papers", OWNER_CHECK_CODES)):
        rows.append(Row((inline(title),), "group"))
        for code in codes:
            words = [f"{one.place}: {one.message}" for one in notices if one.code == code]
            words += [f"not judged, or only in part: {one.why}" for one in unjudged if one.code == code]
            rows.append(Row((inline(CODES[code].title), inline("; ".join(words) or "nothing found"))))
    blocks: list[Block] = [
        Paragraph(
            inline(
                "Rules of the trade that the package was held against. "
                "A rule that finds nothing is no proof that nothing is wrong."
            )
        ),
        Table((Column("Rule", width=3), Column("Found", width=3)), tuple(rows)),
    ]
    return Part("trade-checks", "14", "Trade checks", "record", OWNER, tuple(blocks), caution=True)


def owners_to_be_written(todos: Sequence[Todo]) -> list[Part]:
    """Compose the part that says what is open in the owner's papers; none where nothing is."""
    blocks = to_be_written(todos)[1:]
    title = "Still to be written in the owner's papers"
    return [Part("to-be-written", "15", title, "record", OWNER, tuple(blocks))] if blocks else []
