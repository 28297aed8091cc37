"""Writes an edition as one Word document (ECMA-376), in named styles only."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from tenderwright.documents.edition import Edition, Facts, Part, inline
from tenderwright.writing.errors import WritingError
from tenderwright.writing.rendering import contents_groups, edition_mark
from tenderwright.writing.runs import text_runs
from tenderwright.writing.word.blocks import BlockWriter
from tenderwright.writing.word.bookmarks import Bookmarks, edition_anchors
from tenderwright.writing.word.elements import complex_field, node, paragraph, text_run
from tenderwright.writing.word.inline import InlineWriter
from tenderwright.writing.word.lists import Numbering
from tenderwright.writing.word.package import document_bytes, open_document
from tenderwright.writing.word.prose import ProseWriter
from tenderwright.writing.word.sections import Pages, sections, set_pages, text_width
from tenderwright.writing.word.tables import TableWriter

if TYPE_CHECKING:
    from docx.document import Document

    from tenderwright.writing.word.elements import Node


def word_document(edition: Edition, timestamp: int) -> bytes:
    """Write an edition as a Word document, dated by a timestamp in seconds since 1970 UTC.

    The same edition and timestamp give the same bytes. A drawing becomes its caption and its words, for Word
    takes none of ours. References lead to bookmarks, and are plain words where the document does not hold what
    they lead to. Raises `WritingError` where an anchor stands twice or a reference was left unresolved.
    """
    if not edition.parts:
        raise WritingError("an edition without parts cannot be written")
    document = open_document(edition, timestamp)
    writing = _Writing(edition, document)
    for pages, parts in sections(edition):
        writing.section(pages, parts)
    return document_bytes(document)


class _Writing:
    """The writing of one document."""

    def __init__(self, edition: Edition, document: Document) -> None:
        self._edition = edition
        self._document = document
        self._bookmarks = Bookmarks(edition_anchors(edition))
        self._inline = InlineWriter(self._bookmarks, self._relation)
        self._numbering = Numbering(document)
        self._begun = False

    def section(self, pages: Pages, parts: list[Part]) -> None:
        """Write parts whose pages are set alike as a section."""
        if self._begun:
            self._break_section()
        set_pages(self._document.sections[-1], self._edition, pages)
        tables = TableWriter(self._inline, self._bookmarks, text_width(self._edition, pages))
        prose = ProseWriter(self._inline, tables, self._numbering)
        writer = BlockWriter(self._inline, self._bookmarks, tables, prose)
        for part in parts:
            self._append(self._part(writer, part))

    def _part(self, writer: BlockWriter, part: Part) -> Iterator[Node]:
        first = not self._begun
        if part.kind == "cover" or first:
            yield from self._title(writer, part.anchor if part.kind == "cover" else "")
        if part.kind != "cover":
            yield from self._part_head(writer, part, first)
        if part.kind == "contents":
            yield from self._contents()
        yield from writer.blocks(part.blocks)

    def _title(self, writer: BlockWriter, anchor: str) -> Iterator[Node]:
        edition = self._edition
        yield writer.words("Subtitle", text_runs(edition.owner))
        yield writer.words("Title", text_runs(edition.title), anchor)
        yield writer.words("Subtitle", text_runs(edition.subtitle))
        if mark := edition_mark(edition):
            yield writer.words("Mark", text_runs(mark))
        facts = (("Tender", edition.tender), *edition.facts, ("State", edition.stamp.label))
        yield from writer.blocks([Facts(tuple((term, inline(words)) for term, words in dict(facts).items()))])
        if edition.caution:
            yield writer.words("SmallPrint", text_runs(edition.caution))

    def _part_head(self, writer: BlockWriter, part: Part, first: bool) -> Iterator[Node]:
        """Write the head of a part, which begins a page unless the title of the document stands above it."""
        style = "TOCHeading" if part.kind == "contents" else "Heading1"
        head = writer.words(style, text_runs(_title(part)), part.anchor)
        if first:
            head[0].append(node("pageBreakBefore", val=0))
        yield head
        line = " · ".join(words for words in (part.group, part.revision) if words)
        if line and part.kind != "contents":
            yield writer.words("PartLine", text_runs(line))

    def _contents(self) -> Iterator[Node]:
        """Write the contents as Word does, so that it can reckon them again with the page numbers.

        A paragraph follows, for a section that ended in the contents would lose the fields of its foot.
        """
        parts = [part for group in contents_groups(self._edition.parts) for part in group.parts]
        opening, closing = complex_field(r'TOC \o "1-1" \h \z')
        for place, part in enumerate(parts):
            link = node("hyperlink", text_run(_title(part)), anchor=self._bookmarks.name(part.anchor), history=1)
            before = opening if place == 0 else ()
            after = (closing,) if place == len(parts) - 1 else ()
            yield paragraph("TOC1", *before, link, *after)
        yield paragraph("TableEnd")

    def _append(self, nodes: Iterator[Node]) -> None:
        end = self._document.element.body[-1]
        for one in nodes:
            self._begun = True
            end.addprevious(one)

    def _break_section(self) -> None:
        """End a section in its last paragraph, not in an empty one that might fall on a page of its own."""
        self._document.add_section()
        marker = self._document.element.body[-2]
        last = marker.getprevious()
        if last is not None and last.tag == marker.tag:
            last.get_or_add_pPr().append(marker.pPr.sectPr)
            marker.getparent().remove(marker)

    def _relation(self, address: str) -> str:
        from docx.opc.constants import RELATIONSHIP_TYPE

        return self._document.part.relate_to(address, RELATIONSHIP_TYPE.HYPERLINK, is_external=True)


def _title(part: Part) -> str:
    return f"{part.number} {part.title}".strip()
