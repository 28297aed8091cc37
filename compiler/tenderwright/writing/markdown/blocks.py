"""Writes every kind of block of an edition as CommonMark."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from tenderwright.documents.edition import (
    Beside,
    Block,
    Bullets,
    Caution,
    Facts,
    Figure,
    Heading,
    Inline,
    Paragraph,
    Pictures,
    Prose,
    Step,
    Steps,
    Table,
)
from tenderwright.writing.figures import DRAWN_ELSEWHERE
from tenderwright.writing.markdown.inline import heading, paragraph
from tenderwright.writing.markdown.layout import Listing, Piece, quoted
from tenderwright.writing.markdown.prose import prose_headings, prose_pieces
from tenderwright.writing.markdown.tables import table_pieces
from tenderwright.writing.runs import Run, Runs, span_runs, text_runs


def block_pieces(blocks: Iterable[Block], slugs: Mapping[str, str]) -> Iterator[Piece]:
    """Write blocks; `slugs` gives the place of every anchor that can be linked to."""
    for block in blocks:
        yield from _pieces(block, slugs)


def block_headings(blocks: Iterable[Block]) -> Iterator[tuple[str, str]]:
    """Yield anchor and text of every heading that the blocks will have, in their order."""
    for block in blocks:
        match block:
            case Heading():
                yield block.anchor, block.text
            case Prose():
                yield from (("", text) for text in prose_headings(block.tokens))
            case Steps():
                yield from (("", text) for step in block.steps for text in prose_headings(step.body.tokens))
            case Beside():
                for stack in block.stacks:
                    yield from block_headings(stack)


def fact_list(pairs: Iterable[tuple[str, Inline]], slugs: Mapping[str, str]) -> Listing:
    """Write terms and descriptions as a list."""
    return Listing(
        tuple((paragraph((*text_runs(f"{term}:", strong=True), *_after(words)), slugs),) for term, words in pairs)
    )


def _after(words: Inline) -> Runs:
    return (Run(" "), *span_runs(words))


def _pieces(block: Block, slugs: Mapping[str, str]) -> Iterable[Piece]:
    match block:
        case Heading():
            return (f"{'#' * (block.level + 1)} {heading(text_runs(block.text), slugs)}",)
        case Paragraph():
            return (paragraph(span_runs(block.text), slugs),)
        case Prose():
            return prose_pieces(block.tokens, slugs)
        case Steps():
            return (Listing(tuple(_step(step, slugs) for step in block.steps), tight=False),)
        case Table():
            return table_pieces(block, slugs)
        case Facts():
            return (fact_list(block.pairs, slugs),)
        case Bullets():
            return (Listing(tuple((paragraph(span_runs(entry), slugs),) for entry in block.entries)),)
        case Figure():
            return _figure(block, slugs)
        case Pictures():
            return tuple(paragraph(text_runs(one.words), slugs) for one in block.pictures)
        case Caution():
            return (_caution(block, slugs),)
        case Beside():
            return tuple(piece for stack in block.stacks for piece in block_pieces(stack, slugs))


def _step(step: Step, slugs: Mapping[str, str]) -> tuple[Piece, ...]:
    label = f"{step.label} ({step.hold})" if step.hold else step.label
    mark = paragraph(text_runs(label, strong=True), slugs)
    first, *others = prose_pieces(step.body.tokens, slugs) or ("",)
    if isinstance(first, str) and _is_paragraph(step):
        return (f"{mark} {first}", *others)
    return (mark, first, *others)


def _is_paragraph(step: Step) -> bool:
    return bool(step.body.tokens) and step.body.tokens[0].type == "paragraph_open"


def _figure(figure: Figure, slugs: Mapping[str, str]) -> tuple[str, ...]:
    words = (*text_runs(figure.alternative), Run(f" {DRAWN_ELSEWHERE}", emphasis=True))
    return paragraph(text_runs(figure.caption, strong=True), slugs), paragraph(words, slugs)


def _caution(caution: Caution, slugs: Mapping[str, str]) -> str:
    paragraphs = (paragraph(span_runs(words), slugs) for words in caution.paragraphs)
    return quoted([paragraph(text_runs(caution.title, strong=True), slugs), *paragraphs])
