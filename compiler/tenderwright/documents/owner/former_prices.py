"""Earlier dockings as only the owner reads of them: the yard, what was paid, and what is to be said of its work."""

from __future__ import annotations

from decimal import ROUND_DOWN, Decimal

from tenderwright.documents.edition import Block, Column, Facts, Heading, Part, Row, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.prices_by_item import OWNER
from tenderwright.model.closing import Closing, Paid
from tenderwright.model.history import EarlierDocking
from tenderwright.pricing.money import total, written
from tenderwright.quantities.display import shown_unit


def former_prices(desk: OwnerDesk) -> Part | None:
    """Compose what the owner alone reads of earlier dockings, the latest first; None without any."""
    blocks: list[Block] = []
    for docking in desk.package.history:
        blocks += _docking(desk, docking)
    title = "Earlier dockings: yards and prices paid"
    return Part("former-prices", "12.9", title, "schedule", OWNER, tuple(blocks)) if blocks else None


def _docking(desk: OwnerDesk, docking: EarlierDocking) -> list[Block]:
    yard = ", ".join(word for word in (docking.yard, docking.place) if word)
    blocks: list[Block] = [Heading(f"Docking of {docking.docked.year}"), Facts((("Yard", inline(yard)),))]
    closing = desk.foresight.papers.closing_of(docking.docking) if desk.foresight is not None else None
    if closing is not None:
        told = desk.of_tender(closing.tender)
        blocks += _prices(told, closing)
        blocks += [told.prose(closing.remarks)] if closing.remarks is not None else []
    return blocks


def _prices(desk: OwnerDesk, closing: Closing) -> list[Block]:
    """Compose what was paid; with a column of rates where any is told, and with the causes of growth where they are."""
    rated = any(paid.rate is not None for paid in closing.paid)
    rows = tuple(_price(desk, paid, rated=rated) for paid in closing.paid)
    columns = (
        Column("Work", width=3.6),
        Column("Compare", width=1.1),
        Column("Quantity", width=1.8),
        *([Column("For a unit", "right", 1.4)] if rated else []),
        Column(f"Paid, {closing.currency}", "decimal", 1.4),
        Column("Of which growth", "decimal", 1.4),
    )
    return [Table(columns, rows, caption="Prices paid", small=True), *_growth(closing)] if rows else []


def _price(desk: OwnerDesk, paid: Paid, *, rated: bool) -> Row:
    cells = [
        inline(paid.work),
        inline(desk.ref(paid.item)) if paid.item else inline("–"),
        inline(paid.quantity or "–"),
        *([inline(_rate(paid))] if rated else []),
        inline(written(paid.amount)),
        inline(written(paid.growth) if paid.growth is not None else "–"),
    ]
    return Row(tuple(cells))


def _rate(paid: Paid) -> str:
    if paid.rate is None:
        return "–"
    if paid.unit == "each":
        return f"{rate_written(paid.rate)} each"
    return f"{rate_written(paid.rate)}/{shown_unit(paid.unit)}" if paid.unit else rate_written(paid.rate)


def rate_written(rate: Decimal) -> str:
    """Write a rate with its two decimals, or up to four where they are needed."""
    more = f"{rate:f}".partition(".")[2][2:]
    return written(rate.quantize(Decimal("0.01"), ROUND_DOWN)) + more if more else written(rate)


def _growth(closing: Closing) -> list[Block]:
    """Compose the growth of all works by cause, the greatest first, where any price tells its causes."""
    sums: dict[str, list[Decimal]] = {}
    for one in (one for paid in closing.paid for one in paid.growth_causes):
        sums.setdefault(one.cause, []).append(one.amount)
    rows = [
        Row((inline(cause), inline(str(len(found))), inline(written(total(found)))))
        for cause, found in sorted(sums.items(), key=lambda one: (-abs(total(one[1])), one[0]))
    ]
    columns = (
        Column("Cause", width=4),
        Column("Works", "right"),
        Column(f"Growth, {closing.currency}", "decimal", 1.6),
    )
    return [Table(columns, tuple(rows), caption="Growth by cause", small=True)] if rows else []
