"""The chapter on her condition: shell or timber, anodes and metals, tightness, and her plating as built."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Part
from tenderwright.documents.parts.anodes import anodes
from tenderwright.documents.parts.condition import condition
from tenderwright.documents.parts.gathered import gathered
from tenderwright.documents.parts.ship import SHIP, plating
from tenderwright.documents.parts.tightness import tightness


def condition_chapter(desk: Desk) -> Part | None:
    """Compose the chapter; None where the package says nothing of any of it."""
    sections = (anodes(desk), tightness(desk), plating(desk))
    first = condition(desk)
    if first is None and not any(sections):
        return None
    head = first or Part("condition", "", "Condition of the ship", "data", SHIP, (), audience="yard")
    return gathered(head, *sections)
