"""Whether owner/ is kept in one repository with the rest, and that repository has a remote."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.pipeline import compile_owner, compile_package, read
from tenderwright.reading.owner_in_git import goes_along_to
from tests.pipeline.packages import commit, edit, git, starter


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return starter(tmp_path / "ships" / "sandling")


def remote(root: Path, name: str) -> None:
    git(root, "remote", "add", name, "https://example.org/sandling.git")


def codes(root: Path) -> list[str]:
    files = read(root)
    return [notice.code for notice in compile_owner(files, compile_package(files)).notices]


def test_outside_git_and_without_a_remote_it_goes_nowhere(root: Path) -> None:
    assert goes_along_to(root) == ""
    commit(root.parent)
    assert goes_along_to(root) == ""
    assert codes(root) == []


def test_it_goes_along_once_it_is_tracked(root: Path) -> None:
    git(root.parent, "init", "--quiet")
    remote(root, "backup")
    assert goes_along_to(root) == ""
    commit(root.parent)
    assert goes_along_to(root) == "backup"
    remote(root, "origin")
    assert goes_along_to(root) == "origin"
    assert codes(root) == ["owner-goes-along"]


def test_it_is_told_of_the_owners_side_alone_and_not_where_it_is_meant(root: Path) -> None:
    commit(root)
    remote(root, "origin")
    assert compile_package(read(root)).notices == ()
    edit(root, "package.yaml", "currency: EUR\n", "currency: EUR\nowner_papers: in this repository\n")
    assert codes(root) == []


@pytest.mark.parametrize("ignored", [True, False], ids=["ignored", "a submodule"])
def test_a_repository_of_its_own_is_apart(root: Path, ignored: bool) -> None:
    commit(root / "owner")
    if ignored:
        (root / ".gitignore").write_text("owner/\n", "utf-8")
    commit(root)
    remote(root, "origin")
    assert goes_along_to(root) == ""
