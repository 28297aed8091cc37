"""Writes parsed prose into a Word document."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from markdown_it.token import Token
from markdown_it.tree import SyntaxTreeNode

from tenderwright.writing.errors import WritingError
from tenderwright.writing.prose_tables import inline_runs, prose_table
from tenderwright.writing.runs import text_runs
from tenderwright.writing.word.elements import node, paragraph, text_run
from tenderwright.writing.word.inline import InlineWriter
from tenderwright.writing.word.lists import DEEPEST, Numbering, list_style
from tenderwright.writing.word.tables import TableWriter

if TYPE_CHECKING:
    from tenderwright.writing.word.elements import Node


@dataclass(frozen=True)
class ProseWriter:
    """Writes parsed prose."""

    inline: InlineWriter
    tables: TableWriter
    numbering: Numbering

    def blocks(self, tokens: Sequence[Token], style: str = "BodyText", depth: int = 0) -> Iterator[Node]:
        """Write prose whose paragraphs have a style and whose lists begin on a depth."""
        yield from self._blocks(SyntaxTreeNode(tokens).children, style, depth)

    def _blocks(self, nodes: Iterable[SyntaxTreeNode], style: str, depth: int) -> Iterator[Node]:
        for block in nodes:
            yield from self._block(block, style, depth)

    def _block(self, block: SyntaxTreeNode, style: str, depth: int) -> Iterator[Node]:
        match block.type:
            case "paragraph":
                yield paragraph(style, *self.inline.nodes(inline_runs(block)))
            case "heading":
                yield paragraph("Heading3", *self.inline.nodes(inline_runs(block)))
            case "bullet_list" | "ordered_list":
                yield from self._list(block, depth)
            case "blockquote":
                yield from self._blocks(block.children, "Quote", depth)
            case "fence" | "code_block":
                yield paragraph("CodeBlock", text_run(block.content.rstrip("\n")))
            case "hr":
                yield paragraph("Rule")
            case "table":
                yield from self.tables.prose_table(prose_table(block))
            case "html_block":
                yield paragraph(style, *self.inline.nodes(text_runs(block.content)))
            case other:
                raise WritingError(f"prose holds {other!r}, which this writer does not know")

    def _list(self, block: SyntaxTreeNode, depth: int) -> Iterator[Node]:
        numbered = block.type == "ordered_list"
        level = min(depth, DEEPEST - 1)
        number = self.numbering.numbered_list(int(str(block.attrs.get("start", 1))), level) if numbered else 0
        style = list_style("ListNumber" if numbered else "ListBullet", depth)
        for entry in block.children:
            inside = list(entry.children)
            words = inline_runs(inside.pop(0)) if inside and inside[0].type == "paragraph" else ()
            counted = (node("numPr", node("ilvl", val=level), node("numId", val=number)),) if numbered else ()
            yield paragraph(style, *self.inline.nodes(words), before=counted)
            yield from self._blocks(inside, list_style("ListContinue", depth), depth + 1)
