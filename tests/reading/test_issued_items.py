"""What earlier issues held is read from git's objects, and what is the same now is not read again."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from tenderwright.pipeline import compile_package, read
from tenderwright.reading import git as module
from tenderwright.reading.package import read_package
from tests.fixtures.issue import issue
from tests.pipeline.packages import commit, edit, starter

Run = Callable[[Path, tuple[str, ...], bytes, Mapping[str, str]], module.Answer]
RIVETS = "items/320-rivets-renew.yaml"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return starter(tmp_path / "ships" / "sandling")


def test_each_issue_gives_its_items_the_first_first(root: Path) -> None:
    issue(root, "z")
    edit(root, RIVETS, "title: Rivets, renew", "title: Rivets, renew cold")
    (root / "items" / "210-hull-wash.yaml").unlink()
    issue(root, "a", 2)
    edit(root, RIVETS, "title: Rivets, renew cold", "title: Rivets, drive")
    files = read(root)
    assert list(files.issued) == ["z", "a"]
    assert [files.issued[tag][RIVETS].data["title"] for tag in files.issued] == ["Rivets, renew", "Rivets, renew cold"]
    assert "items/210-hull-wash.yaml" in files.issued["z"]
    assert "items/210-hull-wash.yaml" not in files.issued["a"]
    assert all(path.startswith("items/") for sources in files.issued.values() for path in sources)


def test_a_package_below_the_top_finds_its_own_items(root: Path) -> None:
    starter(root.parent / "items")
    issue(root, "issue-1", repository=root.parent)
    files = read(root)
    assert set(files.issued["issue-1"]) == {path for path in files.sources if path.startswith("items/")}


def test_a_file_that_is_the_same_now_is_not_read_again(root: Path) -> None:
    issue(root, "issue-1")
    edit(root, RIVETS, "title: Rivets, renew", "title: Rivets, drive")
    files = read(root)
    same = {path for path, source in files.issued["issue-1"].items() if source is files.sources[path]}
    assert same == {path for path in files.sources if path.startswith("items/")} - {RIVETS}


def test_issues_of_another_tender_are_not_looked_at(root: Path) -> None:
    issue(root, "issue-1")
    edit(root, "package.yaml", "number: BWT-2028-01", "number: BWT-2043-01")
    assert read(root).issued == {}


@pytest.mark.parametrize("tender", ["tender: {number: 7, title: x}", "tender: x", "- 1", ""])
def test_a_package_that_does_not_say_its_tender_has_no_issues(root: Path, tender: str) -> None:
    issue(root, "issue-1")
    (root / "package.yaml").write_text(tender, "utf-8")
    assert read(root).issued == {}


def test_what_cannot_be_read_is_left_out(root: Path) -> None:
    path = root / "items" / "330-old.yaml"
    path.write_bytes(b"item: 330\ntitle: \xff\n")
    (root / "items" / "340-link.yaml").symlink_to("330-old.yaml")
    (root / "items" / "notes.txt").write_text("none", "utf-8")
    issue(root, "issue-1")
    path.unlink()
    assert set(read(root).issued["issue-1"]) == {
        path for path in read_package(root).sources if path.startswith("items/")
    } - {"items/340-link.yaml"}


def test_without_a_tag_git_is_asked_little_and_outside_git_never(
    root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    commit(root)
    asked: list[str] = []

    def listening(
        folder: Path, words: tuple[str, ...], given: bytes, environment: Mapping[str, str], run: Run = module._run
    ) -> module.Answer:
        asked.append(next(word for word in words if not word.startswith("-")))
        return run(folder, words, given, environment)

    monkeypatch.setattr(module, "_run", listening)
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    assert read(root).issued == {}
    assert asked == ["rev-parse", "remote", "rev-parse", "for-each-ref"]
    assert read(starter(tmp_path / "other")).issued == {}
    assert len(asked) == 4


def test_the_owner_s_side_and_the_yard_s_keep_what_was_issued(root: Path) -> None:
    issue(root, "issue-1")
    files = read(root)
    assert files.without_owner().issued == files.owner_only().issued == files.issued
    assert compile_package(read_package(root)).notices == ()
