"""Compose what changed between two states of a package, before anything is issued: what yards would be told."""

from __future__ import annotations

from dataclasses import replace

from tenderwright.comparing.compare import Comparison
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Bullets, Edition, Facts, Heading, Paragraph, Part, Span, inline
from tenderwright.documents.edition_side import Issue
from tenderwright.documents.in_print import in_print
from tenderwright.documents.links_within import links_within
from tenderwright.documents.parts.addendum_changes import changes_part
from tenderwright.documents.parts.addendum_figures import figures_part
from tenderwright.documents.parts.addendum_lines import lines_part
from tenderwright.documents.parts.addendum_summary import changed_blocks, pages_blocks, price_words
from tenderwright.documents.parts.addendum_tables import Changed, changed_tables, tables_part
from tenderwright.documents.replacement import Replacement, replacements
from tenderwright.documents.revised import not_raised
from tenderwright.quantities.customs import telling_in

_GROUP = "What changed"
_NEW = "New, as yards would read it"
_NOTE = "These parts of the yard edition would be sent anew by an addendum, each as a whole."
_LINES = "These lines of the price form come, go or change. Every other line is as it was, under its number."


def diff(before: Issue, after: Issue, comparison: Comparison, names: tuple[str, str]) -> Edition:
    """Compose what changed from one yard edition to the other; `names` are those of the two sides."""
    found = replacements(before.edition, after.edition)
    changed = changed_tables({part.anchor: part for part in before.edition.parts}, found)
    with telling_in(after.desk.units, american=after.desk.package.american):
        parts = [
            _summary(before, after, comparison, names, found, changed),
            changes_part(before.desk, after.desk, comparison, questions=True),
            figures_part(before.desk, after.desk, comparison),
            tables_part(found, changed),
            lines_part(after.desk, comparison, _LINES),
        ]
    there = [part for part in parts if part is not None]
    numbered = [replace(part, number=str(n), group=_GROUP) for n, part in enumerate(there, start=1)]
    numbered += [
        replace(one.part, group=_NEW) for one in found if one.does == "added" or one.part.anchor == "questions"
    ]
    edition, tender = after.edition, after.desk.tender
    return in_print(
        after.desk,
        Edition(
            name="diff",
            title=tender.tender.title,
            subtitle="What changed",
            tender=edition.tender,
            owner=edition.owner,
            stamp=edition.stamp,
            issued=edition.issued,
            page_size=edition.page_size,
            parts=links_within(tuple(numbered)),
            caution=edition.caution,
            language=edition.language,
            facts=(("From", names[0]), ("To", names[1])),
            audience="yard",
        ),
    )


def _summary(
    before: Issue,
    after: Issue,
    comparison: Comparison,
    names: tuple[str, str],
    found: tuple[Replacement, ...],
    changed: Changed,
) -> Part:
    facts = (
        ("From", inline(names[0])),
        ("To", inline(names[1])),
        ("Affects price", inline(price_words(comparison))),
    )
    blocks: list[Block] = [
        Facts(facts),
        Paragraph(inline(_proved(comparison))),
        *changed_blocks(after.desk, comparison, changed),
        *_revisions(before.desk, after.desk, before.edition, after.edition),
        *pages_blocks(found, comparison, changed, "Parts that change", _NOTE),
    ]
    return Part("diff-summary", "", "What changed", "front", "", tuple(blocks), audience="yard")


def _proved(comparison: Comparison) -> str:
    proof = comparison.proof
    if not proof.operations:
        return f"Nothing that yards read is changed (SHA-256 {proof.after[:12]})."
    return (
        f"What is not listed here is unchanged for yards, and this was proved: the {proof.operations} changes "
        "listed here, applied to the data of the one, give the data of the other, to the last word and figure (SHA-256 "
        f"{proof.before[:12]} and {proof.after[:12]}; the changes stand in diff.json). What lies under owner/ and in "
        "facilities/ is no part of it."
    )


def _revisions(before: Desk, after: Desk, old: Edition, new: Edition) -> list[Block]:
    items = not_raised(before, after, old, new)
    words = tuple(
        inline(f"{item.number} {item.title}: write ", Span(f"revision: {item.revision + 1}", code=True))
        for item in items
    )
    return [Heading("Revisions to raise before an addendum"), Bullets(words)] if words else []
