"""Set parts are kept in the user's cache folder: whole, by all that they hang on, no more than there is room for."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tenderwright.commands import kept_parts as module
from tenderwright.commands.kept_parts import PartsInFolder, kept_parts

PAGE, PDF = "<html>a page</html>", b"%PDF-1.7 a part"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "caches" / "parts"


def test_what_was_put_is_given_by_its_html_alone(folder: Path) -> None:
    kept = PartsInFolder(folder)
    assert kept.get(PAGE) is None
    kept.put(PAGE, PDF)
    assert kept.get(PAGE) == PartsInFolder(folder).get(PAGE) == PDF
    assert kept.get(f"{PAGE} ") is None
    assert len(list(folder.iterdir())) == 1
    assert folder.stat().st_mode & 0o077 == 0


def test_another_compiler_finds_nothing(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    PartsInFolder(folder).put(PAGE, PDF)
    monkeypatch.setattr(module, "maker", lambda: b"another")
    assert PartsInFolder(folder).get(PAGE) is None


@pytest.mark.parametrize("damage", [b"", b"x", b"%PDF-1.7 a part"])
def test_what_is_damaged_is_nothing(folder: Path, damage: bytes) -> None:
    kept = PartsInFolder(folder)
    kept.put(PAGE, PDF)
    next(folder.iterdir()).write_bytes(damage)
    assert kept.get(PAGE) is None
    kept.put(PAGE, PDF)
    assert kept.get(PAGE) == PDF


def test_what_was_used_longest_ago_goes(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kept = PartsInFolder(folder)
    for number in range(4):
        kept.put(f"{PAGE}{number}", bytes(1000))
    for number, file in enumerate(kept._file(f"{PAGE}{n}") for n in range(4)):
        os.utime(file, (number, number))
    assert kept.get(f"{PAGE}0") is not None, "used just now"
    monkeypatch.setattr(module, "MOST", 2200)
    PartsInFolder(folder).put(f"{PAGE}4", b"new")
    assert [n for n in range(5) if kept.get(f"{PAGE}{n}") is not None] == [0, 3, 4]


def test_a_folder_that_cannot_be_is_no_trouble(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("in the way")
    kept = PartsInFolder(tmp_path / "file")
    kept.put(PAGE, PDF)
    assert kept.get(PAGE) is None
    monkeypatch.setenv("XDG_CACHE_HOME", "not-absolute")
    assert kept_parts() is None


def test_what_is_recorded_or_verified_takes_nothing_from_it() -> None:
    folder = Path(module.__file__).parent
    texts = {
        name: (folder / f"{name}.py").read_text("utf-8")
        for name in ("yard_at", "issue", "verify", "build", "addendum_at", "addendum")
    }
    assert [name for name, text in texts.items() if "kept_parts" in text] == ["build"]
    assert "Typesetter()" in texts["yard_at"]
