"""Sets the pages of a Word document: size, margins, what stands at head and foot."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from tenderwright.documents.edition import Edition, Part
from tenderwright.writing.rendering import edition_mark
from tenderwright.writing.word.elements import field, node, paragraph, text_run

if TYPE_CHECKING:
    from docx.section import Section

    from tenderwright.writing.word.elements import Node

_SIZES = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
_MARGIN, _FOOT = 20.0, 26.0
_HEAD = 10.0
_TWIPS = 1440 / 25.4


@dataclass(frozen=True)
class Pages:
    """How the pages of some parts in a row are set."""

    cover: bool
    landscape: bool
    caution: str


def sections(edition: Edition) -> Iterator[tuple[Pages, list[Part]]]:
    """Group the parts of an edition by how their pages are set; an edition without a cover has a title instead."""
    for pages, parts in groupby(
        edition.parts, lambda part: Pages(part.kind == "cover", part.landscape, part.cautioned(edition.caution))
    ):
        yield pages, list(parts)


def text_width(edition: Edition, pages: Pages) -> int:
    """Give the width of the text in twips."""
    return round((_page(edition, pages)[0] - 2 * _MARGIN) * _TWIPS)


def set_pages(section: Section, edition: Edition, pages: Pages) -> None:
    """Set a section: its paper, its head with tender and title, its foot with stamp and page number."""
    from docx.enum.section import WD_ORIENTATION
    from docx.shared import Mm

    width, height = _page(edition, pages)
    section.orientation = WD_ORIENTATION.LANDSCAPE if pages.landscape else WD_ORIENTATION.PORTRAIT
    section.page_width, section.page_height = Mm(width), Mm(height)
    section.left_margin = section.right_margin = section.top_margin = Mm(_MARGIN)
    section.bottom_margin = Mm(_FOOT)
    section.gutter = Mm(0)
    section.header_distance = section.footer_distance = Mm(_HEAD)
    section.different_first_page_header_footer = pages.cover
    _fill(section, edition, pages)


def _fill(section: Section, edition: Edition, pages: Pages) -> None:
    stop = text_width(edition, pages)
    head = text_run(f"{edition.tender} · {edition.title}\t{edition_mark(edition)}".rstrip("\t"))
    number = [field("PAGE", "1"), text_run(" of "), field("NUMPAGES", "1")]
    foot = paragraph("Footer", text_run(f"{edition.stamp.label}\tPage "), *number, before=_right(stop))
    caution = [paragraph("FooterCaution", text_run(pages.caution))] if pages.caution else []
    for place, written in (
        (section.header, [paragraph("Header", head, before=_right(stop))]),
        (section.footer, [*caution, foot]),
    ):
        place.is_linked_to_previous = False
        element = place._element
        for old in list(element):
            element.remove(old)
        element.extend(written)


def _right(stop: int) -> tuple[Node, ...]:
    return (node("tabs", node("tab", val="right", pos=stop)),)


def _page(edition: Edition, pages: Pages) -> tuple[float, float]:
    width, height = _SIZES[edition.page_size]
    return (height, width) if pages.landscape else (width, height)
