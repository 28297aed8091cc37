"""`tenderwright issue` takes what is committed, whole and sound, or refuses and leaves nothing behind."""

from __future__ import annotations

import hashlib
import json
import shutil
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from msgspec.structs import replace

from tenderwright.commands import issue as command
from tenderwright.commands import recording
from tenderwright.commands.yard_at import yard_at
from tenderwright.pipeline import compile_package, read
from tenderwright.reading.issued import issued
from tests.pipeline.packages import clone, commit, different, edit, files_of, git, starter
from tests.pipeline.packages import run as run_apart

from .conftest import FirstIssue
from .run import Runner

pytestmark = pytest.mark.usefixtures("git_knows_who")


@pytest.fixture
def root(tmp_path: Path) -> Path:
    root = starter(tmp_path / "sandling")
    commit(root)
    return root


def test_it_is_what_build_writes_from_a_clean_clone(issued_once: FirstIssue, tmp_path: Path) -> None:
    cloned = clone(issued_once.root.parent, tmp_path / "clone") / issued_once.root.name
    ran = run_apart("build", cloned, "--only", "yard", "--out", tmp_path / "out")
    assert ran.returncode == 0, ran.stderr
    assert different(files_of(issued_once.folder), files_of(tmp_path / "out" / "yard")) == []


def test_the_tag_records_the_commit_that_last_touched_the_package(issued_once: FirstIssue) -> None:
    (record,) = issued(issued_once.root)
    manifest = json.loads((issued_once.folder / "manifest.json").read_text("utf-8"))
    assert record.commit == manifest["commit"] == git(issued_once.root, "rev-parse", "HEAD~1")
    assert (record.tag, record.tender, record.number, record.addendum) == ("issue-1", "BWT-2028-01", 1, None)
    assert record.date.isoformat() == "2027-10-04T07:30:00+00:00"
    assert record.edition_hash == manifest["edition_hash"]
    assert record.parcel == issued_once.parcel.name
    assert record.parcel_sha256 == hashlib.sha256(issued_once.parcel.read_bytes()).hexdigest()
    assert record.manifest_sha256 == hashlib.sha256((issued_once.folder / "manifest.json").read_bytes()).hexdigest()
    assert record.compiler == manifest["compiler"]
    assert f"issue 1 of BWT-2028-01: tag `issue-1`, parcel SHA-256 {record.parcel_sha256}" in issued_once.said


def test_the_next_issue_counts_on_and_takes_its_addendum(run: Runner, issued_once: FirstIssue, tmp_path: Path) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    edit(
        root,
        "package.yaml",
        "services:",
        "addenda:\n  - { number: 1, date: 2027-11-08, summary: More rivets }\nservices:",
    )
    edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 55 each")
    commit(root.parent, "addendum 1")
    refused = run("issue", root, "--tag", "issue-2", "--out", tmp_path / "out")
    assert refused.code == 1
    assert "item 320 is no longer what yards have under revision 0; write `revision: 1`" in refused.err
    assert [one.tag for one in issued(root)] == ["issue-1"]
    edit(root, "items/320-rivets-renew.yaml", "kind: contingent", "revision: 1\nkind: contingent")
    commit(root.parent, "its revision")
    ran = run("issue", root, "--tag", "issue-2", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    first, second = issued(root)
    assert (second.number, second.addendum, second.commit) == (2, 1, git(root, "rev-parse", "HEAD"))
    assert second.edition_hash != first.edition_hash
    assert "issue 2 of BWT-2028-01, with addendum 1: tag `issue-2`" in ran.out
    assert (tmp_path / "out" / "issued" / "issue-2" / "BWT-2028-01-yard.zip").is_file()


def _nothing_left(root: Path, out: Path, tags: str = "") -> None:
    assert git(root, "tag") == tags
    assert not (out / "issued").exists() or files_of(out / "issued") == {}


def _edited(root: Path) -> str:
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    return "only what is committed is issued, and this is not: package.yaml; commit it first"


def _staged(root: Path) -> str:
    said = _edited(root)
    git(root, "add", "--all")
    return said


def _untracked(root: Path) -> str:
    for number in range(7):
        (root / "clauses" / f"{number + 3:02}-masts.md").write_text("# Masts\n\nStruck.\n", "utf-8")
    named = ", ".join(f"clauses/{number:02}-masts.md" for number in range(3, 8))
    return f"{named} and 2 more; commit it first"


def _never_committed(root: Path) -> str:
    git(root, "update-ref", "-d", "HEAD")
    return "only what is committed is issued, and this is not: clauses/01-hot-work.md, "


@pytest.mark.parametrize("change", [_edited, _staged, _untracked, _never_committed])
def test_what_is_not_committed_is_not_issued(
    run: Runner, root: Path, tmp_path: Path, change: Callable[[Path], str]
) -> None:
    said = change(root)
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err
    _nothing_left(root, tmp_path / "out")


def test_a_package_outside_git_is_not_issued(run: Runner, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    ran = run("issue", starter(tmp_path / "sandling"), "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 2
    assert "is not in git: `git init` and commit it first" in ran.err


def test_a_shallow_clone_is_not_issued_from(run: Runner, root: Path, tmp_path: Path) -> None:
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    commit(root)
    git(root, "clone", "--quiet", "--depth=1", f"file://{root}", str(tmp_path / "shallow"))
    ran = run("issue", tmp_path / "shallow", "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 2
    assert "`git fetch --unshallow` brings it" in ran.err


def test_a_package_with_a_mistake_is_not_issued(run: Runner, root: Path, tmp_path: Path) -> None:
    edit(root, "items/320-rivets-renew.yaml", 'depends_on: ["130",', 'depends_on: ["1300",')
    commit(root)
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 1
    assert "there is no item 1300" in ran.err
    assert ran.err.endswith("1 mistake; nothing was issued\n")
    _nothing_left(root, tmp_path / "out")


def test_an_item_that_an_earlier_issue_held_is_a_mistake(run: Runner, issued_once: FirstIssue, tmp_path: Path) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    (root / "items" / "325-rivets-renew.yaml").write_text(
        (root / "items" / "320-rivets-renew.yaml").read_text("utf-8").replace("item: 320", "item: 325"), "utf-8"
    )
    (root / "items" / "320-rivets-renew.yaml").unlink()
    for path in root.rglob("*.yaml"):
        path.write_text(path.read_text("utf-8").replace('"320"', '"325"').replace("item:320", "item:325"), "utf-8")
    commit(root.parent, "renumbered")
    ran = run("issue", root, "--tag", "issue-2", "--out", tmp_path / "out")
    assert ran.code == 1
    assert "error[item-number-reused]: item 325 was item 320 in issue `issue-1`" in ran.err
    _nothing_left(root, tmp_path / "out", "issue-1")


def test_a_commit_is_not_issued_twice(run: Runner, issued_once: FirstIssue, tmp_path: Path) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    edit(root, "owner/rates.yaml", "21500", "21501")
    commit(root.parent, "rates only")
    ran = run("issue", root, "--tag", "issue-2", "--out", tmp_path / "out")
    assert ran.code == 2
    assert "is issued already, as issue 1 under the tag `issue-1`, and the package has not changed since" in ran.err
    _nothing_left(root, tmp_path / "out", "issue-1")


def test_a_tag_is_not_taken_twice(run: Runner, root: Path, tmp_path: Path) -> None:
    git(root, "tag", "issue-1")
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 2
    assert "there is a tag `issue-1` already" in ran.err
    _nothing_left(root, tmp_path / "out", "issue-1")


@pytest.mark.parametrize(
    "tag", ["-f", "a/b", "../up", "a b", "a..b", "a~1", "", ".a", "a.lock", "a.", "é", "$(x)", "a;b"]
)
def test_a_name_that_is_no_tag_is_refused(run: Runner, root: Path, tmp_path: Path, tag: str) -> None:
    ran = run("issue", root, f"--tag={tag}", "--out", tmp_path / "out")
    assert ran.code == 2
    assert f"`{tag}` cannot be the name of a tag" in ran.err
    _nothing_left(root, tmp_path / "out")


def test_git_must_know_who_issues(run: Runner, root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("GIT_COMMITTER_NAME", "GIT_COMMITTER_EMAIL", "EMAIL"):
        monkeypatch.delenv(name, raising=False)
    git(root, "config", "user.useConfigOnly", "true")
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 2
    assert "say so with `git config user.name NAME` and `git config user.email ADDRESS`" in ran.err
    _nothing_left(root, tmp_path / "out")


def test_what_was_issued_is_not_written_over(run: Runner, root: Path, issued_once: FirstIssue, tmp_path: Path) -> None:
    there = tmp_path / "out" / "issued" / "issue-1"
    there.mkdir(parents=True)
    files = files_of(issued_once.folder)
    for path, content in files.items():
        (there / path).parent.mkdir(exist_ok=True)
        (there / path).write_bytes(content)
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    commit(root, "another place")
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 2
    assert "is there already, from commit " in ran.err
    assert "what was issued is never written over" in ran.err
    assert files_of(there) == files
    assert git(root, "tag") == ""


def test_without_its_tag_nothing_stays(
    run: Runner, issued_once: FirstIssue, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    git(root, "tag", "--delete", "issue-1")
    (root.parent / ".git" / "refs" / "tags" / "issue-1.lock").touch()
    yard = yard_at(root, "HEAD")
    monkeypatch.setattr(command, "yard_at", lambda *_: yard)
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 2
    assert "git made no tag `issue-1`: " in ran.err
    assert "nothing was issued" in ran.err
    _nothing_left(root, tmp_path / "out")

    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(recording, "tag_commit", stopped)
    assert run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out").code == 3
    _nothing_left(root, tmp_path / "out")


@pytest.mark.parametrize("left", ["folder", "tag", "both"])
def test_an_issue_that_was_killed_is_completed_by_the_same_command(
    run: Runner, issued_once: FirstIssue, tmp_path: Path, left: str
) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    (before,) = issued(root)
    folder = tmp_path / "out" / "issued" / "issue-1"
    if left != "tag":
        shutil.copytree(issued_once.folder, folder)
    if left == "folder":
        git(root, "tag", "--delete", "issue-1")
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 0, ran.err
    assert "issue 1 of BWT-2028-01: tag `issue-1`" in ran.out
    assert issued(root) == (before,)
    assert files_of(folder) == files_of(issued_once.folder)


def test_an_issue_by_another_compiler_is_not_written_again(
    run: Runner, issued_once: FirstIssue, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    root = issued_once.copy(tmp_path / "ships").root
    (before,) = issued(root)
    monkeypatch.setattr(command, "issued", lambda _: (replace(before, parcel_sha256="1" * 64, compiler="0.0.9"),))
    ran = run("issue", root, "--tag", "issue-1", "--out", tmp_path / "out")
    assert ran.code == 2
    assert f"`issue-1` was issued by compiler 0.0.9 with another parcel, SHA-256 {'1' * 64}" in ran.err
    assert not (tmp_path / "out").exists()


def test_dates_that_do_not_fit_today_are_told(root: Path) -> None:
    tender = compile_package(read(root)).package.tender
    assert tender is not None
    assert command.doubts(tender, date(2027, 10, 4)) == command.doubts(tender, date(2027, 12, 10)) == []
    assert command.doubts(tender, date(2027, 10, 3)) == [
        "the package says that it is issued on 2027-10-04, which has not come yet"
    ]
    assert command.doubts(tender, date(2027, 12, 11)) == [
        "the package says that bids close on 2027-12-10, which is past"
    ]
