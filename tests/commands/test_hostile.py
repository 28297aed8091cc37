"""The commands themselves on a stranger's repository that is hostile in every way at once: nothing of it runs."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.fixtures.hostile import HOSTILE, bare, canary_in, ran, settings, taken
from tests.pipeline.packages import clone, commit, edit, git, starter

from .run import Runner

pytestmark = pytest.mark.usefixtures("git_knows_who")


@pytest.fixture(scope="module")
def issued(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A repository with a package in a folder of it, issued once and changed by an addendum since."""
    top = tmp_path_factory.mktemp("ships") / "ships"
    root = starter(top / "harbour" / "sandling")
    (top / ".gitattributes").write_text("*.yaml filter=spoil diff=spoil\n", "utf-8")
    commit(top)
    git(top, "tag", "first")
    entry = "addenda:\n  - { number: 1, date: 2027-11-08, summary: More rivets }\nservices:"
    edit(root, "package.yaml", "services:", entry)
    edit(root, "items/320-rivets-renew.yaml", "quantity: 40 each", "quantity: 55 each")
    edit(root, "items/320-rivets-renew.yaml", "item: 320\n", "item: 320\nrevision: 1\n")
    commit(top, "addendum 1")
    return top


def _cloned(issued: Path, tmp_path: Path, canary: Path) -> Path:
    """Clone it, with all that a commit carries: the folder around the package is a repository too."""
    source = Path(shutil.copytree(issued, tmp_path / "source"))
    bare(source / "harbour", canary)
    commit(source, "charts of the harbour")
    assert taken(source, "-C harbour/sandling status", canary)
    return clone(source, tmp_path / "ships")


def _unpacked(issued: Path, tmp_path: Path, canary: Path) -> Path:
    """Copy it with a `.git` of its own, where almost anything can be set."""
    top = Path(shutil.copytree(issued, tmp_path / "ships"))
    for name, (spoil, _) in HOSTILE.items():
        if name not in ("filters", "files elsewhere", "bare repository among the files", "repository within"):
            spoil(top, canary)
    settings("filter.spoil.clean=CANARY", "filter.spoil.smudge=CANARY", "filter.spoil.process=CANARY")(top, canary)
    assert taken(top, "status", canary)
    return top


@pytest.mark.parametrize("delivered", [_cloned, _unpacked])
def test_nothing_runs(delivered: Callable[[Path, Path, Path], Path], issued: Path, run: Runner, tmp_path: Path) -> None:
    canary = canary_in(tmp_path)
    root = delivered(issued, tmp_path, canary) / "harbour" / "sandling"
    ran(canary)
    out = tmp_path / "out"
    assert run("check", root).code == 0
    built = run("build", root, "--only", "yard", "--out", out)
    assert (built.code, built.out.count("Commit ")) == (0, 1), built.err
    told = run("addendum", root, "first", "HEAD", "--out", out / "addendum")
    assert told.code == 0, told.err
    made = run("issue", root, "--tag", "issue-2", "--out", out)
    assert made.code == 0, made.err
    assert run("verify", next((out / "issued" / "issue-2").glob("*.zip")), "--in", root).code == 0
    assert not ran(canary)
