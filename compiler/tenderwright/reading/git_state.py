"""What git says of a package: the commit that last touched it, and whether anything is uncommitted, owner/ apart."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from tenderwright.reading.git import answer, ask
from tenderwright.reading.layout import OWNER

_APART = f":(exclude){OWNER.rstrip('/')}"


@dataclass(frozen=True)
class GitState:
    """The state of a package in git; owner/ is never looked at."""

    state: Literal["issued", "draft", "no-git"]
    commit: str = ""
    time: int | None = None
    """When the commit was made, seconds since 1970 UTC."""
    why: str = ""

    @property
    def label(self) -> str:
        """Give what every page says."""
        return f"Commit {self.commit[:12]}" if self.state == "issued" else f"DRAFT: {self.why}"


def git_state(root: Path, sources: Iterable[str]) -> GitState:
    """Find the state of the package at root, whose files (without owner/) are `sources`."""
    if answer(root, "rev-parse", "--is-inside-work-tree") is None:
        return GitState("no-git", why="compiled outside git")
    commit = answer(root, "log", "-1", "--no-show-signature", "--format=%H %ct", "--", ".", _APART) or ""
    if not commit.strip():
        return GitState("draft", why="not committed")
    name, when = commit.split()
    if (answer(root, "rev-parse", "--is-shallow-repository") or "").strip() == "true":
        return GitState("draft", name, why="shallow clone, so the commit of the package is not known")
    changed = answer(root, "status", "--porcelain", "--untracked-files=all", "--", ".", _APART)
    tracked = set((answer(root, "ls-files", "-z", "--", ".", _APART) or "").split("\0"))
    if changed is None or changed.strip() or any(path not in tracked for path in sources):
        return GitState("draft", name, why="uncommitted changes")
    return GitState("issued", name, int(when))


def uncommitted(root: Path, sources: Iterable[str]) -> list[str]:
    """Name the files of the package that are not as they were committed, owner/ apart, from the top of the package."""
    words = ("status", "--porcelain", "-z", "--no-renames", "--untracked-files=all", "--", ".", _APART)
    status = ask(root, *words)
    prefix = answer(root, "rev-parse", "--show-prefix") or ""
    changed = {entry[3:].removeprefix(prefix) for entry in status.text.split("\0") if entry}
    tracked = set((answer(root, "ls-files", "-z", "--", ".", _APART) or "").split("\0"))
    return sorted(changed | {path for path in sources if path not in tracked})
