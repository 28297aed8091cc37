"""Compose an application for a grant: a paper that stands by itself, under the headings of the funder's form."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from itertools import groupby

from tenderwright.documents.desk import in_its_units
from tenderwright.documents.edition import (
    Block,
    Caution,
    Column,
    DataTable,
    Edition,
    Heading,
    Paragraph,
    Part,
    Row,
    Span,
    Stamp,
    Table,
    inline,
)
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.documents.grant_headings import Long, Under
from tenderwright.documents.grant_tables import (
    alternatives_table,
    budget_table,
    items_table,
    outputs_table,
    phases_table,
)
from tenderwright.documents.in_print import in_print
from tenderwright.documents.parts import grant_budget
from tenderwright.documents.parts.front import contents
from tenderwright.documents.parts.to_be_written import to_be_written
from tenderwright.pricing.money import in_currency
from tenderwright.quantities.customs import day

GROUP = "Application"

_PLANNING = "Planning figures of the owner; nothing here is certified, approved or promised."
_CHECK = "Check every heading, category and rule against the funder's current notice."
_HOLDS = "Holds the owner's estimate: for the funder, not for bidders."


def caution(*, draft: bool) -> str:
    """Give the standing caution, printed on every page; that of a draft is for the owner too."""
    return " ".join([_PLANNING, *([_CHECK] if draft else []), _HOLDS])


@in_its_units
def grant_edition(
    desk: ApplicationDesk,
    stamp: Stamp,
    papers_hash: str,
    headings: tuple[Under, ...],
    marks: tuple[Long, ...] | None,
) -> Edition:
    """Compose the application; a draft has marks under its headings, which tell what is open and how long each is."""
    applied, tender = desk.applied, desk.tender
    parts = [
        Part("cover", "", applied.grant.title, "cover", GROUP, ()),
        contents(),
        _about(desk, marks),
        *_chapters(headings, marks),
    ]
    parts += [
        _annex("line-basis", "A", "What the estimate rests on, line by line", grant_budget.line_basis(desk)),
        _annex("reconciliation", "B", "Reconciliation with the estimate", grant_budget.reconciliation(desk)),
    ]
    edition = Edition(
        name="grant",
        title=applied.grant.title,
        subtitle=f"Owner's paper for a funder: {applied.profile.title}",
        tender=tender.tender.number,
        owner=tender.owner.name,
        stamp=stamp,
        issued=dated(desk),
        page_size="Letter" if tender.page_size == "Letter" else "A4",
        parts=tuple(parts),
        caution=caution(draft=marks is not None),
        confidential=True,
        facts=_facts(desk, papers_hash, draft=marks is not None),
        tables=_tables(desk),
    )
    return in_print(desk, edition)


def dated(desk: ApplicationDesk) -> date | None:
    """Give the day of the paper: its own, or that on which the tender is issued."""
    return desk.applied.grant.dated or desk.tender.dates.issued


def _tables(desk: ApplicationDesk) -> dict[str, DataTable]:
    tables = {"budget": budget_table(desk), "items": items_table(desk), "outputs": outputs_table(desk)}
    tables |= {"phases": phases_table(desk)} if desk.applied.phases else {}
    return tables | ({"alternatives": alternatives_table(desk)} if desk.applied.alternatives else {})


def _facts(desk: ApplicationDesk, papers_hash: str, *, draft: bool) -> tuple[tuple[str, str], ...]:
    applied, tender = desk.applied, desk.tender
    source = applied.source
    facts = [
        ("Ship", tender.ship),
        ("Owner", tender.owner.name),
        ("Lying at", tender.owner.place),
        ("For", source.public or source.name if source is not None else "no source named"),
        ("Asked", _asked(desk) if source is not None else ""),
        ("Whole cost", f"{in_currency(tender.currency, applied.whole.total)}"),
        ("Items", ", ".join(item.number for item in desk.items)),
        ("Dated", day(dated(desk))),
        ("State", "draft; its marks are for the owner" if draft else ""),
        ("Owner's papers", f"sha256 {papers_hash[:12]}"),
    ]
    return tuple((term, words) for term, words in facts if words)


def _asked(desk: ApplicationDesk) -> str:
    """Say what is asked, either or where there is a choice."""
    each = [one.application.asked for one in desk.applied.alternatives] or [desk.applied.asked]
    return " or ".join(in_currency(desk.tender.currency, one) for one in each)


def _about(desk: ApplicationDesk, marks: tuple[Long, ...] | None) -> Part:
    """Compose what the paper is, and what its headings are modelled on."""
    profile, draft = desk.applied.profile, marks is not None
    modelled_on = profile.modelled_on[:1].lower() + profile.modelled_on[1:]
    cautions = (inline(caution(draft=draft)), *([inline(profile.check_notice)] if draft else []))
    blocks: list[Block] = [
        Caution("Planning figures", cautions),
        Paragraph(
            inline(
                "This paper stands by itself. Its words on the work are those of the specification of tender "
                f"{desk.tender.tender.number} at the commit that every page names, and its figures those of the "
                f"owner's papers whose checksum the cover gives. Headings and categories are modelled on {modelled_on}"
            )
        ),
        *_lengths(marks or ()),
        *to_be_written([*desk.package.todos, *desk.papers.todos]),
    ]
    return Part("about", "", "About this paper", "front", GROUP, tuple(blocks), caution=True)


def _lengths(marks: tuple[Long, ...]) -> list[Block]:
    """List how long each heading with a limit is, and all together."""
    rows = [Row((inline(one.title), inline(Span(one.told, strong=one.too_long)))) for one in marks]
    table = Table((Column("Heading", width=2), Column("How long it is", width=3)), tuple(rows))
    return [Heading("Draft: lengths against the funder's limits"), table] if rows else []


def _annex(anchor: str, number: str, title: str, blocks: list[Block]) -> Part:
    return Part(anchor, number, title, "data", GROUP, tuple(blocks), caution=True)


def _chapters(headings: tuple[Under, ...], marks: tuple[Long, ...] | None) -> list[Part]:
    """Compose the headings of the form, those of a group on the same pages unless the pages of one are counted."""
    long = {one.heading: one for one in marks or ()}
    parts: list[Part] = []
    for _, found in groupby(
        headings, key=lambda one: one.heading.heading if one.alone else one.heading.group or one.heading.heading
    ):
        run = list(found)
        first = run[0]
        written = [one.blocks if marks is None else one.marked(long.get(one.heading.heading)) for one in run]
        if len(run) == 1:
            parts.append(
                Part(first.anchor, str(first.number), first.heading.title, "data", GROUP, written[0], caution=True)
            )
            continue
        inside: list[Block] = []
        for one, blocks in zip(run, written, strict=True):
            inside.append(Heading(f"{one.number}  {one.heading.title}"))
            inside += [replace(block, level=3) if isinstance(block, Heading) else block for block in blocks]
        numbers = f"{first.number}–{run[-1].number}"
        parts.append(Part(first.anchor, numbers, first.heading.group, "data", GROUP, tuple(inside), caution=True))
    return parts
