"""The hook that `.pre-commit-hooks.yaml` declares, run as declared from a hook of git."""

from __future__ import annotations

import shlex
import subprocess
from pathlib import Path
from typing import Any

import pytest
import yaml

from tests.pipeline.packages import QUIET_GIT, edit, starter

from .conftest import ROOT, Installed, without_python

HOOKS: list[dict[str, Any]] = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text("utf-8"))


@pytest.fixture
def repository(installed: Installed, tmp_path: Path) -> Path:
    """A repository whose commits go through the hook, on a package below its top."""
    starter(tmp_path / "my ship")
    subprocess.run(["git", "init", "--quiet", str(tmp_path)], check=True)
    hook = tmp_path / ".git" / "hooks" / "pre-commit"
    entry = shlex.join([*shlex.split(HOOKS[0]["entry"]), "my ship"])
    hook.parent.mkdir(exist_ok=True)
    hook.write_text(f"#!/bin/sh\nPATH={shlex.quote(str(installed.folder / 'bin'))}:$PATH exec {entry} >&2\n", "utf-8")
    hook.chmod(0o755)
    return tmp_path


def commit(repository: Path) -> subprocess.CompletedProcess[str]:
    environment = {**without_python(), **QUIET_GIT}
    git = ["git", "-C", str(repository)]
    subprocess.run([*git, "add", "--all"], env=environment, check=True)
    return subprocess.run([*git, "commit", "--message", "work"], env=environment, capture_output=True, text=True)


def test_it_is_declared_as_hooks_are() -> None:
    (hook,) = HOOKS
    assert {"id", "name", "entry", "language"} <= set(hook)
    assert hook["language"] == "python", "so that it is installed from the commit that a user pins"
    assert hook["pass_filenames"] is False, "a package is checked whole"


def test_a_sound_package_is_committed_and_a_mistake_is_not(repository: Path) -> None:
    done = commit(repository)
    assert done.returncode == 0, done.stderr
    edit(repository / "my ship", "items/320-rivets-renew.yaml", 'depends_on: ["130",', 'depends_on: ["1300",')
    done = commit(repository)
    assert done.returncode == 1
    assert "error[dead-reference]: there is no item 1300" in done.stderr
