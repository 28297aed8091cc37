"""Write an edition: every file of it, as bytes by path."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from tenderwright.documents.edition import Edition, Figure
from tenderwright.documents.price_form import FormLine, PriceForm
from tenderwright.writing.archive import archive, parcel_name
from tenderwright.writing.csv_table import csv_table
from tenderwright.writing.html import screen_page
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.pdf import Typesetter
from tenderwright.writing.price_form_xlsx import price_form_workbook
from tenderwright.writing.word.document import word_document

PAGE = "specification.html"


@dataclass(frozen=True)
class Written:
    """The files of an edition, its pages, and which parts had to be laid out."""

    files: Mapping[str, bytes]
    pages: int
    laid_out: tuple[str, ...]
    uncovered: str


def edition_files(edition: Edition, form: PriceForm, typesetter: Typesetter, timestamp: int) -> Written:
    """Write the specification as PDF and HTML, drawings, price form, quantities, manifest, and all as one parcel."""
    typeset = typesetter.typeset(edition, timestamp)
    files: dict[str, bytes] = {
        "specification.pdf": typeset.pdf,
        PAGE: screen_page(edition).encode(),
        "price-form.xlsx": price_form_workbook(form),
        "quantities.csv": quantities_csv(form),
    }
    files |= sheet_files(edition, typesetter, timestamp)
    files |= {f"{stem}.csv": csv_table(table.header, table.rows) for stem, table in edition.tables.items()}
    files |= drawing_files(edition)
    files |= edition.files
    files[MANIFEST_NAME] = manifest(edition, files, form.edition_hash)
    folder = parcel_name(edition.tender, edition.name)
    files[f"{folder}.zip"] = archive(files, folder)
    return Written(files, typeset.page_count, typeset.laid_out, typeset.uncovered)


def sheet_files(edition: Edition, typesetter: Typesetter, timestamp: int) -> dict[str, bytes]:
    """Write the sheets beside an edition as PDF, those for the screen as HTML too, and forms to sign for Word."""
    files = {f"{stem}.pdf": typesetter.typeset(sheet, timestamp, stem).pdf for stem, sheet in edition.sheets.items()}
    files |= {f"{stem}.html": screen_page(one).encode() for stem, one in edition.sheets.items() if one.for_screen}
    return files | {f"{stem}.docx": word_document(form, timestamp) for stem, form in edition.forms.items()}


def quantities_csv(form: PriceForm) -> bytes:
    """Write the lines and their quantities."""
    header = ("line", "item", "section", "description", "kind", "quantity", "unit", "basis")
    rows = [
        (line.number, line.item, section.code, line.description, line.kind, _quantity(line), line.unit, line.basis)
        for section in form.sections
        for line in section.lines
    ]
    return csv_table(header, rows)


def _quantity(line: FormLine) -> Decimal | None:
    """Give the quantity of a line; a percentage has none of its own."""
    return None if line.of else line.quantity


def drawing_files(edition: Edition) -> dict[str, bytes]:
    """Give the drawings of an edition by path."""
    figures = (block for part in edition.parts for block in part.blocks if isinstance(block, Figure))
    return {f"drawings/{figure.name}.svg": figure.svg.encode() for figure in figures}
