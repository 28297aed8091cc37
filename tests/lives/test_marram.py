"""Marram's life: every chapter is sound, and what each addendum says is what it changed."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from tenderwright.comparing.compare import Comparison, compare
from tenderwright.comparing.side import Side
from tenderwright.pipeline import Compiled, OwnersSide, compile_owner, compile_package, read
from tenderwright.reading.at_commit import package_at
from tests.pipeline.packages import MARRAM, files_of, git

from .life import lay, put_back, stages

CHAPTERS = {stage.chapter.chapter: stage for stage in stages()}


_FOLDERS: list[TemporaryDirectory[str]] = []
"""Kept until the tests end: photographs are read from them when they are compared."""


@cache
def compiled(chapter: str) -> tuple[Compiled, OwnersSide]:
    """Compile the package with the owner's papers as a chapter left it."""
    _FOLDERS.append(TemporaryDirectory())
    folder = Path(_FOLDERS[-1].name)
    for path, content in CHAPTERS[chapter].files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(content)
    files = read(folder)
    package = compile_package(files)
    return package, compile_owner(files, package)


def between(earlier: str, later: str) -> Comparison:
    sides = [Side(one.files, one.package, one.links, one.record) for one, _ in map(compiled, (earlier, later))]
    return compare(*sides)


@pytest.mark.parametrize("chapter", ["issue", "addendum-1", "addendum-2", "bids", "dock-2"])
def test_a_chapter_is_sound(chapter: str) -> None:
    package, owner = compiled(chapter)
    assert [one for one in (*package.notices, *owner.notices) if one.severity == "error"] == []


def test_the_last_chapter_is_the_package_as_it_stands(life: Path) -> None:
    assert {path: content for path, content in files_of(MARRAM).items() if not path.startswith("build/")} == {
        path: (life / path).read_bytes() for path in git(life, "ls-files").splitlines() if path != ".gitignore"
    }


def test_whoever_lays_it_gets_the_same_commits(life: Path, tmp_path: Path) -> None:
    again = lay(tmp_path / "elsewhere", stages())
    assert git(again, "rev-parse", "HEAD") == git(life, "rev-parse", "HEAD")
    assert git(again, "for-each-ref") == git(life, "for-each-ref")
    assert git(life, "tag", "--list").split() == sorted(CHAPTERS)
    assert git(life, "status", "--porcelain") == ""


def test_a_chapter_can_be_had_at_its_tag(life: Path) -> None:
    with package_at(life, "addendum-1") as folder:
        found = {path: content for path, content in files_of(folder).items() if not path.startswith(".git")}
    kept = CHAPTERS["addendum-1"].files
    assert found == {path: content for path, content in kept.items() if not path.startswith("owner/")}


def test_the_first_addendum_tells_what_the_site_visit_brought() -> None:
    told = between("issue", "addendum-1")
    assert told.proof.before != told.proof.after
    assert {line.number: line.manner for line in told.lines} == {"120.b": "changed", "220.b": "changed"}
    assert told.bears_on_price


def test_the_second_addendum_tells_the_bulwark_and_what_it_moved() -> None:
    told = between("addendum-1", "addendum-2")
    lines = {line.number: line.manner for line in told.lines}
    assert lines["160.j"] == "added"
    assert lines["550.a"] == "withdrawn"
    assert {value.files for value in told.values} == {("vessel/zones.yaml",)}
    assert all(value.lines for value in told.values)


def test_the_papers_of_the_dock_end_where_the_chapter_does() -> None:
    ledger = compiled("dock-2")[1].ledger
    assert ledger is not None
    assert ledger.last == date(2027, 5, 12)
    assert compiled("bids")[1].ledger is None


def test_lines_are_put_back_at_their_indentation() -> None:
    assert put_back("a:\n    b: 2\n    c: 3\n", "b: 1", "b: 2\nc: 3", "here") == "a:\n    b: 1\n"
    assert put_back("a:\n  b: 2\n", "", "b: 2", "here") == "a:\n"


@pytest.mark.parametrize("text", ["a: 1\n", "b: 2\nb: 2\n", "xb: 2\n", "b: 21\n"])
def test_lines_that_do_not_stand_there_once_are_refused(text: str) -> None:
    with pytest.raises(ValueError, match="here: found"):
        put_back(text, "b: 1", "b: 2", "here")
