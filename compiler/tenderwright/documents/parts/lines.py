"""How many lines blocks take on paper, about: to choose how they are arranged, before anything is set."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import ceil

from tenderwright.documents.edition import (
    Beside,
    Block,
    Bullets,
    Column,
    Facts,
    Inline,
    Paragraph,
    Prose,
    Row,
    Table,
    plain,
)

PAGE = 66
"""Lines that a page holds, about."""

_WIDE = 115
"""Letters in a line of the whole width, about."""

_HEADING = 2


def lines(blocks: Iterable[Block], wide: float = _WIDE) -> float:
    """Count the lines of blocks that stand below each other, set to a width in letters."""
    return sum(_lines(block, wide) for block in blocks)


def _lines(block: Block, wide: float) -> float:
    match block:
        case Prose():
            return sum(_wrapped(token.content, wide) + 0.4 for token in block.tokens if token.type == "inline")
        case Paragraph():
            return _wrapped(plain(block.text), wide) + 0.4
        case Bullets():
            return sum(_wrapped(plain(entry), wide / 2 if block.abreast else wide) for entry in block.entries) / (
                2 if block.abreast else 1
            )
        case Facts():
            return sum(1.2 * _wrapped(plain(words), 0.65 * wide) for _, words in block.pairs)
        case Table():
            return 2.5 + sum(_row(block.columns, row, wide) for row in block.rows) + _noted(block.note, wide)
        case Beside():
            across = [lines(stack, wide / block.across) for stack in block.stacks]
            return sum(max(across[at : at + block.across]) for at in range(0, len(across), block.across))
        case _:
            return _HEADING


def _row(columns: Sequence[Column], row: Row, wide: float) -> float:
    whole = sum(column.width for column in columns)
    shares = [1.2 * wide * column.width / whole for column in columns]
    return 0.2 + max((_wrapped(plain(cell), share) for cell, share in zip(row.cells, shares, strict=False)), default=1)


def _noted(note: Inline, wide: float) -> float:
    return _wrapped(plain(note), 1.3 * wide) if note else 0.0


def _wrapped(text: str, wide: float) -> int:
    return max(1, ceil(len(text) / max(wide, 4.0)))
