"""A thickness survey: its file of readings, which the calculations read into arrays."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from tenderwright.notices import Notice, Place

MOST_NOTICES = 20
"""Rows of one survey that are told one by one; the rest are counted."""


@dataclass(frozen=True)
class Survey:
    """The readings of one survey as CSV; there may be a million, so that they are never made objects one by one."""

    name: str
    text: str = field(repr=False)
    """With the columns of the format, whatever the file's own are."""
    here: Place = field(compare=False)
    lines: tuple[int, ...] = field(default=(), compare=False, repr=False)
    """Where the file's own columns are others, the line of the file that each line of the text comes from."""

    def line(self, line: int) -> int:
        """Give the line of the file that a line of the text comes from, both counted from 1."""
        return self.lines[line - 1] if self.lines else line


def survey_name(path: str) -> str:
    """Name a survey by its file."""
    return path.rsplit("/", 1)[-1].rpartition(".")[0]


def told_rows(path: str, told: Sequence[tuple[int, str]]) -> Iterator[Notice]:
    """Tell of rows that cannot be used, by line and words; of very many only how many there are."""
    told = sorted(told)
    for line, message in told[:MOST_NOTICES]:
        yield Notice("bad-survey", Place(path, line), message)
    if len(told) > MOST_NOTICES:
        more = len(told) - MOST_NOTICES
        yield Notice("bad-survey", Place(path, told[MOST_NOTICES][0]), f"from here {more} more rows cannot be used")
