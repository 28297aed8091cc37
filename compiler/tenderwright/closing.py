"""The findings of a docking, taken through the same stages on top of the package that was tendered."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from tenderwright.checks.closing.context import ClosingContext
from tenderwright.checks.closing.run import check_findings
from tenderwright.linking.link import link_findings, link_values
from tenderwright.model.findings import Findings
from tenderwright.model.load_findings import load_findings
from tenderwright.model.reading_rows import ReadingRow, read_rows, rows_of
from tenderwright.notices import Notice, sort_notices
from tenderwright.pipeline import Compiled, OwnersSide
from tenderwright.reading.package import read_beside, read_one
from tenderwright.reading.source import Source
from tenderwright.shapes.shape import READ_ALL_THE_SAME
from tenderwright.shapes.todos import refused, todos_of
from tenderwright.shapes.validate import validate


@dataclass(frozen=True)
class CompiledFindings:
    """The findings of a docking after every stage that checks them."""

    findings: Findings | None
    """None where the file cannot be read or has not the shape of findings."""
    source: Source | None
    survey: Source | None
    """The file of readings that they name."""
    readings: tuple[ReadingRow, ...]
    notices: tuple[Notice, ...]

    @property
    def sound(self) -> bool:
        """Tell whether no mistake was found."""
        return self.findings is not None and not any(notice.severity == "error" for notice in self.notices)


def compile_findings(file: Path, compiled: Compiled, owner: OwnersSide) -> CompiledFindings:
    """Take the findings of a docking through the same stages, on top of the package that was tendered."""
    source, read_notices = read_one(file)
    if source is None or any(n.severity == "error" and n.code not in READ_ALL_THE_SAME for n in read_notices):
        return CompiledFindings(None, source, None, (), tuple(read_notices))
    shape_notices = [notice for _, notice in validate(source, "findings")] or refused(todos_of(source, "findings"))
    if shape_notices:
        return CompiledFindings(None, source, None, (), tuple(sort_notices([*read_notices, *shape_notices])))
    findings, model_notices = load_findings(source, compiled.package.frames)
    named = findings.readings_file
    survey, beside_notices = read_beside(file, named, source.place(("readings_file",))) if named else (None, [])
    columns = findings.readings_columns
    rows, row_notices = read_rows(survey, columns) if survey is not None else rows_of(findings.readings)
    links, link_notices = link_findings(findings, compiled.links, compiled.package)
    value_notices = link_values(links, compiled.record.known, compiled.record.missing)
    context = ClosingContext(findings, source, compiled.package, compiled.record, owner.papers, rows, owner.ledger)
    found = [*read_notices, *model_notices, *beside_notices, *row_notices, *link_notices, *value_notices]
    checked = check_findings(context) if not model_notices else []  # a frame that is none would give more mistakes
    notices = sort_notices([*found, *checked])
    return CompiledFindings(findings, source, survey, tuple(rows), tuple(notices))
