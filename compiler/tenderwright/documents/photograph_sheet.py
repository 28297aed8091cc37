"""Contact sheets of photographs: a key to their places, and each with its number, place, day and what it shows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from tenderwright.calculations.ship.hull import hull
from tenderwright.documents.audience import Audience
from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.drawings.photograph_strip import photograph_strip
from tenderwright.documents.edition import Block, Column, Edition, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.photograph_list import GROUPS, SHELL, Numbered, files_by_name, numbered, pictures
from tenderwright.reading.photograph_files import PhotographFile

STEM = "photographs"
"""File stem of the paper."""


def photograph_sheet(desk: Desk, edition: Edition) -> Edition | None:
    """Compose the contact sheets that go along with the tender; None where no photograph does."""
    package = desk.package
    shown = numbered(package, package.photographs)
    if not shown:
        return None
    blocks = contact_sheets(desk, shown, package.photograph_files)
    ship = desk.tender.ship
    part = Part(STEM, "", f"Photographs of {ship}", "data", "Photographs", tuple(blocks), caution=True, audience="yard")
    return replace(
        edition, title=f"Photographs, {ship}", subtitle="By place", parts=(part,), facts=(), files={}, for_screen=True
    )


def contact_sheets(
    desk: Desk, shown: Sequence[Numbered], files: Mapping[str, PhotographFile], audience: Audience = "yard"
) -> list[Block]:
    """Compose the key, the photographs by item, and the photographs by place."""
    found = desk.calculated.found(hull)
    strip = photograph_strip(desk.package, found.form if found is not None else None, shown)
    blocks: list[Block] = [
        Paragraph(
            inline(
                "A photograph shows what was seen on its day and nothing of what lay behind: it is no survey, and "
                "quantities are those of the items. Each is shown smaller than its file, without what a camera writes "
                "beside the picture."
            )
        ),
        *([replace(strip, audience=audience)] if strip is not None else []),
        *_by_item(desk, shown),
    ]
    named = files_by_name(tuple(files.values()))
    on_hull = [one for one in shown if one.group == SHELL]
    elsewhere = [one for one in shown if one.group != SHELL]
    if on_hull:
        title = "Hull, by strake and frame" if desk.package.strakes else "Hull, from aft forward"
        blocks += [Heading(title), *pictures(desk, on_hull, named)]
    if elsewhere:
        kinds = [group for group in GROUPS if any(one.group == group for one in elsewhere)]
        blocks += [Heading(capital(", ".join(kinds).lower())), *pictures(desk, elsewhere, named)]
    return blocks


def _by_item(desk: Desk, shown: Sequence[Numbered]) -> list[Block]:
    """List the items that photographs bear on, each with their numbers."""
    numbers: dict[str, list[str]] = {}
    for one in shown:
        if one.photograph.item is not None:
            numbers.setdefault(one.photograph.item.name, []).append(one.number)
    items = [item for item in desk.package.items if item.number in numbers]
    rows = tuple(
        Row((inline(item.number), inline(item.title), inline(", ".join(numbers[item.number])))) for item in items
    )
    columns = (Column("Item", width=0.5), Column("Work", width=4), Column("Photographs", width=3))
    return [Table(columns, rows, small=True)] if rows else []
