"""Numbers the lists of a Word document, each from its own first number."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from docx.document import Document

DEEPEST = 5
"""Levels of lists that the styles know."""
_NUMBERS = 1
"""The numbered list of the template's numbering."""


class Numbering:
    """Makes numbered lists."""

    def __init__(self, document: Document) -> None:
        self._numbering = document.part.numbering_part.element

    def numbered_list(self, start: int, level: int) -> int:
        """Make a list that counts from a first number on a level, and give its identifier."""
        made = self._numbering.add_num(_NUMBERS)
        made.add_lvlOverride(ilvl=level).add_startOverride(val=start)
        return int(made.numId)


def list_style(name: str, depth: int) -> str:
    """Give the style of a list on a depth counted from 0."""
    level = min(depth, DEEPEST - 1)
    return f"{name}{level + 1}" if level else name
