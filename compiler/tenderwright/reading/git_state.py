"""What git says of a package: the commit that last touched it, and whether anything is uncommitted, owner/ apart."""

from __future__ import annotations

import subprocess
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

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
        if self.state == "issued":
            return f"Commit {self.commit[:12]}"
        if self.state == "draft":
            return f"DRAFT: {self.why}"
        return f"DRAFT: {self.why}"


def _git(root: Path, *words: str) -> str | None:
    try:
        done = subprocess.run(["git", "-C", str(root), *words], capture_output=True, text=True, check=False)
    except FileNotFoundError:
        return None
    return done.stdout if done.returncode == 0 else None


def git_state(root: Path, sources: Iterable[str]) -> GitState:
    """Find the state of the package at root, whose files (without owner/) are `sources`."""
    commit = _git(root, "log", "-1", "--format=%H %ct", "--", ".", _APART)
    if commit is None:
        return GitState("no-git", why="compiled outside git")
    if not commit.strip():
        return GitState("draft", why="not committed")
    name, when = commit.split()
    if (_git(root, "rev-parse", "--is-shallow-repository") or "").strip() == "true":
        return GitState("draft", name, why="shallow clone, so the commit of the package is not known")
    changed = _git(root, "status", "--porcelain", "--untracked-files=all", "--", ".", _APART)
    tracked = set((_git(root, "ls-files", "-z", "--", ".", _APART) or "").split("\0"))
    if changed is None or changed.strip() or any(path not in tracked for path in sources):
        return GitState("draft", name, why="uncommitted changes")
    return GitState("issued", name, int(when))
