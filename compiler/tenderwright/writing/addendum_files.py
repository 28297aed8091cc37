"""Write an addendum: every file of it, as bytes by path."""

from __future__ import annotations

from tenderwright.documents.addendum import Amendment
from tenderwright.writing.archive import archive, parcel_name
from tenderwright.writing.edition_files import Written, sheet_files
from tenderwright.writing.html import screen_page
from tenderwright.writing.json_file import Json, canonical_json
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.pdf import Typesetter
from tenderwright.writing.price_form_xlsx import price_form_workbook


def addendum_files(
    made: Amendment, statement: Json, number: int, amends: str, typesetter: Typesetter, timestamp: int
) -> Written:
    """Write an addendum as PDF and HTML, the price form, drawings changed, its operations, and all as one parcel."""
    edition = made.edition
    typeset = typesetter.typeset(edition, timestamp)
    files: dict[str, bytes] = {
        "addendum.pdf": typeset.pdf,
        "addendum.html": screen_page(edition).encode(),
        "addendum.json": canonical_json(statement, keep_order=True),
        "price-form.xlsx": price_form_workbook(made.form),
    }
    files |= sheet_files(edition, typesetter, timestamp)
    files |= {f"drawings/{figure.name}.svg": figure.svg.encode() for figure in made.drawings}
    files |= edition.files
    files[MANIFEST_NAME] = manifest(edition, files, made.form.edition_hash, amends)
    folder = parcel_name(edition.tender, f"addendum-{number}")
    files[f"{folder}.zip"] = archive(files, folder)
    return Written(files, typeset.page_count, typeset.laid_out, typeset.uncovered)
