"""Writes parsed prose as CommonMark again, with its references turned into links to headings."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from markdown_it.token import Token
from markdown_it.tree import SyntaxTreeNode

from tenderwright.writing.errors import WritingError
from tenderwright.writing.markdown.escaping import longest_run
from tenderwright.writing.markdown.inline import heading, paragraph
from tenderwright.writing.markdown.layout import Listing, Piece, quoted
from tenderwright.writing.markdown.tables import table_lines
from tenderwright.writing.prose_tables import inline_runs, prose_table
from tenderwright.writing.runs import plain_runs, text_runs

_DEEPER = 2
"""How far headings of prose stand below their own level: the document and the part are above them."""


def prose_pieces(tokens: Sequence[Token], slugs: Mapping[str, str]) -> tuple[Piece, ...]:
    """Write parsed prose as blocks, raising `WritingError` where a reference was left unresolved."""
    return _pieces(SyntaxTreeNode(tokens).children, slugs)


def prose_headings(tokens: Sequence[Token]) -> Iterable[str]:
    """Yield the text of every heading in parsed prose."""
    for node in SyntaxTreeNode(tokens).walk():
        if node.type == "heading":
            yield plain_runs(inline_runs(node)).replace("\n", " ")


def _pieces(nodes: Iterable[SyntaxTreeNode], slugs: Mapping[str, str]) -> tuple[Piece, ...]:
    return tuple(_piece(node, slugs) for node in nodes)


def _piece(node: SyntaxTreeNode, slugs: Mapping[str, str]) -> Piece:
    match node.type:
        case "paragraph":
            return paragraph(inline_runs(node), slugs)
        case "heading":
            level = min(max(int(node.tag[1]), 2) + _DEEPER, 6)
            return f"{'#' * level} {heading(inline_runs(node), slugs)}"
        case "bullet_list" | "ordered_list":
            return _listing(node, slugs)
        case "blockquote":
            return quoted(_pieces(node.children, slugs))
        case "fence" | "code_block":
            fence = "`" * max(3, longest_run(node.content, "`") + 1)
            ended = node.content if node.content.endswith("\n") or not node.content else f"{node.content}\n"
            return f"{fence}\n{ended}{fence}"
        case "hr":
            return "---"
        case "table":
            table = prose_table(node)
            return table_lines(table.titles, table.aligns, table.rows, slugs)
        case "html_block":
            return paragraph(text_runs(node.content), slugs)
    raise WritingError(f"prose holds {node.type!r}, which this writer does not know")


def _listing(node: SyntaxTreeNode, slugs: Mapping[str, str]) -> Listing:
    entries = tuple(_pieces(entry.children, slugs) for entry in node.children)
    start = int(str(node.attrs.get("start", 1))) if node.type == "ordered_list" else None
    return Listing(entries, start, tight=_is_tight(node))


def _is_tight(node: SyntaxTreeNode) -> bool:
    return all(child.hidden for entry in node.children for child in entry.children if child.type == "paragraph")
