from __future__ import annotations

import subprocess
from dataclasses import dataclass
from pathlib import Path

import pytest

from tenderwright.writing.pdf import Typesetter
from tests.once import once

from .owner_papers import Canaries, fill_owner
from .packages import run, starter
from .two import Two, build_twice


@pytest.fixture(scope="session")
def two_starters(tmp_path_factory: pytest.TempPathFactory) -> Two:
    return once(tmp_path_factory, "starters", lambda base: build_twice(starter(base / "source"), base))


@dataclass(frozen=True)
class Both:
    """Both editions of the starter with an owner/ full of canaries, and what the command said."""

    root: Path
    out: Path
    canaries: Canaries
    said: subprocess.CompletedProcess[str]


@pytest.fixture(scope="session")
def both(tmp_path_factory: pytest.TempPathFactory) -> Both:
    return once(tmp_path_factory, "both", _build_both)


def _build_both(base: Path) -> Both:
    root = starter(base / "sandling")
    canaries = fill_owner(root)
    said = run("build", root, "--out", base / "here" / "made", cwd=base, TERM="xterm-256color", FORCE_COLOR="1")
    return Both(root, base / "here" / "made", canaries, said)


@pytest.fixture(scope="session")
def typesetter() -> Typesetter:
    """Share one typesetter between builds, which then gives the same bytes sooner."""
    return Typesetter()
