"""Typesets editions: each part set as a PDF of its own, then all joined into one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tenderwright.documents.edition import Edition, Part
from tenderwright.writing.errors import WritingError
from tenderwright.writing.html import part_html
from tenderwright.writing.typesetting.collection import paused_collection
from tenderwright.writing.typesetting.join import join, opened, page_words
from tenderwright.writing.typesetting.kept import KeptParts
from tenderwright.writing.typesetting.parts import Parts, uncovered

_CONTENTS_LINES = 100
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
    """Typesets editions, and keeps the parts it has set so that only changed parts are set again."""

    def __init__(self, kept: KeptParts | None = None, processes: int | None = None) -> None:
        """Take where parts are kept between runs, and by how many processes they are set: by default, one a core."""
        self._kept = kept
        self._parts = Parts(kept, processes)
        self._contents_pages: dict[str, int] = {}
        self._begun: list[tuple[Edition, dict[str, str]]] = []

    def begin(self, *editions: Edition) -> None:
        """Let other processes set what will be typeset, while this one goes on; the sheets beside an edition, too."""
        for edition in editions:
            self._begun.append((edition, _pages(edition)))
            self._parts.begin(self._begun[-1][1])
            self.begin(*edition.sheets.values())

    def typeset(self, edition: Edition, timestamp: int, kept_as: str = "") -> Typeset:
        """Typeset an edition as tagged PDF (PDF/UA-1), dated by a timestamp in seconds since 1970 UTC.

        What is set is kept under the edition's name, or another for a sheet beside it.
        The same edition and timestamp give the same bytes. Raises `WritingError` when the typesetter
        complains of anything: a link without an anchor, a style it does not know, an address the build does
        not hold.
        """
        run = _Run(edition, self._parts)
        with paused_collection():
            run.set(self._pages_of(edition))
            first_pages = self._set_contents(edition, run)
            pdf = join(edition, run.opened, timestamp, self._kept)
        self._parts.hold(kept_as or edition.name, {page: run.pdfs[anchor] for anchor, page in run.pages.items()})
        return Typeset(pdf, first_pages, sum(run.counts.values()), tuple(dict.fromkeys(run.laid_out)), run.uncovered())

    def _pages_of(self, edition: Edition) -> dict[str, str]:
        """Give the HTML of the parts of an edition, as it was begun where it was."""
        begun = next((pages for one, pages in self._begun if one is edition), None)
        self._begun = [(one, pages) for one, pages in self._begun if one is not edition]
        return _pages(edition) if begun is None else begun

    def _set_contents(self, edition: Edition, run: _Run) -> dict[str, int]:
        """Set the contents with their own pages guessed, and again where the guess was wrong."""
        contents = [part for part in edition.parts if _lists(part)]
        guess = max(1, -(-len(edition.parts) // _CONTENTS_LINES))
        for part in contents:
            self._contents_pages.setdefault(part.anchor, guess)
        for _ in range(4):
            first_pages = run.first_pages(self._contents_pages)
            run.set({part.anchor: part_html(edition, part, first_pages, with_style=False) for part in contents})
            counted = {part.anchor: run.counts[part.anchor] for part in contents}
            if all(self._contents_pages[anchor] == count for anchor, count in counted.items()):
                return first_pages
            self._contents_pages.update(counted)
        raise WritingError("the contents do not settle on a number of pages")


def _pages(edition: Edition) -> dict[str, str]:
    """Give the HTML of every part but those that give the pages of the others."""
    return {one.anchor: part_html(edition, one, with_style=False) for one in edition.parts if not _lists(one)}


def _lists(part: Part) -> bool:
    """Tell whether a part gives the pages of the others, and so is set after them."""
    return part.kind == "contents"


class _Run:
    """One typesetting of an edition."""

    def __init__(self, edition: Edition, parts: Parts) -> None:
        self.edition = edition
        self.pages: dict[str, str] = {}
        self.pdfs: dict[str, bytes] = {}
        self.opened: dict[str, Any] = {}
        self.counts: dict[str, int] = {}
        self.laid_out: list[str] = []
        self._parts = parts

    def set(self, pages: Mapping[str, str]) -> None:
        """Set parts, given as HTML by their anchors, unless the very same HTML is held."""
        pdfs, laid_out = self._parts.set(pages)
        self.pages |= pages
        self.pdfs |= pdfs
        self.opened |= {anchor: opened(pdf) for anchor, pdf in pdfs.items()}
        self.counts |= {anchor: len(self.opened[anchor].pages) for anchor in pdfs}
        self.laid_out += laid_out

    def first_pages(self, guessed: Mapping[str, int]) -> dict[str, int]:
        """Give the first page of every part, taking the guess for parts of contents."""
        starts, page = {}, 1
        for part in self.edition.parts:
            starts[part.anchor] = page
            page += guessed[part.anchor] if _lists(part) else self.counts[part.anchor]
        return starts

    def uncovered(self) -> str:
        around = [words.text for part in self.edition.parts if (words := page_words(self.edition, part, 1, 1, 1))]
        return uncovered([*self.pages.values(), *around])
