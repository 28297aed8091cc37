"""A table of parsed prose as rows of runs, for writers that know no HTML."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from markdown_it.token import Token
from markdown_it.tree import SyntaxTreeNode

from tenderwright.writing.runs import Runs, token_runs

Align = Literal["left", "right", "centre"]
_ALIGNS: dict[str, Align] = {"text-align:right": "right", "text-align:center": "centre"}


@dataclass(frozen=True)
class ProseTable:
    """A table with one row of titles."""

    titles: tuple[Runs, ...]
    aligns: tuple[Align, ...]
    rows: tuple[tuple[Runs, ...], ...]


def prose_table(node: SyntaxTreeNode) -> ProseTable:
    """Read a table out of the tree of parsed prose."""
    head, *body = (row for group in node.children for row in group.children)
    aligns = tuple(_ALIGNS.get(str(cell.attrs.get("style", "")), "left") for cell in head.children)
    return ProseTable(_cells(head), aligns, tuple(_cells(row) for row in body))


def inline_runs(node: SyntaxTreeNode) -> Runs:
    """Give the inline text of a node, which may have none."""
    return tuple(run for child in node.children if child.type == "inline" for run in token_runs(_tokens(child)))


def _tokens(inline: SyntaxTreeNode) -> list[Token]:
    return (inline.token.children if inline.token is not None else None) or []


def _cells(row: SyntaxTreeNode) -> tuple[Runs, ...]:
    return tuple(inline_runs(cell) for cell in row.children)
