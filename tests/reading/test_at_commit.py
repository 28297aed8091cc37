"""A package at a commit is that of a clean clone, byte for byte, and nothing of the user's is touched or run."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tenderwright.reading.at_commit import NotAtCommit, commit_named, package_at
from tenderwright.reading.git_state import git_state
from tenderwright.reading.package import read_package
from tests.pipeline.packages import clone, commit, edit, files_of, git, starter


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A package below the top of its repository, of two commits, with a letter beside it."""
    root = starter(tmp_path / "ships" / "sand [ling]")
    commit(tmp_path / "ships", "first")
    git(root, "tag", "--annotate", "--message", "first", "first")
    edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 41 each")
    edit(root, "owner/rates.yaml", "21500", "21501")
    (tmp_path / "ships" / "letter.txt").write_text("one", "utf-8")
    commit(tmp_path / "ships", "second")
    return root


def _below(folder: Path) -> dict[str, bytes]:
    return {path: held for path, held in files_of(folder).items() if not path.startswith((".git/", "owner/"))}


@pytest.mark.parametrize("name", ["first", "HEAD", "HEAD~1"])
def test_it_is_what_a_clean_clone_gives(root: Path, tmp_path: Path, name: str) -> None:
    cloned = clone(root.parent, tmp_path / "clone")
    git(cloned, "checkout", "--quiet", "--detach", name)
    with package_at(root, name) as folder:
        sources = read_package(folder, owner=False).sources
        assert _below(folder) == _below(cloned / root.name)
        state = git_state(folder, sources)
    assert state.state == "issued"
    assert state == git_state(cloned / root.name, sources)


def test_a_commit_has_many_names(root: Path) -> None:
    full = git(root, "rev-parse", "HEAD")
    assert {commit_named(root, name) for name in ("HEAD", full, full[:7], "first~0^{commit}", "@")} == {
        full,
        git(root, "rev-parse", "first^{commit}"),
    }


def test_owner_is_not_checked_out_and_the_folder_goes_again(root: Path) -> None:
    with package_at(root, "HEAD") as folder:
        assert (folder / "package.yaml").is_file()
        assert not (folder / "owner").exists()
        assert not (folder.parent / "letter.txt").exists()
    assert not folder.exists()


def test_the_files_and_the_index_of_the_user_stay_as_they_are(root: Path) -> None:
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    git(root, "add", "package.yaml")
    (root / "items" / "320-rivets-renew.yaml").unlink()
    (root / "items" / "scratch").write_text("mine", "utf-8")
    before = files_of(root.parent)
    with package_at(root, "first") as folder:
        git_state(folder, ["package.yaml"])
    assert files_of(root.parent) == before


def _executable(path: Path, text: str) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")
    path.chmod(0o755)


def test_nothing_of_the_user_s_runs_or_changes_a_byte(
    root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = root / "items" / "320-rivets-renew.yaml"
    page.write_bytes(page.read_bytes() + b"# $Id$\n")
    (root / ".gitattributes").write_text("*.yaml ident filter=spoil text eol=crlf working-tree-encoding=UTF-16\n")
    git(root.parent, "-c", "core.attributesFile=", "add", root.name + "/.gitattributes")
    ran = tmp_path / "ran"
    hook = f"#!/bin/sh\necho ran >> '{ran}'\n"
    for folder in (tmp_path / "hooks", root.parent / ".git" / "hooks", tmp_path / "template" / "hooks"):
        for name in ("post-checkout", "post-index-change", "reference-transaction"):
            _executable(folder / name, hook)
    _executable(tmp_path / "spoil", f"#!/bin/sh\necho ran >> '{ran}'; tr a-z A-Z\n")
    home = tmp_path / "home"
    (home / ".config" / "git").mkdir(parents=True)
    (home / ".config" / "git" / "attributes").write_text("* filter=spoil\n")
    (home / ".gitconfig").write_text(
        f"""[core]
        hooksPath = {tmp_path / "hooks"}
        autocrlf = true
        fsmonitor = {tmp_path / "spoil"}
[init]
        templateDir = {tmp_path / "template"}
[filter "spoil"]
        smudge = {tmp_path / "spoil"}
        required = true
"""
    )
    # committed as plain text, under attributes that would change it on the way out
    blob = git(root.parent, "hash-object", "-w", "--no-filters", str(page))
    git(root.parent, "update-index", "--cacheinfo", f"100644,{blob},{root.name}/items/{page.name}")
    git(root.parent, "commit", "--quiet", "--message", "with attributes")
    wanted = page.read_bytes()
    ran.unlink(missing_ok=True)
    monkeypatch.setenv("HOME", str(home))
    monkeypatch.delenv("XDG_CONFIG_HOME", raising=False)
    monkeypatch.delenv("GIT_CONFIG_GLOBAL", raising=False)
    with package_at(root, "HEAD") as folder:
        assert (folder / "items" / page.name).read_bytes() == wanted
        assert git_state(folder, ["package.yaml"]).state == "issued"
    assert not ran.exists()


def test_what_a_hook_sets_does_not_lead_elsewhere(root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    other = starter(tmp_path / "other")
    commit(other)
    monkeypatch.setenv("GIT_DIR", str(other / ".git"))
    monkeypatch.setenv("GIT_INDEX_FILE", str(other / ".git" / "index"))
    with package_at(root, "first") as folder:
        assert "quantity: 40 each" in (folder / "items" / "320-rivets-renew.yaml").read_text("utf-8")


def test_a_linked_worktree_and_sha_256_names_do_too(tmp_path: Path) -> None:
    root = tmp_path / "sandling"
    starter(root)
    git(root, "init", "--quiet", "--object-format=sha256")
    name = commit(root)
    git(root, "worktree", "add", "--quiet", "--detach", str(tmp_path / "linked"))
    assert len(name) == 64
    with package_at(tmp_path / "linked", name[:9]) as folder:
        assert git_state(folder, ["package.yaml"]).commit == name


@pytest.mark.parametrize("name", ["nowhere", "-x", "--help", "", "HEAD..first", "first:package.yaml", "HEAD~9"])
def test_a_name_that_is_no_commit_is_refused(root: Path, name: str) -> None:
    with pytest.raises(NotAtCommit, match="there is no commit"), package_at(root, name):
        pytest.fail("it was given")


def test_a_package_that_was_not_there_yet(tmp_path: Path) -> None:
    ships = tmp_path / "ships"
    ships.mkdir()
    (ships / "letter.txt").write_text("one", "utf-8")
    first = commit(ships)
    root = starter(ships / "sandling")
    commit(ships)
    with pytest.raises(NotAtCommit, match=f"at commit {first[:12]} there was no package"), package_at(root, "HEAD~1"):
        pytest.fail("it was given")


def test_outside_git(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    with pytest.raises(NotAtCommit, match="not in a git repository"), package_at(starter(tmp_path / "a"), "HEAD"):
        pytest.fail("it was given")


def test_without_git_at_all(root: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(NotAtCommit, match="git is not installed"):
        commit_named(root, "HEAD")


def test_a_shallow_clone_says_the_cure(root: Path, tmp_path: Path) -> None:
    git(root, "clone", "--quiet", "--depth=1", f"file://{root.parent}", str(tmp_path / "shallow"))
    with (
        pytest.raises(NotAtCommit, match="shallow clone; `git fetch --unshallow`"),
        package_at(tmp_path / "shallow" / root.name, "HEAD"),
    ):
        pytest.fail("it was given")


def test_objects_that_are_missing_are_told(root: Path) -> None:
    blob = git(root, "rev-parse", "HEAD:./drawings.yaml")
    os.remove(root.parent / ".git" / "objects" / blob[:2] / blob[2:])
    with pytest.raises(NotAtCommit, match="cannot be checked out: "), package_at(root, "HEAD"):
        pytest.fail("it was given")
