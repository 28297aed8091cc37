"""The index of all documents: what there is of each kind, which revision or day, where it is kept, and its checksum."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from tenderwright.documents.desk import capital
from tenderwright.documents.edition import Block, Column, Edition, Heading, Paragraph, Part, Row, Table, inline
from tenderwright.documents.owner.desk import OwnerDesk
from tenderwright.documents.photograph_list import OWNERS, YARDS, Numbered, numbered
from tenderwright.model.owner import OwnerPapers
from tenderwright.quantities.customs import day
from tenderwright.reading.archived import ARCHIVE, LIST


@dataclass(frozen=True)
class Filed:
    """What is on file: the edition that goes to yards, and the checksums of the package's files by path."""

    yard: Edition
    checksums: Mapping[str, str]


_Cells = tuple[str, str, str, str, str]
"""Number, document, revision or day, where it is kept, checksum."""


def index_sheet(desk: OwnerDesk, book: Edition, on_file: Filed) -> Edition:
    """Compose the index as a paper of its own."""
    yard, filed = on_file.yard, on_file.checksums
    papers = desk.foresight.papers if desk.foresight is not None else OwnerPapers()
    groups: dict[str, list[_Cells]] = {
        "Drawings and reference documents": list(_references(desk, filed)),
        "Surveys and earlier dockings": list(_ship(desk, filed)),
        "Photographs": [
            *_photographs(numbered(desk.package, desk.package.photographs, YARDS), "photographs/", filed),
            *_photographs(numbered(desk.package, papers.photographs, OWNERS), "owner/photographs/", filed),
        ],
        "Addenda, questions and bids": list(_tender(desk, papers, filed)),
        "The owner's papers": list(_owners(filed)),
        "Kept beside the package": list(_beside(papers, filed)),
        "Papers that a build makes": list(_made(book, yard)),
    }
    blocks: list[Block] = [
        Paragraph(
            inline(
                "Paths are those inside the package, or in the folder of the build. A checksum shows that a file is "
                "the one that was filed. What a build makes has its checksums in the "
                "manifest.json beside it."
            )
        )
    ]
    for title, rows in groups.items():
        blocks += [Heading(f"{title} ({len(rows)})"), *_table(rows)]
    part = Part("index", "", f"Index of documents, {desk.tender.ship}", "data", "", tuple(blocks), landscape=True)
    return replace(
        book,
        title=f"Index of documents, {desk.tender.ship}",
        subtitle="What there is, and where it is kept",
        parts=(part,),
        facts=(),
        sheets={},
        tables={},
        record=None,
        for_screen=True,
    )


def _table(rows: Sequence[_Cells]) -> list[Block]:
    if not rows:
        return [Paragraph(inline("None."))]
    columns = (
        Column("No.", width=0.7),
        Column("Document", width=3.3),
        Column("Revision or day", width=1.5),
        Column("Where it is kept", width=3.1),
        Column("SHA-256", width=4.6),
    )
    return [Table(columns, tuple(Row(tuple(inline(cell) for cell in row)) for row in rows), small=True)]


def _references(desk: OwnerDesk, filed: Mapping[str, str]) -> Iterator[_Cells]:
    for one in desk.package.drawings:
        seen = desk.plain(one.seen) if one.seen is not None else ""
        kept = one.file or "; ".join(word for word in (one.holder, seen) if word)
        revision = ", ".join(word for word in (one.revision, day(one.date) if one.date is not None else "") if word)
        yield one.drawing.upper(), one.title, revision, kept, filed.get(one.file, "")


def _ship(desk: OwnerDesk, filed: Mapping[str, str]) -> Iterator[_Cells]:
    for survey in desk.package.surveys:
        path = survey.here.path
        yield "", f"Thickness readings {survey.name}", "", path, filed.get(path, "")
    timber = desk.package.timber
    if timber is not None:
        path = "vessel/timber.yaml"
        yield "", "Survey of her timber", day(timber.surveyed), path, filed.get(path, "")
    for path in sorted(filed):
        if path.startswith("care/"):
            yield "", f"Care between dockings: {path.removeprefix('care/').rpartition('.')[0]}", "", path, filed[path]
    for one in desk.package.history:
        path = one.here.path
        yield "", f"Docking of {one.docked.year}", day(one.docked), path, filed.get(path, "")


def _photographs(shown: Sequence[Numbered], folder: str, filed: Mapping[str, str]) -> Iterator[_Cells]:
    for one in shown:
        taken, path = one.photograph.day, f"{folder}{one.photograph.file}"
        yield one.number, capital(one.place), day(taken) if taken is not None else "", path, filed.get(path, "")


def _tender(desk: OwnerDesk, papers: OwnerPapers, filed: Mapping[str, str]) -> Iterator[_Cells]:
    for addendum in desk.tender.addenda:
        yield f"Add. {addendum.number}", addendum.summary, day(addendum.date), f"addendum-{addendum.number}/", ""
    for question in desk.package.questions:
        path = question.here.path
        yield f"Q {question.number}", "Question and answer", "", path, filed.get(path, "")
    for path, bid in papers.bids.items():
        yield "", f"Bid of {bid.yard}", day(bid.received), path, filed.get(path, "")
        if bid.file:
            kept = _named(bid.file, filed)
            yield "", "Its price form as it came back", day(bid.received), kept, filed.get(kept, bid.sha256)


def _named(file: str, filed: Mapping[str, str]) -> str:
    """Give the path of a file that a bid names, where it is kept."""
    name = file.rpartition("/")[2]
    return next((path for path in filed if path.rpartition("/")[2] == name), "not in the package")


def _owners(filed: Mapping[str, str]) -> Iterator[_Cells]:
    apart = ("owner/documents/", "owner/photographs/", "owner/bids/", ARCHIVE)
    for path in sorted(filed):
        if path.startswith("owner/") and not path.startswith(apart):
            stem = path.removeprefix("owner/").rpartition(".")[0]
            yield "", capital(stem.replace("/", ": ").replace("-", " ")), "", path, filed[path]


def _beside(papers: OwnerPapers, filed: Mapping[str, str]) -> Iterator[_Cells]:
    forms = {bid.file.rpartition("/")[2] for bid in papers.bids.values() if bid.file}
    for path in sorted(filed):
        name = path.rpartition("/")[2]
        if path.startswith(("owner/documents/", "drawings/")) and name not in forms:
            yield "", name, "", path, filed[path]
        elif path.startswith(ARCHIVE):
            yield "", f"Closed tender {path.removeprefix(ARCHIVE).removesuffix(f'/{LIST}')}", "", path, filed[path]


def _made(book: Edition, yard: Edition) -> Iterator[_Cells]:
    """Yield the papers of both editions, which are stamped alike."""
    stamp = yard.stamp.label
    fixed = (
        ("yard", "specification.pdf and .html", f"{yard.title}: {yard.subtitle}"),
        ("yard", "price-form.xlsx, quantities.csv", "Price form, and the lines with their quantities"),
        ("owner", "book.pdf and .html", book.subtitle),
        ("owner", "price-form.xlsx", "Price form with the owner's rates"),
    )
    sheets = [("yard", f"{stem}.pdf", one.title) for stem, one in yard.sheets.items()]
    sheets += [("yard", f"{stem}.docx", one.title) for stem, one in yard.forms.items()]
    sheets += [("owner", f"{stem}.pdf", f"{one.title}: {one.subtitle}") for stem, one in book.sheets.items()]
    calendars = [(stem, one.title) for stem, one in book.sheets.items() if one.calendar is not None]
    sheets += [("owner", f"{stem}.ics", f"{title}: calendar") for stem, title in calendars]
    tables = ", ".join(f"{stem}.csv" for stem in book.tables)
    sheets += [("owner", tables, "Tables of the book for a spreadsheet")] if tables else []
    for edition, file, title in sorted((*fixed, *sheets), key=lambda row: row[0] == "owner"):
        yield "", title, stamp, f"{edition}/{file}", ""
