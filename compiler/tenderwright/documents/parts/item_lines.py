"""The lines of an item that the yard prices, with what each is and where its quantity comes from."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Inline, Row, Span, Table, inline
from tenderwright.documents.parts.item_tables import line_width
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.item import Item, Line
from tenderwright.pricing.described import words_of
from tenderwright.pricing.money import written
from tenderwright.pricing.quantity import line_quantity, written_number
from tenderwright.quantities.display import shown_unit

_PRICES = {
    "lump": "lump sum",
    "rate": "rate",
    "day": "rate per day",
    "hours": "rate per hour",
    "fixed": "owner's sum",
    "markup": "percentage",
    "percent": "percentage",
}
_COUNTS = {"": "the dearer", "dearer": "the dearer", "this": "this", "that": "the other"}


MARGIN = 17.6
"""Width in millimetres of the first column of an item's tables, which hangs in the margin of a measure of 172."""


def item_lines(desk: Desk, item: Item) -> list[Block]:
    """Compose the table of lines; its anchor is that at which the owner's papers set prices beside them."""
    lines = (*item.lines, *desk.package.withdrawn_lines.get(item.number, ()))
    if not lines:
        return []
    rows = []
    for line in sorted(lines, key=lambda one: (one.here.line, one.here.column)):
        number = f"{item.number}.{line.line}"
        cells = (inline(Span(number, strong=True)), *_cells(desk, item, line))
        rows.append(Row(cells, anchor=f"line-{number.replace('.', '-')}"))
    columns = (
        Column("Line", width=line_width([f"{item.number}.{line.line}" for line in lines], MARGIN)),
        Column("What is priced", width=104.4),
        Column("Quantity", "decimal", 17),
        Column("Unit", width=14),
        Column("Basis", width=19),
    )
    return [Heading("Lines to price"), Table(columns, tuple(rows), anchor=f"lines-{item.number}")]


def _cells(desk: Desk, item: Item, line: Line) -> tuple[Inline, ...]:
    if line.withdrawn:
        said = inline(line.text, Span(" — withdrawn, not priced; its number stays taken", faint=True))
        return said, inline("–"), inline(""), inline("–")
    return _line_text(desk, item, line), *_line_quantity(desk, line), inline(line.basis or _default_basis(line))


def _default_basis(line: Line) -> str:
    return "calculated" if line.takes else "–"


def _line_text(desk: Desk, item: Item, line: Line) -> Inline:
    kind = item.kind_of(line)
    more = [_PRICES[line.price]]
    if kind != item.kind:
        more.append(kind)
    if line.of:
        more[0] = f"percentage of {words_of(line.of)}"
    if line.takes_line is not None:
        more.append(f"{desk.quantity(line.share, 'as much')} of line {line.takes_line}".replace("much of", "much as"))
    if line.adds_to:
        more.append(f"added to the rate of {words_of(line.adds_to)}")
    if line.instead_of:
        more.append(f"instead of {words_of(line.instead_of)}, of which {_COUNTS[line.counts]} counts in the price")
    if line.where:
        more.append(line.where)
    return inline(line.text, Span(f" — {'; '.join(more)}", faint=True))


def _line_quantity(desk: Desk, line: Line) -> tuple[Inline, Inline]:
    if line.price in ("fixed", "markup") and line.amount is not None:
        return inline(written(line.amount)), inline(desk.tender.currency)
    quantity = line_quantity(line, desk.record)
    if quantity is None:
        return inline(TO_BE_WRITTEN), inline("")
    if line.price == "percent":
        return inline("–"), inline("%")
    if quantity.unit == "lump sum":
        return inline("1"), inline("sum")
    return inline(written_number(quantity.number)), inline(shown_unit(quantity.unit))
