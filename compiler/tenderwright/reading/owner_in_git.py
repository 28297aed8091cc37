"""Whether the owner's papers are kept in one repository with the rest, and go where it goes."""

from __future__ import annotations

from pathlib import Path

from tenderwright.reading.git import repository_of
from tenderwright.reading.layout import OWNER


def goes_along_to(root: Path) -> str:
    """Name a remote of the repository that keeps owner/ together with the rest; nothing where there is none.

    Raises `Refused` where git does not read the repository.
    """
    repository = repository_of(root)
    remotes = (repository.answer("remote") or "").split() if repository is not None else []
    if repository is None or not remotes:
        return ""
    if not repository.answer("ls-tree", "--full-tree", f"HEAD:{repository.path_of(root)}{OWNER}"):
        return ""
    return "origin" if "origin" in remotes else remotes[0]
