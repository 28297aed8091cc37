"""The owner's prices set into finished parts of the specification, at the lines of items and in the schedule."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal

from tenderwright.documents.edition import Block, Column, Edition, Heading, Paragraph, Part, Row, Table, inline, plain
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.owner.sums import Sum, sums
from tenderwright.documents.parts.schedule import schedule
from tenderwright.documents.price_form import FormLine, PriceForm
from tenderwright.pricing.money import total, written
from tenderwright.pricing.price import Estimate, PricedLine
from tenderwright.quantities.customs import month

LINES = "lines-"
"""How the anchor of a table of lines begins: `lines-410` at an item, `lines-section-C` in the schedule."""


def priced_edition(yard: Edition, estimate: Estimate, currency: str) -> Edition:
    """Give the whole specification with prices at its lines: the yard's very parts wherever they do not differ."""
    parts = tuple(priced_part(part, estimate, currency) for part in yard.parts)
    return replace(
        yard,
        name="owner",
        subtitle="Priced by the owner",
        parts=parts,
        confidential=True,
        sheets={},
        files={},
        audience="owner",
    )


def priced_schedule(desk: OwnerDesk, form: PriceForm) -> Part:
    """Compose the schedule of prices with the owner's rates, for the owner's book; its lines lead to their items."""
    part = priced_part(schedule(desk.yards, form), desk.estimate, desk.tender.currency)
    words = "The lines of the specification, under its numbers, at the owner's likely rates."
    return replace(part, title="Schedule of prices, priced", blocks=(Paragraph(inline(words)), *part.blocks[1:]))


def priced_part(part: Part, estimate: Estimate, currency: str) -> Part:
    """Give a part of the specification with rate and amount at each of its lines; as it is where it has none."""
    lines = {line.number: line for line in estimate.lines}
    blocks = [_priced(block, lines, currency) for block in part.blocks]
    blocks += totals(estimate, currency) if part.anchor == "schedule" else []
    changed = any(new is not old for new, old in zip(blocks, part.blocks, strict=False))
    return replace(part, blocks=tuple(blocks), audience="owner") if changed else part


def _priced(block: Block, lines: Mapping[str, PricedLine], currency: str) -> Block:
    if not isinstance(block, Table) or not block.anchor.startswith(LINES):
        return block
    found = [lines.get(plain(row.cells[0])) if row.weight == "normal" else None for row in block.rows]
    rows = [_row(row, line) for row, line in zip(block.rows, found, strict=True)]
    amounts = [line.amount for line in found if line is not None]
    if amounts:
        between = [inline("")] * (len(block.columns) - 1)
        rows.append(Row((inline(""), inline("Together"), *between, inline(written(total(amounts)))), "total"))
    wide = sum(column.width for column in block.columns)
    columns = (
        Column(f"Rate, {currency}", "decimal", 0.15 * wide),
        Column(f"Amount, {currency}", "decimal", 0.18 * wide),
    )
    return replace(block, columns=(*block.columns, *columns), rows=tuple(rows))


def _row(row: Row, line: PricedLine | None) -> Row:
    if row.weight == "group":
        return row
    prices = ("–", "–") if line is None else (written(line.rate), written(line.amount))
    return replace(row, cells=(*row.cells, *map(inline, prices)))


def totals(estimate: Estimate, currency: str) -> list[Block]:
    """Sum the schedule up."""
    rows: list[Sum] = [
        ("Base: all that is contracted for at award", estimate.base, "normal"),
        ("Evaluated price by the published rule, before days, towing and visits", estimate.evaluated, "normal"),
        (f"Contingency held by the owner. {estimate.contingency_why}".rstrip(), estimate.contingency, "normal"),
        ("Base with contingency", estimate.base + estimate.contingency, "total"),
    ]
    return [Heading("Totals"), sums(currency, rows, f"Prices of {month(estimate.base_month)}.")]


def priced_form(form: PriceForm, estimate: Estimate) -> PriceForm:
    """Give the price form with the owner's own rates filled in."""
    rates = {line.number: line.rate for line in estimate.lines}
    sections = (
        replace(section, lines=tuple(_filled(line, rates) for line in section.lines)) for section in form.sections
    )
    return replace(form, sections=tuple(sections))


def _filled(line: FormLine, rates: Mapping[str, Decimal]) -> FormLine:
    return line if line.kind == "fixed" else replace(line, rate=rates.get(line.number))
