"""The owner's own photographs: contact sheets beside the book, and what of all photographs anybody may be shown."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Edition, Part, Picture, Pictures, plain
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.photograph_list import OWNERS, numbered
from tenderwright.documents.photograph_sheet import contact_sheets
from tenderwright.documents.smaller_picture import smaller
from tenderwright.model.owner import OwnerPapers
from tenderwright.model.photograph import Photograph
from tenderwright.reading.photograph_files import PhotographFile


def owner_photographs(desk: OwnerDesk, book: Edition) -> Edition | None:
    """Compose the contact sheets of what only the owner may see; None where there is nothing of it."""
    papers = desk.foresight.papers if desk.foresight is not None else None
    if papers is None or not papers.photographs:
        return None
    shown = numbered(desk.package, papers.photographs, OWNERS)
    blocks = contact_sheets(desk, shown, papers.photograph_files, "owner")
    title = f"The owner's photographs of {desk.tender.ship}"
    part = Part("owner-photographs", "", title, "data", "Photographs", tuple(blocks), caution=True)
    return replace(
        book,
        title=f"The owner's photographs, {desk.tender.ship}",
        subtitle="Beside those that go along with the tender",
        parts=(part,),
        facts=(),
        sheets={},
        tables={},
        record=None,
        for_screen=True,
    )


def published(
    desk: Desk, papers: OwnerPapers, most: int, items: Sequence[str] | None = None, *, large: bool = False
) -> Pictures | None:
    """Give some of the photographs that anybody may be shown: of the ship as a whole first, then of items.

    `items` are those that are told of; None for all. None is given where no photograph may be shown.
    """
    both = ((desk.package.photographs, desk.package.photograph_files), (papers.photographs, papers.photograph_files))
    found: list[tuple[Photograph, PhotographFile]] = []
    for rows, files in both:
        named = {one.name: one for one in files.values()}
        found += [(row, named[row.file]) for row in rows if row.published and row.file in named]
    known = [(row, file) for row, file in found if row.item is None or items is None or row.item.name in items]
    ordered = sorted(known, key=lambda pair: pair[0].item is not None)
    made: list[Picture] = []
    for row, file in ordered:
        content = smaller(file)
        if isinstance(content, bytes) and len(made) < most:
            words = _caption(desk, row)
            made.append(Picture(f"{row.file.rpartition('.')[0]}.jpg", content, words, words))
    return Pictures(tuple(made), large=large) if made else None


def _caption(desk: Desk, row: Photograph) -> str:
    """Say what it shows, the year, and whose it is; nothing of items and findings, which say nothing to a giver."""
    said = plain(desk.words(row.caption)).rstrip(".")
    year = str(row.day.year) if row.day is not None else ""
    whose = ", ".join(word for word in (row.by, row.rights) if word)
    return f"{', '.join(word for word in (said, year) if word)}." + (
        f" {whose[0].upper()}{whose[1:]}." if whose else ""
    )
