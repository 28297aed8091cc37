"""A package as it stood at a commit: checked out into a folder of its own, for a while.

The folder is a repository that borrows the objects of the user's, so that the stamp of an edition compiled there is
that of a clean clone. Nothing of the user's repository but its objects is looked at: no hook, filter, attribute or
setting of it runs or changes a byte, nothing is fetched, and neither its files nor its index is touched.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from tenderwright.reading.git import answer, apart_from_the_user, ask
from tenderwright.reading.layout import OWNER

_SETTINGS = """[core]
\thooksPath = /dev/null
\tfsmonitor = false
"""
"""What the user has set up must not run either when others ask git about the folder."""
_ATTRIBUTES = "* -text -ident -filter !working-tree-encoding\n"
"""Over every .gitattributes of the repository: bytes stay as they were committed (gitattributes, "Precedence")."""


class NotAtCommit(Exception):
    """A package cannot be had as it stood at a commit; the message says why."""


def commit_named(root: Path, name: str) -> str:
    """Give the full name of the commit that a tag, a branch, `HEAD` or the beginning of a name stands for.

    Raises `NotAtCommit` where the folder is not in git, where its history is cut off, or where there is no such
    commit.
    """
    if answer(root, "rev-parse", "--is-inside-work-tree") != "true":
        raise NotAtCommit(f"`{root}` is not in a git repository")
    if answer(root, "rev-parse", "--is-shallow-repository") == "true":
        raise NotAtCommit(f"`{root}` is in a shallow clone; `git fetch --unshallow` brings the whole history")
    words = ("rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}")
    commit = None if name.startswith("-") else answer(root, *words)
    if not commit:
        raise NotAtCommit(f"there is no commit `{name}` in the repository of `{root}`")
    return commit


@contextmanager
def package_at(root: Path, name: str) -> Iterator[Path]:
    """Give the package at root as it stood at a commit, in a folder that is gone afterwards; owner/ is left out.

    Raises `NotAtCommit` as `commit_named` does, and where there was no package at that commit.
    """
    commit = commit_named(root, name)
    if answer(root, "cat-file", "-e", f"{commit}:./package.yaml") is None:
        raise NotAtCommit(f"at commit {commit[:12]} there was no package in `{root}`")
    prefix = answer(root, "rev-parse", "--show-prefix") or ""
    objects = answer(root, "rev-parse", "--path-format=absolute", "--git-path", "objects") or ""
    with TemporaryDirectory(prefix="tenderwright-") as made:
        home = Path(made).resolve()
        top = home / "repository"
        top.mkdir()
        _check_out(top, apart_from_the_user(home), objects, commit, prefix)
        yield top / prefix


def _check_out(top: Path, environment: Mapping[str, str], objects: str, commit: str, prefix: str) -> None:
    """Make a repository that borrows objects, put its HEAD at a commit, and check the package out."""

    def git(*words: str) -> None:
        answered = ask(top, *words, environment=environment)
        if answered.code != 0:
            raise NotAtCommit(f"commit {commit[:12]} cannot be checked out: {answered.complaint}")

    git("init", "--quiet", "--template=", f"--object-format={'sha256' if len(commit) == 64 else 'sha1'}")
    hidden = top / ".git"
    with open(hidden / "config", "a", encoding="utf-8") as config:
        config.write(_SETTINGS)
    for name, text in (("info/attributes", _ATTRIBUTES), ("objects/info/alternates", f"{objects}\n")):
        (hidden / name).parent.mkdir(exist_ok=True)
        (hidden / name).write_text(text, "utf-8")
    git("update-ref", "--no-deref", "HEAD", commit)
    git("read-tree", commit)
    owner = f"{prefix}{OWNER.rstrip('/')}"
    git("checkout", "--quiet", "--", f":(literal){prefix or '.'}", f":(exclude,literal){owner}")
