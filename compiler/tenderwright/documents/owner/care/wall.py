"""The page for the wall of the wheelhouse: what is done how often, the limits, and whom to call, in large type."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.calculations.care.potentials import PROTECTED, WOOD_OVER
from tenderwright.calculations.ship.care import DAMP
from tenderwright.calculations.ship.timber import of_wood
from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Block, Column, Edition, Heading, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.model.care import CarePlan
from tenderwright.planning.care.plan import RARE, by_often, care_tasks, kept
from tenderwright.quantities.display import decimals, show

ENTRY = (
    "Nobody goes alone into a tank, void or closed space, nor before a competent person has tested its air. No hot "
    "work without a permit. This page certifies nothing: surveyor, naval architect, insurer and flag decide."
)


def wall_page(desk: OwnerDesk, book: Edition) -> Edition | None:
    """Compose the page; None where the owner keeps no care plan. It says nothing that only the owner may read."""
    if not kept(desk.package):
        return None
    plan = desk.package.care
    blocks: list[Block] = [*_tasks(desk), Heading("Call at once"), _calls(plan), Heading("Limits"), _limits(desk)]
    for title, words in (
        ("She lies", plan.moored if plan else ""),
        ("Before heavy weather", plan.storm if plan else ""),
    ):
        blocks += [Paragraph((Span(f"{title}: ", strong=True), Span(words)))] if words else []
    title = f"{desk.tender.ship}: look after her"
    part = Part("wall", "", title, "wall", "", tuple(blocks), caution=True, caution_line=ENTRY, audience="public")
    return replace(
        book,
        title=title,
        subtitle=desk.tender.owner.name,
        parts=(part,),
        facts=(),
        sheets={},
        tables={},
        record=None,
        audience="public",
        confidential=False,
    )


def _tasks(desk: OwnerDesk) -> list[Block]:
    rows = [
        Row((inline(Span(capital(often), strong=True)), inline("; ".join(_short(one.what) for one in tasks))))
        for often, tasks in by_often(care_tasks(desk.package, desk.calculated))
        if tasks[0].days < RARE
    ]
    return [Table((Column("When", width=1.1), Column("What", width=6)), tuple(rows))]


def _short(what: str) -> str:
    """Give what stands before the colon, or before what follows it: the rest is in the care plan."""
    head, colon, rest = what.partition(":")
    return f"{head[:1].upper()}{head[1:]}:{rest.partition(';')[0]}" if colon else what


def _calls(plan: CarePlan | None) -> Table:
    rows = [
        Row((inline(Span(one.who, strong=True)), inline(one.when), inline(one.how or "")))
        for one in (plan.calls if plan is not None else ())
    ]
    if not rows:
        rows = [Row((inline("Ship manager"), inline("any alarm, water that rises, fire, a line parted"), inline("")))]
    return Table((Column("Whom", width=1.6), Column("For what", width=3), Column("How", width=2.4)), tuple(rows))


def _limits(desk: OwnerDesk) -> Table:
    package, plan = desk.package, desk.package.care
    rows = []
    if of_wood(package.particulars):
        rows.append(
            (
                "Potential of metal",
                f"no more negative than {show(WOOD_OVER, 'potential')}",
                "take some protection off; ship manager",
            )
        )
    else:
        rows.append(
            (
                "Potential of the hull",
                f"{show(PROTECTED, 'potential')} or more negative",
                "read again, then ship manager",
            )
        )
        rows.append(("Air of dry spaces", f"under {decimals(100 * DAMP, 0)} %", "two weeks over it: ship manager"))
    known = {one.place: one for one in plan.leaks} if plan is not None else {}
    rows += [
        (f"Water in the {place}", f"{show(one.in_a_day.si, 'paint')} a day at most", "ship manager at once")
        for place, one in known.items()
    ]
    rows.append(("Water elsewhere", "twice what it made before", "ship manager"))
    rows.append(("Bilge alarm", "heard at each test", "mend it the same day"))
    columns = (Column("What", width=2), Column("Limit", width=2.6), Column("Beyond it", width=2.4))
    return Table(columns, tuple(Row(tuple(map(inline, row))) for row in rows))
