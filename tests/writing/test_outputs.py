from __future__ import annotations

import os
from pathlib import Path

import pytest

from tenderwright.writing import outputs
from tenderwright.writing.errors import WritingError
from tenderwright.writing.outputs import write_outputs

_OLD = {"manifest.json": b"old", "stale.txt": b"stale", "drawings/a.svg": b"a"}
_NEW = {"manifest.json": b"new", "drawings/b.svg": b"b"}


def _held(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_new_files_replace_old_ones_and_stale_files_vanish(tmp_path: Path) -> None:
    build = tmp_path / "build"
    write_outputs(build, "owner", {"manifest.json": b"mine"})
    write_outputs(build, "yard", _OLD)
    assert write_outputs(build, "yard", _NEW) == build / "yard"
    assert _held(build) == {
        "yard/manifest.json": b"new",
        "yard/drawings/b.svg": b"b",
        "owner/manifest.json": b"mine",
    }


def test_a_failure_while_files_are_written_leaves_the_old_ones(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_outputs(tmp_path, "yard", _OLD)

    def full(_: int) -> None:
        raise OSError("no space left")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="no space"):
        write_outputs(tmp_path, "yard", _NEW)
    assert _held(tmp_path / "yard") == _OLD
    assert [path.name for path in tmp_path.iterdir()] == ["yard"]


def test_a_failure_while_folders_are_swapped_leaves_the_old_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_outputs(tmp_path, "yard", _OLD)
    real = Path.rename

    def fail_once(self: Path, target: Path) -> Path:
        if "retired" not in self.name and target == tmp_path / "yard":
            raise OSError("swap failed")
        return real(self, target)

    monkeypatch.setattr(Path, "rename", fail_once)
    with pytest.raises(OSError, match="swap failed"):
        write_outputs(tmp_path, "yard", _NEW)
    assert _held(tmp_path / "yard") == _OLD
    assert [path.name for path in tmp_path.iterdir()] == ["yard"]


def test_an_interrupted_swap_is_made_good_by_the_next_build(tmp_path: Path) -> None:
    write_outputs(tmp_path, "yard", _OLD)
    (tmp_path / "yard").rename(tmp_path / ".yard.retired")
    with pytest.raises(WritingError):
        write_outputs(tmp_path, "yard", {"../x": b"", "manifest.json": b""})
    outputs._recover(tmp_path / "yard", tmp_path / ".yard.retired")
    assert _held(tmp_path / "yard") == _OLD
    (tmp_path / ".yard.retired").mkdir()
    write_outputs(tmp_path, "yard", _NEW)
    assert [path.name for path in tmp_path.iterdir()] == ["yard"]


@pytest.mark.parametrize(
    "path", ["../out", "/out", "a/../b", "", "a//b", "./a", "a\\b", "a/", "MANIFEST.json", "manifest.json/x"]
)
def test_paths_that_leave_the_folder_or_clash_are_refused(tmp_path: Path, path: str) -> None:
    with pytest.raises(WritingError):
        write_outputs(tmp_path / "build", "yard", {"manifest.json": b"", path: b"x"})
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("name", ["..", "a/b", "", "/yard"])
def test_an_edition_is_one_folder_inside_the_build(tmp_path: Path, name: str) -> None:
    with pytest.raises(WritingError):
        write_outputs(tmp_path, name, _NEW)


def test_links_are_not_written_through(tmp_path: Path) -> None:
    elsewhere, build = tmp_path / "elsewhere", tmp_path / "build"
    elsewhere.mkdir()
    (elsewhere / "manifest.json").write_text("precious")
    build.mkdir()
    (build / "yard").symlink_to(elsewhere)
    with pytest.raises(WritingError, match="link"):
        write_outputs(build, "yard", _NEW)
    (tmp_path / "way").symlink_to(build)
    with pytest.raises(WritingError, match="link"):
        write_outputs(tmp_path / "way", "owner", _NEW)
    assert (elsewhere / "manifest.json").read_text() == "precious"


def test_a_folder_of_someone_elses_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "yard").mkdir()
    (tmp_path / "yard" / "letters.txt").write_text("mine")
    with pytest.raises(WritingError, match="not written by an earlier build"):
        write_outputs(tmp_path, "yard", _NEW)
    assert (tmp_path / "yard" / "letters.txt").read_text() == "mine"


def test_a_file_in_the_folders_place_is_refused(tmp_path: Path) -> None:
    (tmp_path / "yard").write_text("mine")
    with pytest.raises(WritingError, match="file where a folder"):
        write_outputs(tmp_path, "yard", _NEW)


def test_an_edition_without_a_manifest_is_refused(tmp_path: Path) -> None:
    with pytest.raises(WritingError, match="without its manifest"):
        write_outputs(tmp_path, "yard", {"a": b""})
