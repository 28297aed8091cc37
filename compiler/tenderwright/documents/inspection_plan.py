"""The inspection plan: what is inspected, tested and handed over, the register of openings, what floating waits for.

It is one form to sign, for the yard and the owner alike, and stands beside the specification.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tenderwright.documents.audience import Audience
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Edition, Heading, Paragraph, Part, inline
from tenderwright.documents.links_within import links_within
from tenderwright.documents.parts.before_flooding import after_undocking, before_flooding
from tenderwright.documents.parts.inspection_points import codes, points_by_phase, reports
from tenderwright.documents.parts.openings_register import openings_register
from tenderwright.planning.inspection.points import Point, points_of
from tenderwright.planning.inspection.register import RegisterRow, register_of

GROUP = "Inspection plan"
STEM = "inspection-plan"
"""File stem of the plan beside the specification, and of the owner's copy beside the book."""


def inspection_plan(desk: Desk, edition: Edition) -> Edition | None:
    """Compose the yard's copy, by item and time of the work; None where no item asks for anything of it."""
    points, rows = points_of(desk.package), register_of(desk.package)
    if not points:
        return None
    plan = [*_opening(desk, points), *points_by_phase(desk, points)]
    parts = [
        plan_part("1", "inspection-points", "Inspections and tests", plan, landscape=True),
        plan_part("2", "inspection-reports", "Reports", reports(desk, _numbers(points))),
        *dockside_parts(desk, points, rows),
    ]
    return replace(
        edition,
        title=f"Inspection plan, {desk.tender.ship}",
        subtitle="To sign at the ship",
        parts=links_within(tuple(parts)),
        facts=(),
        for_screen=True,
    )


def dockside_parts(desk: Desk, points: Sequence[Point], rows: Sequence[RegisterRow]) -> list[Part]:
    """Compose the register of openings, the sheet before flooding and the one after undocking."""
    return [
        plan_part("3", "openings-register", "Register of openings", openings_register(desk, rows), landscape=True),
        plan_part("4", "before-flooding", "Before flooding", before_flooding(desk, points, rows)),
        plan_part("5", "after-undocking", "After undocking", after_undocking(desk)),
    ]


def plan_part(
    number: str,
    anchor: str,
    title: str,
    blocks: Sequence[Block],
    *,
    landscape: bool = False,
    audience: Audience = "yard",
) -> Part:
    """Make a part of the plan."""
    return Part(
        anchor,
        f"IP{number}",
        title,
        "data",
        GROUP,
        tuple(blocks),
        landscape=landscape,
        caution=True,
        audience=audience,
    )


def _opening(desk: Desk, points: Sequence[Point]) -> list[Block]:
    count = {code: sum(1 for one in points if one.code == code) for code in "HWPR"}
    words = (
        f"{count['H']} hold points, {count['W']} witness points, {count['P']} tests and {count['R']} reports, gathered "
        "from the items, which say more of each. A point that comes up at several places is signed at each of them, on "
        "a copy of this page. What failed is put right, inspected again and signed then. The surveyor, the flag, the "
        "insurer and the competent person decide; this plan lists what they are shown."
    )
    return [Paragraph(inline(words)), Heading("Codes"), codes()]


def _numbers(points: Sequence[Point]) -> dict[tuple[str, str], str]:
    return {(one.item.number, one.what): one.name for one in points if one.code == "R"}
