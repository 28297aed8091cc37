"""What git says of a package: the commit that last touched it, and whether anything is uncommitted, owner/ apart."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from tenderwright.reading.layout import OWNER

_APART = f":(exclude){OWNER.rstrip('/')}"
_SET_BY_HOOKS = ("GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX")


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


def _git(root: Path, *words: str) -> str | None:
    try:
        done = subprocess.run(["git", "-C", str(root), *words], capture_output=True, env=_environment(), check=False)
    except FileNotFoundError:
        return None
    return os.fsdecode(done.stdout) if done.returncode == 0 else None


def _environment() -> dict[str, str]:
    """Give the environment without what a git hook sets, which may mean another repository or index."""
    return {name: text for name, text in os.environ.items() if name not in _SET_BY_HOOKS}


def git_state(root: Path, sources: Iterable[str]) -> GitState:
    """Find the state of the package at root, whose files (without owner/) are `sources`."""
    if _git(root, "rev-parse", "--is-inside-work-tree") is None:
        return GitState("no-git", why="compiled outside git")
    commit = _git(root, "log", "-1", "--no-show-signature", "--format=%H %ct", "--", ".", _APART) or ""
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
