"""Gathers short chapters into one part, each a section of its own, so that none is a page nearly empty."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from tenderwright.documents.edition import Beside, Block, Heading, Paragraph, Part, Span, inline
from tenderwright.documents.parts.lines import PAGE, lines


def gathered(head: Part, *others: Part | None) -> Part:
    """Put chapters into one part under the head of the first; the anchor of each leads to its section."""
    blocks = list(head.blocks)
    for one in others:
        if one is not None:
            blocks += [Heading(one.title, 2, one.anchor), *_below(one.blocks)]
    return replace(head, blocks=tuple(blocks), caution=any(one.caution for one in (head, *others) if one is not None))


_SHORT = PAGE / 2
"""A chapter of fewer lines is a section of the one before it, where it fits on that one's last page."""


_FEW = 5
"""Lines up to which a paragraph that is a whole chapter is a sentence."""


def without_nearly_empty(parts: Iterable[Part | None]) -> list[Part]:
    """Gather each chapter shorter than half a page into the one before it, where that leaves room for it.

    Of a chapter that has nothing but a sentence, the sentence stands with others of its kind under one heading.
    """
    made: list[Part] = []
    bare: list[Part] = []
    for part in (one for one in parts if one is not None):
        if made and _is_sentence(part):
            bare.append(part)
        elif made and made[-1].group == part.group and _fits(made[-1], part):
            made[-1] = gathered(made[-1], part)
        else:
            made.append(part)
    if bare:
        said = tuple(_sentence(part) for part in bare)
        made[-1] = replace(made[-1], blocks=(*made[-1].blocks, Heading("Not in the data"), *said))
    return made


def _fits(before: Part, part: Part) -> bool:
    more = lines(part.blocks)
    return more < _SHORT and lines(before.blocks) % PAGE + more < _FULL


_FULL = 0.92 * PAGE


def _is_sentence(part: Part) -> bool:
    return len(part.blocks) == 1 and isinstance(part.blocks[0], Paragraph) and lines(part.blocks) < _FEW


def _sentence(part: Part) -> Paragraph:
    (words,) = part.blocks
    assert isinstance(words, Paragraph)
    return Paragraph(inline(Span(f"{part.title}. ", strong=True), *words.text), part.anchor)


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
