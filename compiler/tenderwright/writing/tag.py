"""Make the annotated tag of an issue."""

from __future__ import annotations

from pathlib import Path

from tenderwright.reading.git import answer, ask


class NoTag(Exception):
    """A tag cannot be made; the message says why, and the cure where there is one."""


def may_tag(root: Path, name: str) -> None:
    """Raise `NoTag` where a name is no name for a tag, or is taken, or git does not know who makes the tag."""
    if name.startswith("-") or "/" in name or answer(root, "check-ref-format", f"refs/tags/{name}") is None:
        raise NoTag(f"`{name}` cannot be the name of a tag; use letters, figures and hyphens, such as `issue-1`")
    if answer(root, "rev-parse", "--verify", "--quiet", f"refs/tags/{name}") is not None:
        raise NoTag(f"there is a tag `{name}` already, and an issue is never made twice under one name")
    if answer(root, "var", "GIT_COMMITTER_IDENT") is None:
        raise NoTag(
            "git does not know who issues: `git config user.name NAME` and `git config user.email ADDRESS` tell it"
        )


def tag_commit(root: Path, name: str, commit: str, message: str) -> None:
    """Make an annotated tag at a commit; raises `NoTag` where git refuses."""
    words = ("tag", "--annotate", "--cleanup=verbatim", "--file=-", name, commit)
    made = ask(root, *words, given=message.encode())
    if made.code != 0:
        raise NoTag(f"git made no tag `{name}`: {made.complaint}")
