"""Where the owner's papers are kept."""

from __future__ import annotations

from tenderwright.model.tender import Tender
from tenderwright.notices import Notice, Place
from tenderwright.reading.layout import OWNER
from tenderwright.reading.package import Files


def owner_papers(files: Files, tender: Tender | None) -> list[Notice]:
    """Report once that owner/ goes to a remote together with the rest, unless package.yaml says that it is meant."""
    if not files.goes_along_to or tender is None or tender.owner_papers:
        return []
    message = f"the confidential papers go to the remote `{files.goes_along_to}` together with the rest of the package"
    hints = (
        "where all who can read it may read them, write `owner_papers: in this repository` in package.yaml",
        "else keep them in a repository of their own: `tenderwright explain owner-goes-along` has the commands",
    )
    return [Notice("owner-goes-along", Place(OWNER), message, hints=hints)]
