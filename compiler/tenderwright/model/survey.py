"""A thickness survey: its file of readings, which the calculations read into arrays."""

from __future__ import annotations

from dataclasses import dataclass, field

from tenderwright.notices import Place
from tenderwright.reading.source import Source


@dataclass(frozen=True)
class Survey:
    """The readings of one survey as CSV; there may be a million, so that they are never made objects one by one."""

    name: str
    text: str = field(repr=False)
    here: Place = field(compare=False)


def survey_of(source: Source) -> Survey:
    """Name a survey by its file."""
    return Survey(source.path.rsplit("/", 1)[-1].removesuffix(".csv"), source.text, Place(source.path))
