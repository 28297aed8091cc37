"""The yard edition depends on the package alone: not on owner/, nor on who builds it, where, when or how often."""

from __future__ import annotations

import json
import os
import stat
from collections.abc import Callable
from pathlib import Path

import pytest

from tenderwright.commands.build import build_once
from tenderwright.pipeline import compile_package, compose_yard, read, stamp_of, timestamp
from tenderwright.reading.git_state import GitState
from tenderwright.writing.pdf import Typesetter

from .owner_papers import fill_owner
from .packages import commit, different, edit, files_of, git, starter
from .two import Two

FILES = {"specification.pdf", "specification.html", "price-form.xlsx", "quantities.csv", "manifest.json"}


def _yard(root: Path, out: Path, typesetter: Typesetter) -> dict[str, bytes]:
    assert build_once(root, out, "yard", typesetter) == 0
    return files_of(out / "yard")


def test_owner_present_absent_edited_or_broken_leaves_every_byte(tmp_path: Path, typesetter: Typesetter) -> None:
    root = starter(tmp_path / "sandling")
    commit(root)
    present = _yard(root, tmp_path / "present", typesetter)
    assert set(present) >= FILES

    fill_owner(root)
    assert different(present, _yard(root, tmp_path / "edited", typesetter)) == []

    (root / "owner" / "rates.yaml").write_text("lines: [\n\tbroken: {", "utf-8")
    (root / "owner" / "more").write_bytes(b"\xff\xfe\0")
    assert different(present, _yard(root, tmp_path / "broken", typesetter)) == []

    for path in sorted((root / "owner").rglob("*"), reverse=True):
        path.rmdir() if path.is_dir() else path.unlink()
    (root / "owner").rmdir()
    assert different(present, _yard(root, tmp_path / "absent", typesetter)) == []

    git(root, "add", "--all")
    git(root, "commit", "--quiet", "--message", "owner's papers only")
    assert different(present, _yard(root, tmp_path / "committed", typesetter)) == []


def test_another_edit_does_change_it(tmp_path: Path, typesetter: Typesetter) -> None:
    root = starter(tmp_path / "sandling")
    before = _yard(root, tmp_path / "before", typesetter)
    edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 41 each")
    changed = different(before, _yard(root, tmp_path / "after", typesetter))
    assert set(changed) >= {*FILES, "BWT-2028-01-yard.zip"}


def test_two_processes_in_two_folders_write_the_same_bytes(two_starters: Two) -> None:
    plain, guarded = files_of(two_starters.plain), files_of(two_starters.guarded)
    assert set(plain) >= FILES
    assert any(name.endswith(".zip") for name in plain)
    assert different(plain, guarded) == []


def test_what_is_written_follows_the_umask(two_starters: Two) -> None:
    def mode(path: Path) -> int:
        return stat.S_IMODE(path.stat().st_mode)

    assert mode(two_starters.plain / "manifest.json") == 0o644
    assert mode(two_starters.guarded / "manifest.json") == 0o600


def test_the_manifest_names_the_commit(two_starters: Two) -> None:
    manifest = json.loads((two_starters.plain / "manifest.json").read_text("utf-8"))
    name = two_starters.commit
    assert (manifest["state"], manifest["commit"], manifest["stamp"]) == ("issued", name, f"Commit {name[:12]}")
    assert manifest["confidential"] is False


def test_no_path_of_the_machine_is_in_it(two_starters: Two) -> None:
    for folder in (two_starters.plain, two_starters.guarded):
        for name, content in files_of(folder).items():
            assert str(folder.parents[1]).encode() not in content, name


@pytest.fixture
def issued(tmp_path: Path) -> Path:
    root = starter(tmp_path / "sandling")
    commit(root)
    return root


def _state(root: Path) -> GitState:
    return stamp_of(compile_package(read(root)))


def test_a_clean_commit_is_issued_under_its_name(issued: Path) -> None:
    state = _state(issued)
    assert state.state == "issued"
    assert state.label == f"Commit {git(issued, 'rev-parse', 'HEAD')[:12]}"
    assert state.time == 1822635000  # 2027-10-04 07:30 UTC
    edition, _ = compose_yard(compile_package(read(issued)), state)
    assert timestamp(edition, state) == state.time


def _edited(root: Path) -> None:
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")


def _untracked(root: Path) -> None:
    (root / "clauses" / "03-masts.md").write_text("# Masts\n\nStruck before docking.\n", "utf-8")


def _staged(root: Path) -> None:
    _edited(root)
    git(root, "add", "--all")


def _deleted(root: Path) -> None:
    (root / "history" / "docking-2021.yaml").unlink()


def _ignored_yet_read(root: Path) -> None:
    (root / ".git" / "info" / "exclude").write_text("03-*\n", "utf-8")
    _untracked(root)


def _marked_unchanged(root: Path) -> None:
    _edited(root)
    git(root, "update-index", "--assume-unchanged", "package.yaml")


def _renamed(root: Path) -> None:
    git(root, "mv", "clauses/02-changes.md", "clauses/09-changes.md")


def _owner_too(root: Path) -> None:
    _edited(root)
    edit(root, "owner/rates.yaml", "21500", "21501")


@pytest.mark.parametrize(
    "change", [_edited, _untracked, _staged, _deleted, _ignored_yet_read, _marked_unchanged, _renamed, _owner_too]
)
def test_whatever_is_not_committed_makes_a_draft(change: Callable[[Path], None], issued: Path) -> None:
    change(issued)
    state = _state(issued)
    assert (state.state, state.label) == ("draft", "DRAFT: uncommitted changes")


def _unread(root: Path) -> None:
    (root / "photographs").mkdir()
    (root / "photographs" / "bow.jpg").write_bytes(b"\xff\xd8")
    (root / ".DS_Store").write_bytes(b"\0")
    (root / "README.md").write_text("# Ours\n", "utf-8")


def _windows_line_ends(root: Path) -> None:
    for path in read(root).sources:
        (root / path).write_bytes((root / path).read_bytes().replace(b"\n", b"\r\n"))


def _mode(root: Path) -> None:
    (root / "package.yaml").chmod(0o755)


def _unstaged_again(root: Path) -> None:
    git(root, "rm", "--quiet", "--cached", "package.yaml")


@pytest.mark.parametrize("change", [_unread, _windows_line_ends, _mode, _unstaged_again])
def test_what_changes_no_page_makes_no_draft(change: Callable[[Path], None], issued: Path) -> None:
    before = compile_package(read(issued))
    state = stamp_of(before)
    change(issued)
    after = compile_package(read(issued))
    assert stamp_of(after) == state
    assert {path: source.text for path, source in after.files.sources.items()} == {
        path: source.text for path, source in before.files.sources.items()
    }


def _owner_edited(root: Path) -> None:
    edit(root, "owner/rates.yaml", "21500", "21501")


def _owner_untracked(root: Path) -> None:
    (root / "owner" / "risks.yaml").write_text("risks: []\n", "utf-8")


def _owner_gone(root: Path) -> None:
    (root / "owner" / "rates.yaml").unlink()


def _owner_a_repository_of_its_own(root: Path) -> None:
    git(root, "rm", "-r", "--quiet", "--cached", "owner")
    git(root, "commit", "--quiet", "--message", "owner/ moves out")
    commit(root / "owner")


@pytest.mark.parametrize("change", [_owner_edited, _owner_untracked, _owner_gone, _owner_a_repository_of_its_own])
def test_changes_under_owner_make_no_draft(change: Callable[[Path], None], issued: Path) -> None:
    before = _state(issued)
    change(issued)
    assert _state(issued) == before


def test_owner_is_apart_in_a_package_below_the_top_of_the_repository(tmp_path: Path) -> None:
    root = starter(tmp_path / "ships" / "sandling")
    (tmp_path / "ships" / "letters.txt").write_text("one", "utf-8")
    name = commit(tmp_path / "ships")
    (tmp_path / "ships" / "letters.txt").write_text("two", "utf-8")
    _owner_edited(root)
    assert _state(root).label == f"Commit {name[:12]}"
    _edited(root)
    assert _state(root).state == "draft"


def test_the_commit_is_the_last_that_touched_the_package(tmp_path: Path) -> None:
    root = starter(tmp_path / "ships" / "sandling")
    name = commit(tmp_path / "ships")
    (tmp_path / "ships" / "letters.txt").write_text("one", "utf-8")
    _owner_edited(root)
    commit(tmp_path / "ships", "letters and rates")
    assert _state(root).commit == name


def test_outside_git_it_compiles_and_is_marked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    compiled = compile_package(read(starter(tmp_path / "sandling")))
    state = stamp_of(compiled)
    assert (state.state, state.label) == ("no-git", "DRAFT: compiled outside git")
    edition, form = compose_yard(compiled, state)
    assert edition.stamp.label == form.stamp == "DRAFT: compiled outside git"
    assert timestamp(edition, state) == 1822608000  # the day of issue, 2027-10-04


def test_without_git_on_the_machine_it_compiles_and_is_marked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    root = starter(tmp_path / "sandling")
    commit(root)
    monkeypatch.setenv("PATH", str(tmp_path))
    assert _state(root).state == "no-git"


def test_a_repository_without_a_commit_makes_a_draft(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    git(root, "init", "--quiet")
    assert _state(root).label == "DRAFT: not committed"


def test_a_shallow_clone_makes_a_draft(issued: Path, tmp_path: Path) -> None:
    _edited(issued)
    commit(issued, "moved along the quay")
    git(tmp_path, "clone", "--quiet", "--no-local", "--depth", "1", issued.as_uri(), str(tmp_path / "shallow"))
    assert _state(tmp_path / "shallow").label.startswith("DRAFT: shallow clone")


def test_what_a_hook_of_git_sets_does_not_mislead(issued: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    before = _state(issued)
    monkeypatch.setenv("GIT_DIR", ".git-of-something-else")
    monkeypatch.setenv("GIT_INDEX_FILE", "index-of-something-else")
    assert _state(issued) == before


def test_settings_of_the_user_do_not_mislead(issued: Path, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    before = _state(issued)
    settings = tmp_path / "settings"
    settings.write_text(
        "[log]\n showSignature = true\n decorate = full\n[color]\n ui = always\n[status]\n showUntrackedFiles = no\n"
        " branch = true\n[core]\n quotePath = true\n",
        "utf-8",
    )
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", str(settings))
    assert _state(issued) == before
    _untracked(issued)
    assert _state(issued).state == "draft"


def test_names_that_are_not_utf8_do_no_harm(issued: Path) -> None:
    (issued / "photographs").mkdir()
    with open(os.fsencode(issued) + b"/photographs/caf\xe9.jpg", "wb") as file:
        file.write(b"\xff\xd8")
    assert _state(issued).state == "issued"
    name = commit(issued, "a photograph")
    assert _state(issued).label == f"Commit {name[:12]}"
