"""The docking chapter: condition, landing, blocks, hull, undocking and facilities, for the dockmaster's planning."""

from __future__ import annotations

from tenderwright.calculations.ship.landing import landing as landing_step
from tenderwright.calculations.ship.undocking import undocking as undocking_step
from tenderwright.calculations.steps.outcome import Absent
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Heading, Paragraph, Part, inline
from tenderwright.documents.not_calculated import not_calculated_of
from tenderwright.documents.parts.blocks import blocks
from tenderwright.documents.parts.docking_condition import condition
from tenderwright.documents.parts.facilities import facilities
from tenderwright.documents.parts.facility_fit import comparison, facility_comparison
from tenderwright.documents.parts.footprints import footprints
from tenderwright.documents.parts.landing import landing
from tenderwright.documents.parts.undocking import undocking

DOCKING = "Docking data"


def docking_chapter(desk: Desk) -> list[Part]:
    """Compose the parts of the docking chapter that the package has data for."""
    further = (landing(desk), blocks(desk), footprints(desk), undocking(desk), facility_comparison(desk))
    return [docking_data(desk), *(part for part in further if part is not None)]


def _absent(desk: Desk) -> dict[str, Absent]:
    """Give the parts of the chapter that there is nothing to make of, by their titles."""
    landed, floated = desk.calculated.outcome(landing_step), desk.calculated.outcome(undocking_step)
    found = {"Landing on the blocks": landed, "Dock sheet": landed, "Undocking condition": floated}
    return {title: outcome for title, outcome in found.items() if isinstance(outcome, Absent)}


def docking_data(desk: Desk) -> Part:
    """Compose the condition and the facilities; without a docking plan the facilities are compared here."""
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
    if desk.package.docking_plan is None and desk.package.facilities:
        parts += [Heading("Facilities side by side"), *comparison(desk)]
    return Part("docking-data", "7", "Docking data", "data", DOCKING, (*parts, *facilities(desk)), caution=True)
