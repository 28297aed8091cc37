"""Renders an edition as HTML: one self-contained page for the screen, or one paper document for each part."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from tenderwright.documents.edition import Edition, Part, Table, plain
from tenderwright.writing.errors import WritingError
from tenderwright.writing.faces import face_rules
from tenderwright.writing.figures import Room
from tenderwright.writing.rendering import Drawing, contents_groups, edition_mark, environment, style_sheet
from tenderwright.writing.typesetting.links import ACROSS
from tenderwright.writing.typesetting.sheets import form_of, sheet_class, sheet_rules

_ROOMS = {
    ("A4", False): Room(165.0, 200.0),
    ("A4", True): Room(257.0, 125.0),
    ("Letter", False): Room(170.9, 182.0),
    ("Letter", True): Room(239.4, 131.0),
}
_SHEETS = {"A4": Room(269.0, 160.0), "Letter": Room(251.4, 166.0)}
"""The measure of each page as the style sheet sets it, and of each page of drawings, less room for head and caption."""
_IDENTITY = re.compile(r'<[a-zA-Z][^<>]*?\sid="([^"]+)"')
_FILE = re.compile(r'<a class="file" href="[^"]*">(.*?)</a>')
"""A link to a file beside the page, which paper cannot follow."""
_INTERNAL = re.compile(r'<a[^<>]*?\shref="#([^"]+)"')


def part_html(edition: Edition, part: Part, pages: Mapping[str, int] | None = None, *, with_style: bool = True) -> str:
    """Render the paper document of one part.

    `pages` gives the page of the whole file on which each part starts and is used by a contents part only.
    Without `with_style` the style sheet is left out, for a typesetter that has read it once for all parts.
    """
    template = environment().get_template("paper.html.j2")
    page = template.render(
        edition=edition,
        part=part,
        pages=pages or {},
        groups=contents_groups(edition.parts) if part.kind == "contents" else (),
        mark=edition_mark(edition),
        sheet=sheet_class(edition.page_size, form_of(part.kind, part.landscape)),
        drawing=Drawing(_room(edition, part), nested_rules=False),
        style=Markup(paper_style()) if with_style else "",
    )
    page = _FILE.sub(r"\1", page)
    inside = set(_IDENTITY.findall(page))
    return _INTERNAL.sub(lambda link: link[0] if link[1] in inside else _across(link), page)


def _across(link: re.Match[str]) -> str:
    """Make a link to another part one that stands until the parts are joined."""
    return f"{link[0][: link.start(1) - link.start() - 1]}{ACROSS}{link[0][link.start(1) - link.start() :]}"


def _room(edition: Edition, part: Part) -> Room:
    """Give the room for a figure on the pages of a part."""
    if part.kind == "drawing" and part.landscape:
        return _SHEETS[edition.page_size]
    return _ROOMS[edition.page_size, part.landscape]


def paper_style() -> str:
    """Give the style sheet of every paper part, typefaces and sheets first."""
    return f"{face_rules()}\n{sheet_rules()}\n{style_sheet('paper.css')}"


def screen_page(edition: Edition) -> str:
    """Render an edition as one HTML file that opens from a disk, loads nothing and runs only its search."""
    template = environment().get_template("screen.html.j2")
    shown = tuple(part for part in edition.parts if part.kind not in ("cover", "contents"))
    page = template.render(
        edition=edition,
        parts=shown,
        cover_blocks=tuple(block for part in edition.parts if part.kind == "cover" for block in part.blocks),
        neighbours=_neighbours(shown),
        elsewhere=tuple(part.anchor for part in edition.parts if part.kind in ("cover", "contents")),
        groups=contents_groups(edition.parts),
        lines={part.anchor: _listed_lines(part) for part in shown},
        mark=edition_mark(edition),
        drawing=Drawing(None, nested_rules=True),
        style=Markup(style_sheet("screen.css")),
        script=Markup(style_sheet("screen.js")),
    )
    check_anchors(page)
    return page


def check_anchors(page: str) -> None:
    """Raise `WritingError` where a page has an anchor twice or a link to none."""
    anchors = Counter(_IDENTITY.findall(page))
    if doubled := sorted(anchor for anchor, times in anchors.items() if times > 1):
        raise WritingError(f"anchors given twice: {', '.join(doubled)}")
    if dead := sorted(set(_INTERNAL.findall(page)) - set(anchors)):
        raise WritingError(f"links without an anchor: {', '.join(dead)}")


@dataclass(frozen=True)
class ListedLine:
    """A line to price, as the contents list it under its item."""

    anchor: str
    number: str
    words: str
    quantity: str


def _listed_lines(part: Part) -> tuple[ListedLine, ...]:
    """Give the lines to price of a part; an item has them, other parts none."""
    tables = [block for block in part.blocks if isinstance(block, Table) and part.kind == "item"]
    rows = [row for table in tables for row in table.rows if row.anchor.startswith("line-")]
    return tuple(
        ListedLine(
            row.anchor,
            plain(row.cells[0]),
            plain(tuple(span for span in row.cells[1] if not span.faint)),
            " ".join(map(plain, row.cells[2:4])),
        )
        for row in rows
    )


def _neighbours(parts: tuple[Part, ...]) -> dict[str, tuple[Part | None, Part | None]]:
    padded = (None, *parts, None)
    return {part.anchor: (padded[index], padded[index + 2]) for index, part in enumerate(parts)}
