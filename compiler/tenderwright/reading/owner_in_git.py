"""Whether the owner's papers are kept in one repository with the rest, and go where it goes."""

from __future__ import annotations

from pathlib import Path

from tenderwright.reading.git import answer
from tenderwright.reading.layout import OWNER


def goes_along_to(root: Path) -> str:
    """Name a remote of the repository that keeps owner/ together with the rest; nothing where there is none."""
    remotes = (answer(root, "remote") or "").split()
    if not remotes or not any(path.startswith(OWNER) for path in _tracked(root)):
        return ""
    return "origin" if "origin" in remotes else remotes[0]


def _tracked(root: Path) -> list[str]:
    return (answer(root, "ls-files", "-z", "--", OWNER) or "").split("\0")
