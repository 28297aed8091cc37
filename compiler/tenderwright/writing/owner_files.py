"""Write the owner's papers: every file of them, as bytes by path."""

from __future__ import annotations

from tenderwright.documents.edition import Edition
from tenderwright.documents.price_form import PriceForm
from tenderwright.writing.archive import archive, parcel_name
from tenderwright.writing.calendar_file import calendar_file
from tenderwright.writing.csv_table import csv_table
from tenderwright.writing.edition_files import Written, drawing_files
from tenderwright.writing.html import screen_page
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.pdf import Typesetter
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tenderwright.writing.record_json import record_json

PRICED = "priced"
"""The folder of the specification with the owner's prices."""


def owner_files(
    book: Edition, form: PriceForm, priced: Edition | None, typesetter: Typesetter, timestamp: int
) -> Written:
    """Write book, brief, record, page for donors, figures, drawings and price form, and all as one parcel.

    With them goes the priced specification, where it was asked for.
    """
    papers = {"book": book, **book.sheets} | ({f"{PRICED}/specification": priced} if priced is not None else {})
    typeset = {stem: typesetter.typeset(paper, timestamp, stem) for stem, paper in papers.items()}
    files: dict[str, bytes] = {f"{stem}.pdf": one.pdf for stem, one in typeset.items()}
    files["book.html"] = screen_page(book).encode()
    files |= {f"{stem}.html": screen_page(one).encode() for stem, one in book.sheets.items() if one.for_screen}
    if priced is not None:
        files[f"{PRICED}/specification.html"] = screen_page(priced).encode()
    files["price-form.xlsx"] = price_form_workbook(form)
    files |= {f"{stem}.csv": csv_table(table.header, table.rows) for stem, table in book.tables.items()}
    files |= {
        f"{stem}.ics": calendar_file(paper.calendar, timestamp)
        for stem, paper in book.sheets.items()
        if paper.calendar is not None
    }
    if book.record is not None:
        files["record.json"] = record_json(book.record)
    files |= drawing_files(book)
    files[MANIFEST_NAME] = manifest(book, files, form.edition_hash)
    folder = parcel_name(book.tender, book.name)
    files[f"{folder}.zip"] = archive(files, folder)
    laid_out = tuple(f"{stem}: {anchor}" for stem, one in typeset.items() for anchor in one.laid_out)
    uncovered = "".join(sorted({letter for one in typeset.values() for letter in one.uncovered}))
    return Written(files, sum(one.page_count for one in typeset.values()), laid_out, uncovered)
