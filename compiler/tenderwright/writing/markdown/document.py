"""Writes an edition as one Markdown document: CommonMark, with tables as GitHub reads them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from tenderwright.documents.edition import Edition, Part, inline
from tenderwright.writing.markdown.blocks import block_headings, block_pieces, fact_list
from tenderwright.writing.markdown.inline import heading, paragraph
from tenderwright.writing.markdown.layout import Listing, Piece, quoted, stacked
from tenderwright.writing.markdown.slugs import heading_slugs
from tenderwright.writing.rendering import contents_groups, edition_mark
from tenderwright.writing.runs import Run, text_runs


def markdown_document(edition: Edition) -> bytes:
    """Write an edition as Markdown (UTF-8, lines ended by LF); a drawing becomes its caption and its words.

    References lead to headings of the document and are plain words where they would lead anywhere else. Raises
    `WritingError` where prose refers to what is neither an anchor nor on the web.
    """
    slugs = heading_slugs(_headings(edition))
    pieces = [*_head(edition, slugs)]
    for part in edition.parts:
        if part.kind != "cover":
            pieces += _part(edition, part, slugs)
    return f"{stacked(pieces)}\n".encode()


def _headings(edition: Edition) -> Iterator[tuple[str, str]]:
    covers = [part for part in edition.parts if part.kind == "cover"]
    yield (covers[0].anchor if covers else "", edition.title)
    for cover in covers:
        yield from block_headings(cover.blocks)
    for part in edition.parts:
        if part.kind != "cover":
            yield part.anchor, _title(part)
            yield from block_headings(part.blocks)


def _title(part: Part) -> str:
    return f"{part.number} {part.title}".strip()


def _head(edition: Edition, slugs: Mapping[str, str]) -> Iterator[Piece]:
    yield f"# {heading(text_runs(edition.title), slugs)}"
    yield paragraph(text_runs(edition.subtitle), slugs)
    yield paragraph(text_runs(edition_mark(edition), strong=True), slugs)
    facts = (*edition.facts, ("State", edition.stamp.label))
    named = {term for term, _ in facts}
    owned = [pair for pair in (("Owner", edition.owner), ("Tender", edition.tender)) if pair[0] not in named]
    yield fact_list([(term, inline(words)) for term, words in (*owned, *facts)], slugs)
    yield quoted([paragraph(text_runs(edition.caution), slugs)]) if edition.caution else ""
    for part in edition.parts:
        if part.kind == "cover":
            yield from block_pieces(part.blocks, slugs)


def _part(edition: Edition, part: Part, slugs: Mapping[str, str]) -> Iterator[Piece]:
    yield f"## {heading(text_runs(_title(part)), slugs)}"
    if part.kind == "contents":
        yield from _contents(edition, slugs)
    else:
        line = " · ".join(words for words in (part.group, part.revision) if words)
        yield paragraph((Run(line, emphasis=True),), slugs)
    yield from block_pieces(part.blocks, slugs)


def _contents(edition: Edition, slugs: Mapping[str, str]) -> Iterator[Piece]:
    for group in contents_groups(edition.parts):
        yield paragraph(text_runs(group.title, strong=True), slugs)
        yield Listing(tuple((paragraph((Run(_title(part), target=part.anchor),), slugs),) for part in group.parts))
