"""The yard edition of one commit built twice, by two processes, unlike in all that must not matter."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

from .owner_papers import Canaries, fill_owner_with_everything
from .packages import QUIET_GIT, clone, commit


@dataclass(frozen=True)
class Two:
    """Two yard editions of one commit, from two processes in two folders, unlike in all that must not matter."""

    plain: Path
    """Built without owner/."""
    guarded: Path
    """Built beside an owner/ full of canaries."""
    package: Path
    """The package with that owner/."""
    commit: str
    canaries: Canaries


def _start(root: Path, out: Path, umask: int, **environment: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-m", "tenderwright", "build", str(root), "--only", "yard", "--out", str(out)],
        env={**os.environ, **QUIET_GIT, **environment},
        cwd=root.parent,
        umask=umask,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def build_twice(source: Path, base: Path) -> Two:
    """Commit a package, clone it twice, and build both at once."""
    (source / ".gitignore").write_text("build/\n", "utf-8")
    name = commit(source)
    plain = clone(source, base / "a")
    guarded = clone(source, base / "deep" / "er" / "päckage with spaces")
    for path in sorted((plain / "owner").rglob("*"), reverse=True):
        path.rmdir() if path.is_dir() else path.unlink()
    canaries = fill_owner_with_everything(guarded)
    homes = [base / "home-a", base / "home-b"]
    for home in homes:
        home.mkdir()
    running = [
        _start(plain, plain / "build", 0o022, TZ="UTC", LANG="C", LC_ALL="C", HOME=str(homes[0]), PYTHONHASHSEED="1"),
        _start(
            guarded,
            base / "elsewhere",
            0o077,
            TZ="Pacific/Auckland",
            LANG="C.UTF-8",
            LC_ALL="C.UTF-8",
            HOME=str(homes[1]),
            PYTHONHASHSEED="77",
            SOURCE_DATE_EPOCH="86400",
        ),
    ]

    for process in running:
        out, err = process.communicate()
        assert process.returncode == 0, err
        assert f"Commit {name[:12]}" in out
        assert "Traceback" not in err
    return Two(plain / "build" / "yard", base / "elsewhere" / "yard", guarded, name, canaries)
