"""The tables of the care plan: what is done how often, what falls due once, and what waits."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.edition import Block, Column, Heading, Paragraph, Row, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.planning.care.once import Once, once, put_off
from tenderwright.planning.care.plan import care_tasks
from tenderwright.quantities.customs import day


def tasks_table(desk: OwnerDesk) -> list[Block]:
    """Compose what is done how often."""
    tasks = care_tasks(desk.package, desk.calculated)
    rows = [
        Row(
            tuple(
                map(
                    inline,
                    (one.what, one.often, one.by, day(one.last), day(one.due), f"{one.task}; {one.source}"),
                )
            )
        )
        for one in tasks
        if not one.left_out
    ]
    columns = (
        Column("What is done", width=3),
        Column("How often", width=1),
        Column("By", width=1.2),
        Column("Last", width=1.5),
        Column("Due", width=1.5),
        Column("Task; who says so", width=1.9),
    )
    blocks: list[Block] = [Heading("What is done, and how often"), Table(columns, tuple(rows), small=True)]
    left = [f"{one.what} ({one.left_out})" for one in tasks if one.left_out]
    return [*blocks, Paragraph(inline(f"Left out by the owner: {'; '.join(left)}."))] if left else blocks


def once_table(desk: OwnerDesk) -> list[Block]:
    """Compose what falls due once."""
    found = once(desk.package, desk.calculated)
    if not found:
        words = "Nothing is dated: it needs vessel/condition.yaml, and a docking planned or in history/."
        return [Heading("What falls due once"), Paragraph(inline(words))]
    rows = [Row(tuple(map(inline, (day(one.day), one.what, one.by, one.source or "–")))) for one in found]
    columns = (Column("Day", width=1.2), Column("What", width=4.4), Column("By", width=1.1), Column("From", width=2))
    return [Heading("What falls due once"), Table(columns, tuple(rows), small=True)]


def waiting_table(desk: OwnerDesk) -> list[Block]:
    """Compose what was put off, and what each piece of it waits for."""
    papers = desk.foresight.papers if desk.foresight is not None else None
    found: Sequence[Once] = put_off(desk.package, papers.award if papers is not None else None)
    if not found:
        return [Heading("What waits"), Paragraph(inline("Nothing that the package knows of."))]
    rows = [Row(tuple(map(inline, (one.what, one.waits_for or "–", one.by or "–", one.source)))) for one in found]
    columns = (
        Column("What", width=3.6),
        Column("Waits for", width=2.2),
        Column("When, or meanwhile", width=1.5),
        Column("From", width=1.6),
    )
    return [Heading("What waits, and for what"), Table(columns, tuple(rows), small=True)]
