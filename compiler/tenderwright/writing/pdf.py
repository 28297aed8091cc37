"""Typesets editions: each part set as a PDF of its own, then all joined into one."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from html import unescape

from tenderwright.documents.edition import Edition, Part
from tenderwright.writing.errors import WritingError
from tenderwright.writing.faces import covered_characters
from tenderwright.writing.html import part_html
from tenderwright.writing.typesetting.join import join, page_count, page_words
from tenderwright.writing.typesetting.setter import PartSetter

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
    """Typesets editions, and keeps the parts it has set so that only changed parts are set again."""

    def __init__(self) -> None:
        self._set: dict[str, dict[str, bytes]] = {}
        self._contents_pages: dict[str, int] = {}
        self._setter: PartSetter | None = None

    def typeset(self, edition: Edition, timestamp: int, kept_as: str = "") -> Typeset:
        """Typeset an edition as tagged PDF (PDF/UA-1), dated by a timestamp in seconds since 1970 UTC.

        What is set is kept under the edition's name, or another for a sheet beside it.
        The same edition and timestamp give the same bytes. Raises `WritingError` when the typesetter
        complains of anything: a link without an anchor, a style it does not know, an address the build does
        not hold.
        """
        name = kept_as or edition.name
        run = _Run(edition, self._set.get(name, {}), self._prepared)
        with paused_collection():
            for part in edition.parts:
                if part.kind != "contents":
                    run.set(part, part_html(edition, part, with_style=False))
            first_pages = self._set_contents(edition, run)
            pdf = join(edition, run.pdfs, timestamp)
        self._set[name] = run.held
        return Typeset(pdf, first_pages, sum(run.counts.values()), tuple(dict.fromkeys(run.laid_out)), run.uncovered())

    def _prepared(self) -> PartSetter:
        """Read the style sheet and the faces once, for all parts."""
        if self._setter is None:
            self._setter = PartSetter()
        return self._setter

    def _set_contents(self, edition: Edition, run: _Run) -> dict[str, int]:
        """Set the contents with their own pages guessed, and again where the guess was wrong."""
        contents = [part for part in edition.parts if part.kind == "contents"]
        guess = max(1, -(-len(edition.parts) // _CONTENTS_LINES))
        for part in contents:
            self._contents_pages.setdefault(part.anchor, guess)
        for _ in range(4):
            first_pages = run.first_pages(self._contents_pages)
            for part in contents:
                run.set(part, part_html(edition, part, first_pages, with_style=False))
            counted = {part.anchor: run.counts[part.anchor] for part in contents}
            if all(self._contents_pages[anchor] == count for anchor, count in counted.items()):
                return first_pages
            self._contents_pages.update(counted)
        raise WritingError("the contents do not settle on a number of pages")


@contextmanager
def paused_collection() -> Iterator[None]:
    """Keep the garbage collector from walking over all that is laid out again and again while more is made."""
    was_enabled = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_enabled:
            gc.enable()


class _Run:
    """One typesetting of an edition."""

    def __init__(self, edition: Edition, held: dict[str, bytes], prepared: Callable[[], PartSetter]) -> None:
        self.edition = edition
        self.pdfs: dict[str, bytes] = {}
        self.counts: dict[str, int] = {}
        self.laid_out: list[str] = []
        self._pages: dict[str, str] = {}
        self._before = held
        self._prepared = prepared

    def set(self, part: Part, page: str) -> None:
        """Set a part unless the very same HTML is held."""
        pdf = self._before.get(page)
        if pdf is None:
            pdf = self._prepared().set(part.anchor, page)
            self.laid_out.append(part.anchor)
        self._pages[part.anchor] = page
        self.pdfs[part.anchor] = pdf
        self.counts[part.anchor] = page_count(pdf)

    @property
    def held(self) -> dict[str, bytes]:
        """Give what the next run need not set again, by its HTML."""
        return {self._pages[anchor]: pdf for anchor, pdf in self.pdfs.items()}

    def first_pages(self, guessed: Mapping[str, int]) -> dict[str, int]:
        """Give the first page of every part, taking the guess for parts of contents."""
        starts, page = {}, 1
        for part in self.edition.parts:
            starts[part.anchor] = page
            page += guessed[part.anchor] if part.kind == "contents" else self.counts[part.anchor]
        return starts

    def uncovered(self) -> str:
        around = [words.text for part in self.edition.parts if (words := page_words(self.edition, part, 1, 1, 1))]
        characters = {ord(letter) for text in (*self._pages.values(), *around) for letter in unescape(text)}
        return "".join(chr(code) for code in sorted(characters - covered_characters()) if code > 32)
