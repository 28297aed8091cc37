"""Where results are kept: in the user's cache folder alone, whole, for this compiler, never for what is issued."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from tenderwright.calculations.steps.kept import Kept
from tenderwright.commands import kept_results as module
from tenderwright.commands.kept_results import cache_folder, kept_results, maker
from tenderwright.starter.write import write_starter
from tests.architecture.tree import modules
from tests.commands.run import Runner


@pytest.fixture
def caches(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "caches"))
    return tmp_path / "caches" / "tenderwright"


@pytest.fixture
def package(tmp_path: Path) -> Path:
    write_starter(tmp_path / "ship")
    return tmp_path / "ship"


def test_check_keeps_results_and_says_the_same_with_and_without_them(caches: Path, package: Path, run: Runner) -> None:
    first = run("check", package)
    (file,) = caches.iterdir()
    content = file.read_bytes()
    assert run("check", package) == first
    assert file.read_bytes() == content
    shutil.rmtree(caches)
    assert run("check", package) == first


def test_a_damaged_file_is_put_right(caches: Path, package: Path, run: Runner) -> None:
    first = run("check", package)
    (file,) = caches.iterdir()
    content = file.read_bytes()
    file.write_bytes(content[:-1])
    assert run("check", package) == first
    assert file.read_bytes() == content


def test_nothing_is_kept_where_nothing_can_be(
    package: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, run: Runner
) -> None:
    first = run("check", package)
    (tmp_path / "a-file").write_text("")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "a-file"))
    assert run("check", package) == first
    monkeypatch.setenv("XDG_CACHE_HOME", "a-place-within-the-package")
    assert cache_folder() is None
    assert run("check", package) == first
    assert first.code == 0


def test_what_is_issued_or_verified_never_looks_at_what_is_kept() -> None:
    kept = ("tenderwright.commands.kept_results", "tenderwright.commands.kept_parts")
    looking = {one.name for one in modules() if any(name.startswith(kept) for name in one.imports)}
    assert {"commands/build.py", "commands/check.py"} < looking
    assert not looking & {"commands/issue.py", "commands/verify.py", "commands/yard_at.py"}


def test_another_state_of_our_files_is_another_maker(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "part").mkdir()
    file = tmp_path / "part" / "method.py"
    file.write_text("a = 1")
    monkeypatch.setattr(module, "OURS", tmp_path)
    first = maker()
    assert maker() == first
    times = file.stat()
    file.write_text("a = 2")
    os.utime(file, ns=(times.st_atime_ns, times.st_mtime_ns))
    assert maker() != first
    (tmp_path / "part" / "__pycache__").mkdir()
    second = maker()
    (tmp_path / "part" / "__pycache__" / "method.pyc").write_text("")
    assert maker() == second


def test_another_version_of_a_library_is_another_maker(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.syspath_prepend(str(tmp_path))
    (tmp_path / "numpy-9.0.dist-info").mkdir()
    first = maker()
    (tmp_path / "numpy-9.0.dist-info").rename(tmp_path / "numpy-9.1.dist-info")
    assert maker() != first


def test_the_packages_checked_longest_ago_go(caches: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "PACKAGES", 2)
    caches.mkdir(parents=True)
    not_ours = caches / "notes.txt"
    not_ours.write_text("")
    for number in range(4):
        with kept_results(tmp_path / str(number)) as kept:
            assert isinstance(kept, Kept)
            kept.new = True
        for file in caches.glob("*.results"):
            os.utime(file, ns=(0, file.stat().st_mtime_ns - 10**9))
    assert len(list(caches.glob("*.results"))) == 2
    assert not_ours.exists()
