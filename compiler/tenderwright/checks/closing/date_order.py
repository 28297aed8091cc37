"""Dates that follow each other: each day of a course of events falls on or after the one before it."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from tenderwright.notices import Note, Notice
from tenderwright.reading.source import Path, Source

Dated = tuple[Path, str, date | None]
"""Where a day stands in its file, what happened on it in a few words, and the day itself where it is known."""


def date_order(source: Source, course: Iterable[Dated]) -> list[Notice]:
    """Report each day that falls before the last one known before it."""
    notices: list[Notice] = []
    before: tuple[Path, str, date] | None = None
    for path, what, day in course:
        if day is None:
            continue
        if before is not None and day < before[2]:
            message = f"{what} on {day} comes before {before[1]} on {before[2]}"
            notes = (Note(f"{before[1]} is here", source.place(before[0])),)
            notices.append(Notice("date-order", source.place(path), message, notes))
            continue
        before = (path, what, day)
    return notices
