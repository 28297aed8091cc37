"""The schedule of prices, as it stands in the price form."""

from __future__ import annotations

from decimal import Decimal

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.parts.item_tables import line_width
from tenderwright.documents.price_form import FormLine, PriceForm
from tenderwright.pricing.money import in_currency, written
from tenderwright.pricing.price import Estimate
from tenderwright.quantities.display import shown_unit


def schedule(desk: Desk, form: PriceForm) -> Part:
    """Compose the schedule of prices, priced where there is an estimate."""
    blocks: list[Block] = [
        Paragraph(
            inline(
                "Prices are written in the price form (price-form.xlsx), which holds these lines under these numbers."
            )
        )
    ]
    for section in form.sections:
        if section.lines:
            blocks += [
                Heading(f"{section.code}  {section.title}"),
                Paragraph(inline(section.note)),
                _table(desk, section.lines),
            ]
    if desk.estimate:
        blocks += _totals(desk, desk.estimate)
    return Part("schedule", "11", "Schedule of prices", "schedule", "Prices", tuple(blocks))


def _table(desk: Desk, lines: tuple[FormLine, ...]) -> Table:
    columns = [
        Column("Line", width=line_width([line.number for line in lines], 0.9)),
        Column("What is priced", width=5.4),
        Column("Quantity", "decimal", 1.2),
        Column("Unit", width=1),
    ]
    priced = {line.number: line for line in desk.estimate.lines} if desk.estimate else {}
    if desk.estimate:
        columns += [Column("Rate", "decimal", 1.3), Column("Amount", "decimal", 1.5)]
    rows = []
    for line in lines:
        unit = "sum" if line.unit == "lump sum" else shown_unit(line.unit)
        number = inline(desk.item_ref(line.item, line.number))
        text = line.description
        if line.fixed_amount is not None and not desk.estimate:
            text += f" (the owner's fixed sum: {in_currency(desk.tender.currency, line.fixed_amount)})"
        cells = [number, inline(text), inline("–" if line.of else f"{line.quantity:f}"), inline(unit)]
        if desk.estimate:
            found = priced.get(line.number)
            cells += [inline(written(found.rate) if found else "–"), inline(written(found.amount) if found else "–")]
        rows.append(Row(tuple(cells)))
    if desk.estimate:
        total = sum((priced[line.number].amount for line in lines if line.number in priced), Decimal("0.00"))
        rows.append(
            Row((inline(""), inline("Section"), inline(""), inline(""), inline(""), inline(written(total))), "total")
        )
    return Table(tuple(columns), tuple(rows), small=True)


def _totals(desk: Desk, estimate: Estimate) -> list[Block]:
    rows = (
        Row((inline("Base: all that is contracted for at award"), inline(written(estimate.base)))),
        Row(
            (
                inline("Evaluated price by the published rule, before days, towing and visits"),
                inline(written(estimate.evaluated)),
            )
        ),
        Row(
            (
                inline(f"Contingency held by the owner. {estimate.contingency_why}"),
                inline(written(estimate.contingency)),
            )
        ),
        Row((inline("Base with contingency"), inline(written(estimate.base + estimate.contingency))), "total"),
    )
    columns = (Column("", width=5), Column(desk.tender.currency, "decimal", 1.5))
    return [Heading("Totals"), Table(columns, rows, note=inline(f"Prices of {estimate.base_month}."))]
