from __future__ import annotations

import shutil
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.pipeline.packages import QUIET_GIT, commit, starter
from tests.pipeline.packages import run as run_apart

from .run import Runner


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str]) -> Runner:
    return Runner(capsys)


@pytest.fixture
def git_knows_who(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let git make commits and tags as the same person on every machine."""
    for name, value in QUIET_GIT.items():
        monkeypatch.setenv(name, value)


@dataclass(frozen=True)
class FirstIssue:
    """A package whose tender was issued once, below the top of its repository, beside rates of the owner."""

    root: Path
    folder: Path
    said: str

    @property
    def parcel(self) -> Path:
        """Give the parcel that was issued."""
        return self.folder / "BWT-2028-01-yard.zip"

    def copy(self, to: Path) -> FirstIssue:
        """Copy the repository, to be changed."""
        shutil.copytree(self.root.parent, to)
        return FirstIssue(to / self.root.name, self.folder, self.said)


@pytest.fixture(scope="session")
def issued_once(tmp_path_factory: pytest.TempPathFactory) -> FirstIssue:
    base = tmp_path_factory.mktemp("issued")
    root = starter(base / "ships" / "sandling")
    commit(root.parent)
    (root.parent / "letter.txt").write_text("one", "utf-8")
    commit(root.parent, "a letter")
    ran = run_apart("issue", root, "--tag", "issue-1", "--out", base / "out", cwd=None, **QUIET_GIT)
    assert ran.returncode == 0, ran.stderr
    return FirstIssue(root, base / "out" / "issued" / "issue-1", ran.stdout)
