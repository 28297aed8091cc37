"""What git says of a package: the commit that last touched it, and whether anything is uncommitted, owner/ apart.

What the compiler does not read, such as photographs that no row names, makes no draft.
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import Literal

from msgspec import Struct

from tenderwright.reading.as_committed import committed_files, is_as_committed
from tenderwright.reading.git import Refused, Repository, repository_of
from tenderwright.reading.layout import OWNER, is_ignored
from tenderwright.reading.photograph_files import FOLDERS


class GitState(Struct, frozen=True):
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
    try:
        repository = repository_of(root)
    except Refused:
        return GitState("no-git", why="git does not read the repository, so the commit is not known")
    if repository is None:
        return GitState("no-git", why="compiled outside git")
    if repository.answer("rev-parse", "--verify", "--quiet", "HEAD^{commit}") is None:
        return GitState("draft", why="not committed")
    prefix = repository.path_of(root)
    within = (f":(top,literal){prefix}", f":(top,exclude,literal){prefix}{OWNER.rstrip('/')}")
    found = repository.ask("rev-list", "-1", "--format=%H %ct", "HEAD", "--", *within)
    if found.code != 0:
        return GitState("draft", why="the history cannot be read, so the commit of the package is not known")
    if not found.text:
        return GitState("draft", why="not committed")
    name, when = found.text.splitlines()[-1].split()
    if repository.answer("rev-parse", "--is-shallow-repository") == "true":
        return GitState("draft", name, why="shallow clone, so the commit of the package is not known")
    if _uncommitted(repository, root, sources):
        return GitState("draft", name, why="uncommitted changes")
    return GitState("issued", name, int(when))


def uncommitted(root: Path, sources: Iterable[str]) -> list[str]:
    """Name the files of the package that are not as they were committed, owner/ apart, from the top of the package.

    Raises `Refused` where git does not read the repository.
    """
    repository = repository_of(root)
    return sorted(sources if repository is None else _uncommitted(repository, root, sources))


def _uncommitted(repository: Repository, root: Path, sources: Iterable[str]) -> set[str]:
    sources = set(sources)
    committed = {
        path: entry
        for path, entry in committed_files(repository, root).items()
        if not path.startswith(OWNER) and (path in sources or not (path.startswith(FOLDERS) or is_ignored(path)))
    }
    changed = {path for path, entry in committed.items() if not is_as_committed(root / path, entry)}
    return changed | {path for path in sources if path not in committed}
