"""What a page says of the hydrostatics that its figures rest on, where her lines are not known."""

from __future__ import annotations

from tenderwright.calculations.ship.buoyancy import buoyancy
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Paragraph, inline


def floated_on(desk: Desk) -> list[Block]:
    """Say on what she is floated and how far that reaches; nothing where it is her lines."""
    found = desk.calculated.found(buoyancy)
    return [Paragraph(inline(found.caution))] if found is not None and found.caution else []
