"""A change as it is told to a yard: of what, in which way, from what to what, and whether it bears on price."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Group = Literal["tender", "clause", "item", "drawing", "question", "other"]

Manner = Literal["added", "withdrawn", "removed", "changed"]


@dataclass(frozen=True)
class Said:
    """One side of a change in words; prose is CommonMark whose references are still to be resolved."""

    text: str
    prose: bool = False


@dataclass(frozen=True)
class Subject:
    """What a change is about: an item by its number, a clause or drawing by its name, else a file."""

    group: Group
    name: str
    title: str


@dataclass(frozen=True)
class Change:
    """One change, and the operations that it tells."""

    subject: Subject
    manner: Manner
    what: str
    """In words, such as `Line a, quantity`; empty where the subject as a whole came or went."""
    old: Said | None
    new: Said | None
    price: bool
    """Whether it can affect price."""
    operations: tuple[int, ...]
    """Which operations it tells, counted from 0."""
