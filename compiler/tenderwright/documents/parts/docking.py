"""The docking chapter: condition, landing, blocks, hull and undocking, for the dockmaster's planning."""

from __future__ import annotations

from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.ship.undocking import undocking as undocking_step
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Paragraph, Part, inline
from tenderwright.documents.not_calculated import not_calculated_of
from tenderwright.documents.parts.blocks import blocks
from tenderwright.documents.parts.docking_condition import condition
from tenderwright.documents.parts.footprints import footprints
from tenderwright.documents.parts.gathered import gathered
from tenderwright.documents.parts.landing import landing
from tenderwright.documents.parts.undocking import undocking

DOCKING = "Docking data"


def docking_chapter(desk: Desk) -> list[Part]:
    """Compose the parts of the docking chapter that the package has data for."""
    planned = blocks(desk)
    further = (landing(desk), gathered(planned, footprints(desk)) if planned else None, undocking(desk))
    return [docking_data(desk), *(part for part in further if part is not None)]


def _absent(desk: Desk) -> dict[str, Absent]:
    """Give the parts of the chapter that there is nothing to make of, by their titles."""
    landed, floated = desk.calculated.outcome(landing_step), desk.calculated.outcome(undocking_step)
    found = {"Landing on the blocks": landed, "Dock sheet": landed, "Undocking condition": floated}
    return {title: outcome for title, outcome in found.items() if isinstance(outcome, Absent)}


def docking_data(desk: Desk) -> Part:
    """Compose the docking condition, and what of the chapter there is nothing to make of."""
    parts: list[Block] = [
        Paragraph(
            inline(
                "Planning figures for tender. The yard makes its own docking plan and calculations from soundings and "
                "drafts taken on the day."
            )
        ),
        *condition(desk),
    ]
    parts += not_calculated_of(_absent(desk))
    return Part("docking-data", "", "Docking data", "data", DOCKING, tuple(parts), caution=True, audience="yard")
