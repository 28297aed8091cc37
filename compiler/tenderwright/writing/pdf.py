"""Typesets editions: each part laid out as a document of its own, then all pages joined into one PDF."""

from __future__ import annotations

import gc
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from html import unescape
from typing import Any

from tenderwright.documents.edition import Edition, Part
from tenderwright.writing.clock import iso_time, source_date
from tenderwright.writing.errors import WritingError
from tenderwright.writing.faces import covered_characters
from tenderwright.writing.fetching import build_fetcher, no_complaints
from tenderwright.writing.html import paper_style, part_html

_CONTENTS_LINES = 40
"""Lines of contents that a page holds, about; a first guess only."""


@dataclass(frozen=True)
class Typeset:
    """A typeset edition."""

    pdf: bytes
    first_pages: Mapping[str, int]
    """The page of the file on which each part starts, by the part's anchor; the first page is 1."""
    page_count: int
    laid_out: tuple[str, ...]
    """Anchors of the parts that were laid out this time; the others were held from before."""
    uncovered: str
    """Characters that the edition's faces do not hold, so that another face of the machine set them."""


class Typesetter:
    """Typesets editions, and keeps laid-out parts so that only changed parts are laid out again."""

    def __init__(self) -> None:
        self._laid: dict[str, dict[str, Any]] = {}
        self._contents_pages: dict[str, int] = {}
        self._tools: tuple[Any, Any, Any] | None = None

    def typeset(self, edition: Edition, timestamp: int, kept_as: str = "") -> Typeset:
        """Typeset an edition as tagged PDF (PDF/UA-1), dated by a timestamp in seconds since 1970 UTC.

        What is laid out is kept under the edition's name, or another for a sheet beside it.
        The same edition and timestamp give the same bytes. Raises `WritingError` when the typesetter
        complains of anything: a link without an anchor, a style it does not know, an address the build does
        not hold.
        """
        with source_date(timestamp), paused_collection():
            name = kept_as or edition.name
            run = _Run(edition, self._laid.get(name, {}), self._prepared())
            for part in edition.parts:
                if part.kind != "contents":
                    run.lay_out(part, part_html(edition, part, with_style=False))
            first_pages = self._lay_out_contents(edition, run)
            pdf = run.join(timestamp)
        self._laid[name] = run.held
        pages = sum(len(document.pages) for document in run.documents.values())
        return Typeset(pdf, first_pages, pages, tuple(dict.fromkeys(run.laid_out)), run.uncovered())

    def _prepared(self) -> tuple[Any, Any, Any]:
        """Make the fetcher, the font configuration and the style sheet once, for all parts."""
        if self._tools is None:
            from weasyprint import CSS
            from weasyprint.text.fonts import FontConfiguration

            fetcher, fonts = build_fetcher(), FontConfiguration()
            with no_complaints("style sheet"):
                style = CSS(string=paper_style(), url_fetcher=fetcher, font_config=fonts)
            self._tools = (fetcher, fonts, style)
        return self._tools

    def _lay_out_contents(self, edition: Edition, run: _Run) -> dict[str, int]:
        """Lay out the contents with their own pages guessed, and again where the guess was wrong."""
        contents = [part for part in edition.parts if part.kind == "contents"]
        guess = max(1, -(-len(edition.parts) // _CONTENTS_LINES))
        for part in contents:
            self._contents_pages.setdefault(part.anchor, guess)
        for _ in range(4):
            first_pages = run.first_pages(self._contents_pages)
            for part in contents:
                run.lay_out(part, part_html(edition, part, first_pages, with_style=False))
            counted = {part.anchor: run.page_count(part) for part in contents}
            if all(self._contents_pages[anchor] == count for anchor, count in counted.items()):
                return first_pages
            self._contents_pages.update(counted)
        raise WritingError("the contents do not settle on a number of pages")


@contextmanager
def paused_collection() -> Iterator[None]:
    """Keep the garbage collector from walking over all laid-out pages again and again while more are made."""
    was_enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_enabled:
            gc.enable()


class _Run:
    """One typesetting of an edition."""

    def __init__(self, edition: Edition, held: dict[str, Any], tools: tuple[Any, Any, Any]) -> None:
        self.edition = edition
        self.documents: dict[str, Any] = {}
        self.laid_out: list[str] = []
        self._pages: dict[str, str] = {}
        self._before = held
        self._fetcher, self._fonts, self._style = tools

    def lay_out(self, part: Part, page: str) -> None:
        """Lay out a part unless the very same HTML is held."""
        from weasyprint import HTML

        document = self._before.get(page)
        if document is None:
            with no_complaints(f"part {part.anchor}"):
                document = HTML(string=page, url_fetcher=self._fetcher).render(
                    font_config=self._fonts, stylesheets=[self._style]
                )
            self.laid_out.append(part.anchor)
        self._pages[part.anchor] = page
        self.documents[part.anchor] = document

    @property
    def held(self) -> dict[str, Any]:
        """Give what the next run need not lay out again, by its HTML."""
        return {self._pages[anchor]: document for anchor, document in self.documents.items()}

    def page_count(self, part: Part) -> int:
        return len(self.documents[part.anchor].pages)

    def first_pages(self, guessed: Mapping[str, int]) -> dict[str, int]:
        """Give the first page of every part, taking the guess for parts of contents."""
        starts, page = {}, 1
        for part in self.edition.parts:
            starts[part.anchor] = page
            page += guessed[part.anchor] if part.kind == "contents" else self.page_count(part)
        return starts

    def join(self, timestamp: int) -> bytes:
        """Paint all pages into one PDF with its outline, links, tags and fixed metadata."""
        from weasyprint.document import DocumentMetadata

        ordered = [self.documents[part.anchor] for part in self.edition.parts]
        if not ordered:
            raise WritingError("an edition without parts cannot be typeset")
        joined = ordered[0].copy([page for document in ordered for page in document.pages])
        joined.metadata = DocumentMetadata(
            title=f"{self.edition.title} ({self.edition.tender})",
            authors=[self.edition.owner],
            generator="Tenderwright",
            created=iso_time(timestamp),
            modified=iso_time(timestamp),
            lang=self.edition.language,
        )
        with no_complaints("joined pages"):
            pdf: bytes = joined.write_pdf(pdf_variant="pdf/ua-1")
        return pdf

    def uncovered(self) -> str:
        characters = {ord(letter) for page in self._pages.values() for letter in unescape(page)}
        return "".join(chr(code) for code in sorted(characters - covered_characters()) if code > 32)
