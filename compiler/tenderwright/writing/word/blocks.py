"""Writes every kind of block of an edition into a Word document."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from tenderwright.documents.edition import (
    Beside,
    Block,
    Bullets,
    Caution,
    Facts,
    Figure,
    Heading,
    Paragraph,
    Pictures,
    Prose,
    Step,
    Steps,
    Table,
)
from tenderwright.writing.figures import DRAWN_ELSEWHERE
from tenderwright.writing.runs import Run, Runs, span_runs, text_runs
from tenderwright.writing.word.bookmarks import Bookmarks
from tenderwright.writing.word.elements import node, paragraph, text_run
from tenderwright.writing.word.inline import InlineWriter
from tenderwright.writing.word.prose import ProseWriter
from tenderwright.writing.word.tables import TableWriter

if TYPE_CHECKING:
    from tenderwright.writing.word.elements import Node

_STEP_DEPTH = 2
"""Lists inside a numbered requirement stand under its text, not under its number."""


@dataclass(frozen=True)
class BlockWriter:
    """Writes blocks."""

    inline: InlineWriter
    bookmarks: Bookmarks
    tables: TableWriter
    prose: ProseWriter

    def blocks(self, blocks: Iterable[Block]) -> Iterator[Node]:
        """Write blocks below each other."""
        for before, block in pairwise((None, *blocks)):
            if isinstance(before, Caution) and isinstance(block, Caution):
                yield paragraph("TableEnd")
            if block is not None:
                yield from self._block(block)

    def words(self, style: str, runs: Runs, anchor: str = "") -> Node:
        """Write a paragraph of a style, marked as the place of an anchor."""
        return paragraph(style, *self.bookmarks.about(anchor, *self.inline.nodes(runs)))

    def _block(self, block: Block) -> Iterator[Node]:
        match block:
            case Heading():
                yield self.words(f"Heading{block.level}", text_runs(block.text), block.anchor)
            case Paragraph():
                yield self.words("BodyText", span_runs(block.text), block.anchor)
            case Prose():
                yield from self.prose.blocks(block.tokens)
            case Steps():
                for step in block.steps:
                    yield from self._step(step)
            case Table():
                yield from self.tables.table(block)
            case Facts():
                yield from self.tables.facts(block)
            case Beside():
                for stack in block.stacks:
                    yield from self.blocks(stack)
            case Bullets():
                yield from (self.words("ListBullet", span_runs(entry)) for entry in block.entries)
            case Figure():
                yield self.words("Caption", text_runs(block.caption), block.anchor)
                words = (*text_runs(block.alternative), Run(f" {DRAWN_ELSEWHERE}", faint=True))
                yield self.words("FigureText", words)
            case Pictures():
                yield from (self.words("Caption", text_runs(one.words)) for one in block.pictures)
            case Caution():
                yield from self._caution(block)

    def _step(self, step: Step) -> Iterator[Node]:
        """Write a requirement: its number hangs at the left, a hold point stands first in its text."""
        label = [text_run(step.label, "Strong"), text_run("\t")]
        if step.hold:
            label += [text_run(step.hold, "Strong"), text_run(" ")]
        written = list(self.prose.blocks(step.body.tokens, "StepContinue", _STEP_DEPTH))
        inside: list[Node] = []
        if written and step.body.tokens[0].type == "paragraph_open":
            inside = list(written.pop(0))[1:]
        yield paragraph("Step", *self.bookmarks.about(step.anchor, *label, *inside))
        yield from written

    def _caution(self, caution: Caution) -> Iterator[Node]:
        title = paragraph(
            "IntenseQuote", *self.inline.nodes(text_runs(caution.title, strong=True)), before=(node("keepNext"),)
        )
        yield title
        for words in caution.paragraphs:
            yield self.words("IntenseQuote", span_runs(words))
