"""The lines of the price form that an addendum changes."""

from __future__ import annotations

from collections.abc import Callable

from tenderwright.comparing.compare import Comparison
from tenderwright.comparing.form_changes import FormChange, PricedLine
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Column, Inline, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.marked import marked
from tenderwright.documents.parts.item_tables import line_width
from tenderwright.pricing.money import in_currency
from tenderwright.pricing.quantity import written_number
from tenderwright.quantities.display import shown_unit

_COLUMNS = (
    Column("Line", width=0.8),
    Column("What is priced", width=4.2),
    Column("Section", "centre", 0.9),
    Column("Quantity", width=2.2),
    Column("Kind", width=1.4),
    Column("Affects price", width=1.2),
)


_MANNER = 0.5
"""What the first column is wider by where a line came or went, which is said there."""


def sent_anew(edition_hash: str) -> str:
    """Say to a yard what becomes of the price form that it has."""
    return (
        f"The price form sent with this addendum, edition {edition_hash}, takes the place of the one before. Every "
        "line keeps its number; prices already worked out are carried over by `tenderwright carry OLD NEW --out FILE`, "
        "but for the lines below."
    )


def lines_part(desk: Desk, comparison: Comparison, words: str) -> Part | None:
    """Compose the lines that came, went or changed, below some words, or None where there are none."""
    if not comparison.lines:
        return None
    rows = tuple(_row(desk, line) for line in comparison.lines)
    width = line_width([line.number for line in comparison.lines], _COLUMNS[0].width)
    if any(line.manner != "changed" for line in comparison.lines):
        width += _MANNER
    columns = (Column("Line", width=width), *_COLUMNS[1:])
    blocks = (Paragraph(inline(words)), Table(columns, rows))
    return Part("addendum-lines", "", "Price-form lines changed", "front", "", blocks, audience="yard")


def _row(desk: Desk, line: FormChange) -> Row:
    old, new = line.old, line.new
    said = {"withdrawn": "withdrawn", "removed": "no longer asked", "added": "new"}.get(line.manner, "")
    cells: list[Inline] = [inline(line.number, Span(f" {said}", faint=True) if said else "")]
    for of in (_words, _section, lambda one: _quantity(desk, one), _kind):
        cells.append(_cell(old, new, of))
    return Row((*cells, inline("yes" if line.price else "no")))


def _cell(old: PricedLine | None, new: PricedLine | None, of: Callable[[PricedLine], str]) -> Inline:
    if old and new:
        return marked(of(old), of(new))
    if new:
        return (Span(of(new), inserted=True),)
    return (Span(of(old), deleted=True),) if old else ()


def _words(line: PricedLine) -> str:
    return line.words


def _section(line: PricedLine) -> str:
    return line.section


def _kind(line: PricedLine) -> str:
    return f"{line.kind}, {line.price}"


def _quantity(desk: Desk, line: PricedLine) -> str:
    if line.price in ("fixed", "markup") and line.amount is not None:
        return f"{in_currency(desk.tender.currency, line.amount)}"
    if line.price == "percent":
        return "%"
    if line.unit == "lump sum":
        return "1 sum"
    return f"{written_number(line.quantity)} {shown_unit(line.unit)}"
