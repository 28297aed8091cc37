"""The general requirements: standing text, given once."""

from __future__ import annotations

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Heading, Part
from tenderwright.documents.parts.usual_precautions import usual_precautions


def general_requirements(desk: Desk) -> Part:
    """Compose all clauses into one part, numbered within it."""
    blocks: list[Block] = []
    for clause in desk.package.clauses:
        title = f"{desk.clause_number(clause.clause)}  {clause.title}"
        blocks += [Heading(title, 2, desk.anchor("clause", clause.clause)), desk.prose(clause.text)]
    return Part(
        "general-requirements",
        "",
        "General requirements",
        "clauses",
        "General requirements",
        (*blocks, *usual_precautions(desk)),
        caution=True,
        audience="yard",
    )
