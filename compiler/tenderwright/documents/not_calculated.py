"""What a page says where the answer to a calculation would stand and there is none."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tenderwright.calculations.steps.outcome import Absent, Each, NotAsked
from tenderwright.documents.edition import Bullets, Paragraph, inline
from tenderwright.documents.in_words import in_words


def why_not(absent: Absent) -> str:
    """Say why there is no answer, as a sentence for a paragraph or a cell."""
    return f"Not calculated: {in_words(absent.why)}."


def not_calculated(absent: Absent, of: str = "") -> Paragraph:
    """Give a paragraph that says why there is no answer, and to what where the heading over it does not."""
    return Paragraph(inline(f"{of}. {why_not(absent)}" if of else why_not(absent)))


def not_drawn(outcome: object, of: str) -> str:
    """Say what a drawing does not show for want of data, to follow its caption; nothing where it is there."""
    return f" {of}. {why_not(outcome)}" if isinstance(outcome, Absent) and not isinstance(outcome, NotAsked) else ""


def absent_of(outcome: Each[Any] | Absent, key: str) -> Absent | None:
    """Give why a calculation done for each of several things has no result for one; None where it has."""
    if isinstance(outcome, Absent):
        return outcome
    return outcome.absent.get(key)


def not_calculated_of(absent: Mapping[str, Absent | None]) -> list[Bullets]:
    """Give a list that says, by name, why there is no answer, of those without one; no list where all are there."""
    told = {name: one for name, one in absent.items() if one is not None and not isinstance(one, NotAsked)}
    return [Bullets(tuple(inline(f"{name}. {why_not(one)}") for name, one in told.items()))] if told else []
