"""Write a statement for trustees: PDF, HTML, the lines behind it as CSV, and their manifest."""

from __future__ import annotations

from tenderwright.documents.edition import Edition
from tenderwright.writing.csv_table import csv_table
from tenderwright.writing.edition_files import Written
from tenderwright.writing.html import screen_page
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.pdf import Typesetter

STEM = "statement"


def statement_files(edition: Edition, typesetter: Typesetter, timestamp: int) -> Written:
    """Write the page and its table."""
    typeset = typesetter.typeset(edition, timestamp)
    files: dict[str, bytes] = {f"{STEM}.pdf": typeset.pdf, f"{STEM}.html": screen_page(edition).encode()}
    files |= {f"{stem}.csv": csv_table(table.header, table.rows) for stem, table in edition.tables.items()}
    files[MANIFEST_NAME] = manifest(edition, files)
    return Written(files, typeset.page_count, typeset.laid_out, typeset.uncovered)
