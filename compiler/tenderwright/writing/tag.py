"""Make the annotated tag of an issue."""

from __future__ import annotations

import re
from pathlib import Path

from tenderwright.reading.git import Repository, repository_of

_NAME = re.compile(r"[A-Za-z0-9_][A-Za-z0-9._-]*")


class NoTag(Exception):
    """A tag cannot be made; the message says why, and the cure where there is one."""


def may_be_named(name: str) -> None:
    """Raise `NoTag` where a name is none for a tag, nor for a folder, nor to be pasted as it is on a command line."""
    if not _NAME.fullmatch(name) or ".." in name or name.endswith((".", ".lock")):
        raise NoTag(f"`{name}` cannot be the name of a tag; use letters, figures, `.`, `_` and `-`, such as `issue-1`")


def is_tag(root: Path, name: str) -> bool:
    """Tell whether there is a tag of that name."""
    return _repository(root).answer("rev-parse", "--verify", "--quiet", f"refs/tags/{name}") is not None


def may_tag(root: Path, name: str) -> None:
    """Raise `NoTag` where a name is taken, or git does not know who makes the tag."""
    if is_tag(root, name):
        raise NoTag(f"there is a tag `{name}` already, and an issue is never made twice under one name")
    _who(_repository(root))


def tag_commit(root: Path, name: str, commit: str, message: str) -> None:
    """Make an annotated tag at a commit, unsigned; raises `NoTag` where git refuses."""
    repository = _repository(root)
    words = ("tag", "--annotate", "--no-sign", "--cleanup=verbatim", "--file=-", name, commit)
    made = repository.ask(*words, given=message.encode(), environment=_who(repository))
    if made.code != 0:
        raise NoTag(f"git made no tag `{name}`: {made.complaint}")


def _repository(root: Path) -> Repository:
    repository = repository_of(root)
    if repository is None:
        raise NoTag(f"`{root}` is not in a git repository")
    return repository


def _who(repository: Repository) -> dict[str, str]:
    who = repository.identity()
    if who is None:
        raise NoTag(
            "git does not know who you are: say so with `git config user.name NAME` and `git config user.email ADDRESS`"
        )
    return who
