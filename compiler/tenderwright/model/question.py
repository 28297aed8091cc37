"""A question asked during the tender, and the answer that every yard gets; who asked is in the owner's papers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from tenderwright.model.build import Prose
from tenderwright.model.kinds import ItemRef
from tenderwright.notices import Place


@dataclass(frozen=True)
class Question:
    """A question and its answer."""

    question: int
    asked: date
    ask: Prose
    here: Place = field(compare=False)
    about: tuple[ItemRef, ...] = ()
    answer: Prose | None = None
    answered: date | None = None
    addendum: int | None = None
    """The addendum that issues the answer."""

    @property
    def number(self) -> str:
        """Give the number as printed."""
        return str(self.question)


@dataclass(frozen=True)
class Asker:
    """Who asked a question."""

    yard: str
    here: Place = field(compare=False)
    how: str = ""


@dataclass(frozen=True)
class AskedBy:
    """The owner's record of who asked what, by the number of the question."""

    asked_by: Mapping[str, Asker]
