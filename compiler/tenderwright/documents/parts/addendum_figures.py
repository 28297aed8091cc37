"""The calculated figures that an addendum changes, and because of which source."""

from __future__ import annotations

from tenderwright.comparing.compare import Comparison
from tenderwright.comparing.value_changes import ValueChange
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Column, Inline, Paragraph, Part, Row, Span, Table, inline
from tenderwright.documents.marked import marked, spoken

_MOST_CAUSES = 4
_COLUMNS = (
    Column("Figure", width=2.6),
    Column("Before", "right", 1.1),
    Column("Now", "right", 1.1),
    Column("Because of", width=3.6),
    Column("Used in", width=1.6),
)


def figures_part(before: Desk, after: Desk, comparison: Comparison) -> Part | None:
    """Compose the figures whose printed value changed, or None where there are none."""
    rows = []
    for value in comparison.values:
        old, new = (_shown(desk, one) for desk, one in ((before, value.old), (after, value.new)))
        if old != new:
            cells = (inline(_meaning(value)), inline(old), inline(new), _because(before, after, comparison, value))
            rows.append(Row((*cells, _used(after, value))))
    if not rows:
        return None
    words = (
        "These figures are calculated. They changed because the data named beside them did, which was found by putting "
        "that data back; nothing else in them changed."
    )
    blocks = (Paragraph(inline(words)), Table(_COLUMNS, tuple(rows)))
    return Part("addendum-figures", "", "Figures changed", "front", "", blocks, audience="yard")


def _shown(desk: Desk, value: object) -> str:
    from tenderwright.calculations.value import Value

    return desk.figure(value) if isinstance(value, Value) else "–"


def _meaning(value: ValueChange) -> str:
    one = value.new or value.old
    return f"{capital(one.symbol.meaning)}, {one.working.about}" if one else value.name


def _because(before: Desk, after: Desk, comparison: Comparison, value: ValueChange) -> Inline:
    told = [change for change in comparison.changes if set(change.operations) & set(value.causes)]
    spans: list[Span] = []
    for change in told[:_MOST_CAUSES]:
        spans += [Span("; ")] if spans else []
        spans += [Span(f"{change.subject.title}, {change.what[:1].lower()}{change.what[1:]}: ")]
        spans += marked(spoken(before, change.old), spoken(after, change.new))
    more = len(told) - _MOST_CAUSES
    if more > 0:
        spans.append(Span(f"; and {more} more changes in {', '.join(value.files)}"))
    return tuple(spans) or inline("several changes together")


def _used(desk: Desk, value: ValueChange) -> Inline:
    spans = [Span(f"line {line}", f"line-{line.replace('.', '-')}") for line in value.lines]
    taken = {line.partition(".")[0] for line in value.lines}
    spans += [
        Span(desk.label(kind, name), desk.anchor(kind, name))
        for kind, name in value.used_by
        if kind in ("item", "clause") and name not in taken
    ]
    with_commas: list[Span] = []
    for span in spans:
        with_commas += ([Span(", ")] if with_commas else []) + [span]
    return tuple(with_commas) or inline("–")
