"""Write an application for a grant: PDF, HTML, Markdown, Word, its tables, and their manifest."""

from __future__ import annotations

from tenderwright.documents.edition import Edition
from tenderwright.writing.csv_table import csv_table
from tenderwright.writing.edition_files import Written
from tenderwright.writing.html import screen_page
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.markdown.document import markdown_document
from tenderwright.writing.pdf import Typesetter
from tenderwright.writing.word.document import word_document

STEM = "grant"


def pages_by_part(edition: Edition, typesetter: Typesetter, timestamp: int) -> dict[str, int]:
    """Set an application and count the pages of each part."""
    typeset = typesetter.typeset(edition, timestamp)
    starts = [*typeset.first_pages.values(), typeset.page_count + 1]
    return {
        anchor: after - first for anchor, first, after in zip(typeset.first_pages, starts[:-1], starts[1:], strict=True)
    }


def grant_files(edition: Edition, typesetter: Typesetter, timestamp: int) -> Written:
    """Write the paper in every form, and its tables as CSV."""
    typeset = typesetter.typeset(edition, timestamp)
    files: dict[str, bytes] = {
        f"{STEM}.pdf": typeset.pdf,
        f"{STEM}.html": screen_page(edition).encode(),
        f"{STEM}.md": markdown_document(edition),
        f"{STEM}.docx": word_document(edition, timestamp),
    }
    files |= {f"{stem}.csv": csv_table(table.header, table.rows) for stem, table in edition.tables.items()}
    files[MANIFEST_NAME] = manifest(edition, files)
    return Written(files, typeset.page_count, typeset.laid_out, typeset.uncovered)
