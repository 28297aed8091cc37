"""New files of a package: all of them or none, never over what is there, never outside the package."""

from __future__ import annotations

from pathlib import Path

import pytest

from tenderwright.reading.layout import UNFINISHED
from tenderwright.writing import new_files as module
from tenderwright.writing.errors import WritingError
from tenderwright.writing.new_files import in_the_way, new_files, take_back

FILES = {"history/a.yaml": b"a", "owner/closing/b.yaml": b"b"}


def _all(root: Path) -> list[str]:
    return sorted(path.relative_to(root).as_posix() for path in root.rglob("*"))


def test_they_are_written_with_the_folders_they_need(tmp_path: Path) -> None:
    with new_files(tmp_path, FILES):
        pass
    assert _all(tmp_path) == ["history", "history/a.yaml", "owner", "owner/closing", "owner/closing/b.yaml"]
    assert (tmp_path / "owner" / "closing" / "b.yaml").read_bytes() == b"b"


def test_they_are_gone_again_where_what_follows_fails(tmp_path: Path) -> None:
    (tmp_path / "history").mkdir()
    (tmp_path / "history" / "old.yaml").write_bytes(b"old")
    there = []
    try:
        with new_files(tmp_path, FILES):
            there = _all(tmp_path)
            raise RuntimeError("later")
    except RuntimeError:
        pass
    assert "history/a.yaml" in there
    assert _all(tmp_path) == ["history", "history/old.yaml"]


@pytest.mark.parametrize("kind", ["file", "folder", "dangling link"])
def test_nothing_is_written_where_one_is_there(kind: str, tmp_path: Path) -> None:
    place = tmp_path / "owner" / "closing" / "b.yaml"
    place.parent.mkdir(parents=True)
    if kind == "file":
        place.write_bytes(b"mine")
    elif kind == "folder":
        place.mkdir()
    else:
        place.symlink_to(tmp_path / "nowhere")
    before = _all(tmp_path)
    assert in_the_way(tmp_path, FILES) == ["owner/closing/b.yaml"]
    with pytest.raises(WritingError, match="no source file is ever written over"), new_files(tmp_path, FILES):
        pytest.fail("nothing may follow")
    assert _all(tmp_path) == before


def test_a_folder_that_leads_out_is_refused(tmp_path: Path) -> None:
    root, outside = tmp_path / "package", tmp_path / "outside"
    root.mkdir()
    outside.mkdir()
    (root / "owner").symlink_to(outside, target_is_directory=True)
    with pytest.raises(WritingError, match="leads out of the package"), new_files(root, FILES):
        pytest.fail("nothing may follow")
    assert _all(outside) == []
    assert not (root / "history").exists()


def test_a_file_that_appears_meanwhile_is_kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target = tmp_path / "history" / "a.yaml"

    def first_come(fresh: Path, place: Path) -> None:
        place.write_bytes(b"theirs")
        raise FileExistsError

    monkeypatch.setattr("tenderwright.writing.new_files.os.link", first_come)
    with pytest.raises(WritingError, match="is there already"), new_files(tmp_path, {"history/a.yaml": b"ours"}):
        pytest.fail("nothing may follow")
    assert target.read_bytes() == b"theirs"


def test_a_file_system_without_hard_links_will_do(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(fresh: Path, place: Path) -> None:
        raise PermissionError

    monkeypatch.setattr("tenderwright.writing.new_files.os.link", refuse)
    with new_files(tmp_path, FILES):
        pass
    assert (tmp_path / "history" / "a.yaml").read_bytes() == b"a"
    assert not list(tmp_path.rglob(".*"))


def _killed(root: Path, files: dict[str, bytes]) -> None:
    """Leave what a process leaves that is killed once some of the files are in place."""
    module._list(root, FILES)
    for path, content in files.items():
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_bytes(content)


@pytest.mark.parametrize(
    "files",
    [{}, {f"history/.a.yaml.{'0' * 32}": b""}, {"history/a.yaml": b"a"}, FILES],
    ids=["list", "half", "one", "all"],
)
def test_what_a_killed_run_left_is_taken_back_and_can_be_done_again(files: dict[str, bytes], tmp_path: Path) -> None:
    (tmp_path / "owner").mkdir()
    _killed(tmp_path, files)
    take_back(tmp_path)
    assert _all(tmp_path) == ["owner"]
    _killed(tmp_path, files)
    with new_files(tmp_path, FILES):
        assert (tmp_path / UNFINISHED).is_file()
    assert _all(tmp_path) == ["history", "history/a.yaml", "owner", "owner/closing", "owner/closing/b.yaml"]


def test_a_file_changed_since_is_not_taken_back(tmp_path: Path) -> None:
    _killed(tmp_path, {"history/a.yaml": b"a, and what I added", "owner/closing/b.yaml": b"b"})
    take_back(tmp_path)
    assert _all(tmp_path) == ["history", "history/a.yaml"]


def test_a_list_cut_short_says_that_nothing_was_put_anywhere(tmp_path: Path) -> None:
    (tmp_path / UNFINISHED).write_bytes(b'{"files": {"hist')
    take_back(tmp_path)
    assert _all(tmp_path) == []


def test_a_list_that_leads_out_of_the_package_is_refused(tmp_path: Path) -> None:
    root = tmp_path / "package"
    root.mkdir()
    (tmp_path / "a").write_bytes(b"a")
    module._list(root, {"../a": b"a"})
    with pytest.raises(WritingError, match="leads out of the package"):
        take_back(root)
    assert (tmp_path / "a").read_bytes() == b"a"
