"""The schedule of prices, as it stands in the price form."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.parts.front import RULES
from tenderwright.documents.parts.item_tables import line_width
from tenderwright.documents.price_form import FormSection, PriceForm
from tenderwright.pricing.money import in_currency
from tenderwright.pricing.quantity import written_number
from tenderwright.quantities.display import shown_unit


def schedule(desk: Desk, form: PriceForm) -> Part:
    """Compose the schedule of prices."""
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
                _table(desk, section),
            ]
    if form.withdrawn:
        blocks.append(Paragraph(inline(f"Withdrawn, nothing to price: {'; '.join(form.withdrawn)}.")))
    return Part("schedule", "", "Schedule of prices", "schedule", RULES, tuple(blocks), audience="yard")


def _table(desk: Desk, section: FormSection) -> Table:
    lines = section.lines
    columns = (
        Column("Line", width=line_width([line.number for line in lines], 0.9)),
        Column("What is priced", width=5.4),
        Column("Quantity", "decimal", 1.2),
        Column("Unit", width=1),
    )
    rows, item = [], ""
    for line in lines:
        unit = "sum" if line.unit == "lump sum" else shown_unit(line.unit)
        number = inline(desk.item_ref(line.item, line.number))
        text = line.text
        if line.fixed_amount is not None:
            text += f" (the owner's fixed sum: {in_currency(desk.tender.currency, line.fixed_amount)})"
        words = (text,) if line.item == item else (Span(f"{line.title}: ", strong=True), text)
        item = line.item
        rows.append(
            Row((number, inline(*words), inline("–" if line.of else written_number(line.quantity)), inline(unit)))
        )
    return Table(columns, tuple(rows), anchor=f"lines-section-{section.code}", small=True)
