"""The headings of a funder's form: what stands under each, how long it is, and what of it the owner has left open."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from tenderwright.documents.desk import in_its_units
from tenderwright.documents.edition import Block, Paragraph, Span, inline
from tenderwright.documents.grant_desk import ApplicationDesk
from tenderwright.documents.grant_length import length
from tenderwright.documents.parts import grant_budget, grant_plan, grant_work
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.profile import LengthLimit, ProfileHeading
from tenderwright.planning.application import Application

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
    "approvals": grant_plan.approvals,
    "risks": grant_plan.risks,
    "maintenance": grant_plan.maintenance,
    "documents": grant_plan.documents,
    "budget": grant_budget.budget,
    "dependencies": grant_budget.dependencies,
    "match": grant_budget.match,
}
"""What is made for each kind of content that a heading takes; `text` is the owner's own."""


@dataclass(frozen=True)
class Under:
    """What stands under a heading."""

    number: int
    heading: ProfileHeading
    blocks: tuple[Block, ...]
    own: bool
    """Whether the owner has written anything there."""
    limit: LengthLimit | None
    not_worked_out: tuple[str, ...] = ()
    """What the figures under it leave out, for the owner to judge."""

    @property
    def anchor(self) -> str:
        """Give the anchor of the part that holds this heading alone, or first."""
        return f"heading-{self.heading.heading}"

    @property
    def empty(self) -> bool:
        """Tell whether it was left empty: nothing stands there, or the words that only the owner can write are not."""
        return not self.blocks or ("text" in self.heading.takes and not self.own)

    @property
    def alone(self) -> bool:
        """Tell whether it begins a page and ends one, since its pages are counted."""
        return self.limit is not None and self.limit.of == "pages"

    def marked(self, long: Long | None) -> tuple[Block, ...]:
        """Give the blocks of a draft, which say what is open and how long they are."""
        marks: list[Block] = []
        if long is not None:
            marks.append(Paragraph(inline(Span(f"Draft: {long.told}.", strong=long.too_long, faint=not long.too_long))))
        if self.empty:
            marks.append(
                Paragraph(inline(Span("Still to be written. ", strong=True), Span(self.heading.asks, faint=True)))
            )
        elif not self.own:
            marks.append(
                Paragraph(inline(Span("Draft: made from the package; there is nothing of your own here.", faint=True)))
            )
        marks += [Paragraph(inline(Span(f"Draft: {words}", strong=True))) for words in self.not_worked_out]
        return (*marks, *self.blocks)


@dataclass(frozen=True)
class Long:
    """How long a heading, or all of them, is beside what the funder allows."""

    heading: str
    """Its identifier; empty for all headings together."""
    title: str
    limit: LengthLimit
    count: int

    @property
    def too_long(self) -> bool:
        """Tell whether it is longer than the funder allows."""
        return self.count > self.limit.most

    @property
    def told(self) -> str:
        """Say how long it is."""
        more = [] if self.limit.of == "pages" else list(self.limit.counts)
        counted = (
            f", {' and '.join(more)} counted" if more else "" if self.limit.of == "pages" else ", running text alone"
        )
        over = f", {self.count - self.limit.most:,} too many" if self.too_long else ""
        unit = self.limit.of.replace("pages", "page") if self.limit.most == 1 else self.limit.of
        return f"{self.count:,} of at most {self.limit.most:,} {unit}{counted}{over}"


def not_worked_out(applied: Application) -> tuple[str, ...]:
    """Name the rules on match that only words say: of the source that is asked in full, of others that some are."""
    source = applied.source
    found = []
    if source is not None and source.match_rule is not None and source.match_rule.otherwise:
        rule = source.match_rule.otherwise.rstrip(".")
        found.append(f"not worked out: {rule}. Judge it by hand, or say it by other keys of the rule.")
    others = [one.source for one in applied.drawn if one.source.match_rule is not None]
    if any(one.match_rule is not None and one.match_rule.otherwise for one in others):
        found.append("not worked out: a rule on match of a source that pays part of the match. The command names it.")
    return tuple(found)


@in_its_units
def under_headings(desk: ApplicationDesk) -> tuple[Under, ...]:
    """Compose every heading of the form: the owner's words, then what is made; each is made once."""
    grant, made = desk.applied.grant, set[str]()
    found = []
    for number, heading in enumerate(desk.applied.profile.headings, start=1):
        text = grant.headings.get(heading.heading)
        own = text is not None and text.text.strip() not in ("", TO_BE_WRITTEN)
        blocks: list[Block] = [desk.prose(text)] if text is not None and own else []
        for content in heading.takes:
            if content in _CONTENT and content not in made:
                made.add(content)
                blocks += _CONTENT[content](desk)
        limit = grant.limits.get(heading.heading, heading.limit)
        told = not_worked_out(desk.applied) if "match" in heading.takes else ()
        if "approvals" in heading.takes and desk.papers.approvals is None:
            told = (*told, "no consents are listed: write owner/approvals.yaml, whose form `tenderwright add` knows.")
        found.append(Under(number, heading, tuple(blocks), own, limit, told))
    return tuple(found)


def lengths(desk: ApplicationDesk, headings: tuple[Under, ...], pages: Mapping[str, int]) -> tuple[Long, ...]:
    """Count every heading that has a limit, and all together where they have one; those in pages by the pages set.

    A limit in pages is left out where its pages are not set yet.
    """
    found = []
    for one in headings:
        if one.limit is not None and (one.limit.of != "pages" or one.anchor in pages):
            count = pages[one.anchor] if one.alone else length(one.heading.title, one.blocks, one.limit)
            found.append(Long(one.heading.heading, one.heading.title, one.limit, count))
    whole = desk.applied.grant.limit or desk.applied.profile.limit
    if whole is not None and whole.of != "pages":
        count = sum(length(one.heading.title, one.blocks, whole) for one in headings)
        found.append(Long("", "All headings together", whole, count))
    elif whole is not None and pages:
        anchors = {one.anchor for one in headings}
        found.append(
            Long("", "All headings together", whole, sum(n for anchor, n in pages.items() if anchor in anchors))
        )
    return tuple(found)


def counts_pages(desk: ApplicationDesk, headings: tuple[Under, ...]) -> bool:
    """Tell whether pages have to be set before the lengths are known."""
    whole = desk.applied.grant.limit or desk.applied.profile.limit
    return any(one.alone for one in headings) or (whole is not None and whole.of == "pages")
