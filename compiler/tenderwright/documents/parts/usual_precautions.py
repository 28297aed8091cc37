"""The usual precautions by hazard, which the items of a tender name and do not repeat."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Row, Span, Table, inline
from tenderwright.documents.precautions import PRECAUTIONS, anchor_of, named


def usual_precautions(desk: Desk) -> list[Block]:
    """Compose the table of the hazards that items name, each with its usual precaution and its clause."""
    named = {hazard for item in desk.package.items if not item.withdrawn for hazard in item.hazards}
    rows = tuple(_row(desk, hazard) for hazard in PRECAUTIONS if hazard in named)
    if not rows:
        return []
    columns = (Column("Hazard", width=34), Column("Usual precaution", width=124), Column("Clause", width=14))
    return [Heading("Usual precautions by hazard", 2, "usual-precautions"), Table(columns, rows)]


def _row(desk: Desk, hazard: str) -> Row:
    text, clause = PRECAUTIONS[hazard]
    number = desk.clause_number(clause)
    more = Span(number, desk.anchor("clause", clause)) if number else "–"
    return Row((inline(Span(named(hazard), strong=True)), inline(text), inline(more)), anchor=anchor_of(hazard))
