"""The owner's papers in a repository of their own, by the very commands that the README beside them gives."""

from __future__ import annotations

import os
import re
import subprocess
from pathlib import Path

import pytest

from tenderwright.notices.explain import EXPLANATIONS
from tenderwright.starter.write import starter_files
from tests.architecture.tree import REPOSITORY
from tests.pipeline.packages import QUIET_GIT, clone, commit, different, files_of, git, run, starter


def commands(text: str) -> str:
    """Give the block of commands that begins with the line to ignore."""
    (block,) = re.findall(r'```sh\n(echo "owner/" >> .*?)```', text, re.DOTALL)
    return block


COMMANDS = commands(starter_files()["owner/README.md"].read_text("utf-8"))


@pytest.fixture(scope="module")
def apart(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A package in a repository with a remote, committed whole before its papers were taken apart."""
    root = starter(tmp_path_factory.mktemp("apart") / "ships" / "sandling")
    commit(root.parent)
    git(root, "remote", "add", "origin", "https://example.org/sandling.git")
    subprocess.run(["bash", "-e", "-c", COMMANDS], cwd=root, env={**os.environ, **QUIET_GIT}, check=True)
    return root


def test_the_notice_and_the_readme_give_the_same_commands() -> None:
    assert commands((EXPLANATIONS / "owner-goes-along.md").read_text("utf-8")) == COMMANDS
    assert f"```sh\ncd ../my-ship\n{COMMANDS}cd -\n```" in (REPOSITORY / "README.md").read_text("utf-8")


def test_each_repository_holds_its_own_and_neither_is_changed(apart: Path) -> None:
    assert "owner/rates.yaml" not in git(apart, "ls-files")
    assert git(apart / "owner", "ls-files").splitlines() == ["README.md", "closing/docking-2021.yaml", "rates.yaml"]
    assert git(apart, "status", "--porcelain") == git(apart / "owner", "status", "--porcelain") == ""


def test_check_finds_nothing_and_still_reads_the_papers(apart: Path) -> None:
    said = run("check", apart, "--strict").stdout
    assert said.startswith("no mistakes found")
    assert said != run("check", clone(apart.parent, apart.parents[1] / "public") / "sandling").stdout


def test_issue_from_the_commit_and_build_beside_the_papers_give_the_same_bytes(apart: Path, tmp_path: Path) -> None:
    """The commit holds no papers, so what is issued from it is what a clone without them gives."""
    issued = run("issue", apart, "--tag", "tender-1", "--out", tmp_path, **QUIET_GIT)
    assert issued.returncode == 0, issued.stderr
    assert "owner" not in git(apart, "ls-tree", "--name-only", "tender-1", "./")
    built = run("build", apart, "--only", "yard", "--out", tmp_path)
    assert built.returncode == 0, built.stderr
    one, other = files_of(tmp_path / "issued" / "tender-1"), files_of(tmp_path / "yard")
    assert len(one) > 5
    assert different(one, other) == []
