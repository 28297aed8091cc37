"""Writes runs of text into a Word document: character styles, links to bookmarks and to the web."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import groupby
from typing import TYPE_CHECKING

from tenderwright.writing.runs import Run, Runs
from tenderwright.writing.word.bookmarks import Bookmarks
from tenderwright.writing.word.elements import node, text_run

if TYPE_CHECKING:
    from tenderwright.writing.word.elements import Node


class InlineWriter:
    """Writes runs; `relation` gives the name under which the document holds a web address."""

    def __init__(self, bookmarks: Bookmarks, relation: Callable[[str], str]) -> None:
        self._bookmarks = bookmarks
        self._relation = relation

    def nodes(self, runs: Runs) -> Iterator[Node]:
        """Write runs; a link to what the document does not hold becomes plain text."""
        for (target, address), group in groupby(runs, lambda run: (run.target, run.address)):
            bookmark = self._bookmarks.name(target)
            if bookmark:
                yield node("hyperlink", *_linked(group), anchor=bookmark, history=1)
            elif address:
                yield node("hyperlink", *_linked(group), r_id=self._relation(address), w_history=1)
            else:
                yield from (text_run(run.text, _style(run)) for run in group)


def _linked(runs: Iterator[Run]) -> list[Node]:
    return [text_run(run.text, "StrongHyperlink" if run.strong else "Hyperlink") for run in runs]


def _style(run: Run) -> str:
    if run.code:
        return "Code"
    if run.strong:
        return "IntenseEmphasis" if run.emphasis else "Strong"
    if run.emphasis:
        return "Emphasis"
    return "Faint" if run.faint else ""
