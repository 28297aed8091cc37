"""What a check of findings may look at."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from tenderwright.calculations.value import Record
from tenderwright.model.findings import Findings
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.package import Package
from tenderwright.model.reading_rows import ReadingRow
from tenderwright.notices import Notice, Place
from tenderwright.pricing.in_dock.ledger import Ledger
from tenderwright.reading.source import Source


@dataclass(frozen=True)
class ClosingContext:
    """The findings with the file they stand in, and the package they answer."""

    findings: Findings
    source: Source
    package: Package
    record: Record
    papers: OwnerPapers
    readings: Sequence[ReadingRow] = ()
    ledger: Ledger | None = None
    """What the papers from the dock made of the awarded bid."""

    def at(self, *path: str | int) -> Place:
        """Find the place of a value in the findings."""
        return self.source.place(path)


ClosingCheck = Callable[[ClosingContext], Iterator[Notice]]
