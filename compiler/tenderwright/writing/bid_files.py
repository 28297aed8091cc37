"""Write the comparison of bids: PDF, HTML, its figures as CSV, the drawing, and a manifest."""

from __future__ import annotations

from tenderwright.documents.edition import Edition, Figure
from tenderwright.writing.csv_table import csv_table
from tenderwright.writing.edition_files import Written
from tenderwright.writing.html import screen_page
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.pdf import Typesetter

STEM = "bids"


def bid_files(edition: Edition, edition_hash: str, typesetter: Typesetter, timestamp: int) -> Written:
    """Write every file of the comparison as bytes; nothing is on disk yet."""
    typeset = typesetter.typeset(edition, timestamp)
    files: dict[str, bytes] = {f"{STEM}.pdf": typeset.pdf, f"{STEM}.html": screen_page(edition).encode()}
    files |= {f"{stem}.csv": csv_table(table.header, table.rows) for stem, table in edition.tables.items()}
    figures = [block for part in edition.parts for block in part.blocks if isinstance(block, Figure)]
    files |= {f"drawings/{figure.name}.svg": figure.svg.encode() for figure in figures}
    files[MANIFEST_NAME] = manifest(edition, files, edition_hash)
    return Written(files, typeset.page_count, typeset.laid_out, typeset.uncovered)
