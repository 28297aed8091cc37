"""Sets short stacks of blocks side by side, and long narrow tables in columns; a stack stays whole on its page."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import chain
from typing import Literal

from tenderwright.documents.edition import Beside, Block, Bullets, Facts, Paragraph, Prose, Table, plain

_MOST = 2400
"""Letters of text in half the width that fill some two thirds of a page."""

_ROW = 45
"""Letters of text that take as much of a page as a row of a table."""


def abreast(stacks: Iterable[Sequence[Block]], across: Literal[2, 3, 4] = 2) -> list[Block]:
    """Set stacks side by side; below each other where there is one, or one is too long for half the width."""
    there = [tuple(stack) for stack in stacks if stack]
    if len(there) < 2 or max(sum(map(_letters, stack)) for stack in there) > _MOST:
        return list(chain.from_iterable(there))
    return [Beside(tuple(there), across)]


MOST_ROWS = 44
"""Rows of a close table that stand in one column of a page."""


def in_runs(table: Table, most: int = MOST_ROWS) -> tuple[Table, ...]:
    """Part a table that is longer than a page into runs of equal length."""
    runs = max(1, -(-len(table.rows) // most))
    length = max(1, -(-len(table.rows) // runs))
    return tuple(replace(table, rows=table.rows[at : at + length]) for at in range(0, len(table.rows), length))


def folded(table: Table, across: Literal[2, 3] = 2, *, short: int = 12) -> list[Block]:
    """Set a long narrow table in runs side by side, from left to right, its note after them; a short one whole."""
    if len(table.rows) < short:
        return [table]
    pages = -(-len(table.rows) // (across * MOST_ROWS))
    runs = in_runs(replace(table, note=()), -(-len(table.rows) // (across * pages)))
    note = [Paragraph(table.note, as_note=True)] if table.note else []
    return [Beside(tuple((run,) for run in runs), across), *note]


def _letters(block: Block) -> int:
    """Count how many letters of text a block takes the room of, about."""
    match block:
        case Prose():
            return sum(len(token.content) for token in block.tokens if token.type == "inline")
        case Paragraph():
            return len(plain(block.text))
        case Bullets():
            return sum(_ROW + len(plain(entry)) for entry in block.entries)
        case Facts():
            return sum(_ROW + len(plain(words)) for _, words in block.pairs)
        case Table():
            return _ROW * len(block.rows) + len(plain(block.note))
        case _:
            return _ROW
