"""Lays blocks out below each other: blank lines between them, lists indented, quotations marked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Listing:
    """A list, whose markers are chosen when it is known what stands before it."""

    entries: tuple[tuple[str | Listing, ...], ...]
    start: int | None = None
    """The first number; none for bullets."""
    tight: bool = True


Piece = str | Listing
"""A block as its lines, or a list."""


def stacked(pieces: Sequence[Piece]) -> str:
    """Set blocks below each other; of two lists in a row the second takes another marker, or they would be one."""
    written: list[str] = []
    marker, before = "", ""
    for piece in pieces:
        if isinstance(piece, str):
            written.append(piece)
            before = ""
            continue
        usual, other = ("-", "*") if piece.start is None else (".", ")")
        marker = other if before == usual else usual
        written.append(_listed(piece, marker))
        before = marker
    return "\n\n".join(text for text in written if text)


def quoted(pieces: Sequence[Piece]) -> str:
    """Mark blocks as a quotation."""
    return "\n".join(f"> {line}".rstrip() for line in stacked(pieces).split("\n"))


def _listed(listing: Listing, marker: str) -> str:
    entries = []
    for place, entry in enumerate(listing.entries):
        label = marker if listing.start is None else f"{listing.start + place}{marker}"
        entries.append(_entry(label, entry))
    single = all(len(entry) < 2 for entry in listing.entries)
    return ("\n" if listing.tight and single else "\n\n").join(entries)


def _entry(label: str, pieces: tuple[Piece, ...]) -> str:
    indent = " " * (len(label) + 1)
    first, *others = stacked(pieces).split("\n")
    return "\n".join([f"{label} {first}".rstrip(), *(f"{indent}{line}" if line else "" for line in others)])
