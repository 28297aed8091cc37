"""Gathers short chapters into one part, each a section of its own, so that none is a page nearly empty."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from tenderwright.documents.edition import Beside, Block, Heading, Part


def gathered(head: Part, *others: Part | None) -> Part:
    """Put chapters into one part under the head of the first; the anchor of each leads to its section."""
    blocks = list(head.blocks)
    for one in others:
        if one is not None:
            blocks += [Heading(one.title, 2, one.anchor), *_below(one.blocks)]
    return replace(head, blocks=tuple(blocks), caution=any(one.caution for one in (head, *others) if one is not None))


def _below(blocks: Iterable[Block]) -> list[Block]:
    """Set the headings of a section one level below that of the section."""
    lowered: list[Block] = []
    for block in blocks:
        if isinstance(block, Heading):
            block = replace(block, level=3)
        elif isinstance(block, Beside):
            block = replace(block, stacks=tuple(tuple(_below(stack)) for stack in block.stacks))
        lowered.append(block)
    return lowered
