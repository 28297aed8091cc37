"""Find the place of any value of a package's files, so that a notice stands at the line in fault."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tenderwright.notices import Place
from tenderwright.reading.source import Source

At = Callable[..., Place]
"""Gives the place of a value by the path of its file and its keys."""


def place_at(sources: Mapping[str, Source], path: str, *keys: str | int) -> Place:
    """Find the place of a value by its file and keys, or of the nearest thing that holds it."""
    source = sources.get(path)
    return source.place(keys) if source is not None else Place(path)
