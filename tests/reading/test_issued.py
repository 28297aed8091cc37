"""The tag of an issue gives back what was recorded, and no other tag is taken for one."""

from __future__ import annotations

import os
import subprocess
from datetime import UTC, datetime
from pathlib import Path

import pytest
from msgspec.structs import replace

from tenderwright.reading.issued import Issued, issued, tag_message
from tests.fixtures.issue import issue
from tests.pipeline.packages import QUIET_GIT, commit, edit, git, starter


@pytest.fixture
def root(tmp_path: Path) -> Path:
    root = starter(tmp_path / "sandling")
    commit(root)
    return root


def _tag(root: Path, name: str, message: str) -> None:
    command = ["git", "-C", str(root), "tag", "--annotate", "--cleanup=verbatim", "--file=-", name]
    subprocess.run(command, input=message, text=True, env={**os.environ, **QUIET_GIT}, check=True)


def _record(root: Path, tag: str = "issue-1") -> Issued:
    when = datetime(2027, 10, 4, 7, 30, tzinfo=UTC)
    name = git(root, "rev-parse", "HEAD")
    return Issued(tag, "BWT-2028-01", 1, name, when, "0f" * 8, "BWT-2028-01-yard.zip", "1" * 64, "2" * 64, "0.1.0")


@pytest.mark.parametrize("source", ["", f"tenderwright @ git+https://git.example.org/tenderwright@{'0' * 40}"])
@pytest.mark.parametrize("addendum", [None, 3])
def test_what_is_recorded_comes_back(root: Path, addendum: int | None, source: str) -> None:
    record = replace(_record(root), addendum=addendum, source=source)
    _tag(root, record.tag, tag_message(record, "Docking, 2028"))
    assert issued(root) == (record,)


def test_an_addendum_comes_back_and_stands_after_what_it_amends(root: Path) -> None:
    second = replace(_record(root, "issue-2"), number=2, addendum=1)
    addendum = replace(_record(root, "addendum-1"), addendum=1, amends="a" * 40)
    first = _record(root)
    for record in (second, addendum, first):
        _tag(root, record.tag, tag_message(record, "Docking, 2028"))
    assert issued(root) == (first, addendum, second)
    assert tag_message(addendum, "Rivets").splitlines()[0] == "BWT-2028-01, addendum 1: Rivets"
    _tag(root, "addendum-2", tag_message(replace(addendum, amends="no commit"), "Docking, 2028"))
    assert len(issued(root)) == 3


def test_a_person_can_read_it(root: Path) -> None:
    record = _record(root)
    lines = tag_message(record, "Docking of the\nsteam tug").splitlines()
    assert lines[0] == "BWT-2028-01, issue 1: Docking of the steam tug"
    assert lines[2:4] == ["tender: BWT-2028-01", "number: 1"]
    assert "date: 2027-10-04T07:30:00Z" in lines
    assert all(": " in line for line in lines[2:])


@pytest.mark.parametrize("tender", ["#2028/1", "number: 7", "a\nnumber: 9", "Ünï 2028", "x: y"])
def test_no_tender_number_breaks_the_record(root: Path, tender: str) -> None:
    _tag(root, "issue-1", tag_message(replace(_record(root), tender=tender), "number: 12\nnumber: 13"))
    (read,) = issued(root)
    assert (read.tender, read.number) == (" ".join(tender.split()), 1)


def test_issues_come_by_tender_and_number(tmp_path: Path) -> None:
    root = starter(tmp_path / "sandling")
    made = [issue(root, "z", 1)]
    for number, tag in ((2, "b"), (3, "a"), (10, "c")):
        edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
        made.append(issue(root, tag, number, addendum=number - 1))
    edit(root, "package.yaml", "number: BWT-2028-01", "number: BWT-2027-09")
    other = issue(root, "other", 4)
    assert issued(root) == (other, *made)
    assert issued(root / "items") == issued(root)


def test_other_tags_are_no_issues(root: Path) -> None:
    record = _record(root)
    text = tag_message(record, "Docking, 2028")
    git(root, "tag", "light")
    _tag(root, "words", "Sent to the printer\n\nnumber: 1\n")
    _tag(root, "number", text.replace("number: 1", "number: one"))
    _tag(root, "nought", text.replace("number: 1", "number: 0"))
    _tag(root, "checksum", text.replace("1" * 64, "1" * 63))
    _tag(root, "date", text.replace("date: 2027-10-04T07:30:00Z", "date: 4 October"))
    _tag(root, "local-time", text.replace("00Z", "00"))
    for line in text.splitlines()[2:]:
        _tag(root, "without-" + line.split(":")[0].replace("_", "-"), text.replace(f"{line}\n", ""))
    git(root, "tag", "--annotate", "--message", text, "tree", "HEAD^{tree}")
    assert issued(root) == ()


def test_a_record_that_was_moved_to_another_commit_counts_no_more(root: Path) -> None:
    record = _record(root)
    edit(root, "package.yaml", "place: Brackwater", "place: Brackwater Quay")
    commit(root, "another")
    _tag(root, record.tag, tag_message(record, "Docking, 2028"))
    assert issued(root) == ()


def test_there_are_none_outside_git_or_without_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path))
    assert issued(tmp_path) == ()
    monkeypatch.setenv("PATH", str(tmp_path))
    assert issued(tmp_path) == ()
