"""Prices by item, with shared services apportioned, and what follows where work is put off."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.edition import Block, Column, Heading, Part, Row, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.parts.by_section import by_section
from tenderwright.pricing.money import total, written
from tenderwright.pricing.price import PricedItem
from tenderwright.quantities.customs import month

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
        f"{desk.tender.currency}, prices of {month(estimate.base_month)}, options, contingent quantities and "
        f"provisional sums counted. Shared services are spread {estimate.shared_rule}; both columns of totals agree "
        "to the cent."
    )
    blocks: list[Block] = [Table(columns, tuple(rows), note=note), *_deferrals(desk)]
    return Part("prices", "", "Prices by item", "schedule", OWNER, tuple(blocks))


def _priced_row(desk: OwnerDesk, one: PricedItem) -> Row:
    shared = "shared" if one.is_shared else written(one.shared)
    loaded = "–" if one.is_shared else written(one.loaded)
    name = inline(f"{one.item.number} {one.item.title}")
    anchor = desk.anchor("item", one.item.number)
    return Row((name, inline(written(one.direct)), inline(shared), inline(loaded)), anchor=anchor)


def _sum_row(title: str, items: Sequence[PricedItem], weight: str) -> Row:
    direct = total([one.direct for one in items])
    shared = total([one.shared for one in items])
    loaded = total([one.loaded for one in items])
    cells = (inline(title), inline(written(direct)), inline(written(shared)), inline(written(loaded)))
    return Row(cells, "total" if weight == "total" else "subtotal")


def _deferrals(desk: OwnerDesk) -> list[Block]:
    blocks: list[Block] = []
    for item in desk.package.items:
        if item.deferral and not item.withdrawn:
            blocks += [Heading(f"{item.number} {item.title}", 3), desk.prose(item.deferral)]
    return [Heading("What follows if work is put off"), *blocks] if blocks else []
