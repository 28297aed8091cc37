"""The command addendum, as an owner runs it on a repository."""

from __future__ import annotations

import hashlib
from pathlib import Path

import pytest

from tenderwright import __version__
from tenderwright.cli import main
from tenderwright.reading.issued import issued
from tests.fixtures.issue import issue
from tests.pipeline.packages import QUIET_GIT, commit, edit, git, starter

from .conftest import LISTED, change


@pytest.fixture(autouse=True)
def _git_knows_who(monkeypatch: pytest.MonkeyPatch) -> None:
    for name, value in QUIET_GIT.items():
        monkeypatch.setenv(name, value)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    folder = starter(tmp_path / "sandling")
    commit(folder)
    git(folder, "tag", "issued")
    return folder


def test_an_addendum_is_made_from_two_commits_and_the_package_is_left_alone(
    root: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    change(root)
    name = commit(root, "Addendum 1")
    edit(root, "package.yaml", "closing: 2027-12-17", "closing: 2027-12-18")
    out = tmp_path / "out"
    assert main(["addendum", str(root), "issued", name, "--out", str(out)]) == 0
    said = capsys.readouterr().out
    assert f"Commit {name[:12]}" in said
    assert "proved that nothing else changed; price can be affected" in said
    assert (out / "addendum-1" / "addendum.pdf").is_file()
    assert '"new": "2027-12-17"' in (out / "addendum-1" / "addendum.json").read_text("utf-8")
    assert git(root, "status", "--porcelain") == "M package.yaml"

    (record,) = issued(root)
    parcel = out / "addendum-1" / "BWT-2028-01-addendum-1.zip"
    assert (record.tag, record.what, record.commit) == ("BWT-2028-01-addendum-1", "addendum 1", name)
    assert record.amends == git(root, "rev-parse", "issued")
    assert record.parcel_sha256 == hashlib.sha256(parcel.read_bytes()).hexdigest()

    assert main(["verify", str(parcel), "--in", str(root)]) == 0
    way = f"the way from commit {record.amends[:12]} to commit {name[:12]}"
    assert capsys.readouterr().out.splitlines() == [
        f"The same, byte for byte: `{parcel.name}` is what {way} gives.",
        f"  tag `{record.tag}` records addendum 1 of BWT-2028-01 at that commit, with this very parcel",
    ]
    assert main(["addendum", str(root), "issued", name, "--out", str(out)]) == 0
    assert issued(root) == (record,)
    git(root, "checkout", "--quiet", ".")
    edit(root, "package.yaml", "closing: 2027-12-17", "closing: 2027-12-18")
    commit(root, "Another day")
    assert main(["addendum", str(root), "issued", "HEAD", "--out", str(out)]) == 2
    assert "addendum 1 went out already" in capsys.readouterr().err


def test_an_addendum_amends_what_yards_have(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(root, "package.yaml", "place: Brackwater\n", "place: Brackwater Quay\n")
    issue(root, "tender-1")
    edit(root, "clauses/02-changes.md", "\n", "\nNo verbal order counts.\n\n")
    commit(root, "On the way")
    edit(root, "package.yaml", "owner:", LISTED)
    commit(root, "Listed")
    assert main(["addendum", str(root), "HEAD~1", "HEAD"]) == 2
    assert "yards have issue 1, tag `tender-1`, and `HEAD~1` is commit" in capsys.readouterr().err
    assert [one.tag for one in issued(root)] == ["tender-1"]


def test_what_changed_without_a_new_revision_is_listed(
    root: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    change(root)
    for item in ("320-rivets-renew", "420-underwater-shell-coat"):
        edit(root, f"items/{item}.yaml", "revision: 1\n", "")
    commit(root, "Addendum 1")
    assert main(["addendum", str(root), "issued", "HEAD", "--out", str(tmp_path / "out")]) == 1
    said = capsys.readouterr().err.splitlines()
    assert said == [
        "items/320-rivets-renew.yaml: item 320 is no longer what yards have under revision 0; write `revision: 1`",
        "items/420-underwater-shell-coat.yaml: item 420 is no longer what yards have under revision 0; "
        "write `revision: 1`",
        "2 revisions are to be raised; nothing was written",
    ]
    assert not (tmp_path / "out").exists()
    assert issued(root) == ()


def test_the_addendum_must_be_listed_first(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 55 each")
    commit(root, "More rivets")
    assert main(["addendum", str(root), "issued", "HEAD"]) == 2
    assert "add `- {number: 1, date: …, summary: …}` to `addenda`" in capsys.readouterr().err


def test_addenda_are_made_one_by_one(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    two = LISTED.replace("\nowner:", "\n  - { number: 2, date: 2027-11-25, summary: More }\nowner:")
    edit(root, "package.yaml", "owner:", two)
    commit(root, "Two at once")
    assert main(["addendum", str(root), "issued", "HEAD"]) == 2
    assert "addenda 1 and 2" in capsys.readouterr().err


def test_another_tender_is_no_change_of_this_one(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(root, "package.yaml", "number: BWT-2028-01", "number: BWT-2028-02")
    commit(root, "Another")
    assert main(["addendum", str(root), "issued", "HEAD"]) == 2
    assert "FROM is tender BWT-2028-01 and TO is BWT-2028-02" in capsys.readouterr().err


def test_a_package_with_mistakes_gives_none(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    edit(root, "items/320-rivets-renew.yaml", "kind: contingent", "kind: contingnt")
    commit(root, "Slip")
    assert main(["addendum", str(root), "issued", "HEAD"]) == 1
    assert "HEAD has 1 mistake; nothing was written" in capsys.readouterr().err


def test_a_commit_that_is_not_there_is_wrong_use(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["addendum", str(root), "issued", "nowhere"]) == 2
    assert "there is no commit `nowhere`" in capsys.readouterr().err


@pytest.mark.parametrize("said", ["", "format: 0\n", "format: first\n"])
def test_what_yards_have_in_another_format_is_said_once(
    root: Path, capsys: pytest.CaptureFixture[str], said: str
) -> None:
    edit(root, "package.yaml", "format: 1 # the version of the format of these files\n", said)
    edit(root, "items/320-rivets-renew.yaml", "kind: contingent", "kind: contingnt")
    edit(root, "items/210-hull-wash.yaml", "title:", "titel:")
    commit(root, "Of another format")
    git(root, "revert", "--no-edit", "HEAD")
    assert main(["addendum", str(root), "HEAD~1", "HEAD"]) == 1
    (line,) = capsys.readouterr().err.splitlines()
    assert line.startswith(f"HEAD~1 is not of the format that tenderwright {__version__} reads (")
    assert "no tag records which version wrote it" in line


def test_the_mistakes_of_what_yards_have_in_this_format_are_told(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(root, "items/320-rivets-renew.yaml", "kind: contingent", "kind: contingnt")
    commit(root, "Slip")
    git(root, "revert", "--no-edit", "HEAD")
    assert main(["addendum", str(root), "HEAD~1", "HEAD"]) == 1
    said = capsys.readouterr().err
    assert said.startswith("items/320-rivets-renew.yaml:")
    assert "did you mean `contingent`?" in said
    assert said.splitlines()[-1].startswith("HEAD~1 has 1 mistake; nothing was written; no tag records which version")


def test_the_compiler_that_issued_it_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    root = starter(tmp_path / "sandling")
    edit(root, "items/320-rivets-renew.yaml", "kind: contingent", "kind: contingnt")
    issue(root, "tender-1")
    assert main(["addendum", str(root), "tender-1", "HEAD"]) == 1
    said = capsys.readouterr().err.splitlines()[-1]
    assert said.endswith("; tag `tender-1` records that tenderwright 0.1.0 issued it: make the addendum with that")
