"""The format in which a package is written; of another one no more is read, since its keys may mean other things."""

from __future__ import annotations

from collections.abc import Mapping

from tenderwright.notices import Notice, Place
from tenderwright.reading.layout import FORMAT
from tenderwright.reading.source import Source

_FILE = "package.yaml"


def format_said(sources: Mapping[str, Source]) -> int | None:
    """Give the version of the format that the package says it is of; None where it says none."""
    source = sources.get(_FILE)
    said = source.data.get("format") if source is not None and isinstance(source.data, dict) else None
    return said if type(said) is int else None


def another_format(sources: Mapping[str, Source]) -> Notice | None:
    """Say that the package is of another format, or None where it is of this one or does not say."""
    said = format_said(sources)
    if said is None or said == FORMAT:
        return None
    message = f"the package is written in format {said}, and this Tenderwright reads format {FORMAT}; no more was read"
    hints = (
        f"use a Tenderwright that reads format {said}",
        f"or write every file as schemas/README.md says, and `format: {FORMAT}` here",
    )
    return Notice("other-format", sources[_FILE].place(("format",)), message, hints=hints)


def format_unsaid(sources: Mapping[str, Source]) -> Notice | None:
    """Say that the package does not say its format, or None where it does or cannot be read."""
    source = sources.get(_FILE)
    if source is None or not isinstance(source.data, dict) or "format" in source.data:
        return None
    message = f"the package does not say in which format it is written; it is read as format {FORMAT}"
    return Notice("format-unsaid", Place(_FILE), message, hints=(f"add the line `format: {FORMAT}`",))
