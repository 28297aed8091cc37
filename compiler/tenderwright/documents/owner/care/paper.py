"""The care plan: when she should come out again, what is done meanwhile, what waits, and what is set aside."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.documents.edition import Block, Edition, Part
from tenderwright.documents.owner.care.calendar import care_calendar
from tenderwright.documents.owner.care.coming_out import coming_out_page
from tenderwright.documents.owner.care.money import set_aside_table
from tenderwright.documents.owner.care.readings import as_last_read
from tenderwright.documents.owner.care.tasks import once_table, tasks_table, waiting_table
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.planning.care.plan import kept

WITH = "All else that is done meanwhile stands in the care plan."
WITHOUT = (
    "There is no care plan for the years between. `tenderwright add care-plan` writes the form of one; with it, a "
    "plan, a page for the wheelhouse and a calendar are written."
)


def care_paper(desk: OwnerDesk, book: Edition) -> Edition | None:
    """Compose the care plan; None where the owner keeps none."""
    if not kept(desk.package):
        return None
    ship = desk.tender.ship
    plan: list[Block] = [
        *tasks_table(desk),
        *as_last_read(desk),
        *once_table(desk),
        *waiting_table(desk),
        *set_aside_table(desk),
    ]
    parts = (
        _part("coming-out", f"When {ship} should come out again", coming_out_page(desk)),
        _part("care", f"The care of {ship} between dockings", plan),
    )
    return replace(
        book,
        subtitle="Care plan",
        parts=parts,
        facts=(),
        sheets={},
        tables={},
        record=None,
        calendar=care_calendar(desk),
    )


def _part(anchor: str, title: str, blocks: list[Block]) -> Part:
    return Part(anchor, "", title, "brief", "Care plan", tuple(blocks), caution=True)
