"""The record of calculation: every value with its formula, inputs, source, range and cautions."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from tenderwright.calculations.method import Method
from tenderwright.calculations.value import Given, Value, Working
from tenderwright.documents.desk import capital
from tenderwright.documents.edition import (
    Block,
    Column,
    Edition,
    Facts,
    Heading,
    Inline,
    Part,
    Row,
    Span,
    Table,
    inline,
)
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.parts.front import contents, cover
from tenderwright.notices import Place

_LONG = 60
"""Characters of a figure beyond which its cell would be tall and narrow."""


def record_sheet(desk: OwnerDesk, book: Edition) -> Edition:
    """Compose the record of calculation as a paper of its own, beside the owner's book: a part for each subject."""
    subjects: dict[str, list[Value]] = {}
    for value in desk.record.values.values():
        subjects.setdefault(value.working.method.name.split(".")[0], []).append(value)
    parts = [_subject(desk, name, values) for name, values in sorted(subjects.items())]
    return replace(
        book,
        subtitle="Record of calculation",
        parts=(cover(desk), contents(), *parts),
        sheets={},
        tables={},
        record=None,
    )


def _subject(desk: OwnerDesk, name: str, values: Sequence[Value]) -> Part:
    """Compose what was calculated of a subject: each method once, and under it a table for each use."""
    methods: dict[str, dict[int, tuple[Working, list[Value]]]] = {}
    for value in values:
        uses = methods.setdefault(value.working.method.name, {})
        uses.setdefault(id(value.working), (value.working, []))[1].append(value)
    blocks: list[Block] = []
    for uses in methods.values():
        method = next(iter(uses.values()))[0].method
        blocks += [Heading(method.title), Facts(_facts(method))]
        blocks += [_use(desk, working, found) for working, found in uses.values()]
    title = capital(name.replace("-", " "))
    return Part(f"record-{name}", "", title, "record", "Record of calculation", tuple(blocks), caution=True)


def _facts(method: Method[Any]) -> tuple[tuple[str, Inline], ...]:
    facts: list[tuple[str, Inline]] = [
        ("Formula", inline(method.formula)),
        ("Source", inline(str(method.source))),
        ("Valid for", inline(method.valid)),
    ]
    return tuple(facts + [("Caution", inline(caution)) for caution in method.cautions])


def _use(desk: OwnerDesk, working: Working, values: list[Value]) -> Table:
    rows = [_row(name.replace("_", " "), entry.text, _origin(desk, entry)) for name, entry in working.inputs.items()]
    rows.append(Row((inline("Results"),), "group"))
    for value in values:
        name = inline(Span(value.name, code=True))
        rows.append(_row(value.symbol.meaning, desk.figure(value), name, _anchor(value.name)))
    columns = (
        Column("Inputs" if working.inputs else "", width=2.6),
        Column("Figure", width=2.4),
        Column("From, or known as", width=3),
    )
    return Table(columns, tuple(rows), caption=capital(working.about), small=True)


def _row(what: str, figure: str, origin: Inline, anchor: str = "") -> Row:
    """Give a figure with where it is from; a long list takes the room of both columns."""
    if len(figure) <= _LONG:
        return Row((inline(what), inline(figure), origin), anchor=anchor)
    return Row((inline(what), (Span(f"{figure} · "), *origin)), anchor=anchor, runs_on=True)


def _origin(desk: OwnerDesk, entry: Given) -> Inline:
    if isinstance(entry.origin, Place):
        return inline(Span(f"{entry.origin.path}:{entry.origin.line}", code=True))
    names = [part.strip() for part in entry.origin.split(",")]
    if all(name in desk.record.values for name in names):
        spans: list[Span] = []
        for name in names:
            spans += ([Span(", ")] if spans else []) + [Span(name, _anchor(name), code=True)]
        return tuple(spans)
    return inline(entry.origin)


def _anchor(name: str) -> str:
    """Give the anchor of a value in the record."""
    return f"value-{name}".replace(".", "-")
