"""An edition is put in place whole or not at all, and takes nothing with it that an earlier run did not write."""

from __future__ import annotations

import hashlib
import os
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tenderwright.writing import outputs
from tenderwright.writing.archive import archive
from tenderwright.writing.errors import WritingError
from tenderwright.writing.json_file import canonical_json
from tenderwright.writing.outputs import check_place, remove_outputs, write_outputs


def edition(**files: bytes) -> dict[str, bytes]:
    """Make the files of an edition with its manifest and parcel; `__` in a name stands for a folder, `_` for a dot."""
    held = {name.replace("__", "/").replace("_", "."): content for name, content in files.items()}
    listed = [
        {"path": path, "size": len(content), "sha256": hashlib.sha256(content).hexdigest()}
        for path, content in held.items()
    ]
    said = {"tender": "T-1", "edition": "yard", "compiler": "0.1.0", "files": listed}
    held["manifest.json"] = canonical_json(said)
    return {**held, "T-1-yard.zip": archive(held, "T-1-yard")}


_OLD = edition(stale_txt=b"stale", drawings__a_svg=b"a")
_NEW = edition(drawings__b_svg=b"b")
_OTHER = edition(mine_txt=b"mine")


def _held(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_new_files_replace_old_ones_and_stale_files_vanish(tmp_path: Path) -> None:
    build = tmp_path / "build"
    write_outputs(build, "owner", _OTHER)
    write_outputs(build, "yard", _OLD)
    assert write_outputs(build, "yard", _NEW) == build / "yard"
    assert _held(build / "yard") == _NEW
    assert _held(build / "owner") == _OTHER
    assert sorted(path.name for path in build.iterdir()) == ["owner", "yard"]


def _letter(folder: Path) -> str:
    (folder / "letter.txt").write_text("mine", "utf-8")
    return "letter.txt was not written by an earlier run"


def _deep(folder: Path) -> str:
    (folder / "drawings" / "mine").mkdir()
    (folder / "drawings" / "mine" / "photo.jpg").write_bytes(b"photo")
    return "drawings/mine/photo.jpg was not written by an earlier run"


def _empty_folder(folder: Path) -> str:
    (folder / "sent").mkdir()
    return "sent was not written by an earlier run"


def _link(folder: Path) -> str:
    (folder / "drawings" / "c.svg").symlink_to(folder / "drawings" / "a.svg")
    return "drawings/c.svg was not written by an earlier run"


def _linked(folder: Path) -> str:
    (folder / "stale.txt").rename(folder.parent / "kept.txt")
    (folder / "stale.txt").symlink_to(folder.parent / "kept.txt")
    return "stale.txt was not written by an earlier run"


def _filled_in(folder: Path) -> str:
    (folder / "stale.txt").write_bytes(b"STALE")
    return "stale.txt was changed after it was written"


def _parcel(folder: Path) -> str:
    (folder / "T-1-yard.zip").write_bytes(archive({**_OLD, "letter.txt": b"mine"}, "T-1-yard"))
    return "T-1-yard.zip was not written by an earlier run"


def _copy_of_parcel(folder: Path) -> str:
    (folder / "sent.zip").write_bytes(_OLD["T-1-yard.zip"])
    return "sent.zip was not written by an earlier run"


def _no_manifest(folder: Path) -> str:
    (folder / "manifest.json").unlink()
    return "T-1-yard.zip was not written by an earlier run (and 2 more there)"


def _manifest_of_another_program(folder: Path) -> str:
    (folder / "manifest.json").write_bytes(b'{"name": "a web page", "icons": []}')
    return "was not written by an earlier run (and 3 more there)"


@pytest.mark.parametrize(
    "put",
    [
        _letter,
        _deep,
        _empty_folder,
        _link,
        _linked,
        _filled_in,
        _parcel,
        _copy_of_parcel,
        _no_manifest,
        _manifest_of_another_program,
    ],
)
def test_what_is_not_ours_is_named_and_stays(tmp_path: Path, put: Callable[[Path], str]) -> None:
    folder = write_outputs(tmp_path, "yard", _OLD)
    said = put(folder)
    before = _held(tmp_path)
    for act in (
        lambda: check_place(tmp_path, "yard"),
        lambda: write_outputs(tmp_path, "yard", _NEW),
        lambda: remove_outputs(tmp_path, "yard"),
    ):
        with pytest.raises(WritingError) as refused:
            act()
        assert said in str(refused.value)
        assert "move it to another folder or delete it, and give the command again" in str(refused.value)
        assert _held(tmp_path) == before


def test_what_desktops_leave_goes_with_the_folder(tmp_path: Path) -> None:
    folder = write_outputs(tmp_path, "yard", _OLD)
    for name in (".DS_Store", "Thumbs.db", "desktop.ini", "drawings/.DS_Store"):
        (folder / name).write_bytes(b"left")
    (folder / "stale.txt").unlink()
    assert _held(write_outputs(tmp_path, "yard", _NEW)) == _NEW


@pytest.mark.parametrize("in_one_step", [True, False])
def test_a_file_put_there_at_the_last_moment_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, in_one_step: bool
) -> None:
    write_outputs(tmp_path, "yard", _OLD)
    swap, exchange = outputs._swap, outputs.exchange
    monkeypatch.setattr(outputs, "exchange", exchange if in_one_step else lambda one, other: False)

    def late(fresh: Path, folder: Path, retired: Path) -> None:
        _letter(folder)
        swap(fresh, folder, retired)

    monkeypatch.setattr(outputs, "_swap", late)
    with pytest.raises(WritingError, match=r"yard.letter\.txt was not written by an earlier run"):
        write_outputs(tmp_path, "yard", _NEW)
    assert _held(tmp_path / "yard") == {**_OLD, "letter.txt": b"mine"}
    assert [path.name for path in tmp_path.iterdir()] == ["yard"]


def test_a_failure_while_files_are_written_leaves_the_old_ones(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_outputs(tmp_path, "yard", _OLD)

    def full(_: int) -> None:
        raise OSError("no space left")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="no space"):
        write_outputs(tmp_path, "yard", _NEW)
    assert _held(tmp_path / "yard") == _OLD
    assert [path.name for path in tmp_path.iterdir()] == ["yard"]


@pytest.mark.parametrize("error", [OSError("swap failed"), KeyboardInterrupt()])
def test_a_failure_while_folders_are_swapped_leaves_the_old_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, error: BaseException
) -> None:
    write_outputs(tmp_path, "yard", _OLD)
    real = Path.rename

    def fail_once(self: Path, target: Path) -> Path:
        if "retired" not in self.name and target == tmp_path / "yard":
            raise error
        return real(self, target)

    monkeypatch.setattr(outputs, "exchange", lambda one, other: False)
    monkeypatch.setattr(Path, "rename", fail_once)
    with pytest.raises(type(error)):
        write_outputs(tmp_path, "yard", _NEW)
    assert _held(tmp_path / "yard") == _OLD
    assert [path.name for path in tmp_path.iterdir()] == ["yard"]


def test_without_exchange_in_one_step_the_folders_change_places_in_two(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(outputs, "exchange", lambda one, other: False)
    write_outputs(tmp_path, "yard", _OLD)
    assert _held(write_outputs(tmp_path, "yard", _NEW)) == _NEW
    assert [path.name for path in tmp_path.iterdir()] == ["yard"]


def test_what_a_killed_run_put_aside_comes_back(tmp_path: Path) -> None:
    write_outputs(tmp_path, "yard", _OLD)
    (tmp_path / "yard").rename(tmp_path / ".yard.retired")
    outputs._recover(tmp_path, "yard")
    assert _held(tmp_path / "yard") == _OLD


def test_what_killed_runs_left_is_taken_away_unless_it_holds_what_is_not_ours(tmp_path: Path) -> None:
    write_outputs(tmp_path, "yard", _OLD)
    for left in (f".yard.{'a' * 32}", ".yard.retired"):
        shutil.copytree(tmp_path / "yard", tmp_path / left)
    (tmp_path / f".yard.{'b' * 32}" / "drawings").mkdir(parents=True)
    (tmp_path / f".yard.{'b' * 32}" / "drawings" / "half.svg").write_bytes(b"<sv")
    (tmp_path / ".yardarm").mkdir()
    write_outputs(tmp_path, "yard", _NEW)
    assert sorted(path.name for path in tmp_path.iterdir()) == [".yardarm", "yard"]
    (tmp_path / ".yard.retired").mkdir()
    _letter(tmp_path / ".yard.retired")
    with pytest.raises(WritingError, match="letter"):
        write_outputs(tmp_path, "yard", _OLD)
    assert _held(tmp_path) == {f"yard/{path}": content for path, content in _NEW.items()} | {
        ".yard.retired/letter.txt": b"mine"
    }


class _Killed(BaseException):
    """Stands for the end of the process: nothing that follows it changes the disk."""


_CHANGES = ("unlink", "rmdir", "rename", "mkdir", "fsync")


def _killed_after(steps: int, monkeypatch: pytest.MonkeyPatch, act: Callable[[], object]) -> bool:
    """Act until so many changes of the disk are made, and tell whether there were more to make."""
    left = steps

    def mortal(change: Callable[..., Any]) -> Callable[..., Any]:
        def changed(*words: Any, **named: Any) -> Any:
            nonlocal left
            left -= 1
            if left < 0:
                raise _Killed
            return change(*words, **named)

        return changed

    with monkeypatch.context() as dying:
        for name in _CHANGES:
            dying.setattr(os, name, mortal(getattr(os, name)))
        dying.setattr(outputs, "exchange", mortal(outputs.exchange))
        try:
            act()
        except _Killed:
            return True
    return left < 0


@pytest.mark.parametrize("in_one_step", [True, False])
def test_a_kill_before_any_change_leaves_the_old_or_the_new_and_the_next_run_makes_good(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, in_one_step: bool
) -> None:
    if not in_one_step:
        monkeypatch.setattr(outputs, "exchange", lambda one, other: False)
    for steps in range(100):
        build = tmp_path / str(steps)
        write_outputs(build, "yard", _OLD)
        killed = _killed_after(steps, monkeypatch, lambda build=build: write_outputs(build, "yard", _NEW))
        held = _held(build / "yard") if in_one_step or (build / "yard").exists() else _OLD
        assert held in (_OLD, _NEW)
        assert killed or held == _NEW
        again = _killed_after(steps, monkeypatch, lambda build=build: write_outputs(build, "yard", _NEW))
        write_outputs(build, "yard", _NEW)
        assert _held(build) == {f"yard/{path}": content for path, content in _NEW.items()}
        if not killed and not again:
            break
    assert 15 < steps < 99


def test_an_edition_that_is_not_to_be_replaced_may_only_be_there_already(tmp_path: Path) -> None:
    write_outputs(tmp_path, "yard", _OLD, replace=False)
    write_outputs(tmp_path, "yard", _OLD, replace=False)
    with pytest.raises(WritingError, match=r"is there already with another drawings.b\.svg, and is never written over"):
        write_outputs(tmp_path, "yard", _NEW, replace=False)
    assert _held(tmp_path / "yard") == _OLD


def test_an_edition_is_taken_away_whole(tmp_path: Path) -> None:
    write_outputs(tmp_path, "yard", _OLD)
    remove_outputs(tmp_path, "yard")
    assert list(tmp_path.iterdir()) == []


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


def test_a_file_in_the_folders_place_is_refused(tmp_path: Path) -> None:
    (tmp_path / "yard").write_text("mine")
    with pytest.raises(WritingError, match="file where a folder"):
        write_outputs(tmp_path, "yard", _NEW)


def test_an_edition_without_a_manifest_is_refused(tmp_path: Path) -> None:
    with pytest.raises(WritingError, match="without its manifest"):
        write_outputs(tmp_path, "yard", {"a": b""})
