"""The record of calculation: every value with its formula, inputs, source, range and cautions."""

from __future__ import annotations

from tenderwright.calculations.value import Given, Value, Working
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Column, Facts, Heading, Inline, Part, Row, Span, Table, inline
from tenderwright.notices import Place


def record_of_calculation(desk: Desk) -> Part:
    """Compose the whole record, one entry for each use of a method."""
    groups: dict[int, tuple[Working, list[Value]]] = {}
    for value in desk.record.values.values():
        groups.setdefault(id(value.working), (value.working, []))[1].append(value)
    blocks: list[Block] = []
    for working, values in groups.values():
        blocks += _entry(desk, working, values)
    return Part("record", "13", "Record of calculation", "record", "Owner's papers", tuple(blocks), caution=True)


def _entry(desk: Desk, working: Working, values: list[Value]) -> list[Block]:
    method = working.method
    facts: list[tuple[str, Inline]] = [
        ("Formula", inline(method.formula)),
        ("Source", inline(str(method.source))),
        ("Valid for", inline(method.valid)),
    ]
    facts += [("Caution", inline(caution)) for caution in method.cautions]
    rows = [Row((inline("Inputs"),), "group")] if working.inputs else []
    rows += [
        Row((inline(name.replace("_", " ")), inline(entry.text), _origin(desk, entry)))
        for name, entry in working.inputs.items()
    ]
    rows.append(Row((inline("Results"),), "group"))
    rows += [
        Row(
            (inline(value.symbol.meaning), inline(desk.figure(value)), inline(Span(value.name, code=True))),
            anchor=desk.anchor("value", value.name),
        )
        for value in values
    ]
    columns = (Column("", width=2.6), Column("Figure", width=2.6), Column("From or as", width=2.8))
    return [Heading(f"{method.title}: {working.about}"), Facts(tuple(facts)), Table(columns, tuple(rows), small=True)]


def _origin(desk: Desk, entry: Given) -> Inline:
    if isinstance(entry.origin, Place):
        return inline(Span(f"{entry.origin.path}:{entry.origin.line}", code=True))
    names = [part.strip() for part in entry.origin.split(",")]
    if all(name in desk.record.values for name in names):
        spans: list[Span] = []
        for name in names:
            spans += ([Span(", ")] if spans else []) + [Span(name, desk.anchor("value", name), code=True)]
        return tuple(spans)
    return inline(entry.origin)
