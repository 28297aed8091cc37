"""Each anode, plug and valve stands once in the findings."""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.model.build import Reference
from tenderwright.notices import Note, Notice, Place


def check(context: ClosingContext) -> Iterator[Notice]:
    """Report what stands twice."""
    findings = context.findings
    yield from _twice("anode", [one.anode for one in findings.anodes])
    yield from _twice("docking plug", [one.plug for one in findings.plugs])
    yield from _twice("opening", [one.opening for one in findings.valves])
    for key in ("on_docking", "on_undocking"):
        yield from _twice("tank", [one.tank for one in getattr(findings, key).soundings])


def _twice(kind: str, references: list[Reference]) -> Iterator[Notice]:
    first: dict[str, Place] = {}
    for one in references:
        if one.name in first:
            notes = (Note("it is first listed here", first[one.name]),)
            yield Notice("duplicate-name", one.at, f"{kind} `{one.name}` is listed twice", notes)
        first.setdefault(one.name, one.at)
