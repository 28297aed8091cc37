"""A package as it stood at a commit: checked out into a folder of its own, for a while.

The folder is a repository that borrows the objects of the user's, so that the stamp of an edition compiled there is
that of a clean clone. Nothing of the user's repository but its objects is looked at: no filter, attribute or setting of
it runs or changes a byte, and neither its files nor its index is touched.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from tenderwright.reading.git import Refused, Repository, new_repository, repository_of
from tenderwright.reading.layout import OWNER

_ATTRIBUTES = "* -text -ident -filter !working-tree-encoding\n"
"""Over every .gitattributes of the repository: bytes stay as they were committed (gitattributes, "Precedence")."""


class NotAtCommit(Exception):
    """A package cannot be had as it stood at a commit; the message says why."""


def commit_named(root: Path, name: str) -> str:
    """Give the full name of the commit that a tag, a branch, `HEAD` or the beginning of a name stands for.

    Raises `NotAtCommit` where the folder is not in git or git does not read it, where its history is cut off, or where
    there is no such commit.
    """
    return _commit_named(_repository(root), root, name)


@contextmanager
def package_at(root: Path, name: str, *, owner: bool = False) -> Iterator[Path]:
    """Give the package at root as it stood at a commit, in a folder that is gone afterwards.

    What it holds under owner/ is left out but where the owner's papers are asked for.

    Raises `NotAtCommit` as `commit_named` does, and where there was no package at that commit.
    """
    repository = _repository(root)
    commit = _commit_named(repository, root, name)
    prefix = repository.path_of(root)
    if repository.answer("cat-file", "-e", f"{commit}:{prefix}package.yaml") is None:
        raise NotAtCommit(f"at commit {commit[:12]} there was no package in `{root}`")
    objects = repository.answer("rev-parse", "--path-format=absolute", "--git-path", "objects") or ""
    with TemporaryDirectory(prefix="tenderwright-") as made:
        top = Path(made).resolve() / "repository"
        top.mkdir()
        _check_out(top, objects, commit, prefix, owner=owner)
        yield top / prefix


def _repository(root: Path) -> Repository:
    try:
        repository = repository_of(root)
    except Refused as refused:
        raise NotAtCommit(str(refused)) from refused
    if repository is None:
        raise NotAtCommit(f"`{root}` is not in a git repository")
    return repository


def _commit_named(repository: Repository, root: Path, name: str) -> str:
    if repository.answer("rev-parse", "--is-shallow-repository") == "true":
        raise NotAtCommit(f"`{root}` is in a shallow clone; `git fetch --unshallow` brings the whole history")
    words = ("rev-parse", "--verify", "--quiet", "--end-of-options", f"{name}^{{commit}}")
    commit = None if name.startswith("-") else repository.answer(*words)
    if not commit:
        raise NotAtCommit(f"there is no commit `{name}` in the repository of `{root}`")
    return commit


def _check_out(top: Path, objects: str, commit: str, prefix: str, *, owner: bool) -> None:
    """Make a repository that borrows objects, put its HEAD at a commit, and check the package out."""

    def refused(complaint: str) -> NotAtCommit:
        return NotAtCommit(f"commit {commit[:12]} cannot be checked out: {complaint}")

    try:
        repository = new_repository(top, f"--object-format={'sha256' if len(commit) == 64 else 'sha1'}")
    except Refused as error:
        raise refused(str(error)) from error
    for name, text in (("info/attributes", _ATTRIBUTES), ("objects/info/alternates", f"{objects}\n")):
        (repository.hidden / name).parent.mkdir(exist_ok=True)
        (repository.hidden / name).write_text(text, "utf-8")
    left_out = () if owner else (f":(exclude,literal){prefix}{OWNER.rstrip('/')}",)
    files = (f":(literal){prefix or '.'}", *left_out)
    for words in (
        ("update-ref", "--no-deref", "HEAD", commit),
        ("read-tree", commit),
        ("checkout", "--quiet", "--", *files),
    ):
        done = repository.ask(*words)
        if done.code != 0:
            raise refused(done.complaint)
