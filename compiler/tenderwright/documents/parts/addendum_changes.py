"""The changes of an addendum, subject by subject, before and after in one."""

from __future__ import annotations

from itertools import groupby

from tenderwright.comparing.change import Change, Subject
from tenderwright.comparing.compare import Comparison
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Heading, Inline, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.marked import marked, spoken

_GROUPS = ("tender", "clause", "drawing", "item", "question", "other")
"""The order in which a yard reads them; questions have their own part."""

_WHOLE = {
    "added": "New; its pages follow.",
    "removed": "No longer part of the tender. Its number stays taken.",
    "withdrawn": "Withdrawn, and not priced. Its number stays taken.",
}
_COLUMNS = (Column("What", width=2.3), Column("Before and after", width=6.1), Column("Affects price", width=1.3))


def subjects(comparison: Comparison) -> list[tuple[Subject, list[Change]]]:
    """Give the changes by what they are about, in the order in which a yard reads them."""
    ordered = sorted(comparison.changes, key=lambda change: _place(change.subject))
    return [(subject, list(found)) for subject, found in groupby(ordered, key=lambda change: change.subject)]


def _place(subject: Subject) -> tuple[int, int, str]:
    number = int(subject.name) if subject.group in ("item", "question") and subject.name.isdecimal() else 0
    return _GROUPS.index(subject.group), number, subject.name


def title_of(desk: Desk, subject: Subject) -> str:
    """Give the words for a subject, with its number where it has one."""
    if subject.group == "item":
        return f"{subject.name} {subject.title}"
    number = desk.clause_number(subject.name) if subject.group == "clause" else ""
    return f"Clause {number} {subject.title}" if number else subject.title


def changes_part(before: Desk, after: Desk, comparison: Comparison, *, questions: bool = False) -> Part | None:
    """Compose the changes in words, or None where there are none; questions have a part of their own if not here."""
    blocks: list[Block] = []
    for subject, found in subjects(comparison):
        if subject.group == "question" and not questions:
            continue
        rows = tuple(Row((inline(_what(change)), _told(before, after, change), _price(change))) for change in found)
        blocks += [Heading(title_of(after, subject)), Table(_COLUMNS, rows)]
    if not blocks:
        return None
    words = inline(
        Span("Words put in", inserted=True),
        " are underlined, and ",
        Span("words taken out", deleted=True),
        " are struck through; ¶ stands between paragraphs, and … for those that are as they were. Requirements are "
        "called by the numbers they had before, new ones by those they have now.",
    )
    return Part(
        "addendum-changes", "", "Changes, before and after", "front", "", (Paragraph(words), *blocks), audience="yard"
    )


def _what(change: Change) -> str:
    words = {"added": "new", "removed": "deleted", "withdrawn": "withdrawn"}.get(change.manner, "")
    return f"{change.what} ({words})" if change.what and words else change.what or change.manner.capitalize()


def _told(before: Desk, after: Desk, change: Change) -> Inline:
    if change.old is None and change.new is None:
        return inline(_WHOLE.get(change.manner, ""))
    return marked(spoken(before, change.old), spoken(after, change.new))


def _price(change: Change) -> Inline:
    return inline("yes" if change.price else "no")
