"""Build the findings of a docking from their file."""

from __future__ import annotations

from tenderwright.model.build import Builder
from tenderwright.model.findings import Findings
from tenderwright.notices import Notice
from tenderwright.quantities.position import FrameTable
from tenderwright.reading.source import Source


def load_findings(source: Source, frames: FrameTable | None) -> tuple[Findings, list[Notice]]:
    """Build the findings of a docking from a file whose shape has been checked."""
    builder = Builder(source, frames)
    return builder.build(Findings, source.data), builder.notices
