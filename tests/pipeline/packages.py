"""Packages to build in tests: the starter and the demonstration, in folders or in git, with one line changed."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

from tenderwright.starter.write import write_starter

MARRAM = Path(__file__).parents[2] / "package_src"

QUIET_GIT = {
    "GIT_CONFIG_GLOBAL": os.devnull,
    "GIT_CONFIG_NOSYSTEM": "1",
    "GIT_AUTHOR_NAME": "Ship keeper",
    "GIT_AUTHOR_EMAIL": "keeper@example.org",
    "GIT_COMMITTER_NAME": "Ship keeper",
    "GIT_COMMITTER_EMAIL": "keeper@example.org",
    "GIT_AUTHOR_DATE": "2027-10-04T09:30:00+02:00",
    "GIT_COMMITTER_DATE": "2027-10-04T09:30:00+02:00",
}
"""An environment in which git makes the same commit whoever runs the tests."""


def starter(folder: Path) -> Path:
    """Write the starter package."""
    write_starter(folder)
    return folder


def marram(folder: Path) -> Path:
    """Copy the demonstration package."""
    shutil.copytree(MARRAM, folder, ignore=shutil.ignore_patterns("build"))
    return folder


def edit(root: Path, path: str, old: str, new: str) -> None:
    """Change one piece of a file, which must be there."""
    text = (root / path).read_text("utf-8")
    assert old in text, f"{old!r} is not in {path}"
    (root / path).write_text(text.replace(old, new, 1), "utf-8")


def git(root: Path, *words: str) -> str:
    """Run git in a folder."""
    command = ["git", "-C", str(root), *words]
    return subprocess.run(
        command, env={**os.environ, **QUIET_GIT}, capture_output=True, text=True, check=True
    ).stdout.strip()


def commit(root: Path, words: str = "Package as issued") -> str:
    """Commit everything in a folder, making it a repository first, and give the commit."""
    git(root, "init", "--quiet")
    git(root, "add", "--all")
    git(root, "commit", "--quiet", "--message", words)
    return git(root, "rev-parse", "HEAD")


def clone(root: Path, folder: Path) -> Path:
    """Clone a repository whole."""
    git(root, "clone", "--quiet", "--no-local", str(root), str(folder))
    return folder


def run(*words: object, cwd: Path | None = None, **environment: str) -> subprocess.CompletedProcess[str]:
    """Run the command line in a process of its own."""
    return subprocess.run(
        [sys.executable, "-m", "tenderwright", *map(str, words)],
        cwd=cwd,
        env={**os.environ, **environment},
        capture_output=True,
        text=True,
        check=False,
    )


def files_of(folder: Path) -> dict[str, bytes]:
    """Read every file below a folder."""
    found = {path.relative_to(folder).as_posix(): path for path in sorted(folder.rglob("*")) if path.is_file()}
    return {name: path.read_bytes() for name, path in found.items()}


def different(one: dict[str, bytes], other: dict[str, bytes]) -> list[str]:
    """Name the files that are not the same in both."""
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))
