"""Photographs in reports: of the items in the docking report, of the days in dock in the statement."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from tenderwright.documents.audience import Audience
from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Heading, Part
from tenderwright.documents.parts.report_summary import GROUP
from tenderwright.documents.photograph_list import OWNERS, YARDS, Numbered, files_by_name, numbered, pictures
from tenderwright.model.findings import Findings
from tenderwright.model.owner import OwnerPapers
from tenderwright.reading.photograph_files import PhotographFile

_Shown = tuple[Numbered, PhotographFile | None]


def _all(desk: Desk, papers: OwnerPapers | None) -> Iterator[_Shown]:
    """Yield the photographs under the numbers that they have on their contact sheets, the owner's own last."""
    kinds = [(desk.package.photographs, desk.package.photograph_files, YARDS)]
    kinds += [(papers.photographs, papers.photograph_files, OWNERS)] if papers is not None else []
    for rows, files, letter in kinds:
        named = files_by_name(tuple(files.values()))
        yield from ((one, named.get(one.photograph.file)) for one in numbered(desk.package, rows, letter))


def of_the_docking(desk: Desk, findings: Findings, papers: OwnerPapers | None) -> Part | None:
    """Compose the photographs that bear on items or were taken in dock, by item; the owner's where papers are given."""
    last = findings.dates.departed or findings.dates.undocked
    shown: dict[str, list[_Shown]] = {}
    for one, file in _all(desk, papers):
        taken, of = one.photograph.day, one.photograph.item
        if of is not None or (taken is not None and findings.dates.docked <= taken <= last):
            shown.setdefault(of.name if of is not None else "", []).append((one, file))
    blocks: list[Block] = []
    for item in desk.package.items:
        if item.number in shown:
            blocks += [Heading(f"{item.number} {item.title}", 3), *_set(desk, shown[item.number])]
    if "" in shown:
        blocks += [Heading("Of no item", 3), *_set(desk, shown[""])]
    if not blocks:
        return None
    reader: Audience = "owner" if papers is not None else "yard"
    return Part("photographs", "11", "Photographs by item", "data", GROUP, tuple(blocks), audience=reader)


def _set(desk: Desk, shown: Sequence[_Shown], *, small: bool = True) -> Iterator[Block]:
    files = {one.photograph.file: file for one, file in shown if file is not None}
    yield from pictures(desk, [one for one, _ in shown], files, small=small)


MOST = 6
"""Photographs on the page behind a statement."""


def in_dock(desk: Desk, papers: OwnerPapers, on: date) -> list[Block]:
    """Compose the latest photographs from the work up to a day; nothing where there are none."""
    begun = desk.tender.events.get("arrival")
    taken = [
        (day, one, file)
        for one, file in _all(desk, papers)
        if (day := one.photograph.day) is not None
        and one.photograph.stage != "before"
        and day <= on
        and (begun is None or begun <= day)
    ]
    latest = sorted(taken, key=lambda shown: shown[0], reverse=True)[:MOST]
    return [*_set(desk, [(one, file) for _, one, file in latest], small=False)]
