"""Write a docking report: the open one, the confidential one where there is one, and their manifest."""

from __future__ import annotations

from tenderwright.documents.edition import Edition
from tenderwright.writing.edition_files import Written
from tenderwright.writing.html import screen_page
from tenderwright.writing.manifest import MANIFEST_NAME, manifest
from tenderwright.writing.pdf import Typesetter

STEM = "docking-report"


def report_files(report: Edition, confidential: Edition | None, typesetter: Typesetter, timestamp: int) -> Written:
    """Write the reports as PDF and HTML; the confidential one stands under `owner/`."""
    files: dict[str, bytes] = {}
    pages, uncovered = 0, ""
    laid_out: tuple[str, ...] = ()
    for folder, edition in (("", report), ("owner/", confidential)):
        if edition is not None:
            typeset = typesetter.typeset(edition, timestamp)
            files[f"{folder}{STEM}.pdf"] = typeset.pdf
            files[f"{folder}{STEM}.html"] = screen_page(edition).encode()
            pages += typeset.page_count
            laid_out += typeset.laid_out
            uncovered += "".join(letter for letter in typeset.uncovered if letter not in uncovered)
    files[MANIFEST_NAME] = manifest(report, files)
    return Written(files, pages, laid_out, uncovered)
