"""Compose an application for a grant: a paper that stands by itself, under the headings of the funder's form."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from itertools import groupby

from tenderwright.documents.desk import in_its_units
from tenderwright.documents.edition import (
    Block,
    Caution,
    DataTable,
    Edition,
    Heading,
    Paragraph,
    Part,
    Span,
    Stamp,
    inline,
)
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.documents.grant_tables import budget_table, items_table, outputs_table
from tenderwright.documents.in_print import in_print
from tenderwright.documents.parts import grant_budget, grant_plan, grant_work
from tenderwright.documents.parts.front import contents
from tenderwright.documents.parts.to_be_written import to_be_written
from tenderwright.model.profile import ProfileHeading
from tenderwright.pricing.money import in_currency
from tenderwright.quantities.customs import day

GROUP = "Application"

CAUTION = (
    "Planning figures of the owner; nothing here is certified, approved or promised. Check every heading, category and "
    "rule against the funder's current notice. Holds the owner's estimate: for the funder, not for bidders."
)
"""The standing caution, printed on every page."""

_Composer = Callable[[ApplicationDesk], list[Block]]

_CONTENT: dict[str, _Composer] = {
    "significance": grant_work.significance,
    "condition": grant_work.condition,
    "need": grant_work.need,
    "work": grant_work.work,
    "standards": grant_work.standards,
    "outputs": grant_work.measured_outputs,
    "team": grant_plan.team,
    "schedule": grant_plan.schedule,
    "risks": grant_plan.risks,
    "maintenance": grant_plan.maintenance,
    "documents": grant_plan.documents,
    "budget": grant_budget.budget,
    "dependencies": grant_budget.dependencies,
    "match": grant_budget.match,
}
"""What is made for each kind of content that a heading takes; `text` is the owner's own."""


@in_its_units
def grant_edition(desk: ApplicationDesk, stamp: Stamp, papers_hash: str) -> Edition:
    """Compose the application."""
    applied, tender = desk.applied, desk.tender
    parts = [Part("cover", "", applied.grant.title, "cover", GROUP, ()), contents(), _about(desk), *_chapters(desk)]
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
        caution=CAUTION,
        confidential=True,
        facts=_facts(desk, papers_hash),
        tables=_tables(desk),
    )
    return in_print(desk, edition)


def dated(desk: ApplicationDesk) -> date | None:
    """Give the day of the paper: its own, or that on which the tender is issued."""
    return desk.applied.grant.dated or desk.tender.dates.issued


def unwritten(desk: ApplicationDesk) -> list[str]:
    """Name the headings under which the owner has written nothing and nothing can be made."""
    grant = desk.applied.grant
    return [
        heading.title
        for heading in desk.applied.profile.headings
        if heading.heading not in grant.headings and heading.takes == ("text",)
    ]


def _tables(desk: ApplicationDesk) -> dict[str, DataTable]:
    return {"budget": budget_table(desk), "items": items_table(desk), "outputs": outputs_table(desk)}


def _facts(desk: ApplicationDesk, papers_hash: str) -> tuple[tuple[str, str], ...]:
    applied, tender = desk.applied, desk.tender
    source = applied.source
    facts = [
        ("Ship", tender.ship),
        ("Owner", tender.owner.name),
        ("Lying at", tender.owner.place),
        ("For", source.public or source.name if source is not None else "no source named"),
        ("Asked", f"{in_currency(tender.currency, applied.asked)}" if source is not None else ""),
        ("Whole cost", f"{in_currency(tender.currency, applied.whole.total)}"),
        ("Items", ", ".join(item.number for item in desk.items)),
        ("Dated", day(dated(desk))),
        ("Owner's papers", f"sha256 {papers_hash[:12]}"),
    ]
    return tuple((term, words) for term, words in facts if words)


def _about(desk: ApplicationDesk) -> Part:
    """Compose what the paper is, and what its headings are modelled on."""
    profile = desk.applied.profile
    modelled_on = profile.modelled_on[:1].lower() + profile.modelled_on[1:]
    blocks: list[Block] = [
        Caution("Planning figures", (inline(CAUTION), inline(profile.check_notice))),
        Paragraph(
            inline(
                "This paper stands by itself. Its words on the work are those of the specification of tender "
                f"{desk.tender.tender.number} at the commit that every page names, and its figures those of the "
                "owner's papers whose checksum the cover gives. Headings and categories follow the generic profile ",
                Span(profile.name.name, code=True),
                f", modelled on {modelled_on}",
            )
        ),
        *to_be_written([*desk.package.todos, *desk.papers.todos]),
    ]
    return Part("about", "", "About this paper", "front", GROUP, tuple(blocks), caution=True)


def _annex(anchor: str, number: str, title: str, blocks: list[Block]) -> Part:
    return Part(anchor, number, title, "data", GROUP, tuple(blocks), caution=True)


def _chapters(desk: ApplicationDesk) -> list[Part]:
    """Compose the headings of the form, those of a group on the same pages."""
    made: set[str] = set()
    parts: list[Part] = []
    numbered = enumerate(desk.applied.profile.headings, start=1)
    for _, run in groupby(numbered, key=lambda pair: pair[1].group or pair[1].heading):
        headings = [(number, heading, _blocks(desk, heading, made)) for number, heading in run]
        number, first, blocks = headings[0]
        anchor = f"heading-{first.heading}"
        if len(headings) == 1:
            parts.append(Part(anchor, str(number), first.title, "data", GROUP, tuple(blocks), caution=True))
            continue
        inside: list[Block] = []
        for number, heading, blocks in headings:
            inside.append(Heading(f"{number}  {heading.title}"))
            inside += [replace(block, level=3) if isinstance(block, Heading) else block for block in blocks]
        numbers = f"{headings[0][0]}–{headings[-1][0]}"
        parts.append(Part(anchor, numbers, first.group, "data", GROUP, tuple(inside), caution=True))
    return parts


def _blocks(desk: ApplicationDesk, heading: ProfileHeading, made: set[str]) -> list[Block]:
    """Compose a heading: the owner's words, then what is made for it; what another heading had already is left out."""
    text = desk.applied.grant.headings.get(heading.heading)
    blocks: list[Block] = [desk.prose(text)] if text is not None else []
    for content in heading.takes:
        if content in _CONTENT and content not in made:
            made.add(content)
            blocks += _CONTENT[content](desk)
    if not blocks:
        blocks.append(Paragraph(inline(Span("Still to be written. ", strong=True), Span(heading.asks, faint=True))))
    return blocks
